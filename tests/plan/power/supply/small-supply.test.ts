import { describe, expect, test } from 'vitest';
import { ratedPointName } from '../../../../lib/model/operating-points.ts';
import type { PlanPower } from '../../../../lib/model/plan/index.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { planCranking } from '../../../../lib/plan/power/cranking.ts';
import { deviceLoads } from '../../../../lib/plan/power/device-loads.ts';
import { dropParts } from '../../../../lib/plan/power/drop-parts.ts';
import { highestVoltageV } from '../../../../lib/plan/power/highest-voltage.ts';
import { planPower } from '../../../../lib/plan/power/plan-power.ts';
import { sizingVoltageV } from '../../../../lib/plan/power/sizing-voltage.ts';
import { crossing, supplyGroups } from '../../../../lib/plan/power/supply-groups.ts';
import { setPointV } from '../../../../lib/plan/power/supply-spread.ts';
import { redone } from '../../../publish/workings/redo.ts';
import { byId, entry, jobOf, one, partIn } from '../../../rules/case.ts';
import { type Written, written } from '../../../rules/content.ts';
import { settledPower } from '../settled-power.ts';
import { banked, charged, isolated } from '../two-batteries.ts';

type Change = (content: Written) => void;
const none: Change = () => {};
/** Cable to cut the supply side from. */
const cabled: Change = ({ parts }) => {
  parts.cable = {
    kind: 'wire',
    title: '4 AWG',
    size: '4 AWG',
    insulation: '105 C',
    colour: 'RD',
    for: ['power', 'ground'],
  };
};
function planned(change: Change = none) {
  const sizing = settledPower((content) => {
    cabled(content);
    change(content);
  });
  const book = new PlanBook();
  const power = planPower(sizing, sizing, book);
  return { sizing, power, traces: book.traces(), placed: book.remarks() };
}
/** What devices draw, worked out anew. */
function loads(change: Change = none) {
  const { job, paths } = settledPower(change);
  const book = new PlanBook();
  const own = deviceLoads(job, paths, [], book);
  return { of: (id: string) => one(own, ({ item }) => item === id), traces: book.traces() };
}
const point = ({ points }: Pick<PlanPower, 'points'>, name: string) =>
  one(points, (each) => each.name === name);
const drops = ({ drops: all }: Pick<PlanPower, 'drops'>, name: string) =>
  all.filter((each) => each.point === name);
const readJob = (change: Change = none) => {
  const content = written();
  change(content);
  return jobOf(content);
};

