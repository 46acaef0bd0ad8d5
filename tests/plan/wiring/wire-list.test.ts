import { describe, expect, test } from 'vitest';
import { terminalOnBoard } from '../../../lib/board/layout/item.ts';
import { computeAnew } from '../../../lib/model/keep.ts';
import type { PlanWire } from '../../../lib/model/plan/index.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { type SettledJob, settleJob } from '../../../lib/plan/settle-job.ts';
import { routedLengths } from '../../../lib/plan/settle-sizes.ts';
import { planBranches } from '../../../lib/plan/wiring/branches.ts';
import { wireLabelClashes } from '../../../lib/plan/wiring/labels.ts';
import { colourPairs } from '../../../lib/plan/wiring/pair-colours.ts';
import { coveringCuts, planRuns } from '../../../lib/plan/wiring/runs.ts';
import { wireLengths } from '../../../lib/plan/wiring/wire-lengths.ts';
import { planCables, planWires } from '../../../lib/plan/wiring/wires.ts';
import { inJob, partsFile, withBoard } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { byId, jobOf } from '../plan-small-shop.ts';
import { inVehicle } from '../power/power-changes.ts';

const settled = new Map<string, SettledJob>();
function once(key: string, job: () => Parameters<typeof settleJob>[0]): SettledJob {
  const found = settled.get(key) ?? settleJob(job(), new PlanBook(), computeAnew);
  settled.set(key, found);
  return found;
}
const small = (...changes: readonly Change[]) =>
  once(JSON.stringify(changes), () => jobOf(smallShop(...changes)));
/** The small job with its amplifier and its woofer on a board, laid out and routed. */
const onBoard = () =>
  small(
    withBoard(),
    inJob('    in: boot\n    settings', '    on: main\n    settings'),
    inJob('sub: { part: woofer-a, in: boot }', 'sub: { part: woofer-a, on: main }'),
    inJob('to: sub.C1, length: 3 ft }', 'to: sub.C1 }'),
    inJob('to: body.cargo, length: 12 in }', 'to: body.cargo }'),
    inJob('links: [turn-on] }', 'links: [turn-on, ground] }'),
  );

/** The wire list of a job whose sizes stand, its runs and cables, and what was noticed. */
function wiring({ job, devices, settled: { all, sizing } }: SettledJob) {
  const book = new PlanBook();
  const runs = planRuns(job, all, book);
  const wires = planWires({ job, devices, sized: all, lengths: sizing.lengths, runs }, book);
  return { job, runs, wires, cables: planCables(job, wires), traces: book.traces(), placed: book.remarks() };
}
const inParts = (found: string, instead: string): Change => [partsFile, found, instead];
const addParts = (...lines: readonly string[]): Change =>
  inParts('  bolt-a:', `${lines.map((line) => `  ${line}\n`).join('')}  bolt-a:`);
const told = (found: ReturnType<typeof wiring>, rule: string) =>
  found.placed.filter(({ remark }) => remark.rule === rule);
const ends = (wire: PlanWire) => wire.ends.map(({ form }) => form);

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

