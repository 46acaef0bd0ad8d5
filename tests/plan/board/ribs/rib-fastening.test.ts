import { describe, expect, test } from 'vitest';
import { ribGlue, ribScrew, screwPoints } from '../../../../lib/plan/board/ribs/rib-fastening.ts';
import type { Change } from '../../../read/small-shop.ts';
import { addParts, inParts, inShop } from '../../shop-changes.ts';
import { oneBoard } from '../one-board.ts';

const screw = (id: string, mm: number, more = 'clearance: 4.4 mm, pilot: 3 mm') =>
  `${id}: { kind: fixing, title: S, form: wood-screw, length: ${mm} mm, ${more} }`;
const shelf = (...lines: readonly string[]) =>
  inShop('  screw-25: { pieces: 50 }\n', lines.map((line) => `  ${line}\n`).join(''));

describe('the screw of a rib', () => {
  const { board } = oneBoard();
  const screwOf = (heightM: number, ...changes: readonly Change[]) =>
    ribScrew(oneBoard(undefined, ...changes).job, 0.012, { heightM }, board.sheet)?.id;
  const { rules } = oneBoard().job;
  // A screw of 25 mm through 12 mm bites 13 mm.
  const leastM = 0.013 + rules['rib-screw-skin'].value;

  test('bites as deep as the house rule asks, and leaves a skin of the rib', () => {
    expect(rules['rib-screw-bite'].value).toBeLessThanOrEqual(0.013);
    expect(screwOf(leastM)).toBe('screw-25');
    expect(screwOf(leastM - 1e-6)).toBeUndefined();
    const shallow = Math.round(1000 * (0.012 + rules['rib-screw-bite'].value)) - 1;
    expect(screwOf(0.05, addParts(screw('screw-0', shallow)), shelf('screw-0: { pieces: 9 }'))).toBe(
      'screw-25',
    );
    const enough = addParts(screw('screw-0', shallow + 1));
    expect(screwOf(0.05, enough, shelf('screw-0: { pieces: 9 }'))).toBe('screw-0');
  });

  test('is one that is in stock, of these the shortest, then the first by name', () => {
    const longer = addParts(screw('screw-30', 30), screw('screw-30a', 30), screw('screw-26', 26));
    const only = (...lines: readonly string[]) => screwOf(0.05, longer, shelf(...lines));
    expect(only('screw-30: { pieces: 9 }', 'screw-30a: { pieces: 9 }')).toBe('screw-30');
    expect(only('screw-30a: { pieces: 9 }')).toBe('screw-30a');
    expect(only('screw-30: { pieces: 9 }', 'screw-26: { pieces: 1 }')).toBe('screw-26');
    expect(only('screw-30: { pieces: 0 }')).toBe('screw-25');
  });

  test('is none whose clearance nobody tells, and none in metal or acrylic', () => {
    const bare = inParts('length: 25 mm, clearance: 4.4 mm, pilot: 3 mm', 'length: 25 mm, pilot: 3 mm');
    expect(screwOf(0.05, bare)).toBeUndefined();
    const { job } = oneBoard();
    for (const material of ['aluminium', 'acrylic'] as const)
      expect(ribScrew(job, 0.012, { heightM: 0.05 }, { ...board.sheet, material })).toBeNull();
  });
});

test('a rib is glued with what is in stock, else with the first that is to be had', () => {
  const more = addParts(
    'glue-0: { kind: fixing, title: Glue, form: adhesive }',
    'glue-b: { kind: fixing, title: Glue, form: adhesive }',
  );
  expect(ribGlue(oneBoard(undefined, more).job)).toBe('glue-a');
  const none = inShop('  glue-a: { pieces: 1 }\n', '');
  expect(ribGlue(oneBoard(undefined, more, none).job)).toBe('glue-0');
  const other = inShop('  glue-a: { pieces: 1 }\n', '  glue-b: { pieces: 1 }\n');
  expect(ribGlue(oneBoard(undefined, more, other).job)).toBe('glue-b');
});

describe('where the screws of a rib go', () => {
  const { rules } = oneBoard().job;
  const rib = (lengthM: number, widthM = 0.012) => ({
    ...{ id: 'r', face: 'rear' as const, widthM, heightM: 0.02 },
    ...{ from: { xM: 0, yM: 0.1 }, to: { xM: lengthM, yM: 0.1 } },
  });
  const endM = rules['rib-screw-end'].value;
  const points = (
    ...given: readonly [Parameters<typeof screwPoints>[0], Parameters<typeof screwPoints>[2]]
  ) =>
    screwPoints(given[0], 0.0044, given[1], rules).map(({ xM, yM }) => [
      Number(xM.toFixed(6)),
      Number(yM.toFixed(6)),
    ]);

  test('is inside its ends by the house rule, and apart by no more than it, in like spans', () => {
    const lengthM = 2 * endM + 2 * rules['rib-screw-spacing'].value;
    const xs = points(rib(lengthM), []).map(([x]) => x);
    expect(xs).toEqual([endM, lengthM / 2, lengthM - endM].map((x) => Number(x.toFixed(6))));
    expect(points(rib(lengthM + 0.001), [])).toHaveLength(4);
    for (const [, y] of points(rib(lengthM), [])) expect(y).toBe(0.1);
  });

  test('is in two rows where it is wide', () => {
    const wideM = rules['rib-two-rows'].value;
    const ys = new Set(points(rib(0.2, wideM), []).map(([, y]) => y));
    expect(ys.size).toBe(2);
    expect(new Set(points(rib(0.2, wideM - 1e-6), []).map(([, y]) => y)).size).toBe(1);
  });

  test('is moved along where it would meet another hole, by no more than half a span, and left out beyond', () => {
    const lengthM = 2 * endM + rules['rib-screw-spacing'].value;
    const hole = (xM: number, diameterM: number) => ({ xM, yM: 0.1, diameterM });
    const [first, last] = points(rib(lengthM), [hole(endM, 0.004)]);
    expect(first?.[0]).not.toBe(Number(endM.toFixed(6)));
    expect(Math.abs((first?.[0] ?? 0) - endM)).toBeGreaterThanOrEqual(0.0042 + 0.004 - 1e-6);
    expect(first?.[0]).toBeLessThanOrEqual(lengthM - endM / 2);
    expect(first?.[0]).toBeGreaterThanOrEqual(endM / 2);
    expect(last?.[0]).toBeCloseTo(lengthM - endM, 6);
    const huge = points(rib(lengthM), [hole(endM, 0.5)]);
    expect(huge).toEqual([]);
  });

  test('never comes nearer to its end than half of that', () => {
    // What is drilled in the middle sends both outwards.
    const lengthM = 4 * endM;
    const all = points(rib(lengthM), [
      { xM: lengthM / 2, yM: 0.1, diameterM: 2 * (lengthM / 2 - endM) + 0.01 },
    ]);
    for (const [x = 0] of all) {
      expect(x).toBeGreaterThanOrEqual(endM / 2 - 1e-6);
      expect(x).toBeLessThanOrEqual(lengthM - endM / 2 + 1e-6);
    }
  });
});
