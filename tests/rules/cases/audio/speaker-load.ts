import { withTwoCoils } from '../../../plan/planned.ts';
import { about, aboutPlan } from '../../case.ts';
import { channel, speaker } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';
import { plannedCase } from '../../stereo.ts';

/** The subwoofer with two coils, joined among themselves and to the second channel as told. */
function twoCoils({
  plus,
  minus,
  ...jumpers
}: Readonly<Record<string, string | readonly [string, string]>> & { plus: string; minus: string }) {
  return plannedCase((content) => {
    withTwoCoils(content);
    const { links } = content.job;
    delete links['speaker-2'];
    links.plus = { from: 'amp.CH2+', to: `sub.${plus}` };
    links.minus = { from: 'amp.CH2-', to: `sub.${minus}` };
    for (const [id, ends] of Object.entries(jumpers))
      links[id] = { from: `sub.${ends[0]}`, to: `sub.${ends[1]}` };
  });
}

export const speakerLoadCases = {
  // The maker's minimum load.
  'load-below-minimum': {
    fires: [
      {
        name: '1.9 ohm on 2 ohm',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1.9 })),
        level: 'stop',
        subject: 'amp.2',
        path: '/devices/amp',
      },
      {
        name: '1.5 ohm beside a filter in a lead on 2 ohm',
        about: () =>
          aboutPlan((plan) =>
            Object.assign(channel(plan, 'amp.2'), { loadOhm: 4, least: { ohm: 1.5, atHz: 20_000 } }),
          ),
        level: 'stop',
        subject: 'amp.2',
        path: '/devices/amp',
      },
    ],
    quiet: [
      {
        name: 'a load rated at 2 ohm that falls to 1.6',
        about: () =>
          aboutPlan((plan) =>
            Object.assign(channel(plan, 'amp.2'), { loadOhm: 4, least: { ohm: 1.6, atHz: 20_000 } }),
          ),
      },
      {
        name: '2 ohm on 2 ohm',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 2 })),
      },
    ],
  },
  // Ohm's law: without a load nothing can be said of the channel.
  'load-unknown': {
    fires: [
      {
        name: 'wired, load null',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: null })),
        level: 'stop',
        subject: 'amp.2',
      },
      {
        name: 'one terminal wired, no speaker reached',
        about: () =>
          aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: null, speakers: [] })),
        level: 'stop',
        subject: 'amp.2',
      },
      {
        name: 'a load of nothing',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 0 })),
        level: 'stop',
        subject: 'amp.2',
      },
    ],
    quiet: [
      {
        name: 'a channel that is left open',
        about: () =>
          about({
            content: ({ job }) => {
              delete job.links['speaker-2'];
            },
            plan: (plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: null, speakers: [] }),
          }),
      },
    ],
  },
  // Common practice, no source.
  'speaker-without-channel': {
    fires: [
      {
        name: 'a speaker that nothing drives',
        about: () =>
          aboutPlan((plan) => Object.assign(speaker(plan, 'sub'), { channel: null, polarity: 'unwired' })),
        level: 'stop',
        subject: 'sub',
      },
    ],
    quiet: [
      {
        name: 'a speaker whose coils are left open with a reason',
        about: () =>
          about({
            content: ({ job }) => {
              delete job.links['speaker-2'];
              job['left-open'] = { 'sub.C+': 'second stage', 'sub.C-': 'second stage' };
            },
            plan: (plan) => Object.assign(speaker(plan, 'sub'), { channel: null, polarity: 'unwired' }),
          }),
      },
    ],
  },
  // Common practice, no source.
  'polarity-reversed': {
    fires: [
      {
        name: 'reversed',
        about: () => aboutPlan((plan) => Object.assign(speaker(plan, 'sub'), { polarity: 'reversed' })),
        level: 'caution',
        subject: 'sub',
      },
    ],
    quiet: [{ name: 'normal', about: () => about() }],
  },
  // The maker's power.
  'power-over-speaker': {
    fires: [
      {
        name: '100 W on 80 W',
        about: () => aboutPlan((plan) => Object.assign(speaker(plan, 'tweeter'), { powerW: 100 })),
        level: 'note',
        subject: 'tweeter',
      },
    ],
    quiet: [
      {
        name: '80 W on 80 W',
        about: () => aboutPlan((plan) => Object.assign(speaker(plan, 'tweeter'), { powerW: 80 })),
      },
    ],
  },
  // Current that enters one coil at its positive and the other at its negative pushes the cone both ways.
  'coils-opposed': {
    fires: [
      {
        name: 'in series, the second coil turned over',
        about: () => twoCoils({ plus: 'C+', minus: 'D+', middle: ['C-', 'D-'] }),
        level: 'stop',
        subject: 'sub',
        path: '/links/minus',
        says: /the coils of sub are opposed: sub\.D pushes against sub\.C/,
        toDo: /exchange the two conductors of sub\.D/,
      },
      {
        name: 'in parallel, the second coil turned over',
        about: () => twoCoils({ plus: 'C+', minus: 'C-', first: ['C+', 'D-'], second: ['C-', 'D+'] }),
        level: 'stop',
        subject: 'sub',
      },
    ],
    quiet: [
      {
        name: 'in series',
        about: () => twoCoils({ plus: 'C+', minus: 'D-', middle: ['C-', 'D+'] }),
      },
      {
        name: 'in parallel',
        about: () => twoCoils({ plus: 'C+', minus: 'C-', first: ['C+', 'D+'], second: ['C-', 'D-'] }),
      },
      {
        name: 'both turned over, which is the polarity of the speaker',
        about: () => twoCoils({ plus: 'C-', minus: 'D+', middle: ['C+', 'D-'] }),
      },
    ],
  },
} satisfies RuleCases;
