import { describe, expect, test } from 'vitest';
import type { PlanPower } from '../../../lib/model/plan/index.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { planCharging } from '../../../lib/plan/power/charging.ts';
import { buildCircuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { circuitPaths } from '../../../lib/plan/power/circuit/circuit-paths.ts';
import { deviceLoads, supplyOf } from '../../../lib/plan/power/device-loads.ts';
import { dropParts } from '../../../lib/plan/power/drop-parts.ts';
import { boxOfSpace, planHeat } from '../../../lib/plan/power/heat.ts';
import { highestVoltageV } from '../../../lib/plan/power/highest-voltage.ts';
import { faultText } from '../../../lib/plan/power/network-fault-text.ts';
import { remarkFaults } from '../../../lib/plan/power/network-remarks.ts';
import { sizingVoltageV, systemShare } from '../../../lib/plan/power/sizing-voltage.ts';
import { crossing, supplyGroups } from '../../../lib/plan/power/supply-groups.ts';
import { setPointV } from '../../../lib/plan/power/supply-spread.ts';
import type { NetworkFault } from '../../../lib/power/network/network-fault.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { byId, jobOf, partIn } from '../../rules/case.ts';
import { type Written, written } from '../../rules/content.ts';
import { charged, isolated } from './two-batteries.ts';

function supply(change: (content: Written) => void = () => {}) {
  const content = written();
  change(content);
  const job = jobOf(content);
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const circuit = buildCircuit(job, devices);
  return { job, circuit, paths: circuitPaths(circuit) };
}
const alternator = (content: Written) => partIn(content, 'generator', 'alternator');
const { rules: usual } = supply().job;
const value = (name: keyof typeof usual) => usual[name].value;

describe('the voltage of a system', () => {
  const highest = (change?: (content: Written) => void) => highestVoltageV(supply(change).job);
  const sizing = (change?: (content: Written) => void) => sizingVoltageV(supply(change).job);

  test('at its highest is what a sound charging system shows, or what its alternator holds where that is more', () => {
    const most = value('check-in-charging-most');
    expect(highest()).toBe(most);
    expect(highest((content) => (alternator(content)['set-point'] = `${most + 0.4} V`))).toBeCloseTo(
      most + 0.4,
      9,
    );
    expect(highest((content) => (alternator(content)['set-point'] = '13 V'))).toBe(most);
  });

  test('at its highest is the high end of a voltage that varies, though one alternator of two alone does', () => {
    const varies = (content: Written) => {
      alternator(content)['variable-voltage'] = true;
      content.parts.steady = { ...alternator(content), 'variable-voltage': false };
      content.vehicle.fitted.second = { part: 'steady', zone: 'engine-bay' };
      content.vehicle.links = {
        ...content.vehicle.links,
        'charge-2': { from: 'second.B+', to: 'battery.POS', size: '4 AWG', length: '1 m' },
        'block-2': { from: 'second.CASE', to: 'body.engine', size: '4 AWG', length: '300 mm' },
      };
    };
    expect(highest(varies)).toBe(Math.max(value('check-in-charging-most'), value('voltage-variable-high')));
    expect(sizing(varies)).toBe(value('voltage-variable'));
  });

  test('that sizes are chosen at is never above what the alternator is set to, or was measured', () => {
    expect(sizing()).toBe(value('voltage-sizing'));
    expect(sizing((content) => (alternator(content)['set-point'] = '13.2 V'))).toBe(13.2);
    expect(sizing((content) => (alternator(content)['set-point'] = '15 V'))).toBe(value('voltage-sizing'));
    expect(sizing(({ vehicle }) => (vehicle['charging-voltage'] = '13 V'))).toBe(13);
  });

  test('is in the proportion of its island: half behind a charger of 12 V in a vehicle of 24 V', () => {
    const { job, paths } = supply((content) => {
      charged(content);
      content.vehicle['system-voltage'] = '24 V';
      content.parts['agm-24'] = { ...partIn(content, 'agm', 'battery'), voltage: '24 V' };
      Object.assign(content.vehicle.fitted, {
        battery: { part: 'agm-24', zone: 'engine-bay', side: 'left' },
      });
    });
    expect(systemShare(job, paths.islands, 'battery.POS')).toBe(1);
    expect(systemShare(job, paths.islands, 'second.POS')).toBe(0.5);
    expect(systemShare(job, paths.islands, 'nowhere')).toBe(1);
  });

  test('as its regulator holds it, weak and strong', () => {
    const held = (change: (content: Written) => void, end?: 'weak' | 'strong') => {
      const { job } = supply(change);
      const { spec } = byId(job.devices, 'alternator');
      return spec?.kind === 'alternator' ? setPointV(job, spec, end) : Number.NaN;
    };
    const told = (content: Written) => (alternator(content)['set-point'] = '14.2 V');
    expect([held(() => {}), held(told)]).toEqual([value('voltage-sizing'), 14.2]);
    expect(held(told, 'weak')).toBe(value('voltage-sizing'));
    expect(held(told, 'strong')).toBe(value('voltage-rated'));
    const varies = (content: Written) => (alternator(content)['variable-voltage'] = true);
    expect(held(varies, 'weak')).toBe(value('voltage-variable-low'));
    expect(held(varies, 'strong')).toBe(value('voltage-variable-high'));
    expect(held(varies)).toBe(value('voltage-variable'));
    expect(held(({ vehicle }) => (vehicle['charging-voltage'] = '13.9 V'), 'weak')).toBe(13.9);
  });
});

describe('what a device draws', () => {
  const load = (id: string, change?: (content: Written) => void) => {
    const { job, paths } = supply(change);
    const book = new PlanBook();
    return {
      ...byId(
        deviceLoads(job, paths, [], book).map((one) => ({ ...one, id: one.item })),
        id,
      ),
      traces: book.traces(),
    };
  };

  test('is what its part says, else its fuse, and that is told', () => {
    expect(load('dsp')).toMatchObject({ fuseA: 5, ratedA: 1, musicA: 1, idleA: 1 });
    expect(load('dsp')).not.toHaveProperty('assumed');
    expect(load('dsp').traces['power.loads.dsp.ratedA']).toMatchObject({
      origin: 'given',
      rule: 'device-draw',
      citation: "the part's data",
    });
    expect(load('dsp').traces['power.loads.dsp.fuseA']).toMatchObject({
      origin: 'given',
      rule: 'device-fuse',
    });
    const silent = load('dsp', (content) => delete partIn(content, 'dsp', 'processor').supply.draw);
    expect(silent).toMatchObject({ ratedA: 5, idleA: 0, assumed: ['a draw of 5 A, its fuse'] });
    expect(silent.traces['power.loads.dsp.ratedA']?.origin).toBe('assumed');
  });

  test('of an amplifier of no known class is that of class AB, which is told', () => {
    expect(load('amp').assumed).toEqual(['an amplifier of class AB']);
    const known = load(
      'amp',
      (content) => (partIn(content, 'two-channel', 'amplifier').supply['amplifier-class'] = 'class-d'),
    );
    expect(known).not.toHaveProperty('assumed');
    expect(known.idleA).toBe(value('idle-class-d'));
    expect(
      load(
        'amp',
        (content) => (partIn(content, 'two-channel', 'amplifier').supply.efficiency = { full: '60 %' }),
      ),
    ).not.toHaveProperty('assumed');
  });

  test('at idle is what its part says of that', () => {
    const idle = load('dsp', (content) => (partIn(content, 'dsp', 'processor').supply.idle = '400 mA'));
    expect(idle).toMatchObject({ idleA: 0.4, ratedA: 1 });
    const amp = load(
      'amp',
      (content) => (partIn(content, 'two-channel', 'amplifier').supply.idle = '700 mA'),
    );
    expect(amp.idleA).toBe(0.7);
  });

  test('is asked of what draws from the supply alone', () => {
    const { job } = supply(charged);
    const of = (id: string) => supplyOf(byId(job.devices, id).spec);
    expect(of('charger')).toMatchObject({ type: 'regulated', 'fuses-fitted': 0 });
    expect(of('charger')).not.toHaveProperty('efficiency');
    expect(of('dsp')).toMatchObject({ fuse: 5 });
    expect([of('tweeter'), of('main-fuse'), supplyOf(null)]).toEqual([null, null, null]);
  });
});

describe('devices and boards whose ground is held against their feed', () => {
  test('are those of the job that draw current, then its boards', () => {
    const { job } = supply(({ vehicle }) => (vehicle.fitted.head = { part: 'radio', zone: 'cabin' }));
    expect(supplyGroups(job).map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'device amp',
      'device dsp',
      'device radio',
      'board main',
    ]);
  });

  test('are fed and grounded by the wires that cross from them to the rest, whichever way round they are written', () => {
    const { job } = supply();
    const wire = (id: string, role: 'power' | 'ground', from: string, to: string) => ({ id, role, from, to });
    const wires = [
      wire('feed', 'power', 'block.OUT1', 'amp.B+'),
      wire('back', 'power', 'amp.B+', 'block.OUT2'),
      wire('ground', 'ground', 'amp.GND', 'ground.G1'),
      wire('body', 'ground', 'body.cargo', 'amp.GND'),
      wire('board', 'ground', 'ground.G0', 'body.cargo'),
      wire('inside', 'power', 'block.OUT3', 'dsp.B+'),
      wire('main', 'power', 'main-fuse.OUT', 'block.IN'),
    ];
    const [amp, , , main] = supplyGroups(job);
    if (!amp || !main) throw new Error('There are four.');
    const of = (group: typeof amp, role: 'power' | 'ground') =>
      crossing(job, wires, role, group).map(({ id }) => id);
    expect(of(amp, 'power')).toEqual(['feed', 'back']);
    expect(of(amp, 'ground')).toEqual(['ground', 'body']);
    expect(of(main, 'power')).toEqual(['main']);
    expect(of(main, 'ground')).toEqual(['body', 'board']);
  });
});

