import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airHeatCapacity, openingFlow } from '../../lib/heat/air-flow.ts';
import { cavityAir, fanFor, type WarmCavity } from '../../lib/heat/cavity-air.ts';
import { type CavityBox, coolingSurface } from '../../lib/heat/cooling-surface.ts';
import { deviceLoss, measuredPlaying } from '../../lib/heat/device-loss.ts';
import { outsideCheck } from '../outside-check.ts';

const inExamples = outsideCheck('enclosure-example');

const closed: WarmCavity = {
  ...{ lossW: 350, outsideC: 30, surfaceM2: 3.96, passesWM2K: 5.5, fanM3S: 0, openings: [] },
};

describe('the air of a cavity against published examples', () => {
  // A maker's manual of control panels after DIN VDE 0660 part 500: panel of painted steel, free on all sides, 5.5
  // W/(m2 K), effective surface 3.96 m2, 350 W, room at 30 C. 350 / (5.5 x 3.96) = 16.07 K by hand.
  test('350 W in a panel of 3.96 m2 at 30 C: 46 C inside', () => {
    expect(inExamples.differs(cavityAir(closed).airC.value, 46.07)).toBeCloseTo(46.07, 2);
  });

  // Makers of filter fans print V = f P / dT with f = 3.1 m3 K/(W h) up to 100 m above the sea.
  test('a fan moves its heat by 3.1 m3 K/(W h): 300 W at 10 K ask for 93 m3/h', () => {
    const cavity = { ...closed, lossW: 300, outsideC: 25, surfaceM2: 1e-6 };
    const m3h = fanFor(cavity, 10) * 3600;
    expect(Math.abs(inExamples.differs(m3h, 93) / 93 - 1)).toBeLessThan(0.015);
    expect(cavityAir({ ...cavity, fanM3S: 93 / 3600 }).riseK).toBeCloseTo(10, 0);
  });

  test('dry air at 20 C takes up 1.204 kg/m3 x 1,006 J/(kg K) (ISO 2533)', () => {
    expect(airHeatCapacity(20) / 1006).toBeCloseTo(1.204, 3);
  });

  // By hand: 0.6 x 1 / 3 x sqrt(9.80665 x 1 x 10 / 298.15) = 0.1147 m3/s.
  test('an opening of 1 m by 1 m exchanges 0.115 m3/s at 10 K (CIBSE Guide A, from memory)', () => {
    expect(inExamples.differs(openingFlow({ widthM: 1, heightM: 1 }, 10, 20), 0.1147)).toBeCloseTo(0.1147, 4);
    expect(openingFlow({ widthM: 1, heightM: 1 }, 0, 20)).toBe(0);
  });
});

describe('the cooling surface (VDE 0660 part 500)', () => {
  const box = { widthM: 0.8, heightM: 2, depthM: 0.6 } as const;
  const walls = { box: { ...box, plane: 'standing' as const }, airM3: null, surfaceM2: null };

  test('of a standing cavity: middle of a row at a wall, top covered, 1.4 W H + 0.7 W D + D H', () => {
    // 1.4 x 1.6 + 0.7 x 0.48 + 1.2 by hand.
    expect(inExamples.differs(coolingSurface(walls).value, 3.776)).toBeCloseTo(3.776, 9);
  });

  test('of a lying cavity: its covered top by 0.7, four covered sides by 0.5', () => {
    const lying = { ...walls, box: { ...box, plane: 'lying' as const } };
    // 0.7 x 1.6 + 0.5 x 2 x (0.8 + 2) x 0.6 by hand.
    expect(coolingSurface(lying).value).toBeCloseTo(2.8, 9);
  });

  test('grows with air that the box does not hold, never shrinks by it; what is told goes before', () => {
    expect(coolingSurface({ ...walls, airM3: 0.9 }).value).toBeCloseTo(3.776, 9);
    // A cube of 8 m3 has 2 m sides: 1.4 x 4 + 0.7 x 4 + 4.
    expect(coolingSurface({ ...walls, airM3: 8 }).value).toBeCloseTo(12.4, 9);
    const told = coolingSurface({ ...walls, airM3: 8, surfaceM2: 2 });
    expect(told.value).toBe(2);
    expect(told.trace.origin).toBe('given');
  });
});

