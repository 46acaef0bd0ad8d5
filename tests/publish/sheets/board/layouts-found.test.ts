import { describe, expect, test } from 'vitest';
import { layoutsTable, scoresTable } from '../../../../lib/publish/sheets/board/layouts-found.ts';
import { writerFor } from '../../../../lib/publish/words/written.ts';
import { planned } from '../../../plan/planned.ts';

const write = () => writerFor(planned().plan.shop);

const layout = (total: number, cautions?: number) => ({
  total,
  score: { length: total },
  placements: [],
  ...(cautions !== undefined && { wired: { wiresWithoutWay: 0, wiresTooShort: 1, cautions } }),
});

describe('the layouts that were found', () => {
  // The first is the one with fewer cautions, though it scores more.
  test('show what goes before the score, in the order in which it counts', () => {
    const table = layoutsTable({ proposals: [layout(7.53, 0), layout(5.64, 2)] }, write());
    expect(table?.columns.map(({ title }) => title)).toEqual([
      'No.',
      'Wires without a way',
      'Too short',
      'Cautions',
      'Score',
      expect.stringMatching(/^Places/),
    ]);
    expect(table?.rows.map(({ cells }) => cells.slice(1, 5).map(({ text }) => text))).toEqual([
      ['0', '1', '0', '7.53'],
      ['0', '1', '2', '5.64'],
    ]);
  });

  test('show the score alone where no wire was tried in them', () => {
    const table = layoutsTable({ proposals: [layout(7.53)] }, write());
    expect(table?.columns.map(({ title }) => title).slice(0, 2)).toEqual(['No.', 'Score']);
  });

  test('do not call the least score the best', () => {
    const caption = scoresTable({ proposals: [layout(7.53, 0), layout(5.64, 2)] })?.caption;
    expect(caption).toMatch(/then fewer cautions go before a lower score$/);
  });
});