describe('a network that can not be computed', () => {
  const fault = (
    name: NetworkFault['fault'],
    of: readonly string[],
    nodes: readonly string[] = [],
  ): NetworkFault => ({
    ...{ fault: name, of: [...of], nodes: [...nodes] },
    ...{ message: `${of.join(' ')} is wrong`, remedy: 'mend it' },
  });

  test('is told by what its elements stand for', () => {
    expect(faultText(fault('network-floating', ['amp:load'], ['amp.GND']), 'battery.NEG')).toBe(
      'amp.GND has no way to battery.NEG but through a device that draws current',
    );
    expect(
      faultText(
        fault('network-floating', ['amp:load'], ['amp.GND', 'dsp.GND', 'amp:conductor']),
        'battery.NEG',
      ),
    ).toMatch(/^amp\.GND and dsp\.GND have no way/);
    expect(faultText(fault('network-zero-resistance-loop', ['one:conductor', 'two:conductor']), 'x')).toMatch(
      /^one and two form a loop/,
    );
    expect(faultText(fault('network-stiff-sources-in-parallel', ['battery:emf', 'second:emf']), 'x')).toMatch(
      /^battery and second are sources without resistance/,
    );
    expect(faultText(fault('network-not-a-number', ['amp:load']), 'x')).toBe('amp is wrong');
    const many = Array.from({ length: 9 }, (_, k) => `w${k}:conductor`);
    expect(faultText(fault('network-zero-resistance-loop', many), 'x')).toMatch(
      /^w0, w1, w2, w3, w4, w5 and 3 more form/,
    );
  });

  test('is told once, at the link or device of the job that it names, with the points at which it is so', () => {
    const told = (...faults: Parameters<typeof remarkFaults>[1][number][1][]) => {
      const found = supply();
      const book = new PlanBook();
      const [first = [], second = []] = faults;
      remarkFaults(found, [['rest', first] as const, ['idle', second] as const], book);
      return book
        .remarks()
        .map(({ remark, path, file }) => ({ rule: remark.rule, of: remark.of, path, file }));
    };
    const loop = fault('network-zero-resistance-loop', ['vehicle.charge:conductor', 'amp-feed:conductor']);
    expect(told([loop], [loop])).toEqual([
      {
        ...{ rule: 'network-zero-resistance-loop', of: ['amp-feed', 'vehicle.charge', 'rest', 'idle'] },
        ...{ path: '/links/amp-feed', file: 'job' },
      },
    ]);
    // A device of the job goes before a link of the vehicle.
    expect(told([fault('network-floating', ['vehicle.charge:conductor', 'dsp:load'], ['dsp.GND'])])).toEqual([
      {
        ...{ rule: 'network-floating', of: ['dsp', 'vehicle.charge', 'rest'] },
        ...{ path: '/devices/dsp', file: 'job' },
      },
    ]);
    expect(told([fault('network-not-a-number', ['nothing:load'])])).toEqual([
      { rule: 'network-not-a-number', of: ['network', 'rest'], path: '/links', file: undefined },
    ]);
  });
});

