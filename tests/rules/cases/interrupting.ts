import { about, aboutPlan, partIn } from '../case.ts';
import { fuse } from '../changes.ts';
import type { RuleCases } from '../rule-case.ts';

export const interruptingCases: RuleCases = {
  // ABYC E-11, from memory: 1.5 kA up to 650 A of cold cranking, 3 kA up to 1,100 A, 5 kA above.
  'fuse-interrupting': {
    fires: [
      {
        name: 'a blade fuse of 1 kA at a battery of 600 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').interruptA = 1000;
          }),
        level: 'caution',
        subject: 'main-fuse',
        says: /1500 A/,
      },
      {
        name: 'a rating that is not known',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').interruptA = null;
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
      {
        name: '2 kA at a battery of 1,000 A',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'agm', 'battery')['cold-cranking'] = '1000 A';
            },
            plan: (plan) => {
              fuse(plan, 'main-fuse').interruptA = 2000;
            },
          }),
        level: 'caution',
        subject: 'main-fuse',
        says: /3000 A/,
      },
    ],
    quiet: [
      {
        name: '1.5 kA at a battery of 600 A, blades of 1 kA behind it',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').interruptA = 1500;
          }),
      },
    ],
  },
};