describe('the end of a wire', () => {
  const terminals = addParts(
    'ferrule-8: { kind: terminal, title: F, form: ferrule, takes: { from: 8 AWG, to: 8 AWG } }',
    'ferrule-4: { kind: terminal, title: F, form: ferrule, takes: { from: 4 AWG, to: 4 AWG }, strip: 18 mm, die: "25 mm2" }',
    'ferrule-wide: { kind: terminal, title: F, form: ferrule, takes: { from: 12 AWG, to: 2 AWG } }',
    'lug-m8: { kind: terminal, title: L, form: ring-lug, takes: { from: 8 AWG, to: 4 AWG }, stud: M8, die: hex }',
    'lug-m6: { kind: terminal, title: L, form: ring-lug, takes: { from: 8 AWG, to: 4 AWG }, stud: M6 }',
    'tab: { kind: terminal, title: T, form: blade-receptacle, takes: { from: 22 AWG, to: 18 AWG } }',
  );
  const fourGauge = inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }');

  test('has the terminal of the catalogue with the narrowest range that takes it, on a stud the one for the stud', () => {
    const { wires, placed } = wiring(small(terminals, fourGauge));
    const [post, port] = byId(wires, 'feed').ends;
    expect(post).toMatchObject({
      form: 'lug',
      part: 'lug-m8',
      stud: 'M8',
      holeM: 0.0084,
      die: 'hex',
      prep: 'ring lug M8',
    });
    expect(port).toMatchObject({ form: 'ferrule', part: 'ferrule-4', stripM: 0.018, die: '25 mm2' });
    expect(port).not.toHaveProperty('stud');
    expect(port).not.toHaveProperty('holeM');
    expect(placed.filter(({ remark }) => remark.rule === 'terminal-not-in-catalogue')).toEqual([]);
    expect(ends(byId(wires, 'vehicle.charge'))).toEqual(['as-fitted', 'as-fitted']);
    expect(ends(byId(wires, 'signal'))).toEqual(['made-up', 'made-up']);
  });

  test('without a terminal in the catalogue says which is missing', () => {
    const { wires, placed } = wiring(small(fourGauge));
    expect(byId(wires, 'feed').ends.map(({ part }) => part)).toEqual([null, null]);
    const own = placed.filter(({ remark }) => remark.of[0] === 'feed');
    expect(own.map(({ remark }) => remark.message)).toEqual(
      expect.arrayContaining([
        'no ring lug for 4 AWG is in the catalogue',
        'no ferrule for 4 AWG is in the catalogue',
      ]),
    );
  });

  test('on a tab is a receptacle, in a plug a contact, soldered where the part says so', () => {
    const joint = (name: string) =>
      wiring(
        small(
          terminals,
          inParts(
            'REM: { role: turn-on-in }',
            `REM: { role: turn-on-in, joint: ${name}, takes: { from: 22 AWG, to: 18 AWG } }`,
          ),
        ),
      ).wires;
    expect(byId(joint('blade-tab'), 'turn-on').ends[1]).toMatchObject({
      part: 'tab',
      prep: 'crimped blade receptacle',
    });
    expect(byId(joint('plug'), 'turn-on').ends[1]).toMatchObject({
      part: null,
      prep: 'crimped plug contact',
      form: 'crimp',
    });
    expect(byId(joint('solder'), 'turn-on').ends[1]).toMatchObject({
      part: null,
      prep: 'solder',
      form: 'solder',
    });
  });

  test('that its port does not take is refused with what would do', () => {
    const found = wiring(
      small(
        fourGauge,
        inParts(
          'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
          'B+: { role: supply-positive, joint: set-screw, takes: { from: 10 AWG, to: 8 AWG } }',
        ),
      ),
    );
    expect(byId(found.wires, 'feed').ends[1]).toMatchObject({ form: 'refused', part: null });
    const [refused] = told(found, 'port-refuses-conductor');
    expect(refused?.remark).toMatchObject({ level: 'stop', of: ['feed', 'amp.B+'] });
    expect(refused?.remark.remedy).toMatch(
      /^a reducer to .*; or a port for a larger conductor; or a thinner/,
    );
  });

  test('that shares its port with another has one twin ferrule with it, made for the thicker, noted once for all', () => {
    const clamp = (sign: string) =>
      inParts(
        `CH1${sign === 'positive' ? '+' : '-'}: { role: speaker-out-${sign} }`,
        `CH1${sign === 'positive' ? '+' : '-'}: { role: speaker-out-${sign}, joint: set-screw, takes: { from: 18 AWG, to: 4 AWG }, conductors: 2 }`,
      );
    const found = wiring(
      small(
        addParts(
          'twin-10: { kind: terminal, title: T, form: twin-ferrule, takes: { from: 10 AWG, to: 10 AWG } }',
          'twin-12: { kind: terminal, title: T, form: twin-ferrule, takes: { from: 12 AWG, to: 12 AWG } }',
          'white-10: { kind: wire, title: W, size: 10 AWG, insulation: 80 C, colour: WH, for: [speaker] }',
        ),
        clamp('positive'),
        clamp('negative'),
        inJob('  sub: { part', '  sub-2: { part: woofer-a, in: boot }\n  sub: { part'),
        inJob(
          '  speaker: {',
          '  second: { from: amp.CH1, to: sub-2.C1, length: 3 ft, size: 10 AWG }\n  speaker: {',
        ),
      ),
    );
    for (const id of ['speaker.+', 'second.+'])
      expect(byId(found.wires, id).ends[0]).toMatchObject({ form: 'twin-ferrule', part: 'twin-10' });
    const [note, ...others] = told(found, 'port-note').filter(({ remark }) => /twin/.test(remark.message));
    expect(others).toEqual([]);
    expect(note).toMatchObject({ path: '/links/second', file: 'job' });
    expect(note?.remark.message).toBe(
      'twin ferrules are not in DIN 46228-4, and stand in amp.CH1+ (second.+ and speaker.+), amp.CH1- (second.- and speaker.-)',
    );
  });

  test('tells how far heat-shrink goes, and how thick the wire is taken to be, where it has some', () => {
    const { wires, traces } = wiring(
      small(
        addParts(
          'shrink: { kind: covering, title: S, form: heat-shrink, bore: 12 mm, shrunk-bore: 4 mm, withstands: 110 C }',
        ),
      ),
    );
    expect(byId(wires, 'tail').ends[0].shrink?.part).toBe('shrink');
    expect(traces['wires.tail.ends.A.stripM']).toBeDefined();
    expect(traces['wires.tail.ends.A.shrinkM']?.value).toBe(byId(wires, 'tail').ends[0].shrink?.lengthM);
    expect(traces['wires.tail.outsideM']).toBeDefined();
    expect(traces['wires.turn-on.outsideM']).toBeUndefined();
  });
});

