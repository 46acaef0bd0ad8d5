import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../../../lib/plan/power/circuit/circuit.ts';
import { circuitPaths } from '../../../../lib/plan/power/circuit/circuit-paths.ts';
import { circuitOf, edgeOf, ring, sideBySide, sourceOf, tree, twoBatteries } from '../circuits.ts';

const loadsBehind = (circuit: Circuit, edge: string) =>
  circuitPaths(circuit)
    .downstream(edgeOf(circuit, edge))
    .map(({ device }) => device.id);
const fusesBefore = (circuit: Circuit, source: string, edge: string) =>
  circuitPaths(circuit)
    .fusesBetween(sourceOf(circuit, source), edgeOf(circuit, edge))
    .map(({ id }) => id);

describe('a tree', () => {
  test.each([
    ['tail', ['a', 'b']],
    ['main', ['a', 'b']],
    ['feed', ['a', 'b']],
    ['feed-a', ['a']],
    ['way-2', ['b']],
    ['ground-a', ['a']],
    ['ground', ['a', 'b']],
    ['strap', ['a', 'b']],
  ])('%s carries the current of %j', (edge, loads) => {
    expect(loadsBehind(tree(), edge)).toEqual(loads);
  });

  test.each([
    ['tail', []],
    ['feed', ['main']],
    ['feed-a', ['way-1', 'main']],
    ['feed-b', ['way-2', 'main']],
  ])('before %s stand the fuses %j, the nearest first', (edge, fuses) => {
    expect(fusesBefore(tree(), 'bat', edge)).toEqual(fuses);
  });

  test('the way to an edge passes all that stands before it', () => {
    const circuit = tree();
    const paths = circuitPaths(circuit);
    const way = paths.way(sourceOf(circuit, 'bat'), edgeOf(circuit, 'feed-a'), () => 1);
    expect(way?.map(({ id }) => id)).toEqual(['tail', 'main', 'feed', 'way-1']);
  });

  test('a load that no source reaches is not fed', () => {
    const circuit = tree();
    const cut = { ...circuit, edges: circuit.edges.filter(({ id }) => id !== 'feed') };
    expect(circuitPaths(cut).fed).toEqual([]);
    expect(circuitPaths(cut).sourcesOf(edgeOf(cut, 'feed-a'))).toEqual([]);
    expect(circuitPaths(cut).way(sourceOf(cut, 'bat'), edgeOf(cut, 'feed-a'), () => 1)).toBeNull();
  });
});

describe('a ring of two feeds side by side', () => {
  test('each may have to carry everything', () => {
    expect(loadsBehind(ring(), 'feed-1')).toEqual(['a']);
    expect(loadsBehind(ring(), 'feed-2')).toEqual(['a']);
  });

  test('the fuse before the ring protects both, the one behind it neither', () => {
    expect(fusesBefore(ring(), 'bat', 'feed-1')).toEqual(['main']);
    expect(fusesBefore(ring(), 'bat', 'feed-2')).toEqual(['main']);
    expect(fusesBefore(ring(), 'bat', 'feed-a')).toEqual(['way-1', 'main']);
  });

  test('the way goes by the shorter of both', () => {
    const circuit = ring();
    const by = (short: string) =>
      circuitPaths(circuit)
        .way(sourceOf(circuit, 'bat'), edgeOf(circuit, 'way-1'), (id) => (id === short ? 1 : 2))
        ?.map(({ id }) => id);
    expect(by('feed-1')).toContain('feed-1');
    expect(by('feed-2')).toContain('feed-2');
  });
});

describe('feeds side by side, each behind a fuse of its own', () => {
  test.each([2, 3, 4])('%i of them: each may have to carry everything', (count) => {
    for (let k = 1; k <= count; k += 1) {
      for (const edge of [`tail-${k}`, `side-${k}`, `feed-${k}`])
        expect(loadsBehind(sideBySide(count), edge)).toEqual(['a', 'b']);
    }
    expect(loadsBehind(sideBySide(count), 'feed-a')).toEqual(['a']);
  });

  test('no source is bare behind them, though no single fuse stands before', () => {
    const circuit = sideBySide(3);
    const paths = circuitPaths(circuit);
    const bare = (edge: string) => paths.isBare(sourceOf(circuit, 'bat'), edgeOf(circuit, edge));
    expect(['tail-1', 'side-2'].map(bare)).toEqual([true, true]);
    expect(['feed-1', 'way-1', 'feed-a'].map(bare)).toEqual([false, false, false]);
  });
});

