import { describe, expect, test } from 'vitest';
import { buildCircuit } from '../../../../lib/plan/power/circuit/circuit.ts';
import { type ShortSource, shortSources } from '../../../../lib/plan/power/short/short-sources.ts';
import { jobOf, partIn } from '../../../rules/case.ts';
import { type Written, written } from '../../../rules/content.ts';
import { banked, charged } from '../two-batteries.ts';

/** What each source of the small job gives into a short, by its device. */
function given(change: (content: Written) => void): Readonly<Record<string, Omit<ShortSource, 'source'>>> {
  const content = written();
  change(content);
  const job = jobOf(content);
  const circuit = buildCircuit(job, new Map(job.devices.map((device) => [device.id, device])));
  return Object.fromEntries(
    shortSources(job, circuit.sources).map(({ source, ...rest }) => [source.device.id, rest]),
  );
}
const battery = (change: Partial<ReturnType<typeof agm>>) => (content: Written) => {
  Object.assign(agm(content), change);
};
const agm = (content: Written) => partIn(content, 'agm', 'battery');

// A sound charging system shows at most 14.8 V; lowest resistances by chemistry: common practice, no source.
describe('a battery gives into a short', () => {
  test('what its chemistry may at the most, where nobody says more', () => {
    expect(given(() => {}).battery).toEqual({
      emfV: 14.8,
      ohm: 0.002,
      basis: 'assumed',
      from: [['lowest resistance', 0.002, 'ohm']],
    });
    expect(given(battery({ chemistry: 'flooded' })).battery).toMatchObject({ ohm: 0.0045, basis: 'assumed' });
  });

  test('nothing that is guessed, where it is lithium', () => {
    expect(given(battery({ chemistry: 'lithium' })).battery).toEqual({
      emfV: 14.8,
      ohm: null,
      basis: 'assumed',
      from: [],
    });
  });

  test('what its own resistance lets through, which for lithium is known then as well', () => {
    const stated = { ohm: 0.006, basis: 'stated', from: [['resistance', 0.006, 'ohm']] };
    expect(given(battery({ resistance: '6 mohm' })).battery).toMatchObject(stated);
    expect(given(battery({ chemistry: 'lithium', resistance: '6 mohm' })).battery).toMatchObject(stated);
  });

  test('what its chemistry may, where its resistance is written as none: a short would know no bound', () => {
    expect(given(battery({ resistance: '0 ohm' })).battery).toMatchObject({ ohm: 0.002, basis: 'assumed' });
  });

  test('what its maker says that it gives, before all else', () => {
    // 14.8 V that let 3.7 kA flow stand behind 4 mohm.
    const maker = { ohm: expect.closeTo(0.004, 12), basis: 'maker', from: [['short-circuit', 3700, 'A']] };
    expect(given(battery({ 'short-circuit': '3.7 kA', resistance: '1 mohm' })).battery).toMatchObject(maker);
    expect(given(battery({ 'short-circuit': '3.7 kA', chemistry: 'lithium' })).battery).toMatchObject(maker);
  });
});

describe('in a system of 24 V', () => {
  const of24V = (content: Written) => {
    content.vehicle['system-voltage'] = '24 V';
    agm(content).voltage = '24 V';
  };

  test('a battery is two of 12 V in series: twice the voltage, twice the resistance', () => {
    expect(given(of24V).battery).toMatchObject({
      emfV: expect.closeTo(29.6, 9),
      ohm: expect.closeTo(0.004, 12),
    });
    expect(given(of24V).alternator?.emfV).toBeCloseTo(29.6, 9);
  });

  test('a battery of 12 V behind a charger stays one, and so does what the charger gives', () => {
    const found = given((content) => {
      charged(content);
      of24V(content);
      content.parts.small = { ...agm(content), voltage: '12 V' };
      const second = content.job.devices.second;
      if (second) second.part = 'small';
    });
    expect(found.battery).toMatchObject({ ohm: expect.closeTo(0.004, 12) });
    expect(found.second?.emfV).toBeCloseTo(14.8, 9);
    // 14.4 V at its output is a 12 V system's; 30 A are all that its electronics let through.
    expect(found.charger).toEqual({
      emfV: expect.closeTo(14.8, 9),
      ohm: expect.closeTo(14.8 / 30, 9),
      basis: 'maker',
      from: [['limit', 30, 'A']],
    });
  });
});

test('an alternator gives a multiple of its rating at its posts', () => {
  // Three times 150 A at 14.8 V: common practice, no source.
  expect(given(() => {}).alternator).toEqual({
    emfV: 14.8,
    ohm: expect.closeTo(14.8 / 450, 12),
    basis: 'assumed',
    from: [
      ['rating', 150, 'A'],
      ['times', 3, ''],
    ],
  });
});

test('a bank of capacitors gives what its series resistance lets through', () => {
  expect(given(banked).bank).toEqual({
    emfV: 14.8,
    ohm: 0.002,
    basis: 'maker',
    from: [['series resistance', 0.002, 'ohm']],
  });
});

test('what is no part of the catalogue gives nothing that is known, nor does any other part', () => {
  const job = jobOf(written());
  const [source] = buildCircuit(job, new Map(job.devices.map((device) => [device.id, device]))).sources;
  if (!source) throw new Error('The job has a source.');
  const of = (spec: typeof source.device.spec) =>
    shortSources(job, [{ ...source, device: { ...source.device, spec } }]);
  expect(of(null)).toEqual([]);
  expect(of(job.parts.woofer ?? null)).toEqual([]);
});

test('each source is told once, and nothing else gives into a short', () => {
  expect(Object.keys(given(charged)).toSorted()).toEqual(['alternator', 'battery', 'charger', 'second']);
});