describe('a run', () => {
  const sleeve = addParts(
    'sleeve-a: { kind: covering, title: S, form: braided-sleeve, bore: 30 mm, withstands: 125 C }',
    'tie-b: { kind: fixing, title: T, form: tie, length: 200 mm }',
    'tie-a: { kind: fixing, title: T, form: tie, length: 200 mm }',
    'tie-long: { kind: fixing, title: T, form: tie, length: 400 mm, withstands: 105 C }',
    'grommet-b: { kind: grommet, title: G, bore: 25 mm, hole: 30 mm }',
    'grommet-a: { kind: grommet, title: G, bore: 25 mm, hole: 32 mm }',
    'grommet-small: { kind: grommet, title: G, bore: 4 mm, hole: 8 mm }',
  );
  const passes = (text: string) =>
    inVehicle(
      'passes: [{ zone: engine-bay, length: 500 mm }, { zone: sill, length: 3 m }]\n    reaches',
      `passes: [${text}]\n    reaches`,
    );
  const open = inJob(', covering: loom-a }', ' }');
  const power = (...changes: readonly Change[]) => {
    const found = wiring(small(sleeve, ...changes));
    return { ...found, run: byId(found.runs, 'power') };
  };

  test('left open is covered against heat and wear, for looks where it is seen, and nowhere else', () => {
    const { run } = power(
      open,
      passes(
        '{ zone: engine-bay, length: 500 mm }, { zone: in-sight, length: 400 mm }, { zone: sill, length: 2 m }, { zone: under-carpet, length: 600 mm }, { zone: cabin, length: 1 m }',
      ),
    );
    expect((run.passes ?? []).map(({ zone, covering }) => [zone, covering])).toEqual([
      ['engine-bay', 'loom-a'],
      ['in-sight', 'sleeve-a'],
      ['sill', null],
      ['under-carpet', null],
      ['cabin', null],
    ]);
    expect(run.passes?.[1]?.reason).toMatch(/^for looks, since it is seen at/);
    expect(coveringCuts(run)).toEqual([
      ['loom-a', 0.5],
      ['sleeve-a', 0.4],
    ]);
  });

  test('is tied by the shortest tie that goes round it and stands the heat, the first by name of those alike', () => {
    const { run } = power();
    expect((run.passes ?? []).map(({ tie, ties }) => [tie, ties])).toEqual([
      ['tie-long', 2],
      ['tie-a', 10],
    ]);
  });

  test('passes an edge in the smallest grommet that takes it, and a hole that is there in one made for it', () => {
    const edge = (more: string) =>
      power(passes(`{ zone: bulkhead, length: 500 mm, edge: true${more} }, { zone: sill, length: 3 m }`)).run;
    expect(edge('').grommets).toEqual([{ zone: 'bulkhead', holeM: null, part: 'grommet-a' }]);
    expect(edge(', through-hole: 30.4 mm').grommets[0]?.part).toBe('grommet-b');
    expect(edge(', through-hole: 30.6 mm').grommets[0]?.part).toBeNull();
  });

  test('must have covering in one piece for all stretches that are covered alike', () => {
    const twice = passes(
      '{ zone: engine-bay, length: 2 m }, { zone: sill, length: 1 m }, { zone: bulkhead, length: 2 m }',
    );
    const shelf = (reel: string): Change => [
      'content/shop.yaml',
      '  large-60:',
      `  loom-a: { reels: [${reel}] }\n  large-60:`,
    ];
    const reason = (reel: string) => power(open, twice, shelf(reel)).run.passes?.[0];
    expect(reason('4.1 m')).toMatchObject({ covering: 'loom-a' });
    expect(reason('3.9 m')).toMatchObject({ covering: 'loom-a' });
  });

  test('without a covering that fits says so, once for each stretch', () => {
    const found = wiring(small(open, inParts('bore: 13 mm', 'bore: 5 mm')));
    expect(told(found, 'covering-none-fits').map(({ remark, path }) => [remark.of, path])).toEqual([
      [['power', 'engine-bay'], '/runs/power'],
    ]);
    expect(byId(found.wires, 'feed').covering).toEqual([]);
  });
});