describe('the parts of a drop', () => {
  const element = (
    of: string,
    kind: 'conductor' | 'fuse' | 'joint' | 'load',
    from: string,
    to: string,
    dropV: number,
  ) => ({
    ...{ id: `${of}:${kind}`, of, kind, model: 'resistance' as const, from, to, ohm: 0.1 },
    ...{ dropV, currentA: 10, heatW: 0 },
  });
  const between = dropParts({
    ...{ name: 'rated-power', title: '', state: 'solved', referenceNode: 'z', residualA: 0, nodes: [] },
    elements: [
      element('feed', 'conductor', 'a', 'b', 0.2),
      element('main', 'fuse', 'b', 'c', 0.1),
      element('feed', 'joint', 'c', 'd', 0.1),
      element('body', 'joint', 'd', 'e', 0.3),
      element('amp', 'load', 'e', 'a', 12),
    ],
  });

  test('are conductors, fuses, joints and the body, the largest first, and no load', () => {
    expect(between('a', 'e').map(({ kind, of, dropV }) => `${kind} ${of} ${dropV.toFixed(1)}`)).toEqual([
      'body body 0.3',
      'conductor feed 0.2',
      'joint feed 0.1',
      'fuse main 0.1',
    ]);
    expect(between('e', 'a').map(({ dropV }) => dropV.toFixed(1))).toEqual(['-0.1', '-0.1', '-0.2', '-0.3']);
    expect(between('a', 'a')).toEqual([]);
    expect(between('a', 'nowhere')).toEqual([]);
  });
});

