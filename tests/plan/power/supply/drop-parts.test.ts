import { describe, expect, test } from 'vitest';
import { dropParts } from '../../../../lib/plan/power/drop-parts.ts';

describe('the parts of a drop', () => {
  const element = (
    of: string,
    kind: 'conductor' | 'fuse' | 'joint' | 'load',
    from: string,
    to: string,
    dropV: number,
  ) => ({
    ...{ id: `${of}:${kind}`, of, kind, model: 'resistance' as const, from, to, ohm: 0.1 },
    ...{ dropV, currentA: 10, heatW: 0 },
  });
  const between = dropParts({
    ...{ name: 'rated-power', title: '', state: 'solved', referenceNode: 'z', residualA: 0, nodes: [] },
    elements: [
      element('feed', 'conductor', 'a', 'b', 0.2),
      element('main', 'fuse', 'b', 'c', 0.1),
      element('feed', 'joint', 'c', 'd', 0.1),
      element('body', 'joint', 'd', 'e', 0.3),
      element('amp', 'load', 'e', 'a', 12),
    ],
  });

  test('are conductors, fuses, joints and the body, the largest first, and no load', () => {
    expect(between('a', 'e').map(({ kind, of, dropV }) => `${kind} ${of} ${dropV.toFixed(1)}`)).toEqual([
      'body body 0.3',
      'conductor feed 0.2',
      'joint feed 0.1',
      'fuse main 0.1',
    ]);
    expect(between('e', 'a').map(({ dropV }) => dropV.toFixed(1))).toEqual(['-0.1', '-0.1', '-0.2', '-0.3']);
    expect(between('a', 'a')).toEqual([]);
    expect(between('a', 'nowhere')).toEqual([]);
  });
});
