import { describe, expect, test } from 'vitest';
import { ratedPointName } from '../../../../lib/model/operating-points.ts';
import type { PlanPower } from '../../../../lib/model/plan/index.ts';
import { dropParts } from '../../../../lib/plan/power/drop-parts.ts';
import { crossing, supplyGroups } from '../../../../lib/plan/power/supply-groups.ts';
import { redone } from '../../../publish/workings/redo.ts';
import { byId, entry, one, partIn } from '../../../rules/case.ts';
import { charged } from '../two-batteries.ts';
import { planned, point, readJob } from './planned-supply.ts';

const drops = ({ drops: all }: Pick<PlanPower, 'drops'>, name: string) =>
  all.filter((each) => each.point === name);

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
