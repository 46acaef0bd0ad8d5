import { about, aboutContent, entry } from '../../case.ts';
import { isolated, withRelay } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** Common practice, no source: what never goes off empties the battery. */
export const alwaysLiveCases = {
  'turn-on-always-live': {
    fires: [
      {
        name: 'an amplifier on a fused way of the block',
        about: () =>
          aboutContent(({ job }) => {
            entry(job.links, 'amp-rem').from = 'block.OUT3';
          }),
        level: 'stop',
        subject: 'amp.REM',
        says: /amp\.REM hangs on block\.OUT3, and so on battery\.POS, .* amp never turns off/,
        path: '/links/amp-rem',
      },
      {
        name: 'a processor on the post of the battery itself',
        about: () =>
          aboutContent(({ job }) => {
            entry(job.links, 'radio-rem').from = 'battery.POS';
          }),
        level: 'stop',
        subject: 'dsp.REM-IN',
      },
      {
        name: 'the coil of a relay between a fused way and ground',
        about: () =>
          withRelay('diode', (job) => {
            entry(job.links, 'coil-rem').from = 'block.OUT3';
          }),
        level: 'stop',
        subject: 'relay.86',
        says: /stays pulled in/,
      },
    ],
    quiet: [
      { name: 'on a turn-on output', about: () => about() },
      { name: 'over the contact of a relay that an output drives', about: () => withRelay('diode') },
      {
        name: 'the coil of an isolating relay, which has a rule of its own',
        about: () => isolated('block.OUT3'),
      },
    ],
  },
} satisfies RuleCases;
