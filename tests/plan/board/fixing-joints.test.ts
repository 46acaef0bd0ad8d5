import { describe, expect, test } from 'vitest';
import { boardFixings } from '../../../lib/plan/board/board-shape.ts';
import { fixingJoints } from '../../../lib/plan/board/fixing-joints.ts';
import { unmadeHeights } from '../../../lib/plan/board/raising/spacer-stacks.ts';
import type { Change } from '../../read/small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';
import { oneBoard } from './one-board.ts';

const g = 9.80665;

describe('the joints of a board on its fixings', () => {
  const joints = (fixing: string, more: readonly Change[] = [], lines?: readonly string[]) => {
    const bolt =
      'bolt-60: { kind: fixing, title: Bolt, form: bolt, thread: M6, length: 60 mm, clearance: 6.4 mm, holds: 400 kg }';
    const { job, board } = oneBoard(lines, inParts(bolt, bolt.replace('holds: 400 kg', fixing)), ...more);
    const stack = { layers: 0, parts: [{ part: 'spacer-12', count: 2 }], makesM: 0.024 };
    const stacks = new Map(more.length > 0 ? [['a', stack] as const] : []);
    return fixingJoints(job, board, boardFixings(board, job.parts), stacks);
  };

  test('hold what the weakest of bolt, rivet nut and board does, each over its spacer', () => {
    const { rules } = oneBoard().job;
    const [a] = joints('holds: 10 kg');
    expect(a?.rated).toMatchObject({
      pullBy: 'bolt',
      shearBy: 'bolt',
      spacer: { heightM: 0.025, faceM: 0.012 },
    });
    expect(a?.rated?.pullOutN).toBeCloseTo(10 * g, 6);
    const [strong] = joints('bears-on: 40 mm, holds: 4000 kg');
    expect(strong?.rated?.pullBy).toBe('insert');
    expect(strong?.rated?.pullOutN).toBeCloseTo(rules['rivet-nut-holds-m6'].value * g, 6);
  });

  test('are not known where the bolt does not tell what it holds', () => {
    expect(joints('torque: 9 N m')[0]?.rated).toBeNull();
  });

  test('tip on the narrowest face of their stack: of its parts, and of a pad of sheet', () => {
    const spacer = (more: string) => [
      addParts(`spacer-12: { kind: fixing, title: S, form: spacer, thread: M6, length: 12 mm${more} }`),
    ];
    expect(joints('holds: 400 kg', spacer(''))[0]?.rated?.spacer?.faceM).toBeCloseTo(0.012, 9);
    expect(joints('holds: 400 kg', spacer(', bears-on: 17 mm'))[0]?.rated?.spacer?.faceM).toBe(0.017);
    const { rules } = oneBoard().job;
    expect(joints('holds: 400 kg', spacer(', bears-on: 79 mm'))[0]?.rated?.spacer?.faceM).toBe(
      rules['spacer-pad'].value,
    );
  });

  test('are tightened to the least of bolt, rivet nut and what the sheet bears for good below the smaller face', () => {
    const { rules } = oneBoard().job;
    const [tight] = joints('bears-on: 18 mm, holds: 400 kg');
    // By hand: K s A d, the spacer of 12 mm bearing on less than the washer of 18 mm.
    const areaM2 = (Math.PI / 4) * (0.012 ** 2 - 0.0064 ** 2);
    const bearsPa = rules['crushing-wood'].value * rules['bearing-lasting'].value;
    expect(tight?.tight?.torqueNm.value).toBeCloseTo(rules['nut-factor'].value * bearsPa * areaM2 * 0.006, 9);
    expect(tight?.tight?.by).toBe('board');
    expect(joints('torque: 0.1 N m, holds: 400 kg')[0]?.tight).toMatchObject({
      by: 'bolt',
      torqueNm: { value: 0.1 },
    });
  });

  test('of a plastic sheet bear no more than creep leaves of it', () => {
    const sheet = (longTerm: string) =>
      addParts(
        `plastic: { kind: board-sheet, title: P, material: polyethylene, thickness: 12 mm, width: 1500 mm, height: 1500 mm, density: 960 kg/m3, modulus: 1000 MPa${longTerm} }`,
      );
    const torque = (longTerm: string) => {
      const { job, board } = oneBoard(['sheet: plastic'], sheet(longTerm));
      return fixingJoints(job, board, boardFixings(board, job.parts), new Map())[0]?.tight?.torqueNm.value;
    };
    const { rules } = oneBoard().job;
    const share = rules['bearing-lasting'].value;
    expect((torque(', long-term-modulus: 100 MPa') ?? 0) / (torque('') ?? 1)).toBeCloseTo(0.1 / share, 9);
    expect(torque(', long-term-modulus: 990 MPa')).toBeCloseTo(torque('') ?? Number.NaN, 12);
  });

  test('of a wood screw, and of a bolt whose torque nobody tells, have none', () => {
    const { job, board } = oneBoard(
      undefined,
      inParts(
        'form: bolt, thread: M6, length: 60 mm',
        'form: wood-screw, thread: M6, pilot: 5 mm, length: 60 mm',
      ),
    );
    const fixings = boardFixings(board, job.parts);
    expect(fixingJoints(job, board, fixings, new Map()).map(({ tight }) => tight)).toEqual([
      null,
      null,
      null,
      null,
    ]);
    const small = inParts('form: bolt, thread: M6, length: 60 mm', 'form: bolt, thread: M5, length: 60 mm');
    const other = oneBoard(undefined, small);
    const [unknown] = fixingJoints(
      other.job,
      other.board,
      boardFixings(other.board, other.job.parts),
      new Map(),
    );
    expect(unknown?.tight).toBeNull();
  });
});

test('a height that the stack does not make is told, and none that it does', () => {
  const piece = {
    ...{ id: 'board.a.pad', carries: 'a', form: 'pad' as const, count: 1, layers: 2, parts: [] },
    ...{ widthM: 0.05, lengthM: 0.05, thicknessM: 0.012, makesM: 0.024, holeM: null },
  };
  const told = (packM: number) => unmadeHeights([{ ...piece, packM }], 0.0005);
  expect(told(0)).toEqual([]);
  expect(told(0.001)).toEqual([
    expect.objectContaining({ rule: 'height-not-in-stock', of: ['a'], value: 0.001 }),
  ]);
});
