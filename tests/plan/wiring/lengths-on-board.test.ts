import { describe, expect, test } from 'vitest';
import { terminalOnBoard } from '../../../lib/board/layout/item.ts';
import { routedWays } from '../../../lib/plan/settle-sizes.ts';
import { wireLengths } from '../../../lib/plan/wiring/wire-lengths.ts';
import { inJob, vehicleFile, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { small } from './small-wiring.ts';

/** The small job with its amplifier and its woofer on a board, laid out and routed. */
const onBoard = (...more: readonly Change[]) =>
  small(
    withBoard(),
    inJob('    in: boot\n    settings', '    on: main\n    settings'),
    inJob('sub: { part: woofer-a, in: boot }', 'sub: { part: woofer-a, on: main }'),
    inJob('to: sub.C1, length: 3 ft }', 'to: sub.C1 }'),
    inJob('to: body.cargo, length: 12 in }', 'to: body.cargo }'),
    inJob('links: [turn-on] }', 'links: [turn-on, ground] }'),
    ...more,
  );

describe('the length of a wire on a board', () => {
  const inch = 0.0254;
  const lengths = (isRouted: boolean, ...more: readonly Change[]) => {
    const { job, devices, settled: own } = onBoard(...more);
    const routed = isRouted ? routedWays(job, own.laid, own.routed) : new Map();
    return { of: wireLengths(job, devices, own.laid, routed), routed, laid: own.laid, settled: own };
  };
  const parts = (of: ReturnType<typeof lengths>['of'], link: string) => Object.fromEntries(of(link).parts);

  // House rules, common practice, no source: loops of 3 in on the board, 12 in in the vehicle, none at the body. The runs
  // are of 3.5 m and 3 m.
  test('is its way as routed, its run, and a loop at each end', () => {
    const { of, routed } = lengths(true);
    const boardM = (link: string) => routed.get(link)?.boardM ?? Number.NaN;
    expect(boardM('speaker.+')).toBeGreaterThan(0.01);
    expect(parts(of, 'speaker.+')).toEqual({ board: boardM('speaker.+'), loops: 2 * 3 * inch });
    expect(parts(of, 'feed')).toEqual({
      ...{ run: 3.5, board: boardM('feed'), loops: 12 * inch + 3 * inch },
      'board to rim': routed.get('feed')?.rimM,
    });
    expect(parts(of, 'ground')).toEqual({ run: 3, board: boardM('ground'), loops: 3 * inch });
    for (const link of ['speaker.+', 'feed', 'ground']) {
      expect(of(link).measured).not.toContain('estimated');
      expect(of(link).lengthM).toBeCloseTo(
        Object.values(parts(of, link)).reduce((sum, lengthM) => sum + lengthM, 0),
        9,
      );
    }
  });

  test('is estimated before it is routed: level and upright between its terminals, or out to an edge', () => {
    const { of, laid } = lengths(false);
    const [board] = laid;
    const at = (id: string) => {
      const item = board?.items.find((one) => id.startsWith(`${one.id}.`));
      const placed = board?.placements.find((one) => one.item === item?.id);
      const terminal = item?.terminals.find((one) => one.id === id);
      if (!item || !placed || !terminal) throw new Error(`${id} stands on no board.`);
      return terminalOnBoard(item, placed, terminal);
    };
    const [from, to] = [at('amp.CH1+'), at('sub.C1+')];
    expect(parts(of, 'speaker.+').board).toBeCloseTo(
      Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM),
      9,
    );
    expect(of('speaker.+').measured).toMatch(/^board [\d.]+ estimated \+ loops [\d.]+ m$/);
    // The board is 500 mm by 300 mm. The run of the feed reaches its left edge; of the other it is not told which.
    expect(parts(of, 'feed').board).toBeCloseTo(at('amp.B+').xM, 6);
    const ground = at('amp.GND');
    expect(parts(of, 'ground').board).toBeCloseTo(
      Math.max(ground.xM, 0.5 - ground.xM, ground.yM, 0.3 - ground.yM),
      6,
    );
    expect(parts(of, 'tail')).toEqual({});
  });

  // The tape of a way is held to the rim of the space, 800 mm by 500 mm, where the board stands at 200 mm and 100 mm.
  describe('from the board to the rim', () => {
    const stands = inJob('    fixings: { a:', '    at: { x: 200 mm, y: 100 mm }\n    fixings: { a:');
    const comesIn = (at: string): Change => [
      vehicleFile,
      'reaches: { space: well, edge: left }',
      `reaches: { space: well, edge: left, at: ${at} }`,
    ];
    const rimM = ({ of }: ReturnType<typeof lengths>, link: string) => parts(of, link)['board to rim'];
    const heightM = ({ settled: { routed } }: ReturnType<typeof lengths>) => {
      const [exit] = routed[0]?.exits.filter(({ wire }) => wire === 'feed') ?? [];
      return 0.1 + (exit?.yM ?? Number.NaN);
    };

    test('is the gap and the way up or down to where it comes in', () => {
      const made = lengths(true, stands, comesIn('400 mm'));
      expect(rimM(made, 'feed')).toBeCloseTo(Math.hypot(0.2, 0.4 - heightM(made)), 9);
      expect(made.of('feed').measured).toMatch(/ \+ board to rim [\d.]+ \+ loops/);
    });

    test('reaches any point of that side where the place is not told', () => {
      const made = lengths(true, stands);
      const farM = Math.max(heightM(made), 0.5 - heightM(made));
      expect(rimM(made, 'feed')).toBeCloseTo(Math.hypot(0.2, farM), 9);
    });

    test('is none for what stays on the board, for a way to no board, and where a length is written', () => {
      const made = lengths(true, stands);
      expect(['speaker.+', 'ground', 'tail'].map((link) => rimM(made, link))).toEqual([
        undefined,
        undefined,
        undefined,
      ]);
    });

    test('counts before ways are laid too', () => {
      const drafted = lengths(false, stands, comesIn('400 mm'));
      expect(rimM(drafted, 'feed')).toBeGreaterThanOrEqual(0.2);
      expect(drafted.of('feed').measured).toContain('board to rim');
    });
  });
});
