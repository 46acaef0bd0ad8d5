import { describe, expect, test } from 'vitest';
import type { PlanWire } from '../../../lib/model/plan/index.ts';
import { type PickInput, pickList } from '../../../lib/plan/work/pick-list.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { inJob, partsFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { addParts, inShop } from '../shop-changes.ts';

const [sample] = samplePlan().wires;
if (!sample) throw new Error('The sample plan has a wire.');
const bare = sample;

type End = Partial<PlanWire['ends'][number]>;
const wire = (
  id: string,
  lengthM: number,
  own: Partial<PlanWire> = {},
  ends: readonly End[] = [],
): PlanWire => {
  const end = (at: 0 | 1) => ({
    terminal: `${id}.${at}`,
    prep: '',
    part: null,
    stripM: null,
    loopM: 0,
    ...ends[at],
  });
  return { ...bare, id, link: id, origin: 'job', part: 'red-4', lengthM, ends: [end(0), end(1)], ...own };
};
const noWay = { wires: [], runs: [], cables: [], fuses: [], boards: [], offCuts: [] };

/** What the pick list of the small shop says of a part, where these are its wires, cables and so on. */
function picked(part: string, planned: Partial<PickInput>, ...changes: readonly Change[]) {
  const rows = pickList({ job: jobOf(smallShop(...changes)), ...noWay, ...planned });
  return rows.find((row) => row.part === part);
}

describe('what is fetched from the shelf', () => {
  test('is each device that the job adds, and none that the vehicle has', () => {
    expect(picked('amp-a', {})).toMatchObject({ kind: 'amplifier', quantity: 1, unit: 'piece' });
    expect(picked('battery-a', {})).toBeUndefined();
    expect(picked('radio-a', {})).toBeUndefined();
    const two = inJob('  sub: {', '  sub-2: { part: woofer-a, in: boot }\n  sub: {');
    expect(picked('woofer-a', {}, two)).toMatchObject({ quantity: 2 });
  });

  test('is short by what the shelf lacks, and by nothing where it has more', () => {
    const pieces = (count: number) =>
      inShop('large-60: { pieces: 2 }', `large-60: { pieces: 2 }\n  amp-a: { pieces: ${count} }`);
    expect(picked('amp-a', {})).toMatchObject({ stockQuantity: 0, short: 1 });
    expect(picked('amp-a', {}, pieces(1))).toMatchObject({ stockQuantity: 1, short: 0 });
    expect(picked('amp-a', {}, pieces(3))).toMatchObject({ stockQuantity: 3, short: 0 });
  });

  test('is wire of a size that no reel has, by size and colour, all of it to order', () => {
    const size = { label: '10 AWG', awg: '10', areaMm2: 5.26 };
    const wires = [
      wire('a', 1.2, { part: null, size, colour: 'red' }),
      wire('b', 0.8, { part: null, size, colour: 'red' }),
      wire('c', 2, { part: null, size, colour: null }),
      wire('d', 2, { part: null, size, colour: 'red', cable: 'loom' }),
      wire('e', 2, { part: null, size, colour: 'red' }, [{ form: 'supplied-lead' }]),
    ];
    const unit = 'm';
    expect(picked('wire-10-awg-red', { wires })).toMatchObject({ quantity: 2, unit, short: 2 });
    expect(picked('wire-10-awg', { wires })).toMatchObject({ quantity: 2, unit, stockQuantity: 0, short: 2 });
  });

  test('is one twin ferrule for the two conductors that share it, and one of any other terminal for each end', () => {
    const twin = addParts(
      'twin: { kind: terminal, title: Twin, form: twin-ferrule, takes: { from: 8 AWG, to: 4 AWG } }',
    );
    const lug = addParts(
      'lug: { kind: terminal, title: Lug, form: ring-lug, takes: { from: 8 AWG, to: 4 AWG }, stud: M8 }',
    );
    const sharing = (part: string, ...terminals: readonly string[]) =>
      terminals.map((terminal, k) => wire(`w${k}`, 1, {}, [{ terminal, part }]));
    expect(picked('twin', { wires: sharing('twin', 'block.1', 'block.1') }, twin)?.quantity).toBe(1);
    expect(picked('twin', { wires: sharing('twin', 'block.1', 'block.1', 'block.2') }, twin)?.quantity).toBe(
      2,
    );
    expect(picked('lug', { wires: sharing('lug', 'block.1', 'block.1') }, lug)?.quantity).toBe(2);
  });

  test('is no terminal and no length of what the vehicle came with', () => {
    const lug = addParts(
      'lug: { kind: terminal, title: Lug, form: ring-lug, takes: { from: 8 AWG, to: 4 AWG }, stud: M8 }',
    );
    const ends = [{ part: 'lug', shrink: { part: 'loom-a', lengthM: 0.05 } }];
    const wires = [wire('w', 2, { origin: 'vehicle' }, ends)];
    for (const part of ['lug', 'red-4', 'loom-a']) expect(picked(part, { wires }, lug), part).toBeUndefined();
    const own = [wire('w', 2, {}, ends)];
    expect(picked('lug', { wires: own }, lug)).toMatchObject({ quantity: 1, unit: 'piece' });
    expect(picked('red-4', { wires: own }, lug)).toMatchObject({ quantity: 2, unit: 'm' });
    expect(picked('loom-a', { wires: own }, lug)).toMatchObject({ quantity: 0.05, unit: 'm' });
  });
});

