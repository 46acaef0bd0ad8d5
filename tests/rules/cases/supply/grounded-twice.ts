import { about, aboutContent } from '../../case.ts';
import { secondBattery } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** Common practice, no source: two points of the body are not at one voltage. */
export const groundedTwiceCases = {
  'device-grounded-twice': {
    fires: [
      {
        name: 'a strip that is bolted down at two places',
        about: () =>
          aboutContent(({ job }) => {
            job.links.extra = { from: 'ground.G0', to: 'body.dash' };
          }),
        level: 'caution',
        subject: 'ground',
        says: /body\.cargo and body\.dash/,
        path: '/links/extra',
      },
      {
        name: 'a radio with a second ground',
        about: () =>
          aboutContent(({ job }) => {
            job.links.extra = { from: 'radio.GND', to: 'body.engine' };
          }),
        level: 'caution',
        subject: 'radio',
        path: '/links/extra',
      },
    ],
    quiet: [
      { name: 'each device at one point', about: () => about() },
      {
        name: 'two leads to one point',
        about: () =>
          aboutContent(({ job }) => {
            job.links.extra = { from: 'ground.G1', to: 'body.cargo' };
          }),
      },
      {
        name: 'a battery that grounds both body and engine',
        about: () => secondBattery(true),
      },
    ],
  },
} satisfies RuleCases;
