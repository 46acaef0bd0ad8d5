import type { Case } from '../../../../lib/rules/rule.ts';
import { about, partIn } from '../../case.ts';
import { cranks, fuse, isolated, withIgnition } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

type Points = readonly (readonly [multiple: number, seconds: string])[];

/** The main fuse of 80 A with so much of the starter's current through it, and with time-current data or none. */
function throughMain(shareA: number, points: Points | null, seconds = 5): Case {
  return about({
    content: (content) => {
      const own = partIn(content, 'large-fuse', 'fuse');
      if (points) own['time-current'] = points.map(([multiple, time]) => ({ multiple, seconds: time }));
    },
    plan: (plan) => {
      fuse(plan, 'main-fuse').part = 'large-fuse';
      cranks([['main-fuse', shareA]], { seconds })(plan);
    },
  });
}

/** The same from a bank of capacitors on the distribution. */
const bankThroughMain = (shareA: number): Case =>
  about({
    content: ({ job }) => {
      job.devices.bank = { part: 'bank', on: 'main' };
      job.devices['bank-fuse'] = { part: 'holder', on: 'main' };
      job.links['bank-tail'] = { from: 'bank.POS', to: 'bank-fuse.IN' };
      job.links['bank-feed'] = { from: 'bank-fuse.OUT', to: 'block.IN' };
    },
    plan: (plan) => {
      fuse(plan, 'main-fuse').part = 'large-fuse';
      cranks([['main-fuse', shareA]], { seconds: 5 })(plan);
    },
  });

/** The isolating relay of 100 A for long and 300 A for 10 s, with so much through it. */
const throughContact = (
  shareA: number,
  more: { seconds?: number; measured?: boolean; silent?: boolean } = {},
) =>
  isolated(
    'radio.REM',
    (content) => {
      if (more.silent) delete partIn(content, 'isolator', 'isolating-relay')['short-time'];
    },
    cranks([['isolator.A>B', shareA]], more),
  );

export const betweenBatteryCases = {
  // A fuse carries its rating for ever (IEC 60269-1, ISO 8820-1); beyond it the maker's time-current data decide.
  'cranking-through-fuse': {
    fires: [
      {
        name: '81 A through 80 A without data',
        about: () => throughMain(81, null),
        level: 'caution',
        subject: 'main-fuse',
        says: /has no time-current data.*how long/,
        toDo: /open while the starter turns/,
      },
      {
        name: '81 A from a bank, which no relay may part',
        about: () => bankThroughMain(81),
        level: 'caution',
        subject: 'main-fuse',
        says: /81 A of it flow from bank through main-fuse/,
        toDo: /^join bank where no fuse of a single device lies between it and the battery; or write time-current/,
      },
      {
        name: 'twice the rating, which it carries for less than the starter turns',
        about: () => throughMain(160, [[2, '4.9 s']]),
        level: 'caution',
        subject: 'main-fuse',
        says: /at 2 times its rating it opens after 4\.9 s/,
      },
      {
        name: 'between two points, where the time of the larger current counts',
        about: () =>
          throughMain(161, [
            [2, '60 s'],
            [3, '1 s'],
          ]),
        level: 'caution',
        subject: 'main-fuse',
        says: /opens after 1 s/,
      },
      {
        name: 'past the last point',
        about: () => throughMain(241, [[3, '60 s']]),
        level: 'caution',
        subject: 'main-fuse',
        says: /past its maker's time-current data/,
      },
    ],
    quiet: [
      { name: 'its rating without data', about: () => throughMain(80, null) },
      {
        name: 'twice the rating for as long as it carries that',
        about: () => throughMain(160, [[2, '5 s']]),
      },
      { name: 'under the first point', about: () => throughMain(100, [[2, '5 s']]) },
      { name: 'the last point', about: () => throughMain(240, [[3, '5 s']]) },
      { name: 'one battery alone', about: () => about() },
    ],
  },
  // The part's data.
  'cranking-through-relay': {
    fires: [
      {
        name: '301 A, measured, through a contact for 300 A',
        about: () => throughContact(301, { measured: true }),
        level: 'stop',
        subject: 'isolator',
        path: '/devices/isolator',
        says: /301 A of it flow through the contact of isolator, which is made for 300 A for 10 s/,
      },
      {
        name: '301 A by the house rule',
        about: () => throughContact(301),
        level: 'caution',
        subject: 'isolator',
        says: /by the house rule, not measured/,
      },
      {
        name: '300 A for 11 s',
        about: () => throughContact(300, { measured: true, seconds: 11 }),
        level: 'stop',
        subject: 'isolator',
      },
      {
        name: '101 A where its maker states none for a while',
        about: () => throughContact(101, { measured: true, silent: true }),
        level: 'caution',
        subject: 'isolator',
        says: /no short-time rating/,
      },
    ],
    quiet: [
      { name: '300 A for 10 s', about: () => throughContact(300, { measured: true, seconds: 10 }) },
      {
        name: '100 A, which it carries for long',
        about: () => throughContact(100, { seconds: 60, silent: true }),
      },
    ],
  },
  // Common practice, no source.
  'isolator-not-by-engine': {
    fires: [
      {
        name: 'a coil that nothing feeds',
        about: () => isolated(null),
        level: 'stop',
        subject: 'isolator',
        says: /it never closes/,
      },
      {
        name: 'a coil on a battery',
        about: () => isolated('block.OUT3'),
        level: 'stop',
        subject: 'isolator',
        says: /hangs on .*battery\.POS.*it never opens/,
      },
      {
        name: 'a coil on the turn-on of the radio',
        about: () => isolated('radio.REM'),
        level: 'caution',
        subject: 'isolator',
        says: /follows the turn-on output radio\.REM/,
      },
    ],
    quiet: [
      {
        name: 'a coil on a way that the vehicle switches',
        about: () => isolated('panel.OUT2', withIgnition),
      },
      {
        name: 'one that sees the charging voltage itself',
        about: () =>
          isolated(null, (content) => {
            partIn(content, 'isolator', 'isolating-relay')['pulls-in'] = 'charging-voltage';
          }),
      },
    ],
  },
} satisfies RuleCases;
