import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendPlate, type Rib, ribBending } from '../../../lib/board/strength/plate.ts';
import { evenSheet } from '../../../lib/board/strength/sheet-stiffness.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';

const inRoark = outsideCheck('sections-by-roark');

const g = 9.80665;
const inch = 0.0254;
const ksi = 6894757.293;
/** Exact: a kip is 4448.2216 N. */
const kipInch2 = 4448.2216 * inch ** 2;

describe('what a rib adds to the bending stiffness', () => {
  // Gere, Mechanics of Materials, composite beams, worked example: wood 4 x 6 in of 1,500 ksi with a steel plate of
  // 4 x 1/2 in of 30,000 ksi below it; about the common neutral axis I is 171.0 and 3.01 in4.
  const wood = evenSheet({ thicknessM: 6 * inch, modulusPa: 1500 * ksi, poisson: 0, densityKgM3: 0 });
  const ends = { from: { xM: 0, yM: 0 }, to: { xM: 1, yM: 0 } };
  const steel = { ...ends, widthM: 4 * inch, heightM: 0.5 * inch, modulusPa: 30000 * ksi };

  it('glued: that of the composite section, less what the board bends by itself', () => {
    const whole = 1500 * 171.0 + 30000 * 3.01;
    const woodAlone = 1500 * 72;
    const added = ribBending({ ...steel, flangeM: 4 * inch }, wood) / kipInch2;
    expect(Math.abs(inRoark.differs(added, whole - woodAlone) / (whole - woodAlone) - 1)).toBeLessThan(0.001);
  });

  it('screwed: that of its own section, 4 x (1/2)3 / 12 in4 x 30,000 ksi', () => {
    expect(ribBending(steel, wood) / kipInch2).toBeCloseTo(1250, 4);
  });

  it('glued is never less than screwed, and grows with the flange', () => {
    const size = fc.double({ min: 0.005, max: 0.08, noNaN: true });
    fc.assert(
      fc.property(size, size, size, size, (widthM, heightM, thicknessM, flangeM) => {
        const rib = { ...ends, widthM, heightM, modulusPa: 9e9 };
        const sheet = evenSheet({ thicknessM, modulusPa: 3e9, poisson: 0.3, densityKgM3: 700 });
        const screwed = ribBending(rib, sheet);
        const glued = ribBending({ ...rib, flangeM }, sheet);
        expect(glued).toBeGreaterThan(screwed);
        expect(ribBending({ ...rib, flangeM: 2 * flangeM }, sheet)).toBeGreaterThan(glued);
      }),
    );
  });
});

describe('a board with ribs', () => {
  const sheet = evenSheet({ thicknessM: 0.012, modulusPa: 9e9, poisson: 0, densityKgM3: 680 });

  it('glued along a strip on two supports bends as its T section: 5 w L^4 / 384 E I (Roark)', () => {
    const [lengthM, widthM] = [1, 0.1];
    const { region } = shapeOf({ rectangle: { width: '1 m', height: '0.1 m' } });
    const rib: Rib = {
      id: 'r',
      from: { xM: 0, yM: 0.05 },
      to: { xM: 1, yM: 0.05 },
      widthM: 0.012,
      heightM: 0.03,
      modulusPa: 9e9,
      densityKgM3: 680,
      flangeM: widthM,
    };
    // The section about its own centroid, from the areas and their places alone: one material.
    const parts = [
      { b: widthM, h: 0.012, y: 0.006 },
      { b: 0.012, h: 0.03, y: 0.027 },
    ];
    const area = parts.reduce((sum, { b, h }) => sum + b * h, 0);
    const middle = parts.reduce((sum, { b, h, y }) => sum + b * h * y, 0) / area;
    const second = parts.reduce((sum, { b, h, y }) => sum + (b * h ** 3) / 12 + b * h * (y - middle) ** 2, 0);
    const across = (xM: number) => [0, 0.025, 0.05, 0.075, 0.1].map((yM) => ({ xM, yM }));
    const supports = [...across(0), ...across(lengthM)];
    const bent = bendPlate({ region, sheet, ribs: [rib], masses: [], supports });
    const perM = 680 * area;
    const sagM = (5 * perM * g * lengthM ** 4) / (384 * 9e9 * second);
    expect(Math.abs(inRoark.differs(bent?.sagM ?? 0, sagM) / sagM - 1)).toBeLessThan(0.01);
  });

  it('is never softer for a rib that weighs nothing, wherever it runs', () => {
    const { region } = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
    const supports = [
      { xM: 0.03, yM: 0.03 },
      { xM: 0.57, yM: 0.03 },
      { xM: 0.57, yM: 0.37 },
      { xM: 0.03, yM: 0.37 },
    ];
    const plate = {
      region,
      sheet: { ...sheet, poisson: 0.3, shearPa: 9e9 / 2.6 },
      masses: [],
      supports,
      elements: 10,
    };
    const x = fc.double({ min: 0.01, max: 0.59, noNaN: true });
    const y = fc.double({ min: 0.01, max: 0.39, noNaN: true });
    const bare = bendPlate({ ...plate, ribs: [] });
    fc.assert(
      fc.property(x, y, x, y, fc.double({ min: 0, max: 0.1, noNaN: true }), (ax, ay, bx, by, flangeM) => {
        fc.pre(Math.hypot(ax - bx, ay - by) > 0.05);
        const rib: Rib = {
          ...{ id: 'r', from: { xM: ax, yM: ay }, to: { xM: bx, yM: by } },
          ...{ widthM: 0.012, heightM: 0.02, modulusPa: 9e9, densityKgM3: 0, flangeM },
        };
        const ribbed = bendPlate({ ...plate, ribs: [rib] });
        // Work of the load is least stiff first: the mode rises or stays (Rayleigh), to the digits of the solver.
        expect(ribbed?.modeHz).toBeGreaterThanOrEqual((bare?.modeHz ?? Number.NaN) * (1 - 1e-6));
      }),
      { numRuns: 40 },
    );
  });
});
