import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../lib/plan/circuit.ts';
import { circuitPaths } from '../../lib/plan/circuit-paths.ts';
import { fusesBehind, neededA, protectedBy, protections } from '../../lib/plan/protection.ts';
import { edgeOf, ring, tree, twoBatteries } from './circuits.ts';

const protectionOf = (circuit: Circuit) => protections(circuit, circuitPaths(circuit));
const nearest = (circuit: Circuit, conductor: string) =>
  (protectionOf(circuit).get(conductor) ?? []).map(
    ({ source, fuses }) => `${source.device.id}: ${fuses[0]?.id ?? 'none'}`,
  );

describe('protection', () => {
  test('the nearest fuse before a conductor is its own', () => {
    expect(nearest(tree(), 'feed-a')).toEqual(['bat: way-1']);
    expect(nearest(tree(), 'feed')).toEqual(['bat: main']);
    expect(nearest(tree(), 'tail')).toEqual(['bat: none']);
  });

  test('a fuse protects what it is the nearest to, and no more', () => {
    const all = protectionOf(tree());
    expect(protectedBy(all, 'main')).toEqual(['feed']);
    expect(protectedBy(all, 'way-1')).toEqual(['feed-a']);
    expect(protectedBy(protectionOf(ring()), 'main')).toEqual(['feed-1', 'feed-2']);
  });

  test('a link between batteries is protected at both of its ends', () => {
    expect(nearest(twoBatteries(), 'link')).toEqual(['front: fuse-front', 'rear: fuse-rear']);
    const all = protectionOf(twoBatteries());
    expect(protectedBy(all, 'fuse-front')).toContain('link');
    expect(protectedBy(all, 'fuse-rear')).toContain('link');
    expect(nearest(twoBatteries(), 'front-tail')).toEqual(['front: none', 'rear: fuse-front']);
  });

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
  const ratings = { main: 100, 'way-1': 60, 'way-2': 40, 'fuse-front': 200, 'fuse-rear': 150, board: 175 };
  const rating = (id: string) => new Map(Object.entries(ratings)).get(id) ?? Number.NaN;

  test.each([
    ['feed-a', [], 60],
    ['feed', [], 100],
    ['tail', ['main'], 100],
  ] as const)('of %s', (conductor, behind, amperes) => {
    expect(neededA(protectionOf(tree()).get(conductor) ?? [], rating, behind)).toBe(amperes);
  });

  test('of a link is that of the larger fuse, since either source may feed a fault alone', () => {
    expect(neededA(protectionOf(twoBatteries()).get('link') ?? [], rating, [])).toBe(200);
  });

  test('of nothing is nothing', () => {
    expect(neededA([], rating, ['main'])).toBe(0);
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
          const own = protection.get(conductor) ?? [];
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
