import { describe, expect, test } from 'vitest';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import type { NetworkElement } from '../../../lib/power/network/network-types.ts';
import { amp, battery, faultKinds, solve, wire } from './few-elements.ts';

describe('a network that cannot be computed names its fault', () => {
  test.each<[string, string, NetworkElement[]]>([
    ['a device without a ground', 'floating', [battery(), amp(10, 'plus', 'nowhere')]],
    ['a device without a feed', 'floating', [battery(), amp(10, 'nowhere', 'minus')]],
    [
      'a loop without resistance',
      'zero-resistance-loop',
      [battery(), wire('a', 'plus', 'x', 0), wire('b', 'x', 'plus', 0)],
    ],
    [
      'stiff sources in parallel',
      'stiff-sources-in-parallel',
      [battery({ ohm: 0 }), battery({ id: 'second', ohm: 0, emfV: 13 })],
    ],
    [
      'equal stiff sources',
      'stiff-sources-in-parallel',
      [battery({ ohm: 0 }), battery({ id: 'second', ohm: 0 })],
    ],
    [
      'a shorted alternator',
      'short-circuit',
      [battery(), battery({ id: 'alternator', ohm: 0, limitA: 100 }), wire('short', 'plus', 'minus', 0)],
    ],
    ['a limit under zero', 'negative-value', [battery({ limitA: -1 }), amp(10)]],
    ['an emf under zero', 'negative-value', [battery({ emfV: -12 }), amp(10)]],
    ['a source of a resistance under zero', 'negative-value', [battery({ ohm: -0.1 }), amp(10)]],
    ['a shorted stiff source', 'short-circuit', [battery({ ohm: 0 }), wire('short', 'plus', 'minus', 0)]],
    ['a negative resistance', 'negative-value', [battery(), wire('a', 'plus', 'x', -1), amp(10, 'x')]],
    [
      'a load of no ohms',
      'negative-value',
      [battery(), { id: 'r', kind: 'load', model: 'resistance', ohm: 0, from: 'plus', to: 'minus' }],
    ],
    ['no number', 'not-a-number', [battery({ emfV: Number.NaN }), amp(10)]],
    ['an endless number', 'not-a-number', [battery(), amp(Number.POSITIVE_INFINITY)]],
    ['a conductor back to its own start', 'joined-to-itself', [battery(), wire('a', 'plus', 'plus', 1)]],
    ['an id used twice', 'duplicate-id', [battery(), wire('a', 'plus', 'x', 1), wire('a', 'plus', 'y', 1)]],
  ])('%s', (_what, kind, elements) => {
    expect(faultKinds(solve(...elements))).toContain(kind);
  });

  test('names the elements of the loop', () => {
    const result = solve(
      battery(),
      wire('a', 'plus', 'x', 0),
      wire('b', 'x', 'y', 0),
      wire('c', 'y', 'plus', 0),
    );
    expect(result.state === 'fault' && result.faults[0]?.of.toSorted()).toEqual(['a', 'b', 'c']);
  });

  test('an unknown node', () => {
    const network = {
      referenceNode: 'minus',
      elements: [battery(), amp(10, 'plux')],
      nodes: ['plus', 'minus'],
    };
    expect(faultKinds(solveNetwork(network))).toContain('unknown-node');
    expect(faultKinds(solveNetwork({ referenceNode: 'earth', elements: [battery()] }))).toContain(
      'unknown-node',
    );
    expect(faultKinds(solveNetwork({ referenceNode: 'earth', elements: [] }))).toContain('unknown-node');
  });
});
