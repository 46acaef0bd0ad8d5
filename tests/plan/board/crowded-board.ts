import { inJob, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';

export const onePart = 'size: { width: 100 mm, depth: 80 mm, height: 40 mm }';
export const barPart = `  bar-a:
    kind: distribution
    title: Ground bar
    size: { width: 100 mm, depth: 80 mm, height: 20 mm }
    mass: 200 g
    current: 150 A
    terminals:
      G1: { role: ground-bar, panel: top, at: 20 mm, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      G2: { role: ground-bar, panel: top, at: 80 mm, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
`;
/** A board of 500 x 300 mm for an amplifier of 430 x 230 mm and a ground bar of 100 x 80 mm. */
export const crowding: readonly Change[] = [
  withBoard(),
  inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main'),
  inJob('  sub: { part', '  bar: { part: bar-a, on: main }\n  sub: { part'),
  inJob(
    '  ground: { from: amp.GND, to: body.cargo, length: 12 in }',
    '  ground: { from: bar.G1, to: body.cargo, length: 4 ft }\n  amp-ground: { from: amp.GND, to: bar.G2 }',
  ),
  inParts(
    `title: Amplifier\n    ${onePart}`,
    'title: Amplifier\n    size: { width: 430 mm, depth: 230 mm, height: 50 mm }',
  ),
  inParts('  radio-a:\n', `${barPart}  radio-a:\n`),
];

/** The small job with it, planned. */
export const crowded = (...more: readonly Change[]): ReturnType<typeof smallPlan> =>
  smallPlan(...crowding, ...more);
