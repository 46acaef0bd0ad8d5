import { describe, expect, test } from 'vitest';
import type { PlanPick, PlanWire } from '../../../lib/model/plan/index.ts';
import { cutsTaken, shelfTakes, type TakingPlan } from '../../../lib/plan/work/shelf-takes.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';

const plan = samplePlan();
const [sampleWire] = plan.wires;
const [sampleItem] = plan.items;
const [sampleFuse] = plan.power.fuses;
const [sampleRun] = plan.runs;
const [sampleBoard] = plan.boards;
if (!sampleWire || !sampleItem || !sampleFuse || !sampleRun || !sampleBoard)
  throw new Error('The sample plan holds something of everything.');

type End = PlanWire['ends'][number];
const end = (more: Partial<End> = {}): End => ({
  ...{ terminal: 'amp.B+', prep: '', part: null, stripM: null, loopM: 0 },
  ...more,
});
const wire = (id: string, own: Partial<PlanWire> = {}): PlanWire => ({
  ...sampleWire,
  ...{ id, link: id, origin: 'job', part: 'red-4', lengthM: 2, from: 'a.B', to: 'b.C', ends: [end(), end()] },
  ...own,
});
const pick = (
  part: string,
  unit: PlanPick['unit'],
  quantity: number,
  more: Partial<PlanPick> = {},
): PlanPick => ({
  ...{ part, title: part, kind: 'wire', quantity, unit, stockQuantity: 9, short: 0 },
  ...more,
});
const bare: TakingPlan = {
  ...plan,
  ...{ items: [], wires: [], cables: [], runs: [], boards: [], offCuts: [], pick: [] },
  power: { ...plan.power, fuses: [] },
};
const cable = { id: 'lead', part: 'lead-a', lengthM: 3, conductors: [] };

describe('what a plan cuts to length', () => {
  const cuts = (own: Partial<TakingPlan>, isOffReel = true) =>
    cutsTaken({ ...bare, ...own }, () => isOffReel).map(({ of, part, lengthM }) => [of, part, lengthM]);

  test('is each wire of the job, and none that came with the vehicle or has no reel', () => {
    const wires = [
      wire('feed'),
      wire('charge', { origin: 'vehicle' }),
      wire('lead', { part: null }),
      wire('unknown', { part: '' }),
    ];
    expect(cuts({ wires })).toEqual([['wire feed', 'red-4', 2]]);
  });

  test('is cable off a reel, not one of a made length', () => {
    expect(cuts({ cables: [cable] })).toEqual([['cable lead', 'lead-a', 3]]);
    expect(cuts({ cables: [cable] }, false)).toEqual([]);
  });

  test('is the covering of runs and the heat-shrink over each end', () => {
    const passes = ['loom-a', 'loom-a', null, 'loom-b'].map((covering, k) => ({
      ...{ zone: 'sill' as const, lengthM: k + 1, edge: false, covering },
      ...{ chosen: 'given' as const, reason: 'given', tie: null, ties: 0 },
    }));
    expect(cuts({ runs: [{ ...sampleRun, id: 'left', passes }] })).toEqual([
      ['run left 0', 'loom-a', 3],
      ['run left 1', 'loom-b', 4],
    ]);
    const ends: PlanWire['ends'] = [end({ shrink: { part: 'shrink-a', lengthM: 0.05 } }), end()];
    expect(cuts({ wires: [wire('feed', { ends })] })).toEqual([
      ['wire feed', 'red-4', 2],
      ['shrink feed 0', 'shrink-a', 0.05],
    ]);
  });
});

describe('what a plan takes from the shelf', () => {
  const takes = (own: Partial<TakingPlan>) => shelfTakes({ ...bare, ...own });

  test('is pieces by their number, and lengths by what is cut from each reel', () => {
    const reels = [{ lengthM: 9, cuts: 2, cutsM: [2, 3], leftM: 4 }];
    const found = takes({ pick: [pick('lug', 'piece', 4), pick('red-4', 'm', 5, { reels })] });
    expect(found.pieces).toEqual({ lug: 4 });
    expect(found.lengths).toEqual([{ part: 'red-4', offCut: null, lengthM: 9, cutsM: [2, 3] }]);
  });

  test('cuts a cable that is fetched by length, and takes one that is fetched by the piece', () => {
    const byLength = takes({ cables: [cable], pick: [pick('lead-a', 'm', 3)] });
    expect([byLength.cuts.map(({ of }) => of), byLength.known]).toEqual([['cable lead'], []]);
    const byPiece = takes({ cables: [cable], pick: [pick('lead-a', 'piece', 1)] });
    expect([byPiece.cuts, byPiece.known.map(({ of }) => of)]).toEqual([[], ['cable lead']]);
  });

  test('knows the devices and fuses of the job, and what is crimped on each end but a twin ferrule', () => {
    const items = [
      { ...sampleItem, id: 'amp', part: 'amp-a', origin: 'job' as const },
      { ...sampleItem, id: 'bat', part: 'battery-a', origin: 'vehicle' as const },
      { ...sampleItem, id: 'bare', part: null, origin: 'job' as const },
    ];
    const fuses = [
      { ...sampleFuse, id: 'main', part: 'large-60' },
      { ...sampleFuse, id: 'odd', part: null },
    ];
    const ends: readonly PlanWire['ends'][] = [
      [end({ form: 'lug', part: 'lug-a' }), end({ form: 'twin-ferrule', part: 'twin-a' })],
      [end({ form: 'ferrule', part: 'ferrule-a' }), end({ part: 'tab-a' })],
    ];
    const wires = [
      wire('feed', { ends: ends[0] ?? [end(), end()] }),
      wire('more', { ends: ends[1] ?? [end(), end()] }),
      wire('charge', { origin: 'vehicle', ends: ends[0] ?? [end(), end()] }),
    ];
    const { known } = takes({ items, wires, power: { ...plan.power, fuses } });
    expect(known).toEqual([
      { of: 'item amp', part: 'amp-a', count: 1, as: '' },
      { of: 'fuse main', part: 'large-60', count: 1, as: '' },
      { of: 'end feed 0', part: 'lug-a', count: 1, as: 'red-4 a.B b.C 2.00000' },
      { of: 'end more 0', part: 'ferrule-a', count: 1, as: 'red-4 a.B b.C 2.00000' },
    ]);
  });

  test('takes whole sheets for the pieces that are cut out of them', () => {
    const { boards, rules } = plan;
    const sheets = boards.map(({ sheet }) => pick(sheet, 'piece', 2, { kind: 'board-sheet' }));
    const found = takes({ boards, rules, pick: sheets });
    const own = found.known.filter(({ part }) => part === sampleBoard.sheet);
    expect(own).toHaveLength(1);
    expect(own[0]).toMatchObject({ count: 2, as: expect.stringContaining(sampleBoard.id) });
    expect(takes({ boards, rules, pick: [] }).known[0]).toMatchObject({ count: 0 });
  });
});
