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

const passes = (metres: number) => () =>
  aboutContent(({ vehicle }) => {
    const [bay] = entry(vehicle.routes, 'left-sill').passes;
    if (bay) bay.length = `${metres - 3} m`;
  });
const linked = (id: string, length: string) => () =>
  aboutContent(({ job }) => {
    Object.assign(entry(job.links, id), { length });
  });

export const writtenConductorCases = {
  // Common practice, no source: 15 m through a vehicle; on a board of 500 by 300 mm twice the 800 mm of both.
  'length-unlikely': {
    fires: [
      {
        name: 'a route of just over 15 m',
        about: passes(15.01),
        level: 'caution',
        subject: 'left',
        says: /route left-sill of the run left is 15010 mm .*, 12\.01 m .* of it in the engine-bay/,
        path: '/routes/left-sill/passes/0/length',
        file: 'vehicle.yaml',
      },
      {
        name: 'a lead of 50 ft',
        about: linked('board-ground', '50 ft'),
        level: 'caution',
        subject: 'board-ground',
        says: /board-ground is written as 50 ft \(15240 mm\) long; a lead in a vehicle/,
        path: '/links/board-ground/length',
      },
      {
        name: 'a lead on the board just over twice its sides',
        about: linked('amp-feed', '1.61 m'),
        level: 'caution',
        subject: 'amp-feed',
        says: /a lead between two parts of main is hardly longer than 1600 mm/,
        path: '/links/amp-feed/length',
      },
    ],
    quiet: [
      { name: 'a route of 15 m', about: passes(15) },
      { name: 'a lead of 15 m', about: linked('board-ground', '15 m') },
      { name: 'twice the sides of the board', about: linked('amp-feed', '1.6 m') },
    ],
  },
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
