import { describe, expect, it } from 'vitest';
import {
  cellClasses,
  columnKinds,
  hasMoved,
  withColumnKinds,
} from '../../../lib/publish/page/column-kinds.ts';
import { dense, strong, tableOf, tick } from '../../../lib/publish/sheets/table.ts';

const table = dense(
  tableOf(
    'Fuses',
    ['fuse-front', 'fuse-rear'],
    [
      { title: 'Fuse', cell: (id) => strong(id) },
      { title: 'Rating', kind: 'figure', leads: true, cell: () => '200 A' },
      tick('Fitted'),
    ],
  ),
);

describe('the kinds of columns', () => {
  it('are said once a table', () => {
    expect(columnKinds(table)).toBe('kinds dense strong-1 figure-2 leads-2 tick-3');
  });

  it('leave to a cell only that it is long', () => {
    const [column] = table.columns;
    if (!column) throw new Error('the table has no column');
    expect(cellClasses({ text: '14 characters.' }, column, false)).toBe('');
    expect(cellClasses({ text: '15 characters..' }, column, false)).toBe('long');
    expect(cellClasses({ text: '14 char', beside: 'acters..' }, column, false)).toBe('long');
    expect(cellClasses({ text: 'one-word-of-24-letters--' }, column, false)).toBe('');
    expect(cellClasses({ text: 'one-word-of-25-letters---' }, column, false)).toBe('long');
  });

  it('are told by each cell where one takes two columns', () => {
    const [, column] = table.columns;
    if (!column) throw new Error('the table has one column');
    expect(hasMoved({ subject: null, heading: null, cells: [{ text: 'a', wide: true }] })).toBe(true);
    expect(cellClasses({ text: '200 A' }, column, true)).toBe('figure leads short');
  });

  it('refuse a table that the style sheet has no columns for', () => {
    const wide = tableOf(
      'Wide',
      [1],
      Array.from({ length: 15 }, (_, at) => ({ title: String(at) })),
    );
    expect(() => columnKinds(wide)).toThrow('at most 14');
  });

  it('give a rule of the style sheet to the cells of such columns, and leave other names alone', () => {
    const css = withColumnKinds('td.figure { a: b } .ticks { c: d }');
    expect(css).toContain('.figure-14 > :is(thead, tbody) > tr:not(.group, .moved) > :nth-child(14)');
    expect(css).toContain('td:is(.figure, :where(');
    expect(css).toContain('.ticks { c: d }');
    // Words take several lines as they need them: no rule of what is short holds for them.
    expect(withColumnKinds('.short { a: b }')).toMatch(/:not\(\.long, \.words-1 > .*\)/);
  });
});
