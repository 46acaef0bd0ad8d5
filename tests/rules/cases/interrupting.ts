import type { Case } from '../../../lib/rules/rule.ts';
import { about, aboutPlan, partIn } from '../case.ts';
import { fuse, wire } from '../changes.ts';
import type { RuleCases } from '../rule-case.ts';

/** The main fuse between a battery of 600 A and a second one of 1,200 A, each reaching it without another fuse. */
function twoBatteriesAt(interruptA: number, feedM = 0.15): Case {
  return about({
    content: (content) => {
      const { job, parts } = content;
      parts['agm-large'] = { ...partIn(content, 'agm', 'battery'), 'cold-cranking': '1200 A' };
      job.devices.second = { part: 'agm-large', in: 'boot' };
      job.links['second-tail'] = { from: 'second.POS', to: 'block.IN' };
    },
    plan: (plan) => {
      wire(plan, 'feed').lengthM = feedM;
      for (const one of plan.power.fuses) one.interruptA = interruptA;
    },
  });
}

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
      {
        name: '2 kA between a battery of 600 A nearby and one of 1,200 A farther on: the worse one counts',
        about: () => twoBatteriesAt(2000),
        level: 'caution',
        subject: 'main-fuse',
        says: /behind second with 1200 A .* 5000 A/,
      },
      {
        name: '2 kA, the worse battery the nearer one',
        about: () => twoBatteriesAt(2000, 4),
        level: 'caution',
        subject: 'main-fuse',
        says: /behind second with 1200 A/,
      },
    ],
    quiet: [
      { name: '5 kA between a battery of 600 A and one of 1,200 A', about: () => twoBatteriesAt(5000) },
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