describe('what a device draws', () => {
  test('is what its part says, with where that comes from', () => {
    const { of, traces } = loads();
    expect(of('dsp')).toMatchObject({ fuseA: 5, ratedA: 1, musicA: 1, idleA: 1, powerW: 0 });
    expect(of('dsp')).not.toHaveProperty('assumed');
    expect(of('dsp')).not.toHaveProperty('musicDuty');
    expect(traces['power.loads.dsp.ratedA']).toMatchObject({
      origin: 'given',
      rule: 'device-draw',
      citation: "the part's data",
    });
    expect(traces['power.loads.dsp.fuseA']).toMatchObject({ origin: 'given', rule: 'device-fuse' });
    expect(traces['power.loads.dsp.idleA']).toMatchObject({ origin: 'given' });
  });

  test('is its fuse, where its maker says no more', () => {
    const { of, traces } = loads((content) => {
      delete partIn(content, 'dsp', 'processor').supply.draw;
    });
    expect(of('dsp')).toMatchObject({ ratedA: 5, idleA: 0, assumed: ['a draw of 5 A, its fuse'] });
    expect(traces['power.loads.dsp.ratedA']).toMatchObject({ origin: 'assumed' });
    expect(traces['power.loads.dsp.idleA']).toMatchObject({ origin: 'assumed', mark: 'cp' });
  });

  test('of an amplifier of no known class is that of class AB, which is told; of a known one it is not', () => {
    expect(loads().of('amp').assumed).toEqual(['an amplifier of class AB']);
    const known = loads((content) => {
      partIn(content, 'two-channel', 'amplifier').supply['amplifier-class'] = 'class-d';
    });
    expect(known.of('amp')).not.toHaveProperty('assumed');
    // Common practice, no source: 1 to 2 A of class AB without a signal, 0.5 to 1 A of class D.
    expect(known.of('amp').idleA).toBeLessThan(loads().of('amp').idleA);
    const told = loads((content) => {
      partIn(content, 'two-channel', 'amplifier').supply.idle = '700 mA';
    });
    expect(told.of('amp').idleA).toBeCloseTo(0.7, 9);
    expect(told.traces['power.loads.amp.idleA']).toMatchObject({ origin: 'given' });
  });

  // By hand: two channels of 75 W over 0.55 and 13.8 V are 19.76 A; all common practice.
  test('of an amplifier follows from what its channels give', () => {
    const { power, sizing } = planned();
    const amp = one(power.loads, ({ item }) => item === 'amp');
    expect(amp.powerW).toBeCloseTo(150, 6);
    expect(amp.ratedA).toBeCloseTo(150 / 0.55 / 13.8, 6);
    // Half of its power is bass, at one third; the other half music, at one eighth.
    expect(amp.musicDuty).toBeCloseTo((1 / 3 + 1 / 8) / 2, 3);
    expect(sizing.loads.map(({ item }) => item).toSorted()).toEqual(['amp', 'dsp', 'radio']);
  });
});

describe('the voltage that sizes are chosen at, and the highest that there is', () => {
  const alternator =
    (own: object): Change =>
    (content) => {
      Object.assign(partIn(content, 'generator', 'alternator'), own);
    };
  const second: Change = ({ parts, vehicle }) => {
    const generator = parts.generator;
    if (generator?.kind === 'alternator') parts.other = { ...generator };
    vehicle.fitted.other = { part: 'other', zone: 'engine-bay' };
  };

  // House rules, common practice: 13.8 V, 12.5 V where charging varies, up to 14.8 V at check-in and 15 V where it varies.
  test('are by the house rules, lower and higher where the alternator varies or is set otherwise', () => {
    expect(sizingVoltageV(readJob())).toBe(13.8);
    expect(sizingVoltageV(readJob(alternator({ 'set-point': '13.5 V' })))).toBe(13.5);
    expect(sizingVoltageV(readJob(alternator({ 'set-point': '14.4 V' })))).toBe(13.8);
    expect(sizingVoltageV(readJob(alternator({ 'variable-voltage': true })))).toBe(12.5);
    expect(highestVoltageV(readJob())).toBe(14.8);
    expect(highestVoltageV(readJob(alternator({ 'set-point': '15.2 V' })))).toBe(15.2);
    const one: Change = (content) => {
      second(content);
      alternator({ 'variable-voltage': true })(content);
    };
    // One of two that varies is enough.
    expect(highestVoltageV(readJob(one))).toBe(15);
    expect(sizingVoltageV(readJob(one))).toBe(12.5);
  });

  test('a regulator holds what was measured, what its part says, or what the house says for hot idle', () => {
    const held = (own: object, end?: 'weak' | 'strong', vehicleV?: `${number} V`) => {
      const job = readJob((content) => {
        alternator(own)(content);
        if (vehicleV !== undefined) content.vehicle['charging-voltage'] = vehicleV;
      });
      const spec = byId(job.devices, 'alternator').spec;
      return spec?.kind === 'alternator' ? setPointV(job, spec, end) : Number.NaN;
    };
    expect([held({}), held({}, 'weak'), held({}, 'strong')]).toEqual([13.8, 13.8, 14.4]);
    const set = { 'set-point': '14.2 V' };
    expect([held(set), held(set, 'weak'), held(set, 'strong')]).toEqual([14.2, 13.8, 14.4]);
    expect(held({ 'set-point': '14.7 V' }, 'strong')).toBe(14.7);
    expect([held(set, 'weak', '14 V'), held(set, 'strong', '14 V')]).toEqual([14, 14]);
    const varies = { 'variable-voltage': true };
    expect([held(varies), held(varies, 'weak'), held(varies, 'strong')]).toEqual([12.5, 12.2, 15]);
    expect(held({ ...varies, 'set-point': '12.4 V' })).toBe(12.4);
  });
});