describe('a second battery', () => {
  const circuit = twoBatteries();
  const paths = circuitPaths(circuit);
  const behind = (edge: string) => paths.sourcesBehind(edgeOf(circuit, edge)).map(({ device }) => device.id);

  test('hangs on the link, and not on the feed of the board', () => {
    expect(behind('link')).toEqual(['rear']);
    expect(behind('front-tail')).toEqual(['rear']);
    expect(behind('feed')).toEqual([]);
    expect(paths.returnsBehind(edgeOf(circuit, 'rear-ground')).map(({ device }) => device.id)).toEqual([
      'rear',
    ]);
    expect(paths.returnsBehind(edgeOf(circuit, 'ground'))).toEqual([]);
  });

  test('reaches every feed, as the first one does', () => {
    for (const edge of ['front-tail', 'link', 'rear-tail', 'feed'])
      expect(paths.sourcesOf(edgeOf(circuit, edge)).map(({ device }) => device.id)).toEqual([
        'front',
        'rear',
      ]);
  });

  test('has fuses of its own between itself and the link', () => {
    expect(fusesBefore(circuit, 'front', 'link')).toEqual(['fuse-front']);
    expect(fusesBefore(circuit, 'rear', 'link')).toEqual(['fuse-rear']);
    expect(fusesBefore(circuit, 'rear', 'front-tail')).toEqual(['fuse-front', 'fuse-rear']);
    expect(fusesBefore(circuit, 'rear', 'feed')).toEqual(['board']);
    expect(fusesBefore(circuit, 'front', 'feed')).toEqual(['board', 'fuse-rear', 'fuse-front']);
  });
});

describe('what an edge joins to the first battery', () => {
  test('is the other battery, by its link and by its ground, and nothing by the feed of the board', () => {
    const circuit = twoBatteries();
    const paths = circuitPaths(circuit);
    const names = (sources: ReturnType<typeof paths.sourcesBehind>) => sources.map(({ device }) => device.id);
    expect(names(paths.sourcesBehind(edgeOf(circuit, 'link')))).toEqual(['rear']);
    expect(names(paths.returnsBehind(edgeOf(circuit, 'rear-ground')))).toEqual(['rear']);
    expect(names(paths.returnsBehind(edgeOf(circuit, 'ground')))).toEqual([]);
  });

  test('is every node that it alone reaches, and no other', () => {
    const circuit = tree();
    const behind = [...circuitPaths(circuit).nodesBehind(edgeOf(circuit, 'feed-a'))];
    expect(behind).toContain('a.B+');
    for (const { positive } of circuit.sources) expect(behind).not.toContain(positive);
    expect(behind).not.toContain('b.B+');
    expect(behind).not.toContain(edgeOf(circuit, 'feed-a').from);
  });

  test('is nothing of an edge that no source reaches, which lies behind all fuses', () => {
    const circuit = circuitOf({
      batteries: ['bat'],
      feeds: [
        ['tail', 'bat.POS', 'main.IN'],
        ['lost', 'other.OUT', 'a.B+'],
      ],
      fuses: [
        ['main', 'main.IN', 'main.OUT'],
        ['other', 'other.IN', 'other.OUT'],
      ],
      loads: ['a'],
    });
    const paths = circuitPaths(circuit);
    const lost = edgeOf(circuit, 'lost');
    expect(paths.sourcesBehind(lost)).toEqual([]);
    expect(paths.nodesBehind(lost)).toEqual(new Set());
    expect(paths.hops(sourceOf(circuit, 'bat'), lost)).toBe(0);
    expect(fusesBefore(circuit, 'bat', 'lost').toSorted()).toEqual(['main', 'other']);
  });
});

test('of batteries that are joined the others hang on that of the vehicle, wherever it is written', () => {
  const circuit = twoBatteries();
  const primaryOf = (id: string) =>
    circuitPaths({ ...circuit, primary: sourceOf(circuit, id) }).islands.map(
      ({ primary }) => primary.device.id,
    );
  expect(primaryOf('front')).toEqual(['front']);
  expect(primaryOf('rear')).toEqual(['rear']);
});

