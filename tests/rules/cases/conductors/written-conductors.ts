import { about, aboutContent, entry, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The signal of the radio in a made-up lead, with a length that is written. */
const lead = (made: string, length?: string) => () =>
  aboutContent((content) => {
    partIn(content, 'nine-wire', 'cable')['made-length'] = made;
    content.job.cables = { phono: { part: 'nine-wire' } };
    Object.assign(entry(content.job.links, 'radio-signal'), {
      cable: 'phono',
      conductors: ['white'],
      ...(length !== undefined && { length }),
    });
  });

const strapTo = (ground: string, length: string) => () =>
  aboutContent(({ vehicle }) => {
    Object.assign(entry(vehicle.links, 'strap'), { to: `body.${ground}`, length });
  });

export const writtenConductorCases = {
  'link-twice': {
    fires: [
      {
        name: 'a feed that is written twice, the second the other way round',
        about: () =>
          aboutContent(({ job }) => {
            job.links['feed-again'] = { from: 'main-fuse.IN', to: 'battery.POS' };
          }),
        level: 'caution',
        subject: 'feed-again',
        path: '/links/feed-again',
        says: /feed-again joins main-fuse\.IN to battery\.POS, and so does feed/,
      },
      {
        name: 'a strap of the vehicle',
        about: () =>
          aboutContent(({ vehicle }) => {
            vehicle.links = { ...vehicle.links, second: { ...entry(vehicle.links, 'strap') } };
          }),
        level: 'caution',
        subject: 'vehicle.second',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [{ name: 'each conductor once', about: () => about() }],
  },
  'lead-shorter-than-written': {
    fires: [
      {
        name: 'a lead of 3 m for 3.01 m',
        about: lead('3 m', '3.01 m'),
        level: 'stop',
        subject: 'radio-signal',
        path: '/links/radio-signal/length',
        says: /its lead phono is made 3 m \(118 1\/8 in\) long/,
      },
    ],
    quiet: [
      { name: 'a lead of 3 m for 3 m', about: lead('3 m', '3 m') },
      { name: 'one whose length is left out', about: lead('4 m') },
    ],
  },
  // Common practice, no source.
  'ends-too-far-apart': {
    fires: [
      {
        name: 'a battery strap of 300 mm to the cargo area',
        about: strapTo('cargo', '300 mm'),
        level: 'caution',
        subject: 'vehicle.strap',
        file: 'vehicle.yaml',
        path: '/links/strap',
        says: /from the engine-bay to the cargo/,
      },
      {
        name: 'one of 1.49 m',
        about: strapTo('cargo', '1.49 m'),
        level: 'caution',
        subject: 'vehicle.strap',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      { name: 'one of 1.5 m', about: strapTo('cargo', '1.5 m') },
      { name: 'one that stays in the engine bay', about: () => about() },
    ],
  },
} satisfies RuleCases;