describe('the colours of a speaker pair', () => {
  const reels = (longest: Readonly<Record<string, string>>) => {
    const lines = Object.keys(longest).flatMap((colour) => [
      `s-${colour.toLowerCase()}: { kind: wire, title: W, size: 12 AWG, insulation: 80 C, colour: ${colour}, for: [speaker] }`,
      `s-${colour.toLowerCase()}-b: { kind: wire, title: W, size: 12 AWG, insulation: 80 C, colour: ${colour}/BK, for: [speaker] }`,
    ]);
    const stock = Object.entries(longest).map(
      ([colour, reel]) =>
        `  s-${colour.toLowerCase()}: { reels: [${reel}] }\n  s-${colour.toLowerCase()}-b: { reels: [${reel}] }\n`,
    );
    return small(
      addParts(...lines),
      [
        'content/shop.yaml',
        '  white-12: { reels: [30 ft] }\n  striped-12: { reels: [30 ft] }\n',
        stock.join(''),
      ],
      inJob('  sub: { part', '  sub-2: { part: woofer-a, in: boot }\n  sub: { part'),
      inJob('  speaker: {', '  second: { from: amp.CH1, to: sub-2.C1, length: 3 ft }\n  speaker: {'),
    );
  };
  const chosen = ({ job, settled: { all } }: SettledJob) => {
    const pairs = colourPairs(job, all);
    return ['second.+', 'second.-', 'speaker.+', 'speaker.-'].map((id) => pairs.get(id)?.cable.part);
  };

  // The order of the base colours of nine-conductor cable: white, grey, green, violet.
  test('follow the usual order, a colour for each pair, in reels that are long enough', () => {
    expect(chosen(reels({ VT: '30 ft', GY: '30 ft', RD: '30 ft' }))).toEqual([
      's-gy',
      's-gy-b',
      's-vt',
      's-vt-b',
    ]);
    expect(chosen(reels({ GY: '2 ft', VT: '30 ft' }))).toEqual(['s-vt', 's-vt-b', 's-vt', 's-vt-b']);
    expect(chosen(reels({ YE: '30 ft', RD: '30 ft' }))).toEqual(['s-rd', 's-rd-b', 's-ye', 's-ye-b']);
  });
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
    const [found, ...others] = planBranches(job, wires);
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
    expect(planBranches(small().job, wiring(small()).wires)).toEqual([]);
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

describe('the length of a wire on a board', () => {
  const inch = 0.0254;
  const lengths = (isRouted: boolean) => {
    const { job, devices, settled: own } = onBoard();
    const routed = isRouted ? routedLengths(own.routed) : new Map<string, number>();
    return { of: wireLengths(job, devices, own.laid, routed), routed, laid: own.laid };
  };
  const parts = (of: ReturnType<typeof lengths>['of'], link: string) => Object.fromEntries(of(link).parts);

  // House rules, common practice, no source: loops of 3 in on the board, 12 in in the vehicle, none at the body. The runs
  // are of 3.5 m and 3 m.
  test('is its way as routed, its run, and a loop at each end', () => {
    const { of, routed } = lengths(true);
    const boardM = (link: string) => routed.get(link) ?? Number.NaN;
    expect(boardM('speaker.+')).toBeGreaterThan(0.01);
    expect(parts(of, 'speaker.+')).toEqual({ board: boardM('speaker.+'), loops: 2 * 3 * inch });
    expect(parts(of, 'feed')).toEqual({ run: 3.5, board: boardM('feed'), loops: 12 * inch + 3 * inch });
    expect(parts(of, 'ground')).toEqual({ run: 3, board: boardM('ground'), loops: 3 * inch });
    for (const link of ['speaker.+', 'feed', 'ground']) {
      expect(of(link).measured).not.toContain('estimated');
      expect(of(link).lengthM).toBeCloseTo(
        Object.values(parts(of, link)).reduce((sum, lengthM) => sum + lengthM, 0),
        9,
      );
    }
  });

  test('is estimated before it is routed: level and upright between its terminals, or out to an edge', () => {
    const { of, laid } = lengths(false);
    const [board] = laid;
    const at = (id: string) => {
      const item = board?.items.find((one) => id.startsWith(`${one.id}.`));
      const placed = board?.placements.find((one) => one.item === item?.id);
      const terminal = item?.terminals.find((one) => one.id === id);
      if (!item || !placed || !terminal) throw new Error(`${id} stands on no board.`);
      return terminalOnBoard(item, placed, terminal);
    };
    const [from, to] = [at('amp.CH1+'), at('sub.C1+')];
    expect(parts(of, 'speaker.+').board).toBeCloseTo(
      Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM),
      9,
    );
    expect(of('speaker.+').measured).toMatch(/^board [\d.]+ estimated \+ loops [\d.]+ m$/);
    // The board is 500 mm by 300 mm. The run of the feed reaches its left edge; of the other it is not told which.
    expect(parts(of, 'feed').board).toBeCloseTo(at('amp.B+').xM, 6);
    const ground = at('amp.GND');
    expect(parts(of, 'ground').board).toBeCloseTo(
      Math.max(ground.xM, 0.5 - ground.xM, ground.yM, 0.3 - ground.yM),
      6,
    );
    expect(parts(of, 'tail')).toEqual({});
  });
});
