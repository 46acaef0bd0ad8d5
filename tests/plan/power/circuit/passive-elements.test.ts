import { describe, expect, test } from 'vitest';
import { passiveElements, sizedFuseOhm } from '../../../../lib/plan/power/circuit/passive-elements.ts';
import type { NetworkElement } from '../../../../lib/power/network/network-types.ts';
import { one, partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { settledPower } from '../settled-power.ts';
import { isolated } from '../two-batteries.ts';

function elements(edge: string, change: (content: Written) => void = isolated, conductorC?: number) {
  const sizing = settledPower(change);
  const { circuit } = sizing;
  return passiveElements(
    sizing,
    one(circuit.edges, ({ id }) => id === edge),
    conductorC,
  );
}
const ohms = (all: readonly NetworkElement[]) =>
  all.map((element) => [element.id, element.kind, 'ohm' in element ? element.ohm : null]);

// House rules, common practice, no source: a crimped lug 0.1 mohm, a bolted joint 0.2 mohm, the body 1 mohm.
describe('a conductor in the network', () => {
  test('stands between its crimps, and a bolted contact where it ends on a stud', () => {
    const all = elements('main');
    expect(all.map(({ id, from, to }) => [id, from, to])).toEqual([
      ['main:from-bolt', 'main-fuse.OUT', 'main:from-crimp'],
      ['main:from-crimp', 'main:from-crimp', 'main:conductor'],
      ['main:conductor', 'main:conductor', 'main:to-crimp'],
      ['main:to-crimp', 'main:to-crimp', 'main:to-bolt'],
      ['main:to-bolt', 'main:to-bolt', 'isolator.A'],
    ]);
    expect(new Set(all.map(({ of }) => of))).toEqual(new Set(['main']));
    // A set screw holds the conductor itself: one end is no bolted joint.
    expect(elements('board-feed').map(({ id }) => id)).toEqual([
      'board-feed:from-bolt',
      'board-feed:from-crimp',
      'board-feed:conductor',
      'board-feed:to-crimp',
    ]);
  });

  test('has the hot resistance of its length, by the published table of AWG and the temperature coefficient', () => {
    // 4 AWG: 0.2485 ohm/1,000 ft at 20 C, 2 % for stranding; at 60 C times 1 + 0.00393 * 40.
    const perM = (0.2485 / 304.8) * 1.02;
    const [, , at20] = elements('main', isolated, 20);
    const [, , at60] = elements('main', isolated, 60);
    if (at20?.model !== 'resistance' || at60?.model !== 'resistance')
      throw new Error('There is no conductor.');
    expect(at20.ohm / perM).toBeCloseTo(1, 3);
    expect(at60.ohm / at20.ohm).toBeCloseTo(1 + 0.00393 * 40, 3);
  });

  test('has the resistance that was measured of its cable, where it was', () => {
    const measured = elements(
      'main',
      (content) => {
        isolated(content);
        partIn(content, 'cable', 'wire').measured = '2 mohm/m';
      },
      20,
    );
    expect(ohms(measured)[2]).toEqual(['main:conductor', 'conductor', expect.closeTo(0.002, 6)]);
  });
});

describe('a joint in the network', () => {
  test('of the body has half of its way: two ground points share it', () => {
    const [body] = elements('body.cargo');
    expect(body).toMatchObject({ kind: 'joint', of: 'body', ohm: expect.closeTo(0.0005, 9) });
  });

  test('of a part has what that says, or nothing', () => {
    expect(ohms(elements('isolator.A>B'))).toEqual([['isolator.A>B', 'joint', expect.any(Number)]]);
    expect(ohms(elements('ground.G0>G1'))).toEqual([['ground.G0>G1', 'joint', 0]]);
  });
});

describe('a fuse in the network', () => {
  const fuse = (ratingA: number | null, form: 'large-bolt-in' | 'maxi-blade') => {
    const sizing = settledPower(isolated);
    const [any] = sizing.fuses;
    if (!any) throw new Error('There is a fuse.');
    return sizedFuseOhm(sizing.job, { ...any, ratingA, ratedA: 40, form });
  };

  // House rules, common practice, no source: 0.1 V over a bolt-in fuse at its rating, 0.12 V over a blade.
  test('loses the drop of its style at its rating, or at its current where it has none', () => {
    expect(fuse(80, 'large-bolt-in')).toBeCloseTo(0.1 / 80, 12);
    expect(fuse(80, 'maxi-blade')).toBeCloseTo(0.12 / 80, 12);
    expect(fuse(null, 'maxi-blade')).toBeCloseTo(0.12 / 40, 12);
    expect(fuse(0, 'maxi-blade')).toBe(0);
  });

  test('is one element between its terminals; one that is not sized is none', () => {
    expect(elements('main-fuse')).toMatchObject([
      { id: 'main-fuse:fuse', of: 'main-fuse', kind: 'fuse', from: 'main-fuse.IN', to: 'main-fuse.OUT' },
    ]);
    const sizing = settledPower(isolated);
    const edge = one(sizing.circuit.edges, ({ id }) => id === 'main-fuse');
    expect(passiveElements({ ...sizing, fuses: [] }, edge)).toEqual([]);
    const feed = one(sizing.circuit.edges, ({ id }) => id === 'main');
    expect(passiveElements({ ...sizing, conductors: new Map() }, feed)).toEqual([]);
  });
});
