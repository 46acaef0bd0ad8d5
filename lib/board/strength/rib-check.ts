import { type BoardRemark, geometry, length, phrase } from '../remark.ts';
import { gapM, roomInsideM } from '../shape/ring-gap.ts';
import { type LaidRib, ribRing } from './rib.ts';
import { onFace, type RibLimits, ribRoomM } from './rib-limits.ts';

/** What can be wrong with where a rib runs. */
export type RibRemark = BoardRemark<'rib-off-board' | 'rib-in-the-way' | 'rib-without-room'>;

/**
 * What is wrong with where a rib runs: out of the board, over an opening, a hole, a fixing, a part or another rib, or
 * no room behind or before it. What overlaps stops; what only comes near is a caution. Amounts in metres.
 */
export function ribFaults(rib: LaidRib, ground: RibLimits, others: readonly LaidRib[]): readonly RibRemark[] {
  return [...edgeFaults(rib, ground), ...nearFaults(rib, ground, others), ...roomFaults(rib, ground)];
}

function edgeFaults(rib: LaidRib, { region }: RibLimits): RibRemark[] {
  const [piece] = region;
  const ring = ribRing(rib);
  const common = { level: 'stop', of: [rib.id], limit: 0, unit: 'm' } as const;
  const outM = piece ? -roomInsideM(ring, piece.outer) : 0;
  const overM = Math.max(0, ...(piece?.openings ?? []).map((opening) => -gapM(ring, opening)));
  return [
    ...(outM > 1e-6
      ? [
          {
            ...common,
            rule: 'rib-off-board' as const,
            message: phrase`the rib ${rib.id} reaches ${length('overlap', outM)} out of the board`,
            value: outM,
            remedy: 'make it shorter, or move it inwards',
          },
        ]
      : []),
    ...(overM > 1e-6
      ? [
          {
            ...common,
            rule: 'rib-off-board' as const,
            message: phrase`the rib ${rib.id} runs ${length('overlap', overM)} over a cut-out`,
            value: overM,
            remedy: 'end it before the cut-out, or lead it past',
          },
        ]
      : []),
  ];
}

function nearFaults(rib: LaidRib, ground: RibLimits, others: readonly LaidRib[]): RibRemark[] {
  const ring = ribRing(rib);
  const ribs = others
    .filter(({ id, face }) => id !== rib.id && face === rib.face)
    .map((other) => ({ of: other.id, what: `the rib ${other.id}`, ring: ribRing(other), touches: true }));
  const obstacles = onFace(ground, rib.face, rib.heightM).map((one) => ({ ...one, touches: false }));
  return [...obstacles, ...ribs].flatMap(({ of, what, ring: other, touches }): RibRemark[] => {
    const roomM = gapM(ring, other);
    // Two ribs may meet; a spacer or a head needs its room.
    if (roomM >= (touches ? -1e-6 : ground.clearanceM - 1e-6)) return [];
    const isOver = roomM < -1e-6;
    return [
      {
        rule: 'rib-in-the-way',
        level: isOver ? 'stop' : 'caution',
        of: [rib.id, of],
        message: isOver
          ? phrase`the rib ${rib.id} runs ${length('overlap', -roomM)} into ${what}`
          : phrase`the rib ${rib.id} is ${length('room-free', roomM)} from ${what}; ${length('room-asked', ground.clearanceM)} is needed`,
        value: roomM,
        limit: touches ? 0 : ground.clearanceM,
        unit: 'm',
        remedy: 'move it, end it before, or leave start and length out: it then runs as far as it is free',
        ...(isOver && geometry),
      },
    ];
  });
}

function roomFaults(rib: LaidRib, ground: RibLimits): RibRemark[] {
  const roomM = ribRoomM(rib, ground);
  if (roomM >= ground.clearanceM - 1e-6) return [];
  const where = rib.face === 'rear' ? 'the panel behind the board' : 'the front of the space';
  const lacks = roomM < -1e-6;
  return [
    {
      rule: 'rib-without-room',
      level: lacks ? 'stop' : 'caution',
      of: [rib.id],
      message: lacks
        ? phrase`the rib ${rib.id} stands ${length('overlap', -roomM)} into ${where}`
        : phrase`the rib ${rib.id} is ${length('room-free', roomM)} from ${where}; ${length('room-asked', ground.clearanceM)} is needed, or it knocks`,
      value: roomM,
      limit: lacks ? 0 : ground.clearanceM,
      unit: 'm',
      remedy: rib.face === 'rear' ? 'make it lower, or the spacers higher' : 'make it lower',
      ...(lacks && geometry),
    },
  ];
}
