import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../../../lib/plan/power/circuit/circuit.ts';
import { feedNeed, groundNeed, needTrace } from '../../../../lib/plan/power/sizing/conductor-need.ts';
import { circuitOf, edgeOf, sideBySide, tree, twoBatteries } from '../circuits.ts';
import { sizedAll, sizingOf } from './sizing-of.ts';

type Sizes = Parameters<typeof sizedAll>[1];
const ratings: Readonly<Record<string, number>> = {
  main: 100,
  'way-1': 60,
  'way-2': 80,
  'fuse-front': 200,
  'fuse-rear': 150,
  board: 175,
  'side-1': 40,
  'side-2': 50,
};
const ratingA = (fuse: string) => ratings[fuse] ?? Number.NaN;
const feed = (circuit: Circuit, id: string) => feedNeed(edgeOf(circuit, id), sizingOf(circuit), ratingA);
const ground = (circuit: Circuit, id: string, sizes: Sizes) =>
  groundNeed(edgeOf(circuit, id), sizingOf(circuit), ratingA, sizedAll(circuit, sizes));
const traceOf = (circuit: Circuit, id: string, sizes: Sizes = {}) =>
  needTrace(edgeOf(circuit, id), sizingOf(circuit), ratingA, sizedAll(circuit, sizes));

describe('what a feed must carry', () => {
  test('is what its own fuse lets through', () => {
    expect(feed(tree(), 'feed-a')).toEqual([['way-1', 60]]);
    expect(feed(tree(), 'feed')).toEqual([['main', 100]]);
  });

  test('is, before the first fuse, what the fuses behind it let through', () => {
    expect(feed(tree(), 'tail')).toEqual([['main', 100]]);
    // The lead from the front battery: bare at its post; from the rear one what both fuses in a row let through.
    expect(feed(twoBatteries(), 'front-tail')).toEqual([
      ['fuse-front', 200],
      ['fuse-front', 150],
    ]);
  });

  test('is of feeds side by side what the others bring back', () => {
    expect(feed(sideBySide(2), 'feed-1')).toEqual([
      ['side-1', 40],
      ['side-2', 50],
    ]);
  });
});

describe('what a ground must carry', () => {
  const sizes = { tail: [25, 100], feed: [25, 100], 'feed-a': [10, 60], 'feed-b': [16, 80] } as const;

  test('is what the fuse of its device lets through, and what the feed of it must carry', () => {
    expect(ground(tree(), 'ground-a', sizes)).toEqual([
      ['way-1', 60],
      ['the need of feed-a', 60],
    ]);
  });

  test('is of a shared one what all fuses let through together, bounded by the fuse before them', () => {
    expect(ground(tree(), 'ground', sizes)).toEqual([
      ['way-1 and way-2', 100],
      ['the need of feed', 100],
    ]);
  });

  test('is of a shared one the sum of its feeds where none carries all of its devices', () => {
    const circuit = circuitOf({
      batteries: ['bat'],
      feeds: [
        ['feed-a', 'way-1.OUT', 'a.B+'],
        ['feed-b', 'way-2.OUT', 'b.B+'],
        ['tail-a', 'bat.POS', 'way-1.IN'],
        ['tail-b', 'bat.POS', 'way-2.IN'],
      ],
      fuses: [
        ['way-1', 'way-1.IN', 'way-1.OUT'],
        ['way-2', 'way-2.IN', 'way-2.OUT'],
      ],
      grounds: [
        ['ground-a', 'a.GND', 'bar.G'],
        ['ground-b', 'b.GND', 'bar.G'],
        ['ground', 'bar.G', 'body'],
        ['strap', 'bat.NEG', 'body'],
      ],
      loads: ['a', 'b'],
    });
    const found = ground(circuit, 'ground', { 'feed-a': [10, 61], 'feed-b': [16, 82] });
    expect(found).toEqual([
      ['way-1 and way-2', 140],
      ['the need of feed-a and the need of feed-b', 143],
    ]);
  });

  test('counts the feed of a device that is next to it, and each device once', () => {
    // The feed and its tail carry the same devices: the one that is farther from the source counts.
    expect(ground(tree(), 'ground', { tail: [50, 999], feed: [25, 100] })).toContainEqual([
      'the need of feed',
      100,
    ]);
    // The common feed stands for both: their own are not added to it.
    const named = ground(tree(), 'ground', sizes).map(([name]) => name);
    expect(named.join()).not.toMatch(/feed-a|feed-b/);
  });

  test('is of a battery what the best conducting lead at its post must carry, which it may have to take back alone', () => {
    const battery = (front: number, board: number) =>
      ground(twoBatteries(), 'rear-ground', { 'rear-tail': [front, 150], 'board-tail': [board, 175] });
    expect(battery(16, 25)).toEqual([['the need of board-tail', 175]]);
    expect(battery(35, 25)).toEqual([['the need of rear-tail', 150]]);
  });

  test('is nothing of a lead that no fuse lets a current into', () => {
    const circuit = circuitOf({
      batteries: ['bat'],
      feeds: [],
      grounds: [
        ['strap', 'bat.NEG', 'body'],
        ['loose', 'box.GND', 'body'],
      ],
      loads: [],
    });
    expect(ground(circuit, 'loose', {})).toEqual([]);
  });
});

