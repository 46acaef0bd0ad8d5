import { describe, expect, it } from 'vitest';
import type { LaidRib } from '../../../lib/board/strength/rib.ts';
import { ribFaults } from '../../../lib/board/strength/rib-check.ts';
import {
  inTheWay,
  onFace,
  openHoles,
  type RibLimits,
  ribRoomM,
} from '../../../lib/board/strength/rib-limits.ts';
import { worded } from '../../../lib/model/phrase.ts';
import { shapeOf } from '../shapes.ts';

const { region } = shapeOf({
  rectangle: { width: '600 mm', height: '400 mm' },
  cuts: [{ cut: 'window', x: '400 mm', y: '300 mm', width: '50 mm', height: '50 mm' }],
});
const ground: RibLimits = {
  region,
  fixings: [],
  holes: [],
  parts: [],
  obstacles: [],
  ...{ standoffM: 0.03, thicknessM: 0.012, depthM: 0.12, clearanceM: 0.006, padM: 0.05 },
};
const rib = (yM: number, more: Partial<LaidRib> = {}): LaidRib => ({
  ...{ id: 'r', face: 'rear', from: { xM: 0.05, yM }, to: { xM: 0.55, yM }, widthM: 0.012, heightM: 0.02 },
  ...more,
});
const told = (one: LaidRib, on: RibLimits = ground, others: readonly LaidRib[] = []) =>
  ribFaults(one, on, others).map(({ rule, level, of, value, limit }) => ({ rule, level, of, value, limit }));

describe('where a rib runs', () => {
  it('is free on the bare board, flush with its edge too', () => {
    expect(told(rib(0.2))).toEqual([]);
    expect(told(rib(0.006))).toEqual([]);
  });

  it('may not leave the board: by how much is told', () => {
    const [found, ...more] = told(rib(0.004));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ rule: 'rib-off-board', level: 'stop', of: ['r'], limit: 0 });
    expect(found?.value).toBeCloseTo(0.002, 6);
  });

  it('may not run over a cut-out, though it may end at one', () => {
    const [found] = told(rib(0.325));
    expect(found).toMatchObject({ rule: 'rib-off-board', level: 'stop' });
    expect(told(rib(0.325, { to: { xM: 0.399, yM: 0.325 } }))).toEqual([]);
  });

  it.each([
    ['into the pad of a fixing, it stops', 0.2 + 0.025 + 0.006 - 0.001, 'stop', -0.001],
    ['nearer than its clearance, it is a caution', 0.2 + 0.025 + 0.006 + 0.004, 'caution', 0.004],
  ] as const)('%s', (_, yM, level, value) => {
    const fixing = { id: 'f1', xM: 0.3, yM: 0.2, spacerM: 0.03, holeM: 0.0066 };
    const [found, ...more] = told(rib(yM), { ...ground, fixings: [fixing] });
    expect(more).toEqual([]);
    expect(found).toMatchObject({ rule: 'rib-in-the-way', level, of: ['r', 'f1'], limit: 0.006 });
    expect(found?.value).toBeCloseTo(value, 6);
  });

  it('keeps clear of a fixing by its clearance', () => {
    const fixing = { id: 'f1', xM: 0.3, yM: 0.2, spacerM: 0.03, holeM: 0.0066 };
    expect(told(rib(0.2 + 0.025 + 0.006 + 0.0061), { ...ground, fixings: [fixing] })).toEqual([]);
  });

  it('may meet another rib of its face, not run into it, and knows nothing of the other face', () => {
    const other = rib(0.212, { id: 's' });
    expect(told(rib(0.2), ground, [other])).toEqual([]);
    expect(told(rib(0.201), ground, [other])).toEqual([
      expect.objectContaining({ rule: 'rib-in-the-way', level: 'stop', of: ['r', 's'], limit: 0 }),
    ]);
    expect(told(rib(0.201), ground, [{ ...other, face: 'mounting' }])).toEqual([]);
    expect(told(rib(0.2), ground, [rib(0.2)])).toEqual([]);
  });

  it.each([
    ['rear', 0.0241, 'caution', 0.006],
    ['rear', 0.031, 'stop', 0],
    ['mounting', 0.0721, 'caution', 0.006],
    ['mounting', 0.079, 'stop', 0],
  ] as const)('on the %s, %s m high, has no room: %s', (face, heightM, level, limit) => {
    // 30 mm behind the board; 120 - 30 - 12 = 78 mm before it.
    const [found, ...more] = ribFaults(rib(0.2, { face, heightM }), ground, []);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ rule: 'rib-without-room', level, limit });
    expect(found?.value).toBeCloseTo((face === 'rear' ? 0.03 : 0.078) - heightM, 6);
    expect(worded(found?.message ?? '', (_, lengthM) => `${lengthM} m`)).toContain(
      face === 'rear' ? 'the panel behind' : 'the front of the space',
    );
    expect(found?.remedy).toBe(face === 'rear' ? 'make it lower, or the spacers higher' : 'make it lower');
  });

  it('has room with its clearance to spare', () => {
    expect(told(rib(0.2, { heightM: 0.024 }))).toEqual([]);
    expect(ribRoomM({ face: 'mounting', heightM: 0.07 }, ground)).toBeCloseTo(0.008, 9);
  });
});

