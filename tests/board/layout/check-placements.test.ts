import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlacements } from '../../../lib/board/layout/check-placements.ts';
import type { Item, Placement } from '../../../lib/board/layout/item.ts';
import { bodyOf, turnedSide } from '../../../lib/board/layout/item.ts';
import { roomyAmp as amp, smallBlock as block, gapRules as rules, plainShape as shape } from './two-items.ts';

const board = { shape, signalSide: 'left', powerSide: 'right' } as const;
const put = (item: string, xM: number, yM: number, more: Partial<Placement> = {}): Placement => ({
  item,
  xM,
  yM,
  turnDeg: 0,
  heightM: 0,
  ...more,
});
const found = (...placements: Placement[]) =>
  checkPlacements(board, [amp, block], placements, rules).map(({ rule, of, value }) => [rule, of, value]);
const near = (value: number) => expect.closeTo(value, 9);

describe('given placements', () => {
  it('that keep every rule have no faults', () => {
    expect(found(put('amp', 0.2, 0.1), put('block', 0.6, 0.1))).toEqual([]);
  });

  it.each([
    ['overlaps', put('block', 0.48, 0.1), [['items-overlap', ['amp', 'block'], near(0.02)]]],
    ['stands off the board', put('block', 0.73, 0.38), [['item-outside-board', ['block'], near(0.03)]]],
    [
      'stands in front of a control',
      put('block', 0.07, 0.1),
      [['control-covered', ['amp', 'block'], near(0.03)]],
    ],
    ['takes room for air', put('block', 0.3, 0.32), [['air-gap-short', ['amp', 'block'], near(0.02)]]],
    ['takes room for bends', put('block', 0.55, 0.1), [['bend-room-short', ['amp', 'block'], near(0.05)]]],
    [
      'is too near',
      put('block', 0.3, -0.01),
      [
        ['item-outside-board', ['block'], near(0.01)],
        ['part-gap-short', ['amp', 'block'], near(0.01)],
      ],
    ],
    ['has no item', put('relay', 0, 0), [['placement-of-nothing', ['relay'], undefined]]],
  ])('a part that %s is a fault with its amount', (_, placement, expected) => {
    expect(found(put('amp', 0.2, 0.1), placement)).toEqual(expected);
  });

  it('a part over the head of a fixing is a caution with its amount, unless it is raised', () => {
    const heads = [{ id: 'f1', xM: 0.296, yM: 0.15, radiusM: 0.006 }];
    const told = (at: Placement) =>
      checkPlacements({ shape, heads }, [block], [at], rules).map(({ rule, level, of, value }) => {
        return [rule, level, of, value];
      });
    expect(told(put('block', 0.3, 0.1))).toEqual([
      ['item-over-fixing', 'caution', ['block', 'f1'], near(0.002)],
    ]);
    expect(told(put('block', 0.302, 0.1))).toEqual([]);
    expect(told(put('block', 0.3, 0.1, { heightM: 0.02 }))).toEqual([]);
  });

  it('may pass over one another in height, unless the lower one has a face to reach', () => {
    const over = put('block', 0.3, 0.15, { heightM: 0.09 });
    expect(found(put('amp', 0.2, 0.1), over)).toEqual([]);
    const faced = { ...amp, faceAccess: true };
    expect(checkPlacements(board, [faced, block], [put('amp', 0.2, 0.1), over], rules)).toEqual([
      expect.objectContaining({ rule: 'face-covered', of: ['amp', 'block'] }),
    ]);
  });

  it('tell a part that stands over the room in front of controls below it, and one that takes the air over fins', () => {
    const over = (xM: number, yM: number, heightM: number) =>
      checkPlacements(
        { shape },
        [amp, block],
        [put('amp', 0.3, 0.2), put('block', xM, yM, { heightM })],
        rules,
      ).map(({ rule, level, value, limit }) => [rule, level, value, limit].join(' '));
    // The controls have 80 mm to the left of 300 mm: 250 to 350 mm stand over 50 mm of them, and over the amplifier.
    expect(over(0.25, 0.25, 0.1)).toEqual([expect.stringMatching(/^control-under-part caution 0\.0[45]/)]);
    expect(over(0.25, 0.31, 0.1)).toEqual([expect.stringMatching(/^control-under-part caution/)]);
    expect(over(0.4, 0.25, 0.1)).toEqual([]);
    // 25 mm of air: 84 mm leave 24 mm over 60 mm.
    expect(over(0.4, 0.25, 0.084)).toEqual([
      expect.stringMatching(/^air-gap-short caution 0\.024\d* 0\.025$/),
    ]);
    expect(over(0.4, 0.25, 0.085)).toEqual([]);
  });

  it('leave over a part the air that its maker asks for there, more or less than at its sides', () => {
    const over = (airOverM: number, heightM: number) =>
      checkPlacements(
        { shape },
        [{ ...amp, airOverM }, block],
        [put('amp', 0.3, 0.2), put('block', 0.4, 0.25, { heightM })],
        rules,
      ).map(({ rule, limit }) => [rule, limit].join(' '));
    // The amplifier is 60 mm high; its fins ask for 25 mm at its sides.
    expect(over(0.04, 0.099)).toEqual(['air-gap-short 0.04']);
    expect(over(0.04, 0.1)).toEqual([]);
    expect(over(0.01, 0.07)).toEqual([]);
    expect(over(0.01, 0.069)).toEqual(['air-gap-short 0.01']);
  });

  it('leave a ground bar that faces the parts that it serves, whatever side the power comes from', () => {
    const port = { id: '1', side: 'left', alongM: 0.02, layer: 'ground' } as const;
    const turnedAway = (shares?: 'ground') =>
      checkPlacements(
        board,
        [{ ...block, terminals: [port], ...(shares ? { shares } : {}) }],
        [put('block', 0.2, 0.1)],
        rules,
      ).map(({ rule }) => rule);
    expect(turnedAway()).toContain('power-end-faces-wrong-side');
    expect(turnedAway('ground')).not.toContain('power-end-faces-wrong-side');
  });

  it('tell a signal end that faces the power side', () => {
    expect(found(put('amp', 0.2, 0.1, { turnDeg: 180 }))).toEqual([
      ['signal-end-faces-wrong-side', ['amp'], 180],
      ['power-end-faces-wrong-side', ['amp'], 180],
    ]);
  });

  it('have the same faults mirrored, with mirrored parts', () => {
    const mirrorItem = (item: Item): Item => ({
      ...item,
      rooms: {
        ...(item.rooms.left ? { right: item.rooms.left } : {}),
        ...(item.rooms.right ? { left: item.rooms.right } : {}),
        ...(item.rooms.top ? { top: item.rooms.top } : {}),
      },
      terminals: item.terminals.map((terminal) => ({
        ...terminal,
        side: terminal.side === 'left' ? 'right' : 'left',
      })),
    });
    const turnsBack = { 0: 0, 90: 270, 180: 180, 270: 90 } as const;
    const spot = fc.tuple(
      fc.integer({ min: -50, max: 800 }),
      fc.integer({ min: -50, max: 500 }),
      fc.constantFrom(0 as const, 90 as const, 180 as const, 270 as const),
    );
    fc.assert(
      fc.property(spot, spot, (one, other) => {
        const placements = [one, other].map(([x, y, turnDeg], at) =>
          put(at === 0 ? 'amp' : 'block', x / 1000, y / 1000, { turnDeg }),
        );
        const items = [amp, block];
        const mirrored = placements.map((at) => {
          const item = items.find(({ id }) => id === at.item) ?? amp;
          return { ...at, xM: 0.8 - bodyOf(item, at).maxX, turnDeg: turnsBack[at.turnDeg] };
        });
        const faults = (sides: typeof board | { shape: typeof shape }, list: Item[], where: Placement[]) =>
          checkPlacements(sides, list, where, rules)
            .map(({ rule, value }) => `${rule} ${(value ?? 0).toFixed(6)}`)
            .toSorted();
        const flipped = { shape, signalSide: 'right', powerSide: 'left' } as const;
        expect(checkPlacements(flipped, items.map(mirrorItem), mirrored, rules).length).toBe(
          checkPlacements(board, items, placements, rules).length,
        );
        expect(faults({ shape }, items.map(mirrorItem), mirrored)).toEqual(
          faults({ shape }, items, placements),
        );
      }),
      { numRuns: 200, seed: 9 },
    );
  });
});

describe('a quarter turn', () => {
  it('carries the right side to the top', () => {
    expect(turnedSide('right', 90)).toBe('top');
    expect(turnedSide('bottom', 90)).toBe('right');
    expect(turnedSide('left', 270)).toBe('top');
  });
});
