import { describe, expect, test } from 'vitest';
import { type FuseFault, faultCurrents } from '../../../../lib/plan/power/short/fault-currents.ts';
import { partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { settledPower } from '../settled-power.ts';
import { banked, charged, isolated } from '../two-batteries.ts';

type Change = (content: Written) => void;
const faults = (...changes: readonly Change[]) =>
  faultCurrents(
    settledPower((content) => {
      for (const change of changes) change(content);
    }),
  );
function faultAt(fuse: string, ...changes: readonly Change[]): FuseFault {
  const fault = faults(...changes).get(fuse);
  if (!fault) throw new Error(`No short is known at ${fuse}.`);
  return fault;
}
const inputsOf = ({ faultA }: FuseFault) => faultA?.trace.inputs ?? [];
const input = (fault: FuseFault, name: string) =>
  Number(inputsOf(fault).find((one) => one.name === name)?.value);
const sourcesOf = ({ from }: FuseFault) => from.map(({ source }) => source.source.device.id).toSorted();
const agm = (content: Written) => partIn(content, 'agm', 'battery');

describe('the working of a short', () => {
  test('lists the resistance of each thing on its way, which along a single line add up', () => {
    const fault = faultAt(
      'block.OUT1',
      banked,
      ({ job }) => {
        // One battery, one way: nothing side by side.
        for (const id of ['bank', 'bank-fuse']) delete job.devices[id];
        for (const id of ['bank-tail', 'bank-feed', 'bank-ground']) delete job.links[id];
      },
      ({ vehicle }) => {
        delete vehicle.fitted.alternator;
        delete vehicle.links?.charge;
        delete vehicle.links?.block;
      },
    );
    const own = inputsOf(fault).filter(({ name }) => !['E', 'Rs', 'Rl', 'battery gives'].includes(name));
    expect(own.map(({ name }) => name).toSorted()).toEqual([
      'body',
      'feed',
      'main',
      'main-fuse',
      'vehicle.strap',
    ]);
    const lineOhm = own.reduce((sum, { value }) => sum + Number(value), 0);
    expect(lineOhm).toBeCloseTo(input(fault, 'Rl'), 9);
    // The battery's own by its part, and nothing of the line.
    expect(input(fault, 'Rs')).toBeCloseTo(0.004, 9);
    expect(input(fault, 'E') / (input(fault, 'Rs') + input(fault, 'Rl'))).toBeCloseTo(
      fault.faultA?.value ?? 0,
      6,
    );
    expect(input(fault, 'battery gives')).toBeCloseTo(fault.faultA?.value ?? 0, 6);
    expect(fault.faultA?.trace.citation).toMatch(/IEC 60269/);
  });

  test('has the resistances of sources and of the line apart, also where both are side by side', () => {
    const fault = faultAt('main-fuse', isolated);
    const given = ['battery', 'alternator'].map((id) => input(fault, `${id} gives`));
    expect(given.reduce((sum, one) => sum + one, 0)).toBeCloseTo(fault.faultA?.value ?? 0, 6);
    expect(inputsOf(fault).map(({ name }) => name)).not.toContain('battery');
    expect(input(fault, 'Rs')).toBeGreaterThan(0);
    expect(input(fault, 'Rl')).toBeGreaterThan(0);
    // 4 mohm and 32.9 mohm side by side, by the squares of their shares of the current.
    const wholeA = fault.faultA?.value ?? 0;
    const byHand = (0.004 * (given[0] ?? 0) ** 2 + (14.8 / 450) * (given[1] ?? 0) ** 2) / wholeA ** 2;
    expect(input(fault, 'Rs')).toBeCloseTo(byHand, 9);
  });

  test("gives for each source Ohm's law with what is left at its posts, marked by what it rests on", () => {
    const fault = faultAt('main-fuse', isolated, (content) => {
      content.parts.stated = { ...agm(content), resistance: '6 mohm' };
      content.vehicle.fitted.battery = { part: 'stated', zone: 'engine-bay', side: 'left' };
    });
    for (const { source, currentA } of fault.from) {
      const of = (name: string) => Number(currentA.trace.inputs.find((one) => one.name === name)?.value);
      expect((of('E') - of('U')) / of('Rs')).toBeCloseTo(currentA.value, 6);
      expect(of('E')).toBe(14.8);
      expect(of('Rs')).toBe(source.ohm);
      expect(currentA.trace).toMatchObject({ rule: 'fuse-interrupting', citation: "Ohm's law", unit: 'A' });
    }
    const marks = Object.fromEntries(
      fault.from.map(({ source, currentA }) => [source.source.device.id, currentA.trace.mark]),
    );
    expect(marks).toEqual({ battery: undefined, alternator: 'cp' });
    const names = fault.from.map(({ currentA }) => currentA.trace.inputs.map(({ name }) => name));
    expect(names).toEqual([
      ['E', 'U', 'Rs', 'resistance'],
      ['E', 'U', 'Rs', 'rating', 'times'],
    ]);
  });

  test("names the part's data where its maker states what it gives", () => {
    const fault = faultAt('bank-fuse', banked);
    const own = fault.from.find(({ source }) => source.source.device.id === 'bank');
    expect(own?.currentA.trace).toMatchObject({ citation: "Ohm's law, from the part's data" });
    expect(own?.currentA.trace.mark).toBeUndefined();
    // At the other end of its tail the bank alone is worse than all that comes from the front.
    expect(fault.byMakersA).toBeGreaterThan(0);
    expect(fault.byMakersA).toBeLessThanOrEqual((fault.faultA?.value ?? 0) + 1e-6);
  });
});

describe('a short at a fuse', () => {
  test('is the worse of both its ends, whichever that is', () => {
    const strong = faultAt('second-fuse', isolated);
    expect(strong.at).toBe('second-fuse.OUT');
    expect(sourcesOf(strong)).toEqual(['second']);
    const weak = faultAt('second-fuse', isolated, (content) => {
      content.parts.weak = { ...agm(content), 'short-circuit': '100 A' };
      const { second } = content.job.devices;
      if (second) second.part = 'weak';
    });
    expect(weak.at).toBe('second-fuse.IN');
    expect(sourcesOf(weak)).toEqual(['alternator', 'battery']);
    expect(weak.faultA?.value).toBeLessThan(strong.faultA?.value ?? 0);
  });

  test('arrives by what carries it, not by what only hangs there', () => {
    // Three more leads and the other ways of the block end at the terminal that it comes through.
    expect(faultAt('block.OUT1', isolated).ways.map(({ of }) => of)).toEqual(['board-feed']);
  });

  test('is none at a fuse that no source feeds, joined to the body or to nothing', () => {
    const all = faults(isolated, ({ job }) => {
      job.devices.loose = { part: 'holder', in: 'boot', fuse: '60 A' };
      job.devices.grounded = { part: 'holder', in: 'boot', fuse: '60 A' };
      job.links['loose-lead'] = { from: 'loose.OUT', to: 'loose.IN', wire: 'cable', length: '1 m' };
      job.links['grounded-lead'] = { from: 'grounded.OUT', to: 'body.cargo', wire: 'cable', length: '1 m' };
    });
    expect(all.has('main-fuse')).toBe(true);
    expect(all.has('loose')).toBe(false);
    expect(all.has('grounded')).toBe(false);
  });

  test('is none where there is no source at all', () => {
    const sizing = settledPower(isolated);
    expect(
      faultCurrents({ ...sizing, circuit: { ...sizing.circuit, sources: [], primary: null } }).size,
    ).toBe(0);
  });

  test('returns to the post of the battery where nothing is joined to the body', () => {
    const sizing = settledPower(isolated);
    const post = sizing.circuit.primary?.negative ?? '';
    const cut = (node: string) => (node.startsWith('body') ? post : node);
    const edges = sizing.circuit.edges
      .map((edge) => ({ ...edge, from: cut(edge.from), to: cut(edge.to) }))
      .filter(({ from, to }) => from !== to);
    const fault = faultCurrents({ ...sizing, circuit: { ...sizing.circuit, edges } }).get('main-fuse');
    // Without strap and body there is less in its way.
    expect(fault?.faultA?.value).toBeGreaterThan(faultAt('main-fuse', isolated).faultA?.value ?? 0);
  });

  test('is driven by the sources of its own side of a charger, at their voltage', () => {
    const of24V = (content: Written) => {
      content.vehicle['system-voltage'] = '24 V';
      content.parts.small = { ...agm(content), voltage: '12 V' };
      agm(content).voltage = '24 V';
      const { second } = content.job.devices;
      if (second) second.part = 'small';
    };
    const front = faultAt('main-fuse', charged, of24V);
    expect(input(front, 'E')).toBeCloseTo(29.6, 9);
    expect(sourcesOf(front)).toEqual(['alternator', 'battery']);
    const rear = faultAt('board-fuse', charged, of24V);
    expect(input(rear, 'E')).toBeCloseTo(14.8, 9);
    expect(sourcesOf(rear)).toEqual(['charger', 'second']);
    expect(input(rear, 'second gives') + input(rear, 'charger gives')).toBeCloseTo(
      rear.faultA?.value ?? 0,
      6,
    );
  });
});

describe('a lithium battery of which nobody states what it gives', () => {
  const lithium: Change = (content) => {
    content.parts.lithium = { ...agm(content), chemistry: 'lithium', resistance: undefined };
    const { second } = content.job.devices;
    if (second) second.part = 'lithium';
  };
  const unknownOf = ({ unknown }: FuseFault) => unknown.map(({ source }) => source.device.id);

  test('is told at every fuse that it reaches, beside what the others give', () => {
    for (const fuse of ['main-fuse', 'second-fuse', 'block.OUT1'])
      expect(unknownOf(faultAt(fuse, isolated, lithium)), fuse).toEqual(['second']);
    const told = faultAt('block.OUT1', isolated, lithium);
    expect(sourcesOf(told)).toEqual(['alternator', 'battery']);
    expect(told.faultA?.value).toBeGreaterThan(0);
  });

  test('is told where it is all that reaches the fuse, and no current is', () => {
    const alone = faultAt('board-fuse', charged, lithium, ({ job }) => {
      delete job.links['charger-out'];
    });
    expect(alone).toMatchObject({ faultA: null, from: [], ways: [], byMakersA: 0 });
    expect(unknownOf(alone)).toEqual(['second']);
  });

  test('is not told before a charger, which lets nothing back', () => {
    expect(unknownOf(faultAt('main-fuse', charged, lithium))).toEqual([]);
  });
});