describe('the drops of a device', () => {
  test('are the differences between its terminals and those of the battery, and add up to their parts', () => {
    const { power, traces } = planned();
    const rated = point(power, ratedPointName);
    const at = (id: string) => byId(rated.nodes, id).voltageV ?? Number.NaN;
    const found = drops(power, ratedPointName);
    expect(found.map(({ item }) => item).toSorted()).toEqual(['amp', 'dsp', 'radio']);
    for (const { item, source, voltageV, feedDropV, groundDropV, parts = [], liftedV = 0, share } of found) {
      expect(source, item).toBe('battery');
      expect(voltageV, item).toBeCloseTo(at(`${item}.B+`) - at(`${item}.GND`), 9);
      expect(feedDropV, item).toBeCloseTo(at('battery.POS') - at(`${item}.B+`), 9);
      expect(groundDropV, item).toBeCloseTo(at(`${item}.GND`) - at('battery.NEG'), 9);
      const whole = (feedDropV ?? 0) + (groundDropV ?? 0);
      expect(
        parts.reduce((sum, { dropV }) => sum + dropV, 0),
        item,
      ).toBeCloseTo(whole, 9);
      expect(
        parts.map(({ dropV }) => dropV),
        item,
      ).toEqual(parts.map(({ dropV }) => dropV).toSorted((a, b) => b - a));
      expect(share, item).toBeCloseTo((whole + liftedV) / 13.8, 9);
      for (const [name, value] of [
        ['feedDropV', feedDropV],
        ['groundDropV', groundDropV],
        ['share', share],
      ] as const) {
        const trace = traces[`power.drops.${ratedPointName}.${item}.${name}`];
        expect(trace?.value, `${item} ${name}`).toBe(value);
        if (trace) expect(redone(trace), `${item} ${name}`).toBeCloseTo(value ?? Number.NaN, 9);
      }
    }
    // Elsewhere they are not told in their parts.
    expect(drops(power, 'music').every(({ parts }) => parts === undefined)).toBe(true);
  });

  test('have a band about each where the point can be held beside a meter, and the current that is drawn there', () => {
    const { power } = planned();
    const held = power.points.filter(({ reach }) => reach !== undefined).map(({ name }) => name);
    expect(held.length).toBeGreaterThan(1);
    for (const drop of power.drops) {
      const load = one(
        point(power, drop.point).elements,
        ({ kind, of }) => kind === 'load' && of === drop.item,
      );
      expect(drop.currentA).toBe(load.currentA);
      if (!held.includes(drop.point)) expect(drop).not.toHaveProperty('bands');
      else {
        expect(drop.bands?.voltageV?.from).toBeLessThanOrEqual(drop.voltageV ?? Number.NaN);
        expect(drop.bands?.voltageV?.to).toBeGreaterThanOrEqual(drop.voltageV ?? Number.NaN);
        expect(drop.bands?.voltageV?.to).toBeGreaterThan(drop.bands?.voltageV?.from ?? Number.NaN);
      }
    }
  });

  test('are not told on a side that no conductor joins to a battery', () => {
    const { power } = planned(charged);
    const amp = one(drops(power, ratedPointName), ({ item }) => item === 'amp');
    expect(amp.source).toBe('second');
    expect(amp).not.toHaveProperty('unknown');
  });

  test('go by the way of fewest elements, of these by that which most current takes', () => {
    const wire = (of: string, from: string, to: string, dropV: number, currentA: number) => ({
      ...{
        id: `${of}:conductor`,
        of,
        kind: 'conductor' as const,
        model: 'resistance' as const,
        from,
        to,
        ohm: 0.1,
      },
      ...{ dropV, currentA, heatW: 0 },
    });
    const between = dropParts({
      ...{ name: ratedPointName, title: '', state: 'solved', referenceNode: 'z', residualA: 0, nodes: [] },
      elements: [
        wire('thin', 'a', 'b', 0.5, 5),
        wire('thick', 'a', 'b', 0.5, 20),
        wire('back', 'c', 'b', -0.2, 25),
        wire('round', 'a', 'd', 0.1, 1),
        wire('about', 'd', 'e', 0.1, 1),
        wire('end', 'e', 'c', 0.5, 1),
        { ...wire('amp', 'a', 'z', 12, 1), kind: 'load', model: 'power', powerW: 12 },
      ],
    });
    expect(between('a', 'c')).toEqual([
      { kind: 'conductor', of: 'thick', dropV: 0.5 },
      { kind: 'conductor', of: 'back', dropV: 0.2 },
    ]);
    expect(between('c', 'a').map(({ of, dropV }) => [of, dropV])).toEqual([
      ['back', -0.2],
      ['thick', -0.5],
    ]);
    // Through what draws current no way leads.
    expect(between('a', 'z')).toEqual([]);
  });
});

