import { describe, expect, it } from 'vitest';
import { bendPlate, type Rib, ribBending } from '../../../lib/board/strength/plate.ts';
import { evenSheet, plateStiffness } from '../../../lib/board/strength/sheet-stiffness.ts';
import {
  type Build,
  boardStiffness,
  chooseBuild,
  modeOfSagHz,
  stiffnessFaults,
} from '../../../lib/board/strength/stiffness.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';
import { birch12, corners, even, g, loadedBoard, nearIn } from './loaded-board.ts';

const within = nearIn(outsideCheck('beams-and-plates'));

/** A strip of 1 m by 0.1 m in eight elements: enough for a beam, whose deflection an element of the third degree has. */
const region = shapeOf({ rectangle: { width: '1 m', height: '0.1 m' } }).region;
const sheet = evenSheet({ thicknessM: 0.018, modulusPa: 3e9, poisson: 0, densityKgM3: 700 });
const bendingNm2 = (3e9 * 0.1 * 0.018 ** 3) / 12;
const perM = 700 * 0.018 * 0.1;
const across = (xM: number, clamped = false) => [0, 0.05, 0.1].map((yM) => ({ xM, yM, clamped }));
const bend = (more: Partial<Parameters<typeof bendPlate>[0]>) =>
  bendPlate({ region, sheet, ribs: [], masses: [], supports: [], elements: 8, ...more });

describe('a strip in few elements, against closed forms of beams (Roark; Blevins)', () => {
  const both = [...across(0), ...across(1)];

  it('on two edges: 5 w L^4 / 384 E I, (pi / 2) sqrt(E I / m L^4), and the weight of the strip', () => {
    const bent = bend({ supports: both });
    within(bent?.sagM, (5 * perM * g) / (384 * bendingNm2), 0.01);
    within(bent?.modeHz, (Math.PI / 2) * Math.sqrt(bendingNm2 / perM), 0.01);
    within(bent?.massKg, perM, 1e-9);
  });

  it('held at one end alone: w L^4 / 8 E I where its slope is held too, free to tip where it is not', () => {
    within(bend({ supports: across(0, true) })?.sagM, (perM * g) / (8 * bendingNm2), 0.01);
    expect(bend({ supports: across(0) })).toBeNull();
  });

  it('with a mass spread over points of its middle: P L^3 / 48 E I beside its own weight', () => {
    const middle = { massKg: 2, points: across(0.5) };
    const bent = bend({ supports: both, masses: [middle] });
    within(bent?.sagM, (2 * g) / (48 * bendingNm2) + (5 * perM * g) / (384 * bendingNm2), 0.01);
    within(bent?.massKg, perM + 2, 1e-9);
  });

  it('with a rib along it that weighs something: both stiffnesses, both weights', () => {
    const rib: Rib = {
      ...{ id: 'r', from: { xM: 0, yM: 0.05 }, to: { xM: 1, yM: 0.05 } },
      ...{ widthM: 0.02, heightM: 0.03, modulusPa: 10e9, densityKgM3: 600 },
    };
    const ribPerM = 600 * 0.02 * 0.03;
    const bent = bend({ supports: both, ribs: [rib] });
    const whole = bendingNm2 + (10e9 * 0.02 * 0.03 ** 3) / 12;
    within(bent?.sagM, (5 * (perM + ribPerM) * g) / (384 * whole), 0.02);
    within(bent?.massKg, perM + ribPerM, 1e-9);
  });
});

it('a plate is stiff as its thickness cubed: E t^3 / 12 (1 - v^2)', () => {
  const { dxNm, dyNm, d1Nm, dxyNm } = plateStiffness(
    evenSheet({ thicknessM: 0.012, modulusPa: 9e9, poisson: 0.3, densityKgM3: 680 }),
  );
  // By hand: 9e9 x 0.012^3 / (12 x 0.91) = 1424.2 N m; v D = 427.3; D (1 - v) / 2 = 498.5.
  within(dxNm, 1424.18, 1e-5);
  expect(dyNm).toBe(dxNm);
  within(d1Nm, 427.25, 1e-4);
  within(dxyNm, 498.46, 1e-4);
});

it('a glued rib adds what its flange pulls at the lever between their middles', () => {
  // By hand: rib 20 x 30 mm of 10 GPa, EA 6 MN, E I 450 N m2; flange 100 x 18 mm of 3 GPa, EA 5.4 MN; 24 mm apart.
  const rib = {
    ...{ from: { xM: 0, yM: 0 }, to: { xM: 1, yM: 0 }, widthM: 0.02, heightM: 0.03, modulusPa: 10e9 },
    flangeM: 0.1,
  };
  within(ribBending(rib, sheet), 450 + (0.024 ** 2 * 6e6 * 5.4e6) / 11.4e6, 1e-9);
  within(ribBending({ ...rib, flangeM: 0 }, sheet), 450, 1e-9);
  within(ribBending({ ...rib, to: rib.from }, sheet), 450, 1e-9);
});

