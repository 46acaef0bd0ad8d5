import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  comparedTables,
  comparePlans,
  countedStates,
  type RowDifference,
} from '../../lib/compare/compare-plans.ts';
import type { CompareLook } from '../../lib/compare/table.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { canary, textsIn, withCanaries } from '../publish/packet/canaries.ts';
import { comparedLeaves, pathsOf, withOtherLeaf } from './leaves.ts';
import { everyFrozen, frozenIn } from './plans.ts';

const look: CompareLook = { audience: 'bench', style: { system: 'inch', fraction: 16 } };
const inMm: CompareLook = { audience: 'shop', style: { system: 'mm', fraction: 16 } };

/** Every difference in a line: table, thing, what became of it, column, what was and what is. */
function told(before: BuildPlan, after: BuildPlan, by = look): string[] {
  return comparePlans(before, after, by).flatMap(({ id, rows }) =>
    rows.flatMap(({ key, state, cells }) =>
      cells.map(({ column, was, is }) => [id, key, state, column, was?.text, is?.text].join('|')),
    ),
  );
}

/** The same from the other side. */
function mirrored(line: string): string {
  const [id, key, state = '', column, was, is] = line.split('|');
  const opposite = new Map([
    ['gone', 'new'],
    ['new', 'gone'],
  ]);
  return [id, key, opposite.get(state) ?? state, column, is, was].join('|');
}

