import { describe, expect, test } from 'vitest';
import { partsFile } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { inVehicle } from '../shop-changes.ts';

const unknown = (remarks: ReturnType<typeof smallPlan>['remarks']) =>
  remarks.filter(({ rule }) => rule === 'charging-unknown');

describe('the charging balance of a job', () => {
  test('with its alternator: three regimes, and nothing to remark', () => {
    const { plan, remarks } = smallPlan();
    // 150 A at the default shares of hot output, 35 % idling and 80 % cruising.
    expect(plan.power.charging.map(({ alternatorA }) => alternatorA)).toEqual([52.5, 120, 0]);
    expect(unknown(remarks)).toEqual([]);
  });

  test('of two alternators is that of both', () => {
    const { plan } = smallPlan(
      inVehicle(
        '  alternator: { part: generator-a, zone: engine-bay }\n',
        '  alternator: { part: generator-a, zone: engine-bay }\n  second: { part: generator-a, zone: engine-bay }\n',
      ),
      inVehicle(
        '  case: {',
        '  charge-2: { from: second.B+, to: battery.POS, size: 4 AWG, length: 1 m }\n  case-2: { from: second.CASE, to: body.engine, size: 4 AWG, length: 300 mm }\n  case: {',
      ),
    );
    expect(plan.power.charging.map(({ alternatorA }) => alternatorA)).toEqual([105, 240, 0]);
  });

  test("reserves end where the vehicle says, else where the battery's maker does, else by the house rule", () => {
    const minutes = (...changes: readonly Change[]) =>
      smallPlan(...changes).plan.power.charging.find(({ name }) => name === 'engine-off')?.reserveMinutes ??
      0;
    const half = minutes();
    const ofPart: Change = [
      partsFile,
      '    capacity: 70 Ah\n',
      '    capacity: 70 Ah\n    reserve-end: 75 %\n',
    ];
    const ofVehicle = inVehicle(
      'battery: { part: battery-a,',
      'battery: { reserve-end: 20 %, part: battery-a,',
    );
    expect(half).toBeGreaterThan(60);
    // A quarter of the charge lasts half as long as half of it does, four fifths 1.6 times as long.
    expect(Math.abs(minutes(ofPart) - half / 2)).toBeLessThanOrEqual(1);
    expect(Math.abs(minutes(ofVehicle) - half * 1.6)).toBeLessThanOrEqual(2);
    expect(minutes(ofPart, ofVehicle)).toBe(minutes(ofVehicle));
  });

  test('without an alternator is not made, and that is told', () => {
    const { plan, remarks } = smallPlan(
      inVehicle('  alternator: { part: generator-a, zone: engine-bay }\n', ''),
      inVehicle('  charge: { from: alternator.B+, to: battery.POS, size: 4 AWG, length: 1 m }\n', ''),
      inVehicle('  case: { from: alternator.CASE, to: body.engine, size: 4 AWG, length: 300 mm }\n', ''),
    );
    expect(plan.power.charging).toEqual([]);
    expect(unknown(remarks)).toEqual([
      expect.objectContaining({
        level: 'caution',
        of: ['wagon'],
        message: expect.stringMatching(/no alternator/),
      }),
    ]);
  });
});
