import { describe, expect, test } from 'vitest';
import type { Remark } from '../../../lib/model/remark.ts';
import { wireLabelClashes } from '../../../lib/plan/wiring/label-numbers.ts';
import { planBranches } from '../../../lib/plan/wiring/plan-branches.ts';
import { inJob } from '../../read/problem-case.ts';
import { byId } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';
import { small, told, wiring } from './small-wiring.ts';

describe('the wire list', () => {
  test('tells of each conductor what it joins, its size and its reel', () => {
    const { wires } = wiring(small());
    expect(byId(wires, 'feed')).toMatchObject({
      link: 'feed',
      label: 'P2',
      origin: 'job',
      from: 'main-fuse.OUT',
      to: 'amp.B+',
      role: 'power',
      run: 'power',
      board: null,
      covering: ['loom-a'],
    });
    const { size, part, colour, diameterM, sign } = byId(wires, 'feed');
    // 4 AWG is 21.15 mm2 (ASTM B258).
    expect(size.areaMm2).toBeCloseTo(size.awg === '4' ? 21.15 : 8.37, 1);
    expect([part, size.label, colour]).toEqual([`red-${size.awg}`, `${size.awg} AWG`, 'RD']);
    // Round copper of that area, and insulation on it.
    expect(diameterM).toBeGreaterThan(2e-3 * Math.sqrt(size.areaMm2 / Math.PI));
    expect(sign).toBeUndefined();
  });

  test('has both conductors of a speaker under one link, each with its sign', () => {
    const { wires } = wiring(small());
    const pair = ['speaker.+', 'speaker.-'].map((id) => byId(wires, id));
    expect(pair.map(({ link, label, sign }) => [link, label, sign])).toEqual([
      ['speaker', 'L1+', '+'],
      ['speaker', 'L1-', '-'],
    ]);
    expect(byId(wires, 'turn-on')).not.toHaveProperty('sign');
  });

  test('tells a speaker conductor that joins two coils that it has no sign', () => {
    const found = wiring(
      small(
        inParts(
          '    coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm } }\n    terminals: { C1+: { role: coil-positive }, C1-: { role: coil-negative } }',
          '    coils: { C1: { positive: C1+, negative: C1-, nominal: 2 ohm }, C2: { positive: C2+, negative: C2-, nominal: 2 ohm } }\n    terminals: { C1+: { role: coil-positive }, C1-: { role: coil-negative }, C2+: { role: coil-positive }, C2-: { role: coil-negative } }',
        ),
        inJob(
          '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }',
          '  out: { from: amp.CH1+, to: sub.C1+, length: 3 ft }\n  back: { from: amp.CH1-, to: sub.C2-, length: 3 ft }\n  between: { from: sub.C1-, to: sub.C2+, length: 1 ft }',
        ),
      ),
    );
    const signs = ['out', 'back', 'between'].map((id) => byId(found.wires, id).sign);
    expect(signs).toEqual(['+', '-', null]);
  });

  test('of a conductor in a cable has the colour of the conductor, and no reel', () => {
    const { wires, cables } = wiring(small());
    expect(byId(wires, 'signal')).toMatchObject({
      part: null,
      cable: 'lead',
      conductor: 'left',
      colour: 'RD',
    });
    expect(byId(cables, 'lead')).toMatchObject({ part: 'lead-a', lengthM: 10 * 0.3048 });
    expect(byId(cables, 'lead').conductors).toEqual([
      expect.objectContaining({ name: 'left', colour: 'RD', wire: 'signal' }),
      expect.objectContaining({ name: 'right', colour: 'WH', wire: null }),
    ]);
    for (const { size } of byId(cables, 'lead').conductors)
      expect(size).toMatchObject({ label: '24 AWG', awg: '24' });
    expect(byId(cables, 'lead')).not.toHaveProperty('diameterM');
    const thick = small(
      inParts('    made-length: 10 ft\n', '    made-length: 10 ft\n    outside-diameter: 6 mm\n'),
    );
    expect(byId(wiring(thick).cables, 'lead').diameterM).toBe(0.006);
  });

  test('tells how each length came about', () => {
    const { wires, traces } = wiring(small());
    const loopM = 12 * 0.0254;
    const measured = (id: string) => byId(wires, id).measured;
    expect(measured('tail')).toBe('given');
    expect(byId(wires, 'tail').cutAs).toBe('given');
    expect(byId(wires, 'feed').cutAs).toBeUndefined();
    expect(traces['wires.tail.lengthM']).toMatchObject({ origin: 'given', formula: 'given', inputs: [] });
    expect(measured('signal')).toBe('made length of the lead');
    expect(measured('vehicle.charge')).toBe('fitted by the vehicle maker');
    // 3.5 m of sill and engine bay, a loop of 12 in at each end in the vehicle: common practice, no source.
    expect(byId(wires, 'feed').lengthM).toBeCloseTo(3.5 + 2 * loopM, 9);
    expect(traces['wires.feed.lengthM']).toMatchObject({ origin: 'computed', formula: 'run + loops' });
    expect(traces['wires.feed.lengthM']?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['run', 3.5],
      ['loops', 2 * loopM],
    ]);
    // At the body there is no loop: its lug is bolted where it ends.
    const ground = wiring(
      small(
        inJob('to: body.cargo, length: 12 in }', 'to: body.cargo }'),
        inJob('links: [feed]', 'links: [feed, ground]'),
      ),
    );
    expect(byId(ground.wires, 'ground').ends.map((end) => end.loopM)).toEqual([loopM, 0]);
    const speaker = wiring(
      small(
        inJob('to: sub.C1, length: 3 ft }', 'to: sub.C1 }'),
        inJob('links: [turn-on] }', 'links: [turn-on, speaker] }'),
      ),
    );
    // 6 in at a speaker, common practice.
    expect(byId(speaker.wires, 'speaker.+').ends.map((end) => end.loopM)).toEqual([loopM, 6 * 0.0254]);
  });

  test('points each thing that it notices at the link, in the file where that stands', () => {
    const narrow = inParts(
      'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
      'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG }, conductors: 2 }',
    );
    const found = wiring(small(narrow));
    const lugs = told(found, 'terminal-not-in-catalogue');
    const ofVehicle = lugs.filter(({ remark }) => remark.of[0]?.startsWith('vehicle.'));
    expect(ofVehicle).toEqual([]);
    for (const { path, file } of lugs) expect([path.split('/')[1], file]).toEqual(['links', 'job']);
    expect(lugs.map(({ remark }) => remark.of)).toContainEqual(['tail', 'battery.POS']);
  });
});

