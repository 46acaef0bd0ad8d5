import type { BuildPlan } from '../../../../lib/model/plan/index.ts';
import { about, aboutPlan } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

const drawing = (amp: number | null, dsp: number | null) => (plan: BuildPlan) => {
  plan.power.keyOff = {
    items: [
      { item: 'amp', drawA: amp },
      { item: 'dsp', drawA: dsp },
    ],
    drawA: (amp ?? 0) + (dsp ?? 0),
    limitA: 0.05,
  };
};

export const keyOffCases = {
  // Common practice, no source: at most 50 mA.
  'key-off-over-limit': {
    fires: [
      {
        name: '60 mA, the amplifier most of it',
        about: () => aboutPlan(drawing(0.045, 0.015)),
        level: 'caution',
        subject: 'amp',
        says: /amp \(0\.045 A\) and dsp \(0\.015 A\) draw 0\.06 A/,
      },
    ],
    quiet: [
      { name: 'exactly 50 mA', about: () => aboutPlan(drawing(0.03, 0.02)) },
      { name: 'a plan from before key-off draws were summed', about: () => about() },
    ],
  },
  'key-off-not-told': {
    fires: [
      {
        name: 'the processor does not tell',
        about: () => aboutPlan(drawing(0.002, null)),
        level: 'note',
        subject: 'dsp',
        file: 'parts.yaml',
      },
    ],
    quiet: [{ name: 'both tell', about: () => aboutPlan(drawing(0.002, 0.002)) }],
  },
} satisfies RuleCases;
