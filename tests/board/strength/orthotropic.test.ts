import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendPlate, ribBending, type Support } from '../../../lib/board/strength/plate.ts';
import {
  evenSheet,
  modulusAlong,
  plateStiffness,
  quarterTurned,
  type Sheet,
} from '../../../lib/board/strength/sheet-stiffness.ts';
import { type Build, boardStiffness } from '../../../lib/board/strength/stiffness.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';
import { birch12, g, nearIn } from './loaded-board.ts';

const within = nearIn(outsideCheck('beams-and-plates'));

const psi = 6894.757293;

/**
 * Birch plywood of the table of constants in Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, chapter
 * 11, in 10^6 psi (quoted from memory): E'x 2.00, E'y 0.167, E'' 0.077, G 0.17.
 */
const birch = { exPa: 2.0e6 * psi, eyPa: 0.167e6 * psi, e2Pa: 0.077e6 * psi, gPa: 0.17e6 * psi };

/** The sheet whose primed moduli E' = E / (1 - v2), E'' = v sqrt(E'x E'y) are given. */
function ofTable(thicknessM: number): Sheet {
  const poisson = birch.e2Pa / Math.sqrt(birch.exPa * birch.eyPa);
  const [modulusXPa, modulusYPa] = [birch.exPa, birch.eyPa].map((pa) => pa * (1 - poisson ** 2));
  return {
    ...{ thicknessM, modulusXPa: modulusXPa ?? 0, modulusYPa: modulusYPa ?? 0 },
    ...{ shearPa: birch.gPa, poisson, densityKgM3: 680 },
  };
}

const round = (a: number, b: number, clamped = false): Support[] =>
  Array.from({ length: 41 }, (_, at) => at / 40).flatMap((s) => [
    { xM: s * a, yM: 0, clamped },
    { xM: s * a, yM: b, clamped },
    { xM: 0, yM: s * b, clamped },
    { xM: a, yM: s * b, clamped },
  ]);
const bend = (a: number, b: number, sheet: Sheet, supports: readonly Support[], elements = 32) =>
  bendPlate({
    region: shapeOf({ rectangle: { width: `${a} m`, height: `${b} m` } }).region,
    ...{ sheet, ribs: [], masses: [], supports, elements },
  });

describe('the orthotropic plate against published solutions', () => {
  const t = 0.009;
  const cube = t ** 3 / 12;
  const [dx, dy] = [birch.exPa * cube, birch.eyPa * cube];
  /** H = D1 + 2 Dxy of the same chapter. */
  const h = (birch.e2Pa + 2 * birch.gPa) * cube;
  const perM2 = 680 * t;

  it.each([
    [0.6, 0.4],
    [0.4, 0.6],
    [0.5, 0.5],
  ])(
    'simply supported, %s by %s m: f = (pi / 2) sqrt((Dx/a4 + 2H/a2b2 + Dy/b4) / m) (Hearmon; Leissa, NASA SP-160, chapter 9)',
    (a, b) => {
      const found = bend(a, b, ofTable(t), round(a, b));
      const sum = dx / a ** 4 + (2 * h) / (a * b) ** 2 + dy / b ** 4;
      within(found?.modeHz, (Math.PI / 2) * Math.sqrt(sum / perM2), 0.01);
    },
  );

  it('simply supported under its own weight: the double series of Navier (Timoshenko and Woinowsky-Krieger, chapter 11)', () => {
    const [a, b] = [0.6, 0.4];
    const odd = [1, 3, 5, 7, 9, 11];
    const series = odd.flatMap((m) =>
      odd.map((n) => {
        const sign = (-1) ** ((m + n) / 2 - 1);
        const bends = dx * (m / a) ** 4 + 2 * h * ((m * n) / (a * b)) ** 2 + dy * (n / b) ** 4;
        return sign / (m * n * bends);
      }),
    );
    const middleM = ((16 * perM2 * g) / Math.PI ** 6) * series.reduce((sum, term) => sum + term, 0);
    within(bend(a, b, ofTable(t), round(a, b))?.sagM, middleM, 0.01);
  });

  it('with H = sqrt(Dx Dy) it is an even plate of the sides a (Dy/Dx)^1/4 and b: 0.00772 q b4 / Dy at 1.5 (the same chapter)', () => {
    const [exPa, eyPa] = [12e9, 3e9];
    const poisson = 0.1;
    const shearPa = ((1 - poisson) * Math.sqrt(exPa * eyPa)) / (2 * (1 - poisson ** 2));
    const sheet = { ...evenSheet({ thicknessM: t, modulusPa: exPa, poisson, densityKgM3: 680 }), shearPa };
    const two = { ...sheet, modulusYPa: eyPa };
    const b = 0.3;
    const a = 1.5 * b * (exPa / eyPa) ** 0.25;
    const { dyNm } = plateStiffness(two);
    within(bend(a, b, two, round(a, b))?.sagM, (0.00772 * perM2 * g * b ** 4) / dyNm, 0.01);
  });

  it('clamped all round: w2 = (4.730^4 Dx/a4 + 2 x 151.3 H/a2b2 + 4.730^4 Dy/b4) / m, from above (Hearmon; Leissa, chapter 9)', () => {
    const [a, b] = [0.6, 0.4];
    const found = bend(a, b, ofTable(t), round(a, b, true));
    const sum = 4.73 ** 4 * (dx / a ** 4 + dy / b ** 4) + (2 * 151.3 * h) / (a * b) ** 2;
    within(found?.modeHz, Math.sqrt(sum / perM2) / (2 * Math.PI), 0.02);
  });
});

