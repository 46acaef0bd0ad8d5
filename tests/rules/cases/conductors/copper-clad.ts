import { aboutPlan } from '../../case.ts';
import { conductor, wire } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const copperCladCases = {
  // Common practice, no source: in a set screw only with a ferrule, tightened again.
  'copper-clad-in-set-screw': {
    fires: [
      {
        name: 'bare under a set screw',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-feed').material = 'copper-clad-aluminium';
            Object.assign(wire(plan, 'amp-feed').ends[1], { prep: 'bare', form: 'bare' });
          }),
        level: 'stop',
        subject: 'amp.B+',
      },
      {
        name: 'with a ferrule: to be tightened again',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'amp-feed').material = 'copper-clad-aluminium';
          }),
        level: 'note',
        subject: 'block.OUT1',
        says: /settles/,
      },
    ],
    quiet: [
      {
        name: 'on a stud',
        about: () =>
          aboutPlan((plan) => {
            conductor(plan, 'feed').material = 'copper-clad-aluminium';
          }),
      },
    ],
  },
} satisfies RuleCases;
