import { aboutPlan } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** What the rule does not look at. */
const unread = { least: null, greatest: null, when: 'power', explanation: null } as const;

export const asBuiltCases = {
  // Common practice, no source.
  'as-built-differs': {
    fires: [
      {
        name: 'a ground drop of three times the prediction',
        about: () =>
          aboutPlan((plan) => {
            plan.measurements = [
              {
                id: 'amp.ground-drop',
                what: 'ground drop of amp',
                predicted: 0.05,
                unit: 'V',
                asBuilt: 0.15,
                state: 'differs',
                ...unread,
              },
            ];
          }),
        level: 'caution',
        subject: 'amp.ground-drop',
        path: '/as-built/amp.ground-drop',
      },
      {
        name: 'nothing predicted, nothing read',
        about: () =>
          aboutPlan((plan) => {
            plan.measurements = [
              { id: 'x', what: 'x', predicted: null, unit: 'V', state: 'differs', ...unread },
            ];
          }),
        level: 'caution',
        subject: 'x',
      },
    ],
    quiet: [
      {
        name: 'open, and in agreement',
        about: () =>
          aboutPlan((plan) => {
            plan.measurements = [
              { id: 'x', what: 'x', predicted: 0.05, unit: 'V', asBuilt: 0.05, state: 'agrees', ...unread },
              { id: 'y', what: 'y', predicted: 0.05, unit: 'V', state: 'open', ...unread },
            ];
          }),
      },
    ],
  },
} satisfies RuleCases;
