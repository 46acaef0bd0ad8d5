import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare } from '../../../lib/board/strength/fixing.ts';
import {
  type FixingJoint,
  jointStrength,
  jointTorque,
  ringM2,
} from '../../../lib/board/strength/fixing-joint.ts';
import { type RatedFixing, retention, retentionFaults } from '../../../lib/board/strength/retention.ts';
import { threadM } from '../../../lib/board/strength/screw-thread.ts';
import { outsideCheck } from '../../outside-check.ts';

const byHand = outsideCheck('joints-by-hand');

const g = 9.80665;
const joint: FixingJoint = {
  ...{ threadM: 0.006, holeM: 0.0066, headM: 0.018, spacerM: 0, spacerFaceM: 0.02 },
  ...{ boltN: 200 * g, insertN: 150 * g },
  sheet: { thicknessM: 0.018, crushingPa: 15e6, shearPa: 6e6 },
};

describe('what the joint of a fixing holds', () => {
  it('is the insert where that is the weakest', () => {
    expect(jointStrength(joint)).toEqual({
      ...{ pullOutN: 150 * g, pullBy: 'insert', shearN: 150 * g, shearBy: 'insert' },
    });
  });

  it('is the bolt in a welded nut, till the board gives', () => {
    expect(jointStrength({ ...joint, insertN: null })).toMatchObject({ pullOutN: 200 * g, pullBy: 'bolt' });
  });

  it('is a soft, thin board: by hand, 5 MPa x pi/4 (12^2 - 6.6^2) mm2 = 394 N pulled, 5 MPa x 6 x 6 mm = 180 N across', () => {
    const soft = { thicknessM: 0.006, crushingPa: 5e6, shearPa: 4e6 };
    const found = jointStrength({ ...joint, headM: 0.012, sheet: soft });
    expect(found.pullBy).toBe('board');
    expect(found.pullOutN).toBeCloseTo(394.4, 0);
    expect(byHand.differs(found.shearN, 180)).toBeCloseTo(180, 6);
  });

  it('is the rim of a wide washer on a thin board: 1 MPa x pi x 30 x 3 mm = 283 N', () => {
    const thin = { thicknessM: 0.003, crushingPa: 50e6, shearPa: 1e6 };
    expect(jointStrength({ ...joint, headM: 0.03, sheet: thin }).pullOutN).toBeCloseTo(282.7, 1);
  });

  it('never grows as any of its parts gets weaker', () => {
    const share = fc.double({ min: 0.1, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, share, (bolt, insert, crushing) => {
        const weaker = jointStrength({
          ...joint,
          boltN: bolt * joint.boltN,
          insertN: insert * (joint.insertN ?? 0),
          sheet: { ...joint.sheet, crushingPa: crushing * joint.sheet.crushingPa },
        });
        const full = jointStrength(joint);
        expect(weaker.pullOutN).toBeLessThanOrEqual(full.pullOutN);
        expect(weaker.shearN).toBeLessThanOrEqual(full.shearN);
      }),
    );
  });
});

describe('the torque of a fixing: the least of bolt, insert and what is borne below the washer', () => {
  // By hand: 9 MPa x pi/4 (18^2 - 6.6^2) mm2 = 1,982 N; x 0.2 x 6 mm = 2.379 N m.
  const face = { areaM2: ringM2(0.018, 0.0066), bearsPa: 9e6, threadM: 0.006, nutFactor: 0.2 };

  it('is what plywood bears: 2.38 N m of an M6 with a washer of 18 mm', () => {
    const found = jointTorque({ boltNm: 10, insertNm: 10, face });
    expect(found.by).toBe('board');
    const workedNm = 9 * (Math.PI / 4) * (18 ** 2 - 6.6 ** 2) * 0.2 * 0.006;
    expect(byHand.differs(found.torqueNm.value, workedNm)).toBeCloseTo(2.379, 3);
  });

  it('is that of the insert, or of the bolt, where nothing soft is below the washer', () => {
    expect(jointTorque({ boltNm: 25, insertNm: 20 })).toMatchObject({
      by: 'insert',
      torqueNm: { value: 20 },
    });
    expect(jointTorque({ boltNm: 25, insertNm: null })).toMatchObject({
      by: 'bolt',
      torqueNm: { value: 25 },
    });
    expect(jointTorque({ boltNm: 10, insertNm: 20 })).toMatchObject({ by: 'bolt', torqueNm: { value: 10 } });
  });

  it('shows each limit that it is the least of', () => {
    const shown = (limits: Parameters<typeof jointTorque>[0]) =>
      jointTorque(limits).torqueNm.trace.inputs?.map(({ name }) => name);
    expect(shown({ boltNm: 25, insertNm: 20 })).toEqual(['bolt', 'insert']);
    expect(shown({ boltNm: 10, insertNm: null, face })).toEqual(['bolt', 'K', 's', 'A', 'd']);
  });

  it('changes from board to bolt where the washer is as wide as the bolt asks', () => {
    const wide = (outerM: number) =>
      jointTorque({ boltNm: 10, insertNm: null, face: { ...face, areaM2: ringM2(outerM, 0.0066) } });
    // 10 / (0.2 x 6 mm x 9 MPa) = 925.9 mm2: a washer of 34.96 mm.
    expect(wide(0.0349).by).toBe('board');
    expect(wide(0.0351).by).toBe('bolt');
  });
});

