import { describe, expect, it } from 'vitest';
import type { BuildPlan, PlanBoard } from '../../../../lib/model/plan/index.ts';
import { cutAndDrill } from '../../../../lib/publish/sheets/board/cut-and-drill.ts';
import type { Table } from '../../../../lib/publish/sheets/table.ts';
import { samplePlan } from '../../sample/sample-plan.ts';

type Hole = PlanBoard['holes'][number];

const hole: Hole = {
  n: 1,
  xM: 0.1,
  yM: 0.2,
  // 1/8 in and 1/2 in exactly (NIST SP 811: 25.4 mm to the inch).
  diameterM: 0.003175,
  depthM: 0.0127,
  pilotFor: null,
  purpose: 'mounting',
  of: 'amp',
  behind: null,
};

function drillTable(holes: readonly Hole[], units: BuildPlan['shop']['units'] = 'inch'): Table {
  const plan = samplePlan();
  const [board] = plan.boards;
  if (!board) throw new Error('the sample has no board');
  const shop = { ...plan.shop, units };
  const model = cutAndDrill.model({ ...plan, shop, boards: [{ ...board, holes: [...holes] }] });
  const table = model?.boards[0]?.holes;
  if (!table) throw new Error('the sheet has no drill table');
  return table;
}

function column(table: Table, title: string): (string | undefined)[] {
  const at = table.columns.findIndex((one) => one.title === title);
  return table.rows.map(({ cells }) => cells[at]?.text);
}

describe('the drill table of the cut and drill sheet', () => {
  it('sets the drill up once for holes of one bit and depth, and keeps their numbers, the widest first', () => {
    const table = drillTable([
      hole,
      { ...hole, n: 2, depthM: null, diameterM: 0.00635, behind: 'floor-pan' },
      { ...hole, n: 3 },
    ]);
    expect(column(table, 'Hole')).toEqual(['A2', 'B1', 'B3']);
    expect(table.rows.map(({ heading }) => heading)).toEqual([
      'A: bit 1/4 in or 6.4 mm, right through: 1 hole',
      'B: bit 1/8 in or 3.2 mm, 1/2 in (12 mm) deep: 2 holes',
      null,
    ]);
  });

  it('has the unit of the shop at the head of the places and not beside each', () => {
    expect(column(drillTable([hole]), 'x, in')).toEqual(['3 15/16']);
    expect(column(drillTable([hole], 'millimetre'), 'x, mm')).toEqual(['100']);
  });

  it('promises nothing behind a hole that goes through where nobody told', () => {
    const table = drillTable([
      hole,
      { ...hole, n: 2, depthM: null },
      { ...hole, n: 3, depthM: null, behind: 'brake-line' },
    ]);
    expect(column(table, 'Behind it')).toEqual(['not told: look', 'brake line', 'board only']);
  });
});
