import { describe, expect, it } from 'vitest';
import { printed } from '../../../lib/model/printed/index.ts';
import { conductorTable } from '../../../lib/publish/sheets/conductor-table.ts';
import { powerDiagram } from '../../../lib/publish/sheets/power-diagram.ts';
import type { Table } from '../../../lib/publish/sheets/table.ts';
import { smallPlan } from '../../plan/plan-small-shop.ts';

describe('a current on a sheet is rounded to the safe side', () => {
  it.each([
    [7.5, '7.5 A', '7.5 A'],
    [68, '68 A', '68 A'],
    [52.55, '52.5 A', '52.6 A'],
    [2.41, '2.4 A', '2.5 A'],
    [0.3, '0.3 A', '0.3 A'],
    [-3.04, '-3.1 A', '-3 A'],
  ])('%s A', (currentA, may, must) => {
    expect([printed('current-allowed', currentA), printed('current-carried', currentA)]).toEqual([may, must]);
  });

  it('is a dash where it is not known', () => {
    expect([null, undefined, Number.NaN].map((none) => printed('current-allowed', none))).toEqual([
      '—',
      '—',
      '—',
    ]);
  });
});

describe('7.5 A stays 7.5 A on paper', () => {
  const { plan } = smallPlan();
  const small = {
    ...plan,
    power: {
      ...plan.power,
      fuses: plan.power.fuses.map((fuse) => ({ ...fuse, form: 'mini-blade' as const, ratingA: 7.5 })),
      conductors: plan.power.conductors.map((one) => ({ ...one, ampacityA: 7.5, neededA: 7.5 })),
    },
  };
  const cellsOf = (table: Table | null | undefined) => (table?.rows ?? []).flatMap(({ cells }) => cells);

  it('as a fuse, with the colour of its body as a cross-check', () => {
    const cells = cellsOf(powerDiagram.model(small)?.tables.find(({ caption }) => caption === 'Fuses'));
    // ISO 8820-3: 7.5 A is brown.
    expect(cells).toContainEqual(
      expect.objectContaining({ text: '7.5 A', beside: 'brown body, ISO 8820-3' }),
    );
  });

  it('as what a conductor may and must carry', () => {
    const texts = cellsOf(conductorTable.model(small)?.conductors).map(({ text }) => text);
    expect(texts).toContain('7.5 A');
    expect(texts).not.toContain('8 A');
  });
});

describe('what a conductor must carry', () => {
  const { plan } = smallPlan();
  const id = 'feed';
  const told = (neededA: number, currents: readonly number[]) => {
    const points = currents.map((currentA) => ({
      ...{ name: 'music' as const, title: 'Music', state: 'solved' as const },
      ...{ referenceNode: 'body', residualA: 0, nodes: [] },
      elements: [
        {
          id,
          of: id,
          kind: 'conductor' as const,
          from: 'a',
          to: 'b',
          model: 'resistance' as const,
          currentA,
        },
      ],
    }));
    const conductors = plan.power.conductors
      .filter((one) => one.id === id)
      .map((one) => ({ ...one, fed: true, fuses: [], neededA }));
    const table = conductorTable.model({
      ...plan,
      power: { ...plan.power, points, conductors },
    })?.conductors;
    const cell = (title: string) =>
      table?.rows[0]?.cells.find((_, at) => table.columns[at]?.title === title)?.text;
    return [cell('Must carry'), cell('Fuses')];
  };

  it('is never told as none: without a fuse before it stands what flows at most, either way', () => {
    expect(told(80, [12])).toEqual(['80 A', '—']);
    expect(told(0, [12, -112.8])).toEqual(['—', 'none: 113 A at most']);
    expect(told(0, [])).toEqual(['—', 'none: not known']);
    expect(told(0, [0, 4e-28])).toEqual(['—', 'none: not known']);
  });
});