describe('a board over spacers', () => {
  const at = (id: string, xM: number, yM: number, heightM = 0): RatedFixing => ({
    ...{ id, xM, yM, pullOutN: 1000, shearN: 2000, pullBy: 'insert', shearBy: 'board' },
    ...(heightM > 0 ? { spacer: { heightM, faceM: 0.02 } } : {}),
  });
  const square = (heightM: number) => [
    at('a', 0, 0, heightM),
    at('b', 0.4, 0, heightM),
    at('c', 0.4, 0.4, heightM),
    at('d', 0, 0.4, heightM),
  ];
  const sideways = [{ x: 1, y: 0, z: 0 }];
  const mass = [{ id: 'amp', massKg: 8, xM: 0.2, yM: 0.2, zM: 0 }];

  it('pulls its bolts by shear times height over face, shared by both ends: 30 over 20 mm is 1.5 N by the newton', () => {
    const held = retention(mass, square(0.03), sideways);
    const [load] = held?.loads ?? [];
    expect(load?.shearNPerG).toBeCloseTo((8 * g) / 4, 6);
    expect(load?.pullNPerG).toBeCloseTo((1.5 * 8 * g) / 4, 6);
    expect(held?.retentionG.value).toBeCloseTo(1 / ((8 * g) / 4 / 2000 + (1.5 * 8 * g) / 4 / 1000), 6);
    expect(held?.by).toBe('insert');
  });

  it('pulls twice as much where the board can tilt on a line of fixings', () => {
    const line = [at('a', 0, 0, 0.03), at('b', 0.4, 0, 0.03)];
    const held = retention([{ id: 'amp', massKg: 8, xM: 0.2, yM: 0, zM: 0 }], line, sideways);
    expect(held?.loads[0]?.pullNPerG).toBeCloseTo((3 * 8 * g) / 2, 6);
  });

  it('without spacers gives by shear alone, and holds more', () => {
    const held = retention(mass, square(0), sideways);
    expect(held?.retentionG.value).toBeCloseTo((4 * 2000) / (8 * g), 6);
    expect(held?.by).toBe('board');
  });

  it('passes and fails 20 g by a hair of its spacers, and names what gives', () => {
    // By hand at 20 g: shear 392.27 N a fixing; 392.27 / 2000 + 392.27 h / 0.02 / 1000 = 1 at h = 40.985 mm.
    const faults = (heightM: number) =>
      retentionFaults('rear', retention(mass, square(heightM), sideways), 20);
    expect(faults(0.0409)).toEqual([]);
    expect(faults(0.0411)).toEqual([
      expect.objectContaining({
        rule: 'fixings-too-weak',
        message: expect.stringContaining('its insert first'),
      }),
    ]);
  });
});

it('ids stand in one order on every machine, alike ones in none', () => {
  expect([compare('f1', 'f2'), compare('f2', 'f1'), compare('f1', 'f1')]).toEqual([-1, 1, 0]);
});

it('threads have their nominal diameter: ISO 261, ASME B18.6', () => {
  expect(threadM('M6')).toBe(0.006);
  expect(threadM('#8')).toBeCloseTo(0.0041656, 7);
  expect(threadM('1/4-20')).toBeNull();
});