/** A random tree: for each node but the root its parent, and whether a fuse stands before it. */
const anyTree = fc
  .array(fc.tuple(fc.nat(), fc.boolean(), fc.boolean()), { minLength: 1, maxLength: 12 })
  .map((nodes) => nodes.map(([parent, fused, loaded], at) => ({ parent: parent % (at + 1), fused, loaded })));

describe('any tree', () => {
  test('an edge carries what hangs below it, and has the fuses above it, the nearest first', () => {
    fc.assert(
      fc.property(anyTree, (nodes) => {
        const out = (node: number) => (node === 0 ? 'bat.POS' : `n${node}.OUT`);
        const circuit = circuitOf({
          batteries: ['bat'],
          feeds: [
            ...nodes.map(
              ({ parent, fused }, at) =>
                [`w${at + 1}`, out(parent), fused ? `n${at + 1}.IN` : out(at + 1)] as const,
            ),
            ...nodes.flatMap(({ loaded }, at) =>
              loaded ? [[`l${at + 1}`, out(at + 1), `d${at + 1}.B+`] as const] : [],
            ),
          ],
          fuses: nodes.flatMap(({ fused }, at) =>
            fused ? [[`f${at + 1}`, `n${at + 1}.IN`, out(at + 1)] as const] : [],
          ),
          grounds: [
            ['strap', 'bat.NEG', 'body'],
            ...nodes.flatMap(({ loaded }, at) =>
              loaded ? [[`g${at + 1}`, `d${at + 1}.GND`, 'body'] as const] : [],
            ),
          ],
          loads: nodes.flatMap(({ loaded }, at) => (loaded ? [`d${at + 1}`] : [])),
        });
        const above = (node: number): number[] =>
          node === 0 ? [] : [...above(nodes[node - 1]?.parent ?? 0), node];
        nodes.forEach((_, at) => {
          const node = at + 1;
          const below = nodes.flatMap(({ loaded }, other) =>
            loaded && above(other + 1).includes(node) ? [`d${other + 1}`] : [],
          );
          expect(loadsBehind(circuit, `w${node}`)).toEqual(below);
          const fused = above(node)
            .slice(0, -1)
            .filter((one) => nodes[one - 1]?.fused)
            .map((one) => `f${one}`);
          expect(fusesBefore(circuit, 'bat', `w${node}`)).toEqual(fused.toReversed());
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe('the way that a source reaches a fuse without another', () => {
  const beside = (leads: readonly string[], more: Partial<Parameters<typeof circuitOf>[0]> = {}) =>
    circuitOf({
      batteries: ['bat'],
      feeds: [
        ...leads.map((id) => [id, 'bat.POS', 'main.IN'] as const),
        ['feed', 'main.OUT', 'amp.B+'],
        ...(more.feeds ?? []),
      ],
      fuses: [['main', 'main.IN', 'main.OUT'], ...(more.fuses ?? [])],
      loads: ['amp'],
    });
  const reached = (circuit: Circuit, edge: string, lengths: Readonly<Record<string, number>>) =>
    circuitPaths(circuit).bareLengthM(
      sourceOf(circuit, 'bat'),
      edgeOf(circuit, edge),
      (id) => lengths[id] ?? 1,
    );

  test.each([
    ['one lead', ['near'], 0.15],
    ['a longer lead beside it', ['near', 'far'], 0.9],
    ['whichever is written first', ['far', 'near'], 0.9],
  ])('%s', (_, leads, lengthM) => {
    expect(reached(beside(leads), 'main', { near: 0.15, far: 0.9 })).toBeCloseTo(lengthM, 9);
  });

  test('a lead that ends elsewhere, and one behind another fuse, do not count', () => {
    const circuit = beside(['near'], {
      feeds: [
        ['stub', 'bat.POS', 'other.IN'],
        ['round', 'other.OUT', 'main.IN'],
      ],
      fuses: [['other', 'other.IN', 'other.OUT']],
    });
    expect(reached(circuit, 'main', { near: 0.15 })).toBeCloseTo(0.15, 9);
    expect(reached(circuit, 'feed', {})).toBeNull();
  });
});
