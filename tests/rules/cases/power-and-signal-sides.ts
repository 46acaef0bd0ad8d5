import { about, aboutContent, entry } from '../case.ts';
import { setBoard } from '../changes.ts';
import { route } from '../plan.ts';
import type { RuleCases } from '../rule-case.ts';

export const powerAndSignalSidesCases: RuleCases = {
  // Common practice, no source: power and signal on opposite sides of the vehicle.
  'power-beside-signal': {
    fires: [
      {
        name: 'signal and power in one run',
        about: () =>
          aboutContent(({ job }) => {
            job.runs = { left: { route: 'left-sill', links: ['main', 'radio-signal'], covering: 'loom' } };
          }),
        level: 'caution',
        subject: 'left',
        says: /at no distance/,
      },
      {
        name: 'two routes on one side that share the sill',
        about: () =>
          aboutContent(({ vehicle }) => {
            entry(vehicle.routes, 'right-sill').side = 'left';
          }),
        level: 'caution',
        subject: 'right',
        says: /left side.*sill/,
      },
    ],
    quiet: [{ name: 'power on the left, signal on the right', about: () => about() }],
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
        says: /50.0 mm/,
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
};