describe('an operating point', () => {
  test('has each source and device by its own law, and balances', () => {
    const { power } = planned();
    for (const { name, state, elements, nodes, residualA } of power.points) {
      expect(state, name).toBe('solved');
      expect(residualA, name).toBeLessThan(1e-6);
      for (const { id, from, to, dropV, currentA, heatW } of elements) {
        const at = (node: string) => byId(nodes, node).voltageV ?? Number.NaN;
        expect(dropV, `${name} ${id}`).toBeCloseTo(at(from) - at(to), 6);
        expect(Number.isFinite(currentA) && Number.isFinite(heatW), `${name} ${id}`).toBe(true);
      }
      const loadsOf = elements.filter(({ kind }) => kind === 'load').map(({ of }) => of);
      expect(loadsOf, name).toEqual(expect.arrayContaining(['amp', 'dsp', 'radio']));
    }
    // Common practice: a battery has 12.2 V with the engine off under load. Class AB makes 150 W of 150 / 0.55 W.
    const battery = (name: string) => one(point(power, name).elements, ({ of }) => of === 'battery');
    expect(battery('engine-off').currentA).toBeLessThan(0);
    expect(battery('engine-off')).toMatchObject({ emfV: 12.2 });
    const amp = one(point(power, ratedPointName).elements, ({ of }) => of === 'amp');
    expect((amp.currentA ?? 0) * (amp.dropV ?? 0)).toBeCloseTo(150 / 0.55, 3);
  });

  test('counts the vehicle as measured, and a part that hangs on nothing not at all', () => {
    const { power } = planned(({ vehicle, job }) => {
      vehicle['vehicle-load'] = '30 A';
      job.devices.loose = { part: 'holder', in: 'boot' };
      job.devices.lone = { part: 'holder', in: 'boot' };
      job.links.dead = { from: 'loose.OUT', to: 'lone.IN', length: '1 m', size: '4 AWG' };
    });
    const music = point(power, 'music').elements;
    expect(one(music, ({ of }) => of === 'vehicle')).toMatchObject({ givenA: 30 });
    expect(music.some(({ of }) => of === 'dead')).toBe(false);
  });

  test('that cuts a device out says which, in the words of the job', () => {
    const { power } = planned((content) => {
      partIn(content, 'two-channel', 'amplifier').supply['cut-out'] = '13.5 V';
    });
    const off = point(power, 'engine-off');
    expect(off.state).toBe('cut-out');
    expect(off.reason).toContain('amp');
    expect(off.reason).not.toContain(':load');
  });
});