describe('the working of what a conductor must carry', () => {
  test('is the greatest of its shares, each told once', () => {
    expect(traceOf(twoBatteries(), 'front-tail')).toMatchObject({
      value: 200,
      trace: {
        rule: 'conductor-need',
        unit: 'A',
        mark: 'cp',
        formula: expect.stringMatching(/^the greatest of what is let into it/),
        inputs: [
          { name: 'fuse-front', value: 200, unit: 'A' },
          { name: 'fuse-front', value: 150, unit: 'A' },
        ],
      },
    });
    const link = traceOf(sideBySide(2), 'bus');
    expect(link).toMatchObject({ value: 90, trace: { inputs: [{ name: 'side-1 and side-2', value: 90 }] } });
  });

  test('tells what is let in alike at both ends once', () => {
    // A lead from the battery to its fuse is bare at the post; the fuse lets nothing of its own back.
    const { trace } = traceOf(tree(), 'tail');
    expect(trace.inputs).toEqual([{ name: 'main', value: 100, unit: 'A' }]);
    const both = circuitOf({
      batteries: ['bat'],
      feeds: [
        ['tail', 'bat.POS', 'main.IN'],
        ['one', 'main.OUT', 'amp.B+'],
        ['two', 'main.OUT', 'amp.B+'],
      ],
      fuses: [['main', 'main.IN', 'main.OUT']],
      loads: ['amp'],
    });
    expect(feed(both, 'one')).toEqual([
      ['main', 100],
      ['main', 100],
    ]);
    expect(traceOf(both, 'one').trace.inputs).toEqual([{ name: 'main', value: 100, unit: 'A' }]);
  });

  test('goes by its feeds where it is a ground', () => {
    expect(traceOf(tree(), 'ground-b', { 'feed-b': [16, 81] })).toMatchObject({
      value: 81,
      trace: {
        inputs: [
          { name: 'way-2', value: 80 },
          { name: 'the need of feed-b', value: 81 },
        ],
      },
    });
  });

  test('says that no fuse lets a current in, where none does', () => {
    const circuit = circuitOf({
      batteries: ['bat'],
      feeds: [['dead', 'box.OUT', 'amp.B+']],
      grounds: [['strap', 'bat.NEG', 'body']],
      loads: [],
    });
    expect(traceOf(circuit, 'dead')).toMatchObject({
      value: 0,
      trace: { formula: '0: no fuse lets current into it', inputs: [] },
    });
  });
});
