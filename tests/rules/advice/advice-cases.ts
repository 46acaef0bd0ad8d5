import type { FindingId } from '../../../lib/model/findings/index.ts';
import { addParts, inParts, inVehicle } from '../../plan/shop-changes.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';

/** A fault in the small shop whose finding says what to write. */
export interface AdviceCase {
  readonly name: string;
  readonly changes: readonly Change[];
  readonly rule: FindingId;
  readonly subject: string;
  /** Ways out that it tells. */
  readonly ways: number;
  /** What it tells to write in the first of them. */
  readonly says: RegExp;
}

const onBoard = inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main');
const warmAmplifier = inParts(
  '    supply: { type: regulated, fuse: 60 A',
  '    most-ambient: 55 C\n    supply: { type: regulated, fuse: 60 A',
);
const grommets = addParts(
  'grommet-a: { kind: grommet, title: Grommet, hole: 20 mm, bore: 11 mm, panel: 1.5 mm }',
  'grommet-b: { kind: grommet, title: Grommet, hole: 28 mm, bore: 20 mm, panel: 1.5 mm }',
);
const sill = (more: string): Change =>
  inVehicle('{ zone: sill, length: 3 m }]\n    reaches', `{ zone: sill, length: 3 m${more} }]\n    reaches`);

export const adviceCases: readonly AdviceCase[] = [
  {
    name: 'air behind trim that is too warm: a fan, or openings',
    changes: [withBoard(), onBoard, warmAmplifier],
    rule: 'air-too-warm',
    subject: 'amp',
    ways: 2,
    says: /^fan: \d+ m3\/h$/,
  },
  {
    name: 'the same where the space has openings already',
    changes: [
      withBoard(),
      onBoard,
      warmAmplifier,
      inVehicle('    air: 60 L\n', '    openings: [{ width: 100 mm, height: 20 mm }]\n    air: 60 L\n'),
    ],
    rule: 'air-too-warm',
    subject: 'amp',
    ways: 2,
    says: /^fan: \d+ m3\/h$/,
  },
  {
    name: 'a hole with a sharp edge that no grommet fits: one that takes the wire in its loom',
    changes: [grommets, sill(', edge: true, through-hole: 19 mm')],
    rule: 'edge-without-grommet',
    subject: 'power',
    ways: 1,
    says: /^through-hole: \d+ mm$/,
  },
  {
    name: "the vehicle's own grommet that is too small",
    changes: [grommets, sill(', own-grommet: true, through-hole: 8 mm')],
    rule: 'edge-without-grommet',
    subject: 'power',
    ways: 1,
    says: /^through-hole: \d+ mm, own-grommet: false$/,
  },
  {
    name: 'a hole without an edge that the loom does not go through',
    changes: [sill(', through-hole: 7 mm')],
    rule: 'bundle-over-hole',
    subject: 'power',
    ways: 1,
    says: /^through-hole: \d+\/\d+ in$/,
  },
];