test('what is noticed of a conductor that the vehicle came with stands in the file of the vehicle', () => {
  const found = small();
  const noted = (id: string) => {
    const sized = found.settled.all.get(id);
    if (!sized) throw new Error(`${id} is sized.`);
    const remark: Remark<'terminal-not-in-catalogue'> = {
      rule: 'terminal-not-in-catalogue',
      level: 'caution',
      of: [id],
      message: 'no lug',
      remedy: 'add one',
    };
    const all = new Map(found.settled.all).set(id, { ...sized, remarks: [remark] });
    return told(wiring({ ...found, settled: { ...found.settled, all } }), 'terminal-not-in-catalogue')
      .filter(({ remark: { message } }) => message === 'no lug')
      .map(({ path, file }) => ({ path, file }));
  };
  expect(noted('vehicle.charge')).toEqual([{ path: '/links/charge', file: 'vehicle' }]);
  expect(noted('feed')).toEqual([{ path: '/links/feed', file: 'job' }]);
});

describe('two wires that part ways', () => {
  const branch = small.bind(
    null,
    inJob('  sub: { part', '  amp-2: { part: amp-a, in: boot }\n  sub: { part'),
    inJob(
      '  speaker: {',
      '  second: { from: main-fuse.OUT, to: amp-2.B+, branch: { from: feed, after: 1 m, leg: 500 mm } }\n  speaker: {',
    ),
    inJob('links: [feed], covering', 'links: [feed, second], covering'),
  );

  test('are each as long as what they share and their own leg', () => {
    const { job, wires } = wiring(branch());
    const [found, ...others] = planBranches(job, branch().devices, wires);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ id: 'second', from: 'feed', terminal: 'main-fuse.OUT', partsAtM: 1 });
    const loopM = 12 * 0.0254;
    // Of a run of 3.5 m the trunk has 2.5 m beyond the parting point, and its loop.
    expect(found?.legs.map(({ wire, ownM }) => [wire, ownM.toFixed(6)])).toEqual([
      ['feed', (2.5 + loopM).toFixed(6)],
      ['second', (0.5 + loopM).toFixed(6)],
    ]);
    for (const { wire, label, sharedM, ownM } of found?.legs ?? []) {
      expect(byId(wires, wire).label).toBe(label);
      expect(sharedM + ownM).toBeCloseTo(byId(wires, wire).lengthM, 9);
    }
    expect(byId(wires, 'second').lengthM).toBeCloseTo(1.5 + 2 * loopM, 9);
    expect(byId(wires, 'second').measured).toMatch(/^shared 1.* \+ leg 0\.5.* \+ loops/);
    expect(planBranches(small().job, small().devices, wiring(small()).wires)).toEqual([]);
  });
});

describe('the label of a wire', () => {
  test('that is also the name of terminals is told with these, in capitals or not', () => {
    const { job } = small();
    const wires = [{ label: 'p1' }, { label: 'gnd' }, { label: 'OUT1' }];
    expect(wireLabelClashes(job, wires).map(({ wire, terminals }) => [wire.label, terminals])).toEqual([
      ['gnd', ['amp.GND', 'radio.GND']],
      ['OUT1', ['radio.OUT1']],
    ]);
  });
});