describe('two plans', () => {
  const plans = everyFrozen();

  it('that are the same have no difference', () => {
    for (const plan of plans) {
      expect(told(plan, plan)).toEqual([]);
      expect(told(plan, plan, inMm)).toEqual([]);
    }
  });

  it('differ from either side by the same, the other way round, of whatever job and format they are', () => {
    const any = fc.constantFrom(...plans);
    fc.assert(
      fc.property(any, any, fc.constantFrom(look, inMm), (before, after, by) => {
        expect(told(after, before, by)).toEqual(told(before, after, by).map(mirrored));
        expect(told(before, after, by).join('\n')).not.toMatch(/NaN|undefined|\[object/);
      }),
      { numRuns: 12 },
    );
  });

  it('count each thing as gone, new, changed or the same', () => {
    const [before, after] = [frozenIn(0, 'estate-side-well'), frozenIn(1, 'under-seat-five')];
    for (const table of comparePlans(before, after, look)) {
      const { gone, new: came, changed, moved } = countedStates([table]);
      const sizes = comparedTables
        .filter(({ id }) => id === table.id)
        .flatMap((one) => [before, after].map((plan) => one.read(plan, look)?.size ?? 0));
      if (!table.isKept) continue;
      expect([gone + changed + moved + table.same, came + changed + moved + table.same]).toEqual(sizes);
    }
  });

  it('tell house rules apart only where both plans kept them', () => {
    const plan = frozenIn(1, 'van-three-amps');
    const rules = comparePlans({ ...plan, rules: [] }, plan, look).find(({ id }) => id === 'rules');
    expect(rules).toEqual({ id: 'rules', title: 'House rules', isKept: false, rows: [], same: 0 });
  });
});

describe('a leaf that differs', () => {
  const plan = frozenIn(1, 'estate-side-well');

  it('is of a column that the list of compared leaves knows, and none other', () => {
    const columns = comparedTables.flatMap(({ id, columns: of }) =>
      of('shop').map((column) => `${id}.${column.id}`),
    );
    expect(columns.toSorted()).toEqual(Object.keys(comparedLeaves).toSorted());
  });

  it.each(Object.entries(comparedLeaves))('in %s is told once, and nothing else is', (column, patterns) => {
    const paths = patterns.flatMap((pattern) => pathsOf(plan, pattern));
    if (paths.length === 0) return;
    fc.assert(
      fc.property(fc.constantFrom(...paths), (path) => {
        const lines = told(plan, withOtherLeaf(plan, path));
        const [table, id] = column.split('.');
        expect(lines.map((line) => [line.split('|')[0], line.split('|')[3]])).toEqual([[table, id]]);
      }),
      { numRuns: 2 },
    );
  });
});

/** The rows of one table of a comparison, by key. */
function rowsOf(before: BuildPlan, after: BuildPlan, table: string): Record<string, RowDifference> {
  const rows = comparePlans(before, after, look).find(({ id }) => id === table)?.rows ?? [];
  return Object.fromEntries(rows.map((row) => [row.key, row]));
}

describe('worked by hand', () => {
  const plan = frozenIn(1, 'estate-side-well');

  it('a main fuse of 120 A in place of 150 A, and nothing else', () => {
    const fuses = plan.power.fuses.map((one) => (one.ratingA === 150 ? { ...one, ratingA: 120 } : one));
    const after = { ...plan, power: { ...plan.power, fuses } };
    const lines = told(plan, after);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^fuses\|main-fuse.*\|changed\|rating\|150 A\|120 A$/);
  });

  it('an amplifier 25.4 mm (an inch) to the right is moved by its x alone', () => {
    const boards = plan.boards.map((board) => ({
      ...board,
      placements: board.placements.map((one) =>
        one.item === 'amp-sub' ? { ...one, xM: one.xM + 0.0254 } : one,
      ),
    }));
    const { 'amp-sub': row } = rowsOf(plan, { ...plan, boards }, 'places');
    expect(row?.state).toBe('moved');
    expect(row?.cells.map(({ column }) => column)).toEqual(['x']);
    const [x] = row?.cells ?? [];
    expect(Number(x?.is?.value) - Number(x?.was?.value)).toBeCloseTo(0.0254, 12);
  });

  it('less than a sheet prints is no difference', () => {
    const wires = plan.wires.map((one) => ({ ...one, lengthM: Math.ceil(one.lengthM * 100) / 100 }));
    const nearly = wires.map((one) => ({ ...one, lengthM: one.lengthM - 0.00001 }));
    expect(told({ ...plan, wires }, { ...plan, wires: nearly })).toEqual([]);
  });

  it('what one of two has tells all that is known of it', () => {
    const after = { ...plan, controls: plan.controls.slice(1) };
    const [first] = plan.controls;
    const rows = rowsOf(plan, after, 'settings');
    const key = `${first?.item}.${first?.control}`;
    expect(Object.keys(rows)).toEqual([key]);
    expect(rows[key]?.state).toBe('gone');
    expect(rows[key]?.cells.map(({ was, is }) => [was?.value, is])).toEqual([
      [first?.preset, null],
      [first?.final.state, null],
    ]);
  });

  it('holes that are as many but elsewhere are not the same ones', () => {
    const boards = plan.boards.map((board) => ({
      ...board,
      holes: board.holes.map((hole) => (hole.n === 1 ? { ...hole, xM: hole.xM + 0.003 } : hole)),
    }));
    const [row] = Object.values(rowsOf(plan, { ...plan, boards }, 'boards'));
    expect(row?.cells.map(({ column, was, is }) => [column, was?.text === is?.text])).toEqual([
      ['holes', true],
    ]);
  });

  it('a fixing that came is a new thing, as the overlay draws it', () => {
    const [board] = plan.boards;
    const [last] = board?.fixings.slice(-1) ?? [];
    if (!board || !last) throw new Error('The board has no fixing.');
    const without = { ...board, fixings: board.fixings.slice(0, -1) };
    const before = { ...plan, boards: [without, ...plan.boards.slice(1)] };
    const states = Object.values(rowsOf(before, plan, 'fixings')).map(({ key, state }) => [key, state]);
    expect(states).toEqual([[`${board.id}.${last.id}`, 'new']]);
  });

  it('findings of one rule about two things are two', () => {
    const [first] = plan.findings;
    if (!first) throw new Error('The plan has no finding.');
    const more = { ...first, related: ['another'], message: 'another is amiss too' };
    const lines = told(plan, { ...plan, findings: [...plan.findings, more] });
    expect(lines).toContain(`findings|${first.rule} of another|new|message||another is amiss too`);
  });
});

describe('what a reader may not see', () => {
  const plan = frozenIn(1, 'van-three-amps');
  const marked = withCanaries(plan);

  it('is no difference to them: neither a value nor that there is one', () => {
    const tables = comparePlans(plan, marked, { ...look, audience: 'customer' });
    expect(textsIn(tables).filter((text) => text.includes(canary))).toEqual([]);
    expect(tables.flatMap(({ rows }) => rows)).toEqual([]);
  });

  it('is told to those who build', () => {
    expect(told(plan, marked).join('\n')).toContain(canary);
  });
});