describe('the charging balance', () => {
  const regime = (power: PlanPower, name: string) => one(power.charging, (each) => each.name === name);

  // House rules, common practice: hot, an alternator of 150 A gives 40 % at idle and 85 % cruising; 45 A as measured.
  test('sets what the alternator gives against what vehicle and devices draw, in each regime', () => {
    const { power, traces } = planned();
    expect(power.charging.map(({ name }) => name)).toEqual(['idle', 'cruise', 'engine-off']);
    const [idle, cruise, off] = ['idle', 'cruise', 'engine-off'].map((name) => regime(power, name));
    expect(idle?.alternatorA).toBeLessThan(cruise?.alternatorA ?? 0);
    expect(cruise?.alternatorA).toBeLessThanOrEqual(0.9 * 150);
    expect(off?.alternatorA).toBe(0);
    expect(idle?.vehicleA).toBeCloseTo(45, 6);
    expect(off?.vehicleA).toBe(0);
    for (const { name, averageA, marginA, alternatorA, vehicleA, batteryA } of power.charging) {
      const at = { idle: 'music', cruise: 'cruise', 'engine-off': 'engine-off' }[name];
      const drawn = ['amp', 'dsp', 'radio'].map(
        (of) => one(point(power, at).elements, (one) => one.kind === 'load' && one.of === of).currentA ?? 0,
      );
      expect(averageA, name).toBeCloseTo(
        drawn.reduce((sum, currentA) => sum + currentA, 0),
        6,
      );
      if ((batteryA ?? 0) >= 0) expect(marginA, name).toBeCloseTo(alternatorA - vehicleA - averageA, 6);
      expect(traces[`power.charging.${name}.averageA`]?.inputs.map((input) => input.name)).toEqual([
        'amp',
        'dsp',
        'radio',
      ]);
    }
    expect(off?.reserveMinutes).toBeGreaterThan(0);
    expect(off).not.toHaveProperty('recharges');
    expect(idle).not.toHaveProperty('chargers');
  });

  test('tells what each battery is charged through: an isolating relay, a charger, or conductors alone', () => {
    const through = (change: Change, battery: string) =>
      one(regime(planned(change).power, 'cruise').recharges ?? [], (each) => each.battery === battery)
        .through;
    expect(through(none, 'battery')).toEqual([]);
    expect(through(isolated, 'second')).toEqual(['isolator']);
    const { power } = planned(charged);
    expect(one(regime(power, 'cruise').recharges ?? [], (each) => each.battery === 'second').through).toEqual(
      ['charger'],
    );
    const [own] = regime(power, 'cruise').chargers ?? [];
    expect(own?.item).toBe('charger');
    expect(own?.currentA).toBeGreaterThan(0);
    // 30 A at 14.4 V over 85 % are 508 W: at 13.8 V or so 37 A.
    expect(own?.flatA).toBeGreaterThan(30);
    expect(own?.flatA).toBeLessThan(45);
  });

  test('cannot be made without an alternator, which is told at the vehicle', () => {
    const { power, placed } = planned(({ vehicle }) => {
      delete vehicle.fitted.alternator;
      for (const id of ['charge', 'block']) delete vehicle.links?.[id];
    });
    expect(power.charging).toEqual([]);
    const told = placed.filter(({ remark }) => remark.rule === 'charging-unknown');
    expect(told.map(({ path, file, remark }) => [path, file, remark.of])).toEqual([
      ['/fitted', 'vehicle', ['wagon']],
    ]);
  });
});

