import { about, aboutContent } from '../../case.ts';
import { board, groundToMake, nutM8, soundPoint } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The first point of the board as it is still to be made, with the part that the plan found for it. */
const toMake =
  (part: string | null, insert: 'rivet-nut' | 'welded' = 'rivet-nut') =>
  () =>
    about({
      content: (content) => {
        Object.assign(soundPoint(content), { there: false, insert, 'free-depth': '20 mm' });
      },
      plan: (plan) => {
        for (const fixing of board(plan).fixings)
          if (fixing.point === 'p1')
            fixing.made = { part, holeM: part === null ? null : 0.009, behind: 'nothing', freeM: 0.02 };
      },
    });

export const madePointCases = {
  'point-not-made': {
    fires: [
      {
        name: 'no rivet nut of the catalogue has its thread',
        about: toMake(null),
        level: 'stop',
        subject: 'p1',
        file: 'vehicle.yaml',
        says: /p1 of well is not there yet and takes M6, and no rivet nut/,
        toDo: /add a rivet nut M6 .* at most 13\/16 in \(20 mm\)/,
      },
      {
        name: 'one that would have to be welded',
        about: toMake(null, 'welded'),
        level: 'stop',
        subject: 'p1',
        file: 'vehicle.yaml',
        says: /what is welded or bolted through is not planned/,
        toDo: /^write insert: rivet-nut and add/,
      },
      {
        name: 'a ground point whose thread no rivet nut of the catalogue has',
        about: () => groundToMake('nothing'),
        level: 'stop',
        subject: 'cargo',
        file: 'vehicle.yaml',
        path: '/grounds/cargo/there',
        says: /the ground point cargo is not there yet and takes M8, and no rivet nut/,
      },
    ],
    quiet: [
      { name: 'a ground point for which there is one', about: () => groundToMake('nothing', nutM8) },
      { name: 'a rivet nut was found', about: toMake('rivet-nut-m6') },
      { name: 'all points are there', about: () => aboutContent(() => {}) },
    ],
  },
} satisfies RuleCases;
