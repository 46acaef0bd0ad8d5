import { describe, expect, test } from 'vitest';
import type { Finding } from '../../lib/model/finding.ts';
import { findingFamilies } from '../../lib/model/findings/index.ts';
import { compare, mendingOrder } from '../../lib/rules/finding-order.ts';

const finding = (rule: string, more: Partial<Finding> = {}): Finding => ({
  rule,
  level: 'caution',
  where: { file: 'content/jobs/a.yaml', line: 1, column: 1, path: '' },
  related: ['amp'],
  message: 'it is so',
  source: 'common practice, no source',
  remedy: 'mend it',
  ...more,
});

const accepted: Finding['accepted'] = {
  by: 'P. T.',
  reason: 'it is so',
  where: { file: 'content/jobs/a.yaml', line: 9, column: 1, path: '' },
};

const inOrder = (...findings: readonly Finding[]) => findings.toSorted(compare).map(({ rule }) => rule);

describe('findings', () => {
  test('stand with the first to mend first: what is joined, where it stands, its fuse, its wire, the shelf', () => {
    const all = ['to-order', 'speaker-wire-loss', 'conductor-under-need', 'fuse-under-load', 'items-overlap'];
    expect(inOrder(...['terminal-unaccounted', ...all].map((rule) => finding(rule)))).toEqual([
      'terminal-unaccounted',
      'items-overlap',
      'fuse-under-load',
      'conductor-under-need',
      'speaker-wire-loss',
      'to-order',
    ]);
  });

  test('stand by their level before all else, and by the figures that all else follows from', () => {
    expect(
      inOrder(
        finding('terminal-unaccounted'),
        finding('part-data-unlikely'),
        finding('to-order', { level: 'stop' }),
        finding('terminal-unaccounted', { level: 'note' }),
      ),
    ).toEqual(['to-order', 'part-data-unlikely', 'terminal-unaccounted', 'terminal-unaccounted']);
  });

  test('that are accepted stand behind those of their level that are not', () => {
    expect(inOrder(finding('terminal-unaccounted', { accepted }), finding('to-order'))).toEqual([
      'to-order',
      'terminal-unaccounted',
    ]);
  });

  test('about a board stand as one follows from another, wherever they are written', () => {
    const at = (rule: string, line: number) =>
      finding(rule, { where: { file: 'content/jobs/a.yaml', line, column: 1, path: '' } });
    expect(
      inOrder(
        at('bend-too-tight', 1),
        at('wire-without-way', 2),
        at('items-overlap', 3),
        at('item-does-not-fit', 4),
      ),
    ).toEqual(['item-does-not-fit', 'items-overlap', 'wire-without-way', 'bend-too-tight']);
    // Of all other families, those that are written first.
    expect(inOrder(at('fuse-distance', 2), at('fuse-over-ceiling', 1))).toEqual([
      'fuse-over-ceiling',
      'fuse-distance',
    ]);
  });

  test('of every family have their turn', () => {
    expect(mendingOrder.toSorted()).toEqual(Object.keys(findingFamilies).toSorted());
  });
});