describe('cranking', () => {
  // Two batteries of 4 mohm and one voltage share the starter's current by their resistances (Kirchhoff): what helps stands
  // behind its leads too, so that it gives less than half.
  test('is shared by a second battery over its fuses and its contact, and by none where the relay opens', () => {
    const shared = planCranking(settledPower(isolated));
    expect(shared).toMatchObject({ currentA: 400, seconds: 4, measured: true });
    const shares = shared?.shares ?? [];
    expect(shares.map(({ id }) => id).toSorted()).toEqual(['isolator.A>B', 'main-fuse', 'second-fuse']);
    const [first] = shares;
    for (const { currentA } of shares) {
      expect(currentA).toBe(first?.currentA);
      expect(currentA).toBeGreaterThan(20);
      expect(currentA).toBeLessThan(200);
    }
    const opens = settledPower((content) => {
      isolated(content);
      partIn(content, 'isolator', 'isolating-relay')['opens-while-cranking'] = true;
    });
    expect(planCranking(opens)).toBeNull();
    expect(planCranking(settledPower(none))).toBeNull();
  });

  test('counts by the house rules where nobody measured', () => {
    const usual = planCranking(
      settledPower((content) => {
        isolated(content);
        delete content.vehicle.cranking;
      }),
    );
    expect(usual?.measured).toBe(false);
    expect(usual?.currentA).toBe(settledPower(none).job.rules['cranking-current'].value);
  });
});

describe('readings at sources', () => {
  test('of a contact are its current and its drop while closed, and its volts while open, each in its band', () => {
    const { power, traces } = planned(isolated);
    const readings = power.sourceReadings ?? [];
    expect(readings.map(({ what, point: at }) => `${what} ${at}`).toSorted()).toEqual([
      'contact-current music',
      'contact-drop music',
      'contact-open engine-off',
      'contact-open-current engine-off',
    ]);
    for (const { item, what, value, band } of readings) {
      expect(item).toBe('isolator');
      if (value === null) continue;
      expect(traces[`power.sourceReadings.isolator.${what}`]?.value).toBe(value);
      expect(band?.from).toBeLessThanOrEqual(value);
      expect(band?.to).toBeGreaterThanOrEqual(value);
    }
    const current = one(readings, ({ what }) => what === 'contact-current');
    expect(current.value).toBeGreaterThan(0);
    expect(one(readings, ({ what }) => what === 'contact-open-current').value).toBe(0);
    expect(planned().power).not.toHaveProperty('sourceReadings');
    expect(planned(banked).power.sourceReadings?.some(({ item }) => item === 'bank')).toBe(true);
  });
});

describe('what feeds a device or a board, and takes its current back', () => {
  test('are the wires that cross its edge on the side of their role', () => {
    const job = readJob();
    const groups = supplyGroups(job);
    expect(groups.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'device amp',
      'device dsp',
      'device radio',
      'board main',
    ]);
    const wires = job.links.map(({ id, from, to }) => ({
      ...{ id, from: `${from.device}.${from.terminal}`, to: `${to.device}.${to.terminal}` },
      role: id.includes('ground') ? ('ground' as const) : ('power' as const),
    }));
    const cross = (id: string, role: 'power' | 'ground') =>
      crossing(job, wires, role, byId(groups, id)).map((wire) => wire.id);
    expect(cross('amp', 'power')).toEqual(['amp-feed']);
    expect(cross('amp', 'ground')).toEqual(['amp-ground']);
    expect(cross('main', 'power')).toEqual(['main']);
    expect(cross('main', 'ground')).toEqual(['board-ground']);
    const fitted = readJob(({ vehicle }) => {
      vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
    });
    expect(supplyGroups(fitted).map(({ id }) => id)).not.toContain('head');
  });
});

describe('what makes the supply impossible to compute', () => {
  test('is told once, at the first thing of the job that it names', () => {
    const { placed } = planned(({ job }) => {
      delete job.links['board-ground'];
      entry(job.devices, 'amp').title = 'Amplifier';
    });
    const told = placed.filter(({ remark }) => remark.rule === 'network-floating');
    expect(told.length).toBeGreaterThan(0);
    expect(told.map(({ remark }) => remark.level)).toEqual(told.map(() => 'stop'));
    const keys = told.map(({ remark }) => remark.message);
    expect(new Set(keys).size).toBe(keys.length);
    const amp = told.find(({ remark }) => remark.of.includes('amp'));
    expect(amp?.path).toMatch(/^\/(links|devices)\//);
    expect(amp?.remark.message).toMatch(
      / ha(s|ve) no way to battery\.NEG but through a device that draws current$/,
    );
  });
});
