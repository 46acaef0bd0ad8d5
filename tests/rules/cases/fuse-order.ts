import { about, aboutContent, aboutPlan, partIn } from '../case.ts';
import { fuse } from '../changes.ts';
import type { RuleCases } from '../rule-case.ts';

export const fuseOrderCases: RuleCases = {
  // Common practice, no source.
  'fuse-order': {
    fires: [
      {
        name: 'a branch fuse above the main fuse',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 50;
          }),
        level: 'caution',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: 'a branch fuse as large as the main fuse',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 60;
          }),
      },
    ],
  },
  // Common practice, no source.
  'fuses-over-feeder': {
    fires: [
      {
        name: '60, 5 and 10 A behind 70 A',
        about: () =>
          aboutPlan((plan) => {
            fuse(plan, 'main-fuse').ratingA = 70;
          }),
        level: 'note',
        subject: 'main-fuse',
        says: /75 A/,
      },
    ],
    quiet: [{ name: '75 A behind 80 A', about: () => about() }],
  },
  // The part's own data.
  'distribution-over-current': {
    fires: [
      {
        name: 'more current than the part is made for',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '40 A';
          }),
        level: 'stop',
        subject: 'block',
      },
      {
        name: 'a main fuse that lets more through than the part is made for',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '60 A';
          }),
        level: 'caution',
        subject: 'block',
      },
    ],
    quiet: [
      {
        name: 'a part made for what the main fuse lets through',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'fused', 'distribution').current = '80 A';
          }),
      },
    ],
  },
};
