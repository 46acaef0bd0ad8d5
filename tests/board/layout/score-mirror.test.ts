import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodyOf, type Item, type Placement, type Side } from '../../../lib/board/layout/item.ts';
import { place } from '../../../lib/board/layout/placed.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { scoreLayout } from '../../../lib/board/layout/score/score-ledger.ts';
import { scoreBoard, usualHouse } from '../usual-board.ts';
import { gapRules, plainShape } from './two-items.ts';

const board = scoreBoard(plainShape);

const amp = (id: string): Item => ({
  id,
  widthM: 0.3,
  depthM: 0.2,
  heightM: 0.06,
  massKg: 4,
  rooms: { left: { accessM: 0.08 }, right: { bendM: 0.07 }, top: { airM: 0.025 } },
  terminals: [
    { id: 'IN', side: 'left', alongM: 0.07, layer: 'signal' },
    { id: 'B+', side: 'right', alongM: 0.05, layer: 'power' },
    { id: 'OUT', side: 'bottom', alongM: 0.09, layer: 'speaker' },
  ],
});
const items = [amp('a'), amp('b')];

const across: Readonly<Record<Side, Side>> = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' };

/** An item as its mirror shows it: left and right exchanged. */
function mirrored(item: Item): Item {
  const { left, right, ...rest } = item.rooms;
  return {
    ...item,
    rooms: { ...rest, ...(left ? { right: left } : {}), ...(right ? { left: right } : {}) },
    terminals: item.terminals.map((one) => {
      const level = one.side === 'top' || one.side === 'bottom';
      return { ...one, side: across[one.side], alongM: level ? item.widthM - one.alongM : one.alongM };
    }),
  };
}

describe('a layout and its mirror image', () => {
  it('have the same score in all its parts', () => {
    const spot = fc.tuple(
      fc.integer({ min: 0, max: 500 }),
      fc.integer({ min: 0, max: 200 }),
      fc.constantFrom(0 as const, 90 as const, 180 as const, 270 as const),
    );
    const side = fc.constantFrom('left' as const, 'right' as const, 'top' as const, 'bottom' as const);
    fc.assert(
      fc.property(spot, spot, side, side, (one, other, signalSide, powerSide) => {
        const placements = [one, other].map(([x, y, turnDeg], at): Placement => {
          return { item: items[at]?.id ?? '', xM: x / 1000, yM: y / 1000, turnDeg, heightM: 0 };
        });
        const links = (flip: (side: Side) => Side): Link[] => [
          { id: '1', from: { item: 'a', terminal: 'IN' }, to: { exit: flip(signalSide) }, layer: 'signal' },
          { id: '2', from: { exit: flip(powerSide) }, to: { item: 'a', terminal: 'B+' }, layer: 'power' },
          { id: '3', from: { item: 'b', terminal: 'OUT' }, to: { exit: flip(signalSide) }, layer: 'speaker' },
          {
            id: '4',
            from: { item: 'b', terminal: 'IN' },
            to: { item: 'a', terminal: 'IN' },
            layer: 'signal',
          },
        ];
        const score = (list: readonly Item[], where: readonly Placement[], flip: (side: Side) => Side) => {
          const placed = list.flatMap((item, at) => {
            const own = where[at];
            return own ? [place(item, own, gapRules.partGapM)] : [];
          });
          const sides = { signalSide: flip(signalSide), powerSide: flip(powerSide) };
          return scoreLayout({ ...board, ...sides }, placed, links(flip), {
            ...gapRules,
            house: usualHouse,
          });
        };
        const back = { 0: 0, 90: 270, 180: 180, 270: 90 } as const;
        const turned = placements.map((at, index): Placement => {
          const item = items[index];
          return item ? { ...at, xM: 0.8 - bodyOf(item, at).maxX, turnDeg: back[at.turnDeg] } : at;
        });
        const there = score(items, placements, (wanted) => wanted);
        const image = score(items.map(mirrored), turned, (wanted) => across[wanted]);
        expect(image.broken).toBeCloseTo(there.broken, 9);
        for (const [part, value] of Object.entries(there.parts))
          expect([part, Object.entries(image.parts).find(([name]) => name === part)?.[1]]).toEqual([
            part,
            expect.closeTo(value, 9),
          ]);
      }),
      { numRuns: 200, seed: 14 },
    );
  });
});
