import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import type { SettledJob } from '../../../lib/plan/settle-sizes.ts';
import { colourPairs } from '../../../lib/plan/wiring/pair-colours.ts';
import { isCovered } from '../../../lib/plan/wiring/runs/run-coverings.ts';
import { coveringCuts, planRuns } from '../../../lib/plan/wiring/runs/runs.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId } from '../plan-small-shop.ts';
import { addParts, inParts, inVehicle } from '../shop-changes.ts';
import { small, told, wiring } from './small-wiring.ts';

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

  // What each zone asks for: common practice, no source.
  test.each([
    ['against heat and wear', ['engine-bay', 'bulkhead', 'underbody', 'near-exhaust']],
    ['where it is seen', ['in-sight', 'dash-top']],
    ['in a door, which is wet inside', ['door']],
  ] as const)('left open is covered %s', (_, zones) => {
    const run = byId(small(open).job.runs, 'power');
    expect(zones.filter((zone) => isCovered(run, zone))).toEqual(zones);
  });

  test('left open is bare behind trim, under the carpet and above the headlining; given a covering it is nowhere', () => {
    const bare = ['sill', 'under-carpet', 'cabin', 'cargo', 'roof'] as const;
    const run = byId(small(open).job.runs, 'power');
    expect(bare.filter((zone) => isCovered(run, zone))).toEqual([]);
    const covered = byId(small().job.runs, 'power');
    expect(bare.filter((zone) => isCovered(covered, zone))).toEqual(bare);
  });

  test('without a wire has nothing to cover and nothing to tie, and lacks nothing', () => {
    const book = new PlanBook();
    const run = byId(planRuns(small(sleeve, open).job, new Map(), book), 'power');
    expect(run.bundleM).toBe(0);
    expect((run.passes ?? []).map(({ covering, tie, ties }) => [covering, tie, ties])).toEqual([
      [null, null, 0],
      [null, null, 0],
    ]);
    expect(book.remarks()).toEqual([]);
  });

  test('is tied round its covering where it has one, and round itself where it is bare', () => {
    const found = small(sleeve, open);
    const { bundleM } = byId(wiring(found).runs, 'power');
    const { rules } = found.job;
    // As long as the bare bundle asks for and its tail, and no longer than walls of a covering ask for.
    const justMm = Math.ceil(1000 * (Math.PI * bundleM + rules['tie-tail'].value));
    expect(justMm).toBeLessThan(
      1000 * (Math.PI * (bundleM + rules['covering-walls'].value) + rules['tie-tail'].value),
    );
    const just = `tie-just: { kind: fixing, title: T, form: tie, length: ${justMm} mm, withstands: 125 C }`;
    const run = byId(wiring(small(sleeve, open, inParts('  loom-a:', `  ${just}\n  loom-a:`))).runs, 'power');
    expect((run.passes ?? []).map(({ covering, tie }) => [covering, tie])).toEqual([
      ['loom-a', 'tie-long'],
      [null, 'tie-just'],
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
    expect(edge('').grommets).toEqual([
      { zone: 'bulkhead', holeM: null, part: 'grommet-a', madeForM: 0.032, stretch: 0 },
    ]);
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
      `  loom-a: { reels: [${reel}] }\n  loom-b: { reels: [5 m] }\n  large-60:`,
    ];
    const wider = inParts(
      '  loom-a:',
      '  loom-b: { kind: covering, title: Wider, form: loom, bore: 16 mm, withstands: 125 C }\n  loom-a:',
    );
    const covering = (reel: string) => power(open, twice, wider, shelf(reel)).run.passes?.[0]?.covering;
    // Both stretches of 2 m are covered, the sill between them is not: 4 m of one kind.
    expect(covering('4.1 m')).toBe('loom-a');
    expect(covering('3.9 m')).toBe('loom-b');
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