describe('the heat of a space', () => {
  test('is the losses of what stands on its boards, while music plays', () => {
    const { job, paths } = supply();
    const element = (of: string, dropV: number, currentA: number) => ({
      ...{ id: `${of}:load`, of, kind: 'load' as const, model: 'power' as const, powerW: dropV * currentA },
      ...{ from: `${of}.B+`, to: `${of}.GND`, dropV, currentA, heatW: 0 },
    });
    const power = (name: 'music' | 'idle', state: 'solved' | 'no-solution' = 'solved') => {
      const at = { title: '', state, referenceNode: 'z', residualA: 0, nodes: [] };
      const elements = [element('dsp', 13, 1), element('radio', 13, 3), element('amp', 13, 2)];
      return { ...samplePlan().power, points: [{ name, ...at, elements }], loads: [] };
    };
    const [space, ...more] = planHeat(job, paths, power('music'), new PlanBook());
    expect(more).toEqual([]);
    // The radio stands in the dash. What no load tells the output of loses all that it takes.
    expect(space?.items.map(({ item, inputW, lossW }) => [item, inputW, lossW])).toEqual([
      ['amp', 26, 26],
      ['dsp', 13, 13],
    ]);
    expect(space).toMatchObject({ space: 'well', lossW: 39 });
    expect(space?.airC).toBeGreaterThan(space?.outsideC ?? Number.NaN);
    expect(planHeat(job, paths, power('idle'), new PlanBook())).toEqual([]);
    expect(planHeat(job, paths, power('music', 'no-solution'), new PlanBook())).toEqual([]);
  });

  test('leaves by the box round it: its plane stands where one way of it goes up or down', () => {
    const [board] = supply().job.boards;
    if (!board) throw new Error('There is a board.');
    const box = (right: 'up' | 'down' | 'front', upward: 'up' | 'down' | 'left') =>
      boxOfSpace({ ...board.space, right, upward });
    expect(box('front', 'up')).toMatchObject({ widthM: 0.8, heightM: 0.5, plane: 'standing' });
    expect(box('front', 'down').plane).toBe('standing');
    expect(box('front', 'left').plane).toBe('lying');
    expect(box('up', 'left')).toMatchObject({ widthM: 0.5, heightM: 0.8, plane: 'standing' });
    expect(box('down', 'left')).toMatchObject({ widthM: 0.5, heightM: 0.8, plane: 'standing' });
  });
});

