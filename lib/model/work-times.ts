import { z } from 'zod';
import { builders } from './audience.ts';
import { quantity } from './fields.ts';

/** Minutes of one piece of work where the shop has not written its own: common practice, no source. */
export const workTimeDefinitions = {
  'check-in': { says: 'Check a vehicle in', minutes: 20 },
  'battery-off': { says: 'Take the battery off and wait', minutes: 15 },
  'cut-board': { says: 'Cut a board to its outline', minutes: 40 },
  'drill-hole': { says: 'Drill one hole', minutes: 2 },
  'fix-rib': { says: 'Cut and fix one rib', minutes: 12 },
  'mount-item': { says: 'Mount one part', minutes: 10 },
  'set-control': { says: 'Put one control in its preset', minutes: 1 },
  'lay-wire': { says: 'Cut, end, label and lay one wire, pair or lead on a board', minutes: 8 },
  'dress-board': { says: 'Dress and tie the wires of a board', minutes: 15 },
  'bench-test': { says: 'Test a board on the bench', minutes: 30 },
  'open-run': { says: 'Take the trim off the runs of one zone and put it back', minutes: 25 },
  'pull-wire': { says: 'Pull and label one wire, pair or cable along a run', minutes: 6 },
  'board-in': { says: 'Fix a board in the vehicle', minutes: 20 },
  'connect-wire': { says: 'End and connect one wire at the vehicle', minutes: 4 },
  'test-wire': { says: 'Test one wire with the meter', minutes: 1 },
  'fit-fuse': { says: 'Fit one fuse', minutes: 3 },
  'set-gain': { says: 'Set the gain of one channel', minutes: 5 },
  'take-reading': { says: 'Take and write down one reading', minutes: 2 },
} as const satisfies Record<string, { readonly says: string; readonly minutes: number }>;
export type WorkTimeName = keyof typeof workTimeDefinitions;

function isWorkTimeName(name: string): name is WorkTimeName {
  return Object.hasOwn(workTimeDefinitions, name);
}

/** Every name, in the order of the table. */
export const workTimeNames: readonly WorkTimeName[] = Object.keys(workTimeDefinitions).filter(isWorkTimeName);

/** How a time may be written, and what holds where it is not. */
function minutesText(name: WorkTimeName) {
  const usual = `${workTimeDefinitions[name].minutes} min`;
  return { example: usual, leftOut: usual };
}

/** `times:` of the shop file: each key optional, each with its unit. */
export const workTimesSchema = z.strictObject(
  Object.fromEntries(
    workTimeNames.map((name) => [
      name,
      builders(quantity('time').optional(), workTimeDefinitions[name].says, minutesText(name)),
    ]),
  ),
);

/** The time of one piece of work in minutes: the shop's own where it wrote one (seconds), else the default. */
export function workMinutes(
  given: Readonly<Record<string, number | undefined>>,
  name: WorkTimeName,
): { readonly minutes: number; readonly given: boolean } {
  const own = given[name];
  return own === undefined
    ? { minutes: workTimeDefinitions[name].minutes, given: false }
    : { minutes: own / 60, given: true };
}
