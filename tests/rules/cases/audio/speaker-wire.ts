import { about, aboutPlan, byId } from '../../case.ts';
import { channel, unsized } from '../../changes.ts';
import { sized } from '../../plan.ts';
import type { RuleCases } from '../../rule-case.ts';

export const speakerWireCases = {
  // Common practice, no source: at most 0.5 dB.
  'speaker-wire-loss': {
    fires: [
      {
        name: '0.6 dB',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { wireLossDb: 0.6 })),
        level: 'caution',
        subject: 'amp.2',
      },
    ],
    quiet: [
      {
        name: '0.5 dB',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { wireLossDb: 0.5 })),
      },
    ],
  },
  // Common practice, no source: 12 AWG for 4 to 2 ohm, 10 AWG at 1 ohm.
  'bass-lead-thin': {
    fires: [
      {
        name: '14 AWG into 4 ohm',
        about: () =>
          aboutPlan((plan) => {
            byId(plan.wires, 'speaker-2.+').size = sized('14');
          }),
        level: 'caution',
        subject: 'speaker-2.+',
      },
      {
        name: '12 AWG into 1 ohm',
        about: () =>
          aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1, minimumOhm: 1 })),
        level: 'caution',
        subject: 'speaker-2',
        says: /^speaker-2 is 12 AWG, .*10 AWG/,
      },
    ],
    quiet: [
      { name: '12 AWG into 4 ohm', about: () => about() },
      {
        name: 'a wire that no cable was found for',
        about: () =>
          aboutPlan((plan) => {
            byId(plan.wires, 'speaker-2.+').size = unsized;
          }),
      },
      {
        name: '18 AWG to a tweeter, and to a subwoofer of 8 ohm',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(channel(plan, 'amp.2'), { loadOhm: 8 });
            for (const each of plan.wires) if (each.role === 'speaker') each.size = sized('18');
          }),
      },
    ],
  },
} satisfies RuleCases;