describe('the charging balance', () => {
  type Element = PlanPower['points'][number]['elements'][number];
  const load = (of: string, from: string, currentA: number): Element => ({
    ...{
      id: `${of}:load`,
      of,
      kind: 'load',
      model: 'power',
      from,
      to: 'body',
      powerW: 100,
      dropV: 13,
      heatW: 0,
    },
    currentA,
  });
  const store = (of: string, currentA: number): Element => ({
    ...{
      id: `${of}:emf`,
      of,
      kind: 'source',
      model: 'two-slope',
      from: `${of}.POS`,
      to: `${of}.NEG`,
      emfV: 12.6,
    },
    ...{ ohm: 0.01, dropV: 13, heatW: 0, currentA },
  });
  const balance = (change: (content: Written) => void, more: readonly Element[] = []) => {
    const { job, circuit, paths } = supply((content) => {
      content.vehicle['vehicle-load'] = '45 A';
      change(content);
    });
    const elements = [
      load('vehicle', 'battery.POS', 45),
      load('amp', 'amp.B+', 20),
      store('battery', 5),
      ...more,
    ];
    const at = { title: '', state: 'solved' as const, referenceNode: 'battery.NEG', residualA: 0, nodes: [] };
    // With the engine off the batteries give what they take while it runs.
    const off = elements.map((one) => (one.model === 'two-slope' ? { ...one, currentA: -10 } : one));
    const points = (['music', 'cruise', 'engine-off'] as const).map((name) => {
      return { name, ...at, elements: name === 'engine-off' ? off : elements };
    });
    const book = new PlanBook();
    const charging = planCharging(job, { circuit, islands: paths.islands }, points, book);
    return { charging, told: book.remarks().map(({ remark, path, file }) => ({ ...remark, path, file })) };
  };
  const of = (found: ReturnType<typeof balance>, name: string) =>
    found.charging.find((one) => one.name === name);

  test('counts what the vehicle and what the job draws, against the share that the alternator gives', () => {
    const found = balance(() => {});
    // 150 A: the usual shares of idle and cruise, common practice, no source.
    expect(of(found, 'idle')?.alternatorA).toBeCloseTo(150 * value('alternator-idle-share'), 9);
    expect(of(found, 'cruise')?.alternatorA).toBeCloseTo(150 * value('alternator-cruise-share'), 9);
    for (const { vehicleA, averageA } of found.charging) expect([vehicleA, averageA]).toEqual([45, 20]);
    expect(of(found, 'engine-off')).toMatchObject({ alternatorA: 0 });
    expect(of(found, 'engine-off')).not.toHaveProperty('recharges');
    expect(of(found, 'idle')).not.toHaveProperty('chargers');
    expect(of(found, 'idle')?.recharges?.map(({ battery, through }) => [battery, through])).toEqual([
      ['battery', []],
    ]);
    expect(found.told).toEqual([]);
  });

  test('counts a charger with the engine running, what hangs behind it with the engine off', () => {
    const behind = [load('charger', 'charger.IN+', 12), load('dsp', 'dsp.B+', 3), store('second', 2)];
    const found = balance(charged, behind);
    expect(of(found, 'cruise')?.averageA).toBeCloseTo(12, 9);
    expect(of(found, 'engine-off')?.averageA).toBeCloseTo(20 + 12 + 3, 9);
    const [charger, ...more] = of(found, 'cruise')?.chargers ?? [];
    expect(more).toEqual([]);
    expect(charger).toMatchObject({ item: 'charger', currentA: 12 });
    expect(charger?.flatA).toBeGreaterThan(0);
    const second = of(found, 'cruise')?.recharges?.find(({ battery }) => battery === 'second');
    expect(second?.through).toEqual(['charger']);
  });

  test('tells the relay that a battery is charged through', () => {
    const found = balance(isolated, [store('second', 2)]);
    const through = of(found, 'idle')?.recharges?.map(({ battery, through: by }) => [battery, by]);
    expect(through).toEqual([
      ['second', ['isolator']],
      ['battery', []],
    ]);
  });

  test('can not be made without an alternator, which is told of the vehicle', () => {
    const found = balance(({ vehicle }) => {
      delete vehicle.fitted.alternator;
      const { charge: _charge, block: _block, ...links } = vehicle.links ?? {};
      vehicle.links = links;
    });
    expect(found.charging).toEqual([]);
    expect(found.told).toEqual([
      expect.objectContaining({ rule: 'charging-unknown', of: ['wagon'], path: '/fitted', file: 'vehicle' }),
    ]);
  });
});
