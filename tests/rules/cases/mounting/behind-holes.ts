import { about, aboutPlan, one } from '../../case.ts';
import { behind, board, fixingLength, groundToMake, hole, nutM8, wayToDrill } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const behindHolesCases = {
  // Common practice, no source: tank, line, airbag stop.
  'hole-before-hazard': {
    fires: [
      {
        name: 'tank',
        about: () => behind('tank'),
        level: 'stop',
        subject: 'a',
        path: '/boards/main/fixings/a',
      },
      { name: 'line', about: () => behind('line'), level: 'stop', subject: 'a' },
      { name: 'airbag', about: () => behind('airbag'), level: 'stop', subject: 'a' },
      { name: 'wiring', about: () => behind('wiring'), level: 'caution', subject: 'a' },
      { name: 'unknown', about: () => behind('unknown'), level: 'caution', subject: 'a' },
      {
        name: 'a hole of the plan that is no fixing',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(
              one(board(plan).holes, ({ n }) => n === 1),
              { of: 'wire-way', behind: 'tank' },
            );
          }),
        level: 'stop',
        subject: 'wire-way',
      },
      {
        name: 'a ground point that is to be made before a tank',
        about: () => groundToMake('tank', nutM8),
        level: 'stop',
        subject: 'cargo',
        file: 'vehicle.yaml',
      },
      {
        name: 'one behind which nobody looked',
        about: () => groundToMake('unknown', nutM8),
        level: 'caution',
        subject: 'cargo',
        file: 'vehicle.yaml',
      },
      {
        name: 'a hole on the way of wires that is to be drilled before a line',
        about: () => wayToDrill('line'),
        level: 'stop',
        subject: 'left at the sill',
        file: 'vehicle.yaml',
      },
      {
        name: 'one on the way of wires behind which nobody looked',
        about: () => wayToDrill('unknown'),
        level: 'caution',
        subject: 'left at the sill',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      { name: 'nothing behind a hole on the way of wires', about: () => wayToDrill('nothing') },
      { name: 'nothing behind a ground point to be made', about: () => groundToMake('nothing', nutM8) },
      { name: 'nothing behind', about: () => about() },
      { name: 'a hole that ends in the board', about: () => hole(0.1, 0.1, null) },
    ],
  },
  // The free depth behind the point, as measured in the vehicle: 30 mm; the sheet is 12 mm. A limit that is passed stops.
  'fixing-too-long': {
    fires: [
      {
        name: '43 mm before nothing',
        about: () => fixingLength('43 mm', 'nothing'),
        level: 'stop',
        subject: 'a',
        says: /31 mm/,
      },
      {
        name: '43 mm before a tank',
        about: () => fixingLength('43 mm', 'tank'),
        level: 'stop',
        subject: 'a',
      },
    ],
    quiet: [{ name: '42 mm', about: () => fixingLength('42 mm', 'nothing') }],
  },
} satisfies RuleCases;