describe('a flat space that holds more air than its box (VDE 0660 part 500)', () => {
  // 34 in by 18 1/4 in, 4 3/8 in deep, 90 L: its air stands 0.09 / (0.8636 x 0.46355) = 0.22482 m deep.
  const flat = { widthM: 0.8636, heightM: 0.46355, depthM: 0.111125, plane: 'lying' } as const;
  const surface = (airM3: number | null, box: CavityBox = flat) =>
    coolingSurface({ box, airM3, surfaceM2: null });

  test('keeps its width and height, and no cube stands for it', () => {
    // 0.7 x 0.8636 x 0.46355 + (0.8636 + 0.46355) x 0.22482 by hand.
    expect(inExamples.differs(surface(0.09).value, 0.5786)).toBeCloseTo(0.5786, 4);
    // 0.7 x 0.40032 + 1.32715 x 0.111125 by hand.
    expect(surface(null).value).toBeCloseTo(0.42771, 4);
    expect(surface(0.04).value).toBe(surface(null).value);
  });

  test('never has more walls than a box that holds it and its air, nor fewer than its own', () => {
    const side = fc.double({ min: 0.05, max: 2, noNaN: true });
    const more = fc.double({ min: 1, max: 20, noNaN: true });
    fc.assert(
      fc.property(side, side, side, more, more, (widthM, heightM, depthM, a, b) => {
        for (const plane of ['standing', 'lying'] as const) {
          const box = { widthM, heightM, depthM, plane };
          const larger = { ...box, widthM: widthM * a, heightM: heightM * b };
          const airM3 = larger.widthM * larger.heightM * depthM;
          const found = surface(airM3, box).value;
          expect(found).toBeGreaterThanOrEqual(surface(null, box).value * (1 - 1e-9));
          if (plane === 'lying') expect(found).toBeLessThanOrEqual(surface(null, larger).value * 1.02);
        }
      }),
    );
  });
});

describe('the heat of an amplifier whose maker measured it with music', () => {
  test('is his current times his voltage, less an eighth of its rated power', () => {
    // 14.4 V x 7.9 A - 500 W / 8 = 51.26 W by hand.
    const playing = measuredPlaying({ musicA: 7.9, ratedV: 14.4, ratedPowerW: 500, fullEfficiency: 0.8 });
    const loss = deviceLoss(playing);
    expect(inExamples.differs(loss.value, 51.26)).toBeCloseTo(51.26, 9);
    expect(loss.trace.mark).toBeUndefined();
    expect(loss.trace.citation).toMatch(/the part's data/);
  });

  test('is no less than at full power where it is loaded beyond what he measured', () => {
    // 1,000 W / 8 / 0.8 - 125 W = 31.25 W by hand, where 14.4 V x 7.9 A are less than is put out.
    const playing = measuredPlaying({ musicA: 7.9, ratedV: 14.4, ratedPowerW: 1000, fullEfficiency: 0.8 });
    expect(deviceLoss(playing).value).toBeCloseTo(31.25, 9);
  });
});

describe('what holds of every cavity', () => {
  const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const cavities = fc.record({
    lossW: amount(0, 800),
    outsideC: amount(-20, 85),
    surfaceM2: amount(0.05, 10),
    passesWM2K: amount(1, 12),
    fanM3S: amount(0, 0.05),
    openings: fc.array(fc.record({ widthM: amount(0.01, 1), heightM: amount(0.01, 0.5) }), { maxLength: 3 }),
  });

  test('all heat leaves, and none flows in', () => {
    fc.assert(
      fc.property(cavities, (cavity) => {
        const { wallsW, fanW, openingsW, riseK } = cavityAir(cavity);
        expect(Math.abs(wallsW + fanW + openingsW - cavity.lossW)).toBeLessThan(1e-6 * (1 + cavity.lossW));
        expect(Math.min(wallsW, fanW, openingsW, riseK)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('more heat is never cooler; more wall, fan or opening never warmer', () => {
    fc.assert(
      fc.property(cavities, (cavity) => {
        const before = cavityAir(cavity).airC.value;
        const warmth = (change: Partial<WarmCavity>) => cavityAir({ ...cavity, ...change }).airC.value;
        expect(warmth({ lossW: cavity.lossW + 10 })).toBeGreaterThanOrEqual(before);
        for (const change of [
          { surfaceM2: cavity.surfaceM2 * 1.1 },
          { fanM3S: cavity.fanM3S + 0.005 },
          { openings: [...cavity.openings, { widthM: 0.1, heightM: 0.1 }] },
        ])
          expect(warmth(change)).toBeLessThanOrEqual(before + 1e-9);
      }),
    );
  });

  test('a fan of the flow asked for keeps the rise asked for, a tenth less does not', () => {
    fc.assert(
      fc.property(cavities, amount(1, 30), (cavity, riseK) => {
        const fanM3S = fanFor(cavity, riseK);
        fc.pre(fanM3S > 1e-4);
        expect(cavityAir({ ...cavity, fanM3S }).riseK).toBeLessThan(riseK + 1e-6);
        expect(cavityAir({ ...cavity, fanM3S: 0.9 * fanM3S }).riseK).toBeGreaterThan(riseK);
      }),
    );
  });
});

test('a device turns into heat what it takes and does not give', () => {
  expect(deviceLoss({ inputW: 100, outputW: 37.5 }).value).toBe(62.5);
  expect(deviceLoss({ inputW: 10, outputW: 12 }).value).toBe(0);
});
