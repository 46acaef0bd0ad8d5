import { describe, test } from 'vitest';
import { expectProblem, type ProblemCase, partsFile, vehicleFile } from './problem-case.ts';
import type { Change } from './small-shop.ts';

const part = (found: string, instead: string): Change => [partsFile, found, instead];
const line = (text: string): Change => part('  loom-a:', `  ${text}\n  loom-a:`);

const cases: readonly ProblemCase[] = [
  {
    name: 'a channel whose positive end is a negative output',
    changes: [part('positive: CH1+, negative: CH1-', 'positive: ^CH1-, negative: CH1-')],
    says: /CH1- has the role speaker-out-negative and stands where speaker-out-positive belongs/,
  },
  {
    name: 'a coil whose ends are swapped in their roles',
    changes: [
      part('C1-: { role: coil-negative }', 'C1-: { role: coil-positive }'),
      part('coils: { C1: { positive: C1+, negative: C1-', 'coils: { C1: { positive: C1+, negative: ^C1-'),
    ],
    says: /C1- has the role coil-positive and stands where coil-negative belongs/,
  },
  {
    name: 'a lead with two conductors of one side',
    changes: [
      part(
        'left: { size: 24 AWG, colour: RD }, right: { size: 24 AWG, colour: WH }',
        'left: { size: 24 AWG, colour: RD, side: left }, right: { size: 24 AWG, colour: WH, side: ^left }',
      ),
    ],
    says: /right and left of lead-a are both of the left side/,
  },
  {
    name: 'a lead of 24 mm2',
    changes: [part('left: { size: 24 AWG, colour: RD }', 'left: { size: ^24 mm2, colour: RD }')],
    says: /left of lead-a is 24 mm2/,
  },
  {
    name: 'a lug from 10 AWG to 1/0 AWG',
    changes: [
      line('lug-a: { kind: terminal, title: Lug, form: ring-lug, takes: ^{ from: 10 AWG, to: 1/0 AWG } }'),
    ],
    says: /no crimp holds both/,
  },
  {
    name: 'a reducer whose pin is as thick as its conductor',
    changes: [
      line(
        'reducer-a: { kind: terminal, title: Reducer, form: reducer, takes: { from: 4 AWG, to: 4 AWG }, pin: ^4 AWG }',
      ),
    ],
    says: /it reduces nothing/,
  },
  {
    name: 'a bolt that does not go through its hole',
    changes: [part('clearance: 6.4 mm', 'clearance: ^5 mm')],
    says: /its thread M6 does not go through/,
  },
  {
    name: 'a head that is smaller than its thread',
    changes: [part('clearance: 6.4 mm', 'clearance: 6.4 mm, bears-on: ^6 mm')],
    says: /the head of bolt-a bears on 6 mm/,
  },
  {
    name: 'a washer of 16 mm',
    changes: [line('washer-a: { kind: fixing, title: Washer, form: washer, thread: M6, thickness: ^14 mm }')],
    says: /is 14 mm thick/,
  },
  {
    name: 'a wood screw whose pilot is its clearance hole',
    changes: [
      line('screw-a: { kind: fixing, title: Screw, form: wood-screw, pilot: ^4 mm, clearance: 4 mm }'),
    ],
    says: /would bite nowhere/,
  },
  {
    name: 'a switch that ends at a position that it has not',
    changes: [
      part(
        '      GAIN: {',
        '      MODE: { what: other, form: switch, panel: left, positions: [A, B], safe: A, final: ^C, why: known }\n      GAIN: {',
      ),
    ],
    says: /there is no position of MODE "C"/,
  },
  {
    name: 'a grommet whose bore is its hole',
    changes: [line('grommet-a: { kind: grommet, title: Grommet, hole: 20 mm, bore: ^20 mm }')],
    says: /is not below the hole/,
  },
  {
    name: 'heat-shrink that grows',
    changes: [
      line(
        'shrink-a: { kind: covering, title: Shrink, form: heat-shrink, bore: 6 mm, shrunk-bore: ^12 mm, withstands: 110 C }',
      ),
    ],
    says: /is above the bore before it shrinks/,
  },
  {
    name: 'a sheet that is stiffer across its grain',
    changes: [part('modulus: 9 GPa', 'modulus: 9 GPa\n    modulus-across: ^90 GPa')],
    says: /is above the modulus of the sheet itself/,
  },
  {
    name: 'a space whose axes lie along one line',
    changes: [[vehicleFile, 'upward: up', 'upward: ^front']],
    says: /right and upward of well lie along one line/,
  },
  {
    name: 'a terminal of a fitted device that it has not',
    changes: [[vehicleFile, 'GND: grounded by the vehicle', 'EARTH: ^grounded by the vehicle']],
    says: /there is no terminal of radio "EARTH"/,
  },
];

describe('what a part says of itself agrees with itself', () => {
  test.each(cases)('$name is told', expectProblem);
});
