import { about, aboutPlan } from '../../case.ts';
import { point, setNode } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const supplyCollapseCases = {
  // Ohm's and Kirchhoff's laws: a constant-power load above V^2 / 4R has no solution.
  'supply-collapse': {
    fires: [
      {
        name: 'no solution, with nothing else in the point',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(point(plan, 'engine-off'), { state: 'no-solution', nodes: [], elements: [] });
          }),
        level: 'stop',
        subject: 'engine-off',
        says: /collapses/,
      },
      {
        name: 'a solved point in which the voltage at a device is null',
        about: () => aboutPlan((plan) => setNode(plan, 'rated-power', 'amp.B+', null)),
        level: 'stop',
        subject: 'rated-power',
        says: /no voltage is known at amp/,
      },
    ],
    quiet: [{ name: 'all points solved', about: () => about() }],
  },
  // Common practice, no source: cut-out at 10 to 10.5 V where the maker is silent.
  'below-cut-out': {
    fires: [
      {
        name: 'a device under its cut-out',
        about: () => aboutPlan((plan) => setNode(plan, 'engine-off', 'amp.B+', 10.5)),
        level: 'stop',
        subject: 'amp',
        says: /10.42 V, under the 10.5 V/,
      },
      {
        name: 'a point that says cut-out and gives no voltage',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(point(plan, 'engine-off'), { state: 'cut-out', nodes: [], elements: [] });
          }),
        level: 'stop',
        subject: 'engine-off',
      },
    ],
    quiet: [
      {
        name: 'every device at its fuse at once, which sizes the wiring and is never played',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(point(plan, 'engine-off'), { name: 'full-rating' });
            setNode(plan, 'full-rating', 'amp.B+', 9);
          }),
      },
      {
        name: 'just at the cut-out',
        about: () => aboutPlan((plan) => setNode(plan, 'engine-off', 'amp.B+', 10.59)),
      },
    ],
  },
} satisfies RuleCases;
