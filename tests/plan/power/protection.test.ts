import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { circuitPaths } from '../../../lib/plan/power/circuit/circuit-paths.ts';
import {
  fusesBehind,
  isBare,
  neededA,
  protectedBy,
  protections,
} from '../../../lib/plan/power/sizing/protection.ts';
import { edgeOf, ring, ringOfTwoBatteries, sideBySide, tree, twoBatteries } from './circuits.ts';

const protectionOf = (circuit: Circuit) => protections(circuit, circuitPaths(circuit));
/** The fuses nearest to a conductor at either end, `bare` where a source reaches it without one. */
const ends = (circuit: Circuit, conductor: string) =>
  protectionOf(circuit)
    .get(conductor)
    ?.ends.map(({ bare, fuses }) => [...(bare ? ['bare'] : []), ...fuses.map(({ id }) => id)].join(' '));
const protectedIds = (circuit: Circuit, fuse: string) =>
  protectedBy(protectionOf(circuit), fuse).map(({ id }) => id);

describe('protection', () => {
  test('the nearest fuse before a conductor is its own', () => {
    expect(ends(tree(), 'feed-a')).toEqual(['way-1', '']);
    expect(ends(tree(), 'feed')).toEqual(['main', '']);
    expect(ends(tree(), 'tail')).toEqual(['bare', '']);
  });

  test('a fuse protects what it is the nearest to, and no more', () => {
    expect(protectedIds(tree(), 'main')).toEqual(['feed']);
    expect(protectedIds(tree(), 'way-1')).toEqual(['feed-a']);
    expect(protectedIds(ring(), 'main')).toEqual(['feed-1', 'feed-2']);
  });

  test('a link between batteries is protected at both of its ends', () => {
    expect(ends(twoBatteries(), 'link')).toEqual(['fuse-front', 'fuse-rear']);
    expect(protectedIds(twoBatteries(), 'fuse-front')).toContain('link');
    expect(protectedIds(twoBatteries(), 'fuse-rear')).toContain('link');
    expect(ends(twoBatteries(), 'front-tail')).toEqual(['bare', 'fuse-front']);
  });

  test.each([2, 3])(
    'of %i feeds side by side each is fed by its own fuse and, back, by the others',
    (count) => {
      const circuit = sideBySide(count);
      const others = Array.from({ length: count - 1 }, (_, k) => `side-${k + 2}`);
      expect(ends(circuit, 'feed-1')).toEqual(['side-1', others.join(' ')]);
      expect(ends(circuit, 'bus')).toEqual([['side-1', ...others].join(' '), '']);
      expect(
        protectionOf(circuit)
          .get('feed-1')
          ?.fuses.map(({ id }) => id),
      ).toEqual(['side-1', ...others]);
      expect(isBare(protectionOf(circuit).get('feed-1'))).toBe(false);
      const shares = new Map(
        protectedBy(protectionOf(circuit), 'side-1').map(({ id, sideBySide: n }) => [id, n]),
      );
      expect(shares.get('bus')).toBe(count);
      expect(shares.get('feed-2')).toBe(Math.max(1, count - 1));
    },
  );

  test('grounds are no part of it: their feed protects them', () => {
    expect(protectionOf(tree()).has('ground')).toBe(false);
    expect(protectionOf(tree()).has('strap')).toBe(false);
  });

  test('before the first fuse a conductor carries what the next fuses let through', () => {
    const circuit = tree();
    const paths = circuitPaths(circuit);
    expect(fusesBehind(circuit, paths, edgeOf(circuit, 'tail'))).toEqual(['main']);
    const without = {
      ...circuit,
      edges: circuit.edges.map((edge) => (edge.id === 'main' ? { ...edge, kind: 'joint' as const } : edge)),
    };
    const bare = circuitPaths(without);
    expect(fusesBehind(without, bare, edgeOf(without, 'feed')).toSorted()).toEqual(['way-1', 'way-2']);
  });
});

describe('the current that a conductor must carry', () => {
  const ratings = {
    main: 100,
    'way-1': 60,
    'way-2': 40,
    'fuse-front': 200,
    'fuse-rear': 150,
    board: 175,
    'side-1': 80,
    'side-2': 60,
    'side-3': 50,
  };
  const rating = (id: string) => new Map(Object.entries(ratings)).get(id) ?? Number.NaN;
  const needs = (circuit: Circuit, conductor: string, behind: readonly string[] = []) =>
    neededA(protectionOf(circuit).get(conductor), rating, behind);

  test.each([
    ['feed-a', [], 60],
    ['feed', [], 100],
    ['tail', ['main'], 100],
  ] as const)('of %s', (conductor, behind, amperes) => {
    expect(needs(tree(), conductor, behind)).toBe(amperes);
  });

  test('of a link is that of the larger fuse, since either source may feed a fault alone', () => {
    expect(needs(twoBatteries(), 'link')).toBe(200);
  });

  // The greater of the sums that the fuses let in at its two ends.
  test.each([
    [2, 'feed-1', 80],
    [2, 'feed-2', 80],
    [2, 'bus', 140],
    [3, 'feed-1', 110],
    [3, 'feed-2', 130],
    [3, 'feed-3', 140],
    [3, 'bus', 190],
    [3, 'feed-a', 60],
  ] as const)('of %i feeds side by side, %s: %i A', (count, conductor, amperes) => {
    expect(needs(sideBySide(count), conductor)).toBe(amperes);
  });

  test('in a ring between two batteries is the sum of both their fuses, which meet at either end of it', () => {
    expect(ends(ringOfTwoBatteries(), 'link-1')).toEqual(['fuse-front fuse-rear', 'fuse-front fuse-rear']);
    expect(needs(ringOfTwoBatteries(), 'link-1')).toBe(350);
    expect(needs(ringOfTwoBatteries(), 'feed')).toBe(350);
  });

  test('of nothing is nothing', () => {
    expect(neededA(undefined, rating, ['main'])).toBe(0);
  });

  test('never falls when a fuse grows', () => {
    const amperes = fc.integer({ min: 1, max: 300 });
    const protection = protectionOf(twoBatteries());
    fc.assert(
      fc.property(
        fc.record({ 'fuse-front': amperes, 'fuse-rear': amperes, board: amperes }),
        fc.constantFrom('fuse-front', 'fuse-rear', 'board'),
        amperes,
        fc.constantFrom('front-tail', 'link', 'rear-tail', 'feed'),
        (before, grown, by, conductor) => {
          const own = protection.get(conductor);
          const of = (map: ReadonlyMap<string, number>) =>
            neededA(own, (id) => map.get(id) ?? 0, ['fuse-front']);
          const small = new Map(Object.entries(before));
          const large = new Map(small).set(grown, (small.get(grown) ?? 0) + by);
          expect(of(large)).toBeGreaterThanOrEqual(of(small));
        },
      ),
    );
  });
});
