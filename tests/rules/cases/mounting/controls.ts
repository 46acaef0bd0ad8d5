import { about, aboutPlan } from '../../case.ts';
import { control } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const controlsCases = {
  // Every control is accounted for; a wrong gain, boost or filter stops, others are a caution (common practice).
  'control-unlisted': {
    fires: [
      {
        name: 'a gain that is not in the plan',
        about: () =>
          aboutPlan((plan) => {
            plan.controls = plan.controls.filter(({ control: name }) => name !== 'GAIN');
          }),
        level: 'stop',
        subject: 'amp.GAIN',
      },
      {
        name: 'a phase switch that is not in the plan',
        about: () =>
          aboutPlan((plan) => {
            plan.controls = plan.controls.filter(({ control: name }) => name !== 'PHASE');
          }),
        level: 'caution',
        subject: 'amp.PHASE',
      },
    ],
    quiet: [{ name: 'all in the plan', about: () => about() }],
  },
  // Common practice, no source.
  'control-unsafe': {
    fires: [
      {
        name: 'gain half way up',
        about: () =>
          aboutPlan((plan) => Object.assign(control(plan, 'GAIN'), { preset: 'half', safe: false })),
        level: 'stop',
        subject: 'amp.GAIN',
        path: '/devices/amp/settings/GAIN',
        says: /fully down/,
      },
      {
        name: 'phase at 180',
        about: () =>
          aboutPlan((plan) => Object.assign(control(plan, 'PHASE'), { preset: '180', safe: false })),
        level: 'caution',
        subject: 'amp.PHASE',
      },
      {
        name: 'a control that its part does not know',
        about: () =>
          aboutPlan((plan) => {
            plan.controls.push({
              item: 'amp',
              control: 'X',
              preset: 'on',
              why: '',
              safeState: '',
              panel: 'left',
              atM: null,
              order: 9,
              chosen: 'given',
              safe: false,
              final: { state: 'on', why: '', chosen: 'given', during: 'presets' },
            });
          }),
        level: 'stop',
        subject: 'amp.X',
      },
    ],
    quiet: [{ name: 'all safe', about: () => about() }],
  },
} satisfies RuleCases;
