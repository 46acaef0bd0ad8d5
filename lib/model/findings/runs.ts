import type { FindingEntry } from './entry.ts';
import { accounting, commonPractice, defaultSource, partData } from './source.ts';

/** Runs through the vehicle: holes, coverings, neighbours. */
export const runFindings = {
  'length-not-measured': {
    asks: 'The length of each conductor was measured, or follows from the routes of the vehicle.',
    levels: ['caution'],
    ...commonPractice,
  },
  'length-under-run': {
    asks: 'A length that was written is at least that of the run that the wire goes through.',
    levels: ['stop'],
    source: "the vehicle's measures",
  },
  'length-unlikely': {
    asks: 'No route, no lead and no pull on a board is longer than a vehicle or a board can ask for.',
    levels: ['caution'],
    ...defaultSource('run-longest'),
  },
  'route-ends-elsewhere': {
    asks: 'A wire leaves its route where the device at its end is.',
    levels: ['caution', 'note'],
    source: "the vehicle's measures",
  },
  'edge-without-grommet': {
    asks: 'A grommet is on each sharp edge that a run passes; power through a hole in sheet metal without one stops.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'door-without-sleeve': {
    asks: 'Wires go into a door through a sleeve or a grommet, which the way has at the hinge.',
    levels: ['caution'],
    ...commonPractice,
  },
  'bundle-over-hole': {
    asks: 'The bundle of a run goes through every hole on its way.',
    levels: ['caution'],
    ...commonPractice,
  },
  'bundle-over-covering': {
    asks: 'The covering of a run goes over its bundle.',
    levels: ['caution'],
    ...commonPractice,
  },
  'covering-none-fits': {
    asks: 'Some covering of the catalogue fits a stretch that wants one.',
    levels: ['caution'],
    ...commonPractice,
  },
  'power-beside-signal': {
    asks: 'Power and signal run on opposite sides of the vehicle.',
    levels: ['caution'],
    ...defaultSource('power-signal-distance'),
  },
  'power-near-signal-on-board': {
    asks: 'On a board power keeps the house distance from signal, and crosses it at right angles.',
    levels: ['caution'],
    ...defaultSource('power-signal-distance'),
  },
  'link-twice': {
    asks: 'No two conductors join the same two terminals without being told.',
    levels: ['caution'],
    ...accounting,
  },
  'lead-shorter-than-written': {
    asks: 'A made-up lead is at least as long as the length that was written for it.',
    levels: ['stop'],
    ...partData,
  },
  'ends-too-far-apart': {
    asks: 'A short ground lead does not go from the engine bay to the cargo area.',
    levels: ['caution'],
    ...commonPractice,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
