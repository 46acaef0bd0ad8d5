import { about, aboutContent, byId, entry } from '../../case.ts';
import { setBoard } from '../../changes.ts';
import { route } from '../../plan-board.ts';
import type { RuleCases } from '../../rule-case.ts';

/** Both runs on the left, so far inboard in the sill that they share. */
const inboard = (power: string, signal: string) =>
  aboutContent(({ vehicle }) => {
    const [left, right] = [entry(vehicle.routes, 'left-sill'), entry(vehicle.routes, 'right-sill')];
    right.side = 'left';
    for (const pass of left.passes) if (pass.zone === 'sill') pass.inboard = power;
    for (const pass of right.passes) pass.inboard = signal;
  });

/** Signal and power in one run, the feed sized for a current (A), and with one through it where that is known. */
const oneRun = (neededA: number, flowsA?: number) =>
  about({
    content: ({ job }) => {
      job.runs = { left: { route: 'left-sill', links: ['main', 'radio-signal'], covering: 'loom' } };
    },
    plan: ({ power: { conductors, points } }) => {
      byId(conductors, 'main').neededA = neededA;
      if (flowsA === undefined) return;
      const ends = { from: 'x', to: 'y', currentA: -flowsA, dropV: 0.1 };
      for (const { elements } of points)
        elements.push({ id: 'main', of: 'main', kind: 'conductor', model: 'resistance', ...ends });
    },
  });

export const powerAndSignalSidesCases = {
  // Common practice, no source: power and signal on opposite sides of the vehicle.
  'power-beside-signal': {
    fires: [
      {
        name: 'signal and power in one run',
        about: () => oneRun(80),
        level: 'caution',
        subject: 'left',
        says: /at no distance/,
      },
      {
        name: 'a feed that must carry 5 A beside the signal',
        about: () => oneRun(5),
        level: 'caution',
        subject: 'left',
      },
      {
        name: 'a feed through which 5 A flow, whatever it must carry',
        about: () => oneRun(2, 5),
        level: 'caution',
        subject: 'left',
      },
      {
        name: 'two routes on one side that share the sill',
        about: () =>
          aboutContent(({ vehicle }) => {
            entry(vehicle.routes, 'right-sill').side = 'left';
          }),
        level: 'caution',
        subject: 'right',
        says: /left side.*not known.*sill/,
      },
      {
        name: 'two routes on one side, 30 mm apart',
        about: () => inboard('20 mm', '50 mm'),
        level: 'caution',
        subject: 'right',
        says: /as near as 30 mm/,
      },
    ],
    quiet: [
      { name: 'power on the left, signal on the right', about: () => about() },
      {
        name: 'a feed that must carry less than 5 A beside the signal',
        about: () => oneRun(4.9),
      },
      {
        name: 'a feed through which 4.9 A flow, whatever it could carry',
        about: () => oneRun(80, 4.9),
      },
      { name: 'one side, 100 mm apart where they share a zone', about: () => inboard('20 mm', '120 mm') },
    ],
  },
  // Common practice, no source: the house distance is 3 in (76.2 mm).
  'power-near-signal-on-board': {
    fires: [
      {
        name: '50 mm apart for 300 mm',
        about: () =>
          setBoard({
            routes: [
              route('amp-feed', 'power', [0.1, 0.2], [0.4, 0.2]),
              route('signal-1', 'signal', [0.1, 0.15], [0.4, 0.15]),
            ],
          }),
        level: 'caution',
        subject: 'signal-1',
        says: /50 mm/,
      },
      {
        name: 'two beside one feed, told once with the nearer',
        about: () =>
          setBoard({
            routes: [
              route('amp-feed', 'power', [0.1, 0.2], [0.4, 0.2]),
              route('signal-1', 'signal', [0.1, 0.15], [0.4, 0.15]),
              route('signal-2', 'signal', [0.1, 0.16], [0.4, 0.16]),
            ],
          }),
        level: 'caution',
        subject: 'signal-2',
        says: /signals signal-2 and signal-1 run .*40 mm.* or more beside the power amp-feed/,
      },
      {
        name: 'a crossing aslant',
        about: () =>
          setBoard({
            routes: [
              route('amp-feed', 'power', [0.1, 0.1], [0.4, 0.1]),
              route('signal-1', 'signal', [0.2, 0], [0.3, 0.2]),
            ],
          }),
        level: 'caution',
        subject: 'signal-1',
        says: /aslant/,
      },
    ],
    quiet: [
      { name: '100 mm apart', about: () => about() },
      {
        name: 'a crossing at a right angle, and 60 mm side by side on the way into one part',
        about: () =>
          setBoard({
            routes: [
              route('amp-feed', 'power', [0.1, 0.1], [0.4, 0.1]),
              route('signal-1', 'signal', [0.2, 0.25], [0.2, 0.05], [0.26, 0.05]),
            ],
          }),
      },
    ],
  },
} satisfies RuleCases;