describe('what holds of any orthotropic sheet', () => {
  const pa = fc.double({ min: 1e9, max: 15e9, noNaN: true });
  const sheets = fc.record({
    modulusXPa: pa,
    modulusYPa: pa,
    shearPa: fc.double({ min: 2e8, max: 4e9, noNaN: true }),
  });
  const corners = (a: number, b: number): Support[] => [
    { xM: 0.02, yM: 0.02 },
    { xM: a - 0.02, yM: 0.03 },
    { xM: a - 0.02, yM: b - 0.03 },
    { xM: 0.05, yM: b - 0.02 },
  ];

  it('a board and its sheet turned together bend alike', () => {
    fc.assert(
      fc.property(sheets, (moduli) => {
        const sheet = { thicknessM: 0.012, poisson: 0.05, densityKgM3: 680, ...moduli };
        const level = corners(0.6, 0.35);
        const upright = level.map(({ xM, yM }) => ({ xM: yM, yM: xM }));
        const one = bend(0.6, 0.35, sheet, level, 10);
        const other = bend(0.35, 0.6, quarterTurned(sheet), upright, 10);
        within(one?.modeHz, other?.modeHz ?? 0, 1e-6);
        within(one?.sagM, other?.sagM ?? 0, 1e-6);
      }),
      { numRuns: 20 },
    );
  });

  it('lies between even sheets of its weaker and of its stiffer modulus, that twist alike', () => {
    fc.assert(
      fc.property(sheets, (moduli) => {
        const sheet = { thicknessM: 0.012, poisson: 0, densityKgM3: 680, ...moduli };
        const both = (modulus: number) => ({ ...sheet, modulusXPa: modulus, modulusYPa: modulus });
        const hz = (one: Sheet) => bend(0.6, 0.35, one, corners(0.6, 0.35), 10)?.modeHz ?? 0;
        const { modulusXPa: x, modulusYPa: y } = sheet;
        expect(hz(sheet)).toBeGreaterThanOrEqual(hz(both(Math.min(x, y))) * (1 - 1e-6));
        expect(hz(sheet)).toBeLessThanOrEqual(hz(both(Math.max(x, y))) * (1 + 1e-6));
      }),
      { numRuns: 20 },
    );
  });

  it('an even one has its modulus in every direction', () => {
    const even = evenSheet({ thicknessM: 0.01, modulusPa: 3e9, poisson: 0.3, densityKgM3: 700 });
    fc.assert(
      fc.property(fc.double({ min: 0, max: Math.PI, noNaN: true }), (turn) => {
        within(modulusAlong(even, { xM: Math.cos(turn), yM: Math.sin(turn) }), 3e9, 1e-9);
      }),
    );
  });

  it('at 45 degrees its modulus is 4 / (1/Ex + 1/Ey + 1/G - 2 v/E) (Lekhnitskii): birch of 12, 6 and 0.7 GPa has 2.4 GPa', () => {
    const sheet = {
      thicknessM: 0.01,
      modulusXPa: 12e9,
      modulusYPa: 6e9,
      shearPa: 0.7e9,
      poisson: 0,
      densityKgM3: 0,
    };
    // 4 / (1/12 + 1/6 + 1/0.7) by hand.
    within(modulusAlong(sheet, { xM: 1, yM: 1 }), 2.383e9, 1e-3);
  });

  it('a glued rib along the grain has the stiffer flange, but never more than the mean of both moduli', () => {
    const sheet = { ...birch12, poisson: 0, densityKgM3: 0 };
    const rib = { widthM: 0.012, heightM: 0.03, modulusPa: 8e9, flangeM: 0.1 };
    const level = ribBending({ ...rib, from: { xM: 0, yM: 0 }, to: { xM: 1, yM: 0 } }, sheet);
    const upright = ribBending({ ...rib, from: { xM: 0, yM: 0 }, to: { xM: 0, yM: 1 } }, sheet);
    expect(level).toBeGreaterThan(upright);
    const even = evenSheet({ thicknessM: 0.012, modulusPa: 8.75e9, poisson: 0, densityKgM3: 0 });
    within(level, ribBending({ ...rib, from: { xM: 0, yM: 0 }, to: { xM: 1, yM: 0 } }, even), 1e-9);
  });
});

