import { describe, expect, it } from 'vitest';
import { retention, retentionFaults } from '../../../lib/board/strength/retention.ts';
import { outsideCheck } from '../../outside-check.ts';

const byStatics = outsideCheck('fasteners-by-statics');
const g = 9.80665;

describe('retention in a crash', () => {
  const rated = (id: string, xM: number, yM: number) => ({ id, xM, yM, pullOutN: 1000, shearN: 2000 });
  const square = [rated('a', 0, 0), rated('b', 0.4, 0), rated('c', 0.4, 0.4), rated('d', 0, 0.4)];
  const forward = [{ x: 0, y: 0, z: 1 }];
  const mass = (xM: number, yM: number, zM: number) => [{ id: 'amp', massKg: 8, xM, yM, zM }];

  it('shares a central pull evenly: 4 x 1000 N hold 8 kg up to 4000 / (8 x 9.80665) g', () => {
    const held = retention(mass(0.2, 0.2, 0), square, forward);
    expect(byStatics.differs(held?.retentionG.value ?? 0, 4000 / (8 * g))).toBeCloseTo(4000 / (8 * g), 6);
  });

  it('takes moments by the lever between two rows, as a shelf pulls at its upper bolts: F h / (2 x 0.4 m) on each of two', () => {
    const down = [{ x: 0, y: -1, z: 0 }];
    const held = retention(mass(0.2, 0.2, 0.1), square, down);
    const loadOf = (id: string) => held?.loads.find(({ fixing }) => fixing === id);
    const c = loadOf('c');
    expect(byStatics.differs(c?.pullNPerG ?? 0, (8 * g * 0.1) / 0.8)).toBeCloseTo((8 * g * 0.1) / 0.8, 6);
    expect(c?.shearNPerG).toBeCloseTo((8 * g) / 4, 6);
    expect(loadOf('a')?.pullNPerG).toBe(0);
  });

  it('thrown to one side, pulls at the other: the fixings that the mass leaves behind', () => {
    const held = retention(mass(0.2, 0.2, 0.1), square, [{ x: 1, y: 0, z: 0 }]);
    const pulls = held?.loads.map(({ pullNPerG }) => pullNPerG) ?? [];
    for (const [at, expected] of [(8 * g * 0.1) / 0.8, 0, 0, (8 * g * 0.1) / 0.8].entries())
      expect(pulls[at]).toBeCloseTo(expected, 6);
  });

  it('thrown forward and up at once, balances both about the middle: what tips it takes from what hangs low', () => {
    // 8 kg 50 mm under the middle and 50 mm over the back: F 50 mm and F 50 mm the same way round, F / 4 on each beside.
    const held = retention(mass(0.2, 0.15, 0.05), square, [{ x: 0, y: 1, z: 1 }]);
    const lower = held?.loads.find(({ fixing }) => fixing === 'a');
    expect(byStatics.differs(lower?.pullNPerG ?? 0, (8 * g) / 4 + (8 * g * 0.1) / 0.8)).toBeCloseTo(
      (8 * g) / 4 + (8 * g * 0.1) / 0.8,
      6,
    );
  });

  it('holds, in a line, no moment across the line, however small', () => {
    const line = [rated('a', 0, 0), rated('b', 0.4, 0)];
    const gram = (yM: number) => [{ id: 'clip', massKg: 0.001, xM: 0.1, yM, zM: 0 }];
    expect(retention(gram(0), line, forward)?.loads[0]?.pullNPerG).toBeCloseTo(0.001 * g * 0.75, 9);
    expect(retention(gram(0.01), line, forward)).toBeNull();
  });

  it('tells what gives of the fixing that gives, not of another', () => {
    const joined = square.map((one) => ({ ...one, pullBy: one.id === 'c' ? 'insert' : 'bolt' }) as const);
    const held = retention(mass(0.3, 0.3, 0), joined, forward);
    expect(held).toMatchObject({ weakest: 'c', by: 'insert' });
  });

  it('turns about the middle of the group: moment times distance over the sum of squares', () => {
    const up = [{ x: 0, y: 1, z: 0 }];
    const held = retention(mass(0.5, 0.2, 0), square, up);
    const b = held?.loads.find(({ fixing }) => fixing === 'b');
    const spin = (8 * g * 0.3) / (4 * (0.04 + 0.04));
    expect(b?.shearNPerG).toBeCloseTo(Math.hypot(spin * 0.2, (8 * g) / 4 + spin * 0.2), 6);
  });

  it('balances forces and moments whatever the fixings: statics', () => {
    const odd = [rated('a', 0, 0.1), rated('b', 0.7, 0.02), rated('c', 0.5, 0.4), rated('d', 0.1, 0.3)];
    const held = retention(mass(0.3, 0.2, 0), odd, forward);
    const sum = (lever: (id: string) => number) =>
      held?.loads.reduce((all, load) => all + load.pullNPerG * lever(load.fixing), 0);
    const at = (id: string) => odd.find((fixing) => fixing.id === id) ?? { xM: 0, yM: 0 };
    expect(byStatics.differs(sum(() => 1) ?? 0, 8 * g)).toBeCloseTo(8 * g, 6);
    expect(sum((id) => at(id).xM)).toBeCloseTo(8 * g * 0.3, 6);
    expect(sum((id) => at(id).yM)).toBeCloseTo(8 * g * 0.2, 6);
  });

  it('names the weakest fixing below 20 g, and refuses fixings that can hold no moment', () => {
    const weak = retention(
      mass(0.1, 0.1, 0.05),
      square.map((f) => ({ ...f, pullOutN: 300 })),
    );
    expect(retentionFaults('rear', weak, 20)).toEqual([
      expect.objectContaining({ rule: 'fixings-too-weak', of: ['rear', 'a'], limit: 20, mark: 'mem' }),
    ]);
    for (const few of [
      square.slice(0, 1),
      [],
      [rated('a', 0, 0), rated('b', 0.2, 0.2), rated('c', 0.4, 0.4)],
    ])
      expect(retentionFaults('rear', retention(mass(0.3, 0.1, 0), few), 20)).toEqual([
        expect.objectContaining({ rule: 'board-not-held' }),
      ]);
  });
});