describe('a loaded board in few elements', () => {
  const aim = { wantedHz: 30, elements: 6 };

  it('weighs what it and its parts weigh, and sags more with them', () => {
    const [loaded, bare] = [loadedBoard, { ...loadedBoard, items: [] }].map((one) =>
      boardStiffness(one, even(0.018), aim),
    );
    expect(loaded?.massKg).toBeCloseTo(0.8 * 0.4 * 0.018 * 680 + 4, 9);
    expect(bare?.massKg).toBeCloseTo(0.8 * 0.4 * 0.018 * 680, 9);
    expect(loaded?.sagM.value).toBeGreaterThan(1.5 * (bare?.sagM.value ?? Number.NaN));
  });

  it('is told by the lower of two modes, with both, and marked where something of its sheet is assumed', () => {
    const found = boardStiffness(loadedBoard, even(0.018), aim);
    const bySagHz = modeOfSagHz(found?.sagM.value ?? Number.NaN);
    expect(found?.firstModeHz.value).toBeCloseTo(Math.min(bySagHz, found?.plateModeHz ?? 0), 9);
    expect(found?.firstModeHz.trace.inputs).toEqual([
      { name: 'sag', value: found?.sagM.value, unit: 'm' },
      { name: 'first mode of the plate', value: found?.plateModeHz, unit: 'Hz' },
    ]);
    expect(found?.firstModeHz.trace.mark).toBeUndefined();
    const assumed = boardStiffness(loadedBoard, { ...even(0.018), assumed: ['its shear modulus'] }, aim);
    expect(assumed?.firstModeHz.trace.mark).toBe('mem');
  });

  it('is looked at as finely as is asked for', () => {
    const sag = (elements: number) =>
      boardStiffness(loadedBoard, even(0.018), { wantedHz: 30, elements })?.sagM.value;
    expect(sag(4)).not.toBe(sag(6));
  });

  it('is not held by two fixings, and that stops it', () => {
    const loose = boardStiffness({ ...loadedBoard, supports: corners.slice(0, 2) }, even(0.018), aim);
    expect(loose).toBeNull();
    expect(stiffnessFaults('rear', loose, { leastHz: 30, wantedHz: 80 })).toEqual([
      expect.objectContaining({ rule: 'board-not-held', level: 'stop' }),
    ]);
  });

  it('stops below the least mode, is a caution below the one that is wanted, and is told no more at it', () => {
    const found = boardStiffness(loadedBoard, even(0.018), aim);
    if (!found) throw new Error('It is held.');
    const hz = found.firstModeHz.value;
    const told = (leastHz: number, wantedHz: number) =>
      stiffnessFaults('rear', found, { leastHz, wantedHz }).map(({ level, limit }) => [level, limit]);
    expect(told(hz + 1, hz + 2)).toEqual([['stop', hz + 1]]);
    expect(told(hz, hz + 2)).toEqual([['caution', hz + 2]]);
    expect(told(hz - 1, hz)).toEqual([]);
  });

  it('is built of the lightest that is stiff enough', () => {
    const coarse = { ...loadedBoard, placements: [] };
    const builds = [even(0.018, 900), even(0.018), even(0.003)];
    const { tried, chosen } = chooseBuild(coarse, builds, 30);
    expect(tried).toHaveLength(3);
    expect(tried.map(({ firstModeHz }) => firstModeHz.value >= 30)).toEqual([true, true, false]);
    expect(chosen?.build).toBe('even-18-680');
    expect(chooseBuild({ ...coarse, supports: [] }, builds, 30)).toEqual({ tried: [], chosen: null });
  });

  it('relies on the stiffer way of the grain only where the weaker is too little and the sheet keeps it', () => {
    const ways = [
      { grain: 'level', sheet: birch12 },
      { grain: 'upright', sheet: { ...birch12, modulusXPa: 6.8e9, modulusYPa: 10.7e9 } },
    ] as const;
    const of = (kept: Build['kept'], wantedHz: number) =>
      boardStiffness(loadedBoard, { ...even(0.012), ways, kept }, { wantedHz, elements: 6 });
    const hz = of([], 0)?.firstModeHz.value ?? 0;
    expect(of(['level'], hz - 0.1)?.grain).toBeNull();
    expect(of(['level'], hz + 0.1)?.grain).toBe('level');
    expect(of(['level'], hz + 0.1)?.firstModeHz.value).toBeGreaterThan(hz);
    expect(of(['upright'], hz + 0.1)).toMatchObject({ grain: null, firstModeHz: { value: hz } });
  });
});