describe('the way of the grain on a board', () => {
  const board = {
    shape: shapeOf({ rectangle: { width: '700 mm', height: '350 mm' } }),
    items: [],
    placements: [],
    supports: [
      { xM: 0.03, yM: 0.03 },
      { xM: 0.67, yM: 0.03 },
      { xM: 0.67, yM: 0.32 },
      { xM: 0.03, yM: 0.32 },
    ],
  };
  const ways = [
    { grain: 'level', sheet: birch12 },
    { grain: 'upright', sheet: quarterTurned(birch12) },
  ] as const;
  const open: Build = { id: 'birch-12', ways, kept: ['level', 'upright'], ribs: [], assumed: [] };
  const hz = (build: Build, wantedHz: number) => boardStiffness(board, build, { wantedHz });
  const along = hz({ ...open, ways: [ways[0]] }, 0)?.firstModeHz.value ?? 0;
  const across = hz({ ...open, ways: [ways[1]] }, 0)?.firstModeHz.value ?? 0;

  it('counts: along the longer side the board is stiffer, by the root of the moduli at most', () => {
    expect(along).toBeGreaterThan(across);
    expect(along).toBeLessThan(across * Math.sqrt(10.7 / 6.8));
  });

  it('stays open where the weaker one keeps what is asked for, and then the weaker one counts', () => {
    expect(hz(open, across - 0.01)).toMatchObject({ grain: null, firstModeHz: { value: across } });
  });

  it('is the stiffer one where the weaker is less than asked for, and the sheet keeps it', () => {
    expect(hz(open, across + 0.01)).toMatchObject({ grain: 'level', firstModeHz: { value: along } });
  });

  it('counts as the weaker one where nesting does not keep the stiffer', () => {
    expect(hz({ ...open, kept: ['upright'] }, across + 0.01)).toMatchObject({
      grain: null,
      firstModeHz: { value: across },
    });
    expect(hz({ ...open, kept: [] }, 1000)?.firstModeHz.value).toBe(across);
  });

  it('is told as assumed, with its mark, where the part does not state both moduli', () => {
    const found = hz({ ...open, assumed: ['its modulus across the grain'] }, 30);
    expect(found?.firstModeHz.trace.mark).toBe('mem');
    expect(hz(open, 30)?.firstModeHz.trace.mark).toBeUndefined();
  });
});
