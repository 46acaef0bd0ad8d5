import { about, aboutContent } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The content without some links of the vehicle. */
const without = (...links: readonly string[]) =>
  aboutContent(({ vehicle }) => {
    for (const link of links) delete vehicle.links?.[link];
  });

export const fittedSourceCases = {
  'fitted-source-not-linked': {
    fires: [
      {
        name: 'a battery without its strap',
        about: () => without('strap'),
        level: 'stop',
        subject: 'battery',
        path: '/fitted/battery',
        file: 'vehicle.yaml',
        says: /battery strap from battery\.NEG to a ground point/,
      },
      {
        name: 'an alternator without its charge lead',
        about: () => without('charge'),
        level: 'stop',
        subject: 'alternator',
        path: '/fitted/alternator',
        file: 'vehicle.yaml',
        says: /charge lead from alternator\.B\+/,
      },
      {
        name: 'an alternator that is linked to nothing',
        about: () => without('charge', 'block'),
        level: 'stop',
        subject: 'alternator',
        file: 'vehicle.yaml',
        says: /fitted, but linked to nothing/,
      },
      {
        name: 'a second battery of the vehicle that is linked to nothing',
        about: () =>
          aboutContent(({ vehicle }) => {
            vehicle.fitted.rear = { part: 'agm', zone: 'cargo' };
          }),
        level: 'stop',
        subject: 'rear',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      { name: 'a battery and an alternator as they should be', about: () => about() },
      {
        name: 'a battery whose ground the job brings',
        about: () =>
          aboutContent(({ vehicle, job }) => {
            delete vehicle.links?.strap;
            job.links['battery-ground'] = { from: 'battery.NEG', to: 'body.engine' };
          }),
      },
    ],
  },
} satisfies RuleCases;