describe('what is in the way of a rib', () => {
  const boxOf = (ring: readonly { readonly xM: number; readonly yM: number }[] | undefined) => {
    const [xs, ys] = [(ring ?? []).map(({ xM }) => xM), (ring ?? []).map(({ yM }) => yM)];
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map((m) => m.toFixed(6));
  };
  const at = (minX: number, minY: number, maxX: number, maxY: number) =>
    [minX, minY, maxX, maxY].map((m) => m.toFixed(6));
  const fixing = { id: 'f1', xM: 0.3, yM: 0.2, spacerM: 0.03, holeM: 0.0066 };

  it('is the pad of a spacer behind the board, a head before it, or one without a spacer', () => {
    const onto = (face: LaidRib['face'], spacerM: number) =>
      onFace({ ...ground, fixings: [{ ...fixing, spacerM }] }, face, 0.02)[0];
    expect(onto('rear', 0.03)).toMatchObject({ of: 'f1', what: 'the spacer of f1' });
    expect(boxOf(onto('rear', 0.03)?.ring)).toEqual(at(0.275, 0.175, 0.325, 0.225));
    // A head is twice its hole across: 6.6 mm to each side.
    for (const head of [onto('mounting', 0.03), onto('rear', 0)]) {
      expect(head).toMatchObject({ what: 'the head of f1' });
      expect(boxOf(head?.ring)).toEqual(at(0.2934, 0.1934, 0.3066, 0.2066));
    }
  });

  it('is a hole, never taken for smaller than it is', () => {
    const [hole] = onFace(
      { ...ground, holes: [{ of: 'g', xM: 0.1, yM: 0.1, diameterM: 0.03 }] },
      'rear',
      0.02,
    );
    expect(hole).toMatchObject({ of: 'g', what: 'the hole of g' });
    const ring = hole?.ring ?? [];
    const middles = ring.map((corner, k) => {
      const next = ring[(k + 1) % ring.length] ?? corner;
      return Math.hypot((corner.xM + next.xM) / 2 - 0.1, (corner.yM + next.yM) / 2 - 0.1);
    });
    // The middles of the sides are the nearest to the centre: on the circle itself.
    for (const nearest of middles) expect(nearest).toBeCloseTo(0.015, 9);
  });

  it('is a part that stands lower than the rib is high, on its own side', () => {
    const part = { id: 'amp', box: { minX: 0.1, minY: 0.1, maxX: 0.3, maxY: 0.2 }, raisedM: 0.02 };
    const on = (face: LaidRib['face'], heightM: number) =>
      onFace({ ...ground, parts: [part] }, face, heightM).map(({ of }) => of);
    expect(on('mounting', 0.02)).toEqual([]);
    expect(on('mounting', 0.0201)).toEqual(['amp']);
    expect(on('rear', 0.0201)).toEqual([]);
    expect(boxOf(onFace({ ...ground, parts: [part] }, 'mounting', 0.03)[0]?.ring)).toEqual(
      at(0.1, 0.1, 0.3, 0.2),
    );
  });

  it('is what stands out as far as a rib reaches back, less its clearance', () => {
    // A rib of 20 mm on the rear ends 10 mm over the back plane: 4 mm with its clearance.
    const reached = (standsOutM: number, face: LaidRib['face'] = 'rear') =>
      inTheWay({ ...ground, obstacles: [{ id: 'hump', ring: [], standsOutM }] }, face, 0.02).map(
        ({ of }) => of,
      );
    expect(reached(0.0039)).toEqual([]);
    expect(reached(0.0041)).toEqual(['hump']);
    // Before the board it begins at 42 mm.
    expect(reached(0.0359, 'mounting')).toEqual([]);
    expect(reached(0.0361, 'mounting')).toEqual(['hump']);
  });

  it('is no hole that is filled: a fixing, a pilot, one that does not go through', () => {
    const hole = {
      ...{ of: 'g', xM: 0.1, yM: 0.2, diameterM: 0.02 },
      ...{ depthM: null, pilotFor: null, purpose: 'wires' },
    };
    expect(openHoles([hole])).toEqual([{ of: 'g', xM: 0.1, yM: 0.2, diameterM: 0.02 }]);
    for (const filled of [{ depthM: 0.01 }, { pilotFor: 'screw-8' }, { purpose: 'fixing' }])
      expect(openHoles([{ ...hole, ...filled }])).toEqual([]);
  });
});
