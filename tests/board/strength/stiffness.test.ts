import { describe, expect, it } from 'vitest';
import { bendPlate, type Support } from '../../../lib/board/strength/plate.ts';
import { evenSheet } from '../../../lib/board/strength/sheet-stiffness.ts';
import {
  boardStiffness,
  chooseBuild,
  modeOfSagHz,
  stiffnessFaults,
} from '../../../lib/board/strength/stiffness.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';
import { corners, even, g, loadedBoard, nearIn } from './loaded-board.ts';

const within = nearIn(outsideCheck('beams-and-plates'));

const length = 1;
const width = 0.1;
const modulusPa = 3e9;
const sheet = evenSheet({ thicknessM: 0.018, modulusPa, poisson: 0, densityKgM3: 700 });
const strip = shapeOf({ rectangle: { width: '1 m', height: '0.1 m' } }).region;
const second = (width * 0.018 ** 3) / 12;
const bending = modulusPa * second;
const perM = sheet.densityKgM3 * 0.018 * width;

const across = (xM: number, clamped = false): Support[] =>
  [0, 0.025, 0.05, 0.075, 0.1].map((yM) => ({ xM, yM, clamped }));
const bend = (supports: Support[], masses: Parameters<typeof bendPlate>[0]['masses'] = [], ribs = []) =>
  bendPlate({ region: strip, sheet, ribs, masses, supports });

describe('the plate model against closed forms of beams (Roark, Formulas for Stress and Strain; Blevins, Formulas for Natural Frequency)', () => {
  it('simply supported, evenly loaded: 5 w L^4 / 384 E I, f = (pi / 2) sqrt(E I / m L^4)', () => {
    const bent = bend([...across(0), ...across(length)]);
    within(bent?.sagM, (5 * perM * g * length ** 4) / (384 * bending), 0.001);
    within(bent?.modeHz, (Math.PI / 2) * Math.sqrt(bending / (perM * length ** 4)), 0.001);
  });

  it('cantilever, evenly loaded: w L^4 / 8 E I, f = 3.516 / 2 pi sqrt(E I / m L^4)', () => {
    const bent = bend(across(0, true));
    within(bent?.sagM, (perM * g * length ** 4) / (8 * bending), 0.001);
    within(bent?.modeHz, (3.516 / (2 * Math.PI)) * Math.sqrt(bending / (perM * length ** 4)), 0.001);
  });

  it('cantilever with a mass at its end: P L^3 / 3 E I on top of its own weight', () => {
    const end = { massKg: 2, points: [0.025, 0.05, 0.075].map((yM) => ({ xM: length, yM })) };
    const expected = (2 * g * length ** 3) / (3 * bending) + (perM * g * length ** 4) / (8 * bending);
    within(bend(across(0, true), [end])?.sagM, expected, 0.002);
  });

  it('clamped at both ends: w L^4 / 384 E I', () => {
    within(
      bend([...across(0, true), ...across(length, true)])?.sagM,
      (perM * g * length ** 4) / (384 * bending),
      0.005,
    );
  });

  it('with ribs beside it that bend along: stiffness of sections adds', () => {
    const rib = (yM: number) => ({
      id: `rib-${yM}`,
      from: { xM: 0, yM },
      to: { xM: length, yM },
      widthM: 0.02,
      heightM: 0.04,
      modulusPa: 10e9,
      densityKgM3: 0,
    });
    const bent = bendPlate({
      region: strip,
      sheet,
      ribs: [rib(0.02), rib(0.08)],
      masses: [],
      supports: [...across(0), ...across(length)],
    });
    const both = bending + (2 * 10e9 * 0.02 * 0.04 ** 3) / 12;
    within(bent?.sagM, (5 * perM * g * length ** 4) / (384 * both), 0.01);
  });
});

describe('the plate model against a plate', () => {
  it('square, simply supported all round: 0.00406 q a^4 / D, f = (pi / a^2) sqrt(D / m) (Timoshenko and Woinowsky-Krieger; Leissa)', () => {
    const { region } = shapeOf({ rectangle: { width: '600 mm', height: '600 mm' } });
    const plate = evenSheet({ thicknessM: 0.012, modulusPa: 9e9, poisson: 0.3, densityKgM3: 680 });
    const round = Array.from({ length: 33 }, (_, at) => (at * 0.6) / 32);
    const supports = round.flatMap((s) => [
      { xM: s, yM: 0 },
      { xM: s, yM: 0.6 },
      { xM: 0, yM: s },
      { xM: 0.6, yM: s },
    ]);
    const bent = bendPlate({ region, sheet: plate, ribs: [], masses: [], supports, elements: 32 });
    const rigidity = (9e9 * 0.012 ** 3) / (12 * (1 - 0.09));
    within(bent?.sagM, (0.00406 * 680 * 0.012 * g * 0.6 ** 4) / rigidity, 0.01);
    within(bent?.modeHz, (Math.PI / 0.36) * Math.sqrt(rigidity / (680 * 0.012)), 0.01);
  });
});

describe('a loaded board', () => {
  const limits = { leastHz: 30, wantedHz: 30 };
  const aim = { wantedHz: 30 };

  it('has a frequency that its sag and its first mode agree on: 30 Hz is 0.28 mm', () => {
    expect(modeOfSagHz(0.00028)).toBeCloseTo(30, 0);
    const stiff = boardStiffness(loadedBoard, even(0.018), aim);
    const bySag = modeOfSagHz(stiff?.sagM.value ?? 0);
    expect(stiff?.firstModeHz.value).toBeLessThanOrEqual(bySag);
    expect(stiff?.plateModeHz).toBeGreaterThan(bySag);
    expect(stiff?.plateModeHz).toBeLessThan(1.3 * bySag);
  });

  it('takes the lightest build that is stiff enough, and says when none is', () => {
    const builds = [0.009, 0.012, 0.015, 0.018, 0.025, 0.03].map((thicknessM) => even(thicknessM));
    const { tried, chosen } = chooseBuild(loadedBoard, builds, 30);
    expect(tried).toHaveLength(6);
    const enough = tried.filter(({ firstModeHz }) => firstModeHz.value >= 30);
    expect(enough.length).toBeGreaterThan(0);
    expect(enough.length).toBeLessThan(6);
    expect(chosen?.build).toBe(enough[0]?.build);
    expect(chooseBuild(loadedBoard, builds, 500).chosen).toBeNull();
    expect(stiffnessFaults('rear', tried[0] ?? null, limits)).toEqual([
      expect.objectContaining({ rule: 'first-mode-low', level: 'stop', of: ['rear'], limit: 30 }),
    ]);
  });

  it('on two fixings, or on three in one line, is not held', () => {
    for (const supports of [corners.slice(0, 2), [0.1, 0.4, 0.7].map((xM) => ({ xM, yM: 0.2 }))]) {
      const stiff = boardStiffness({ ...loadedBoard, supports }, even(0.018), aim);
      expect(stiffnessFaults('rear', stiff, limits)).toEqual([
        expect.objectContaining({ rule: 'board-not-held' }),
      ]);
    }
  });
});