describe('what the catalogue or the shelf lacks', () => {
  const [sampleFuse] = samplePlan().power.fuses;
  if (!sampleFuse) throw new Error('The sample plan has a fuse.');
  const fuse = (id: string, item: string, ratingA: number | null) => ({
    ...sampleFuse,
    ...{ id, item, ratingA, part: null, form: 'maxi-blade' as const },
  });
  const bought = (...fuses: readonly ReturnType<typeof fuse>[]) => picked('fuse-maxi-blade-70', { fuses });

  test('is bought: each fuse of a rating that no part has, those of the vehicle not', () => {
    expect(bought(fuse('main-fuse', 'main-fuse', 70), fuse('amp', 'amp', 70))).toMatchObject({
      ...{ kind: 'fuse', quantity: 2, unit: 'piece', stockQuantity: 0, short: 2 },
      title: expect.stringContaining('70 A, not in the catalogue'),
    });
    expect(bought(fuse('main-fuse', 'main-fuse', 60))).toBeUndefined();
    expect(bought(fuse('own', 'battery', 70), fuse('none', 'amp', null))).toBeUndefined();
  });

  test('is not fetched where nothing of it is wanted: a stretch without a tie', () => {
    const tie = addParts('tie-a: { kind: fixing, title: Tie, form: tie, length: 200 mm }');
    const [run] = samplePlan().runs;
    if (!run) throw new Error('The sample plan has a run.');
    const pass = (ties: number) => ({
      ...{ zone: 'sill' as const, lengthM: 1, edge: false, covering: null },
      ...{ chosen: 'computed' as const, reason: '', tie: 'tie-a', ties },
    });
    const runs = (...ties: readonly number[]) => [{ ...run, grommets: [], passes: ties.map(pass) }];
    expect(picked('tie-a', { runs: runs(0) }, tie)).toBeUndefined();
    expect(picked('tie-a', { runs: runs(0, 2, 3) }, tie)?.quantity).toBe(5);
  });

  test('may be promised to another job, which is told with it', () => {
    const to = [{ job: 'other', revision: 'A', quantity: 1 }];
    const none = { over: 0, uncutM: [], reelsM: [], offCutsM: {}, sheets: {} };
    const promise = { ...none, unit: 'piece', pieces: 1, to } as const;
    const job = jobOf(smallShop());
    const promised = { 'amp-a': promise, 'woofer-a': { ...promise, pieces: 0 } };
    const rows = pickList({ job: { ...job, promised }, ...noWay });
    expect(rows.find(({ part }) => part === 'amp-a')?.promised).toEqual(to);
    // What is promised and not there takes nothing from the shelf.
    for (const id of ['woofer-a', 'holder-a'])
      expect(rows.find(({ part }) => part === id)).not.toHaveProperty('promised');
  });
});

describe('a reel on the pick list', () => {
  const ft = 0.3048;
  const reels = (text: string) => inShop('red-4: { reels: [30 ft] }', `red-4: { reels: [${text}] }`);

  test('tells what is cut from each piece of it, and what is left; pieces that nothing is cut from are left out', () => {
    const row = picked(
      'red-4',
      { wires: [wire('a', 8 * ft), wire('b', 3 * ft)] },
      reels('30 ft, 12 ft, 20 ft'),
    );
    expect(row).toMatchObject({ short: 0, reels: [{ cuts: 2 }] });
    expect(row?.quantity).toBeCloseTo(11 * ft, 3);
    expect(row?.stockQuantity).toBeCloseTo(62 * ft, 3);
    expect(row?.reels?.[0]?.lengthM).toBeCloseTo(12 * ft, 3);
    expect(row?.reels?.[0]?.leftM).toBeCloseTo(1 * ft, 3);
    expect(row?.reels?.[0]?.cutsM?.toSorted()).toEqual([3 * ft, 8 * ft]);
  });

  test('that the shop does not stock, or counts in pieces, is short by all of it', () => {
    const wires = [wire('a', 2)];
    for (const change of [
      inShop('  red-4: { reels: [30 ft] }\n', ''),
      inShop('red-4: { reels: [30 ft] }', 'red-4: { pieces: 4 }'),
    ])
      expect(picked('red-4', { wires }, change)).toMatchObject({ stockQuantity: 0, short: 2, reels: [] });
  });
});

describe('a cable on the pick list', () => {
  const cable = (part: string, lengthM: number) => [{ id: 'lead', part, lengthM, conductors: [] }];

  test('of a made length is a piece, any other is cut to what its wires need', () => {
    expect(picked('lead-a', { cables: cable('lead-a', 3.05) })).toMatchObject({ quantity: 1, unit: 'piece' });
    const open: readonly Change[] = [
      [partsFile, '    made-length: 10 ft\n', ''],
      inJob('conductors: [left] }', 'conductors: [left], length: 2 m }'),
    ];
    expect(picked('lead-a', { cables: cable('lead-a', 2.4) }, ...open)).toMatchObject({
      quantity: 2.4,
      unit: 'm',
    });
  });
});

test('the pick list stands by kind, then by part', () => {
  const rows = pickList({
    job: jobOf(smallShop()),
    ...noWay,
    wires: [wire('b', 1, { part: 'red-8' }), wire('a', 1)],
  });
  const keys = rows.map(({ kind, part }) => `${kind} ${part}`);
  expect(keys).toEqual(keys.toSorted());
  expect(keys.filter((key) => key.startsWith('wire'))).toEqual(['wire red-4', 'wire red-8']);
});
