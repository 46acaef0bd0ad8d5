import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choosePorts, type OpenWire, wiresWith } from '../../../lib/board/route/port-choice.ts';
import { assignmentCost, type PortCosts, searchPorts } from '../../../lib/board/route/port-search.ts';
import type { RouteWire } from '../../../lib/board/route/route.ts';
import type { RoutingTask } from '../../../lib/board/route/routing.ts';
import { caseCount, casesOf } from '../../long-run.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';
import { routeWires, usualRouting } from '../usual-board.ts';

const byTrial = outsideCheck('ports-by-trial');

/** Every way of giving each of some wires a port of its own. */
function everyWay(wires: number, ports: number, before: readonly number[] = []): (readonly number[])[] {
  if (before.length === wires) return [before];
  return Array.from({ length: ports }, (_, port) => port)
    .filter((port) => !before.includes(port))
    .flatMap((port) => everyWay(wires, ports, [...before, port]));
}

const optionsOf = (wires: number, ports: number) =>
  Array.from({ length: wires }, () => Array.from({ length: ports }, (_, port) => [`P${port}`]));

/** Costs out of a list of numbers, the same for the same question. */
function costsOf(numbers: readonly number[]): PortCosts {
  const at = (...given: readonly number[]): number => {
    const place = given.reduce((sum, one) => sum * 31 + one + 7, 0);
    return numbers[place % numbers.length] ?? 0;
  };
  return { alone: at, pair: at };
}

const numbers = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 40, maxLength: 60 });

describe('the search for ports', () => {
  it('finds what trying every assignment finds, up to eight wires', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 0, max: 2 }),
        numbers,
        (wires, spare, list) => {
          const ports = wires + spare;
          const costs = costsOf(list);
          const ways = everyWay(wires, ports);
          const least = Math.min(...ways.map((way) => assignmentCost(way, costs)));
          const found = searchPorts(optionsOf(wires, ports), ways.at(-1) ?? [], costs);
          expect(byTrial.differs(assignmentCost(found, costs), least)).toBe(least);
          expect(new Set(found).size).toBe(wires);
        },
      ),
    );
  });

  it('beyond eight never costs more than the first, takes no port twice, and no single change helps', () => {
    fc.assert(
      fc.property(fc.integer({ min: 9, max: 12 }), numbers, (wires, list) => {
        const costs = costsOf(list);
        const first = Array.from({ length: wires }, (_, wire) => wire);
        const found = searchPorts(optionsOf(wires, wires + 1), first, costs);
        const cost = assignmentCost(found, costs);
        expect(cost).toBeLessThanOrEqual(assignmentCost(first, costs));
        expect(new Set(found).size).toBe(wires);
        const pairs = found.flatMap((a, one) =>
          found.slice(one + 1).map((b, beyond) => ({ a, b, one, other: one + 1 + beyond })),
        );
        for (const { a, b, one, other } of pairs)
          expect(assignmentCost(found.with(one, b).with(other, a), costs)).toBeGreaterThanOrEqual(cost);
      }),
      { numRuns: caseCount({ all: 30, some: 8 }) },
    );
  });
});

const shape = shapeOf({ rectangle: { width: '500 mm', height: '300 mm' } });
/** Two parts as high as the board: no wire goes round behind either. */
const barriers = [
  { id: 'block', box: { minX: 0, minY: 0, maxX: 0.1, maxY: 0.3 } },
  { id: 'amp', box: { minX: 0.45, minY: 0, maxX: 0.5, maxY: 0.3 } },
];
const portAt = (port: number) => ({ xM: 0.1, yM: 0.08 + 0.045 * port, faces: 'right' as const });
const farAt = (place: number) => ({ xM: 0.45, yM: 0.07 + 0.05 * place, faces: 'left' as const });

/** Lines far apart and few searches: 24 boards are routed to compare with. */
const house = usualRouting;
const coarse = { ...house, pitchM: 0.015, searchesOfFew: 4 };

/** Wires from a block of four ports to terminals on the far side, in an order of their own. */
function fan(places: readonly number[]): { readonly task: RoutingTask; readonly open: OpenWire[] } {
  const wires = places.map((place, at): RouteWire => {
    return { id: `w${at}`, from: portAt(at), to: farAt(place), layer: 'power', diameterM: 0.006 };
  });
  const open = wires.map(({ id, to }, at): OpenWire => {
    const options = [0, 1, 2, 3].map((port) => ({ ports: [`P${port}`], from: portAt(port), to }));
    return { id, options, first: at };
  });
  return { task: { shape, barriers, wires }, open };
}

describe('the ports that wires get', () => {
  // Every way is routed by itself: four wires on all four ports in the long run.
  it.each(casesOf([[[2, 0, 3]], [[3, 0]], [[3, 2, 1, 0]]], (one) => one.flat().length < 4))(
    'to places %j cross as seldom as the best of all assignments, each routed',
    (places) => {
      const { task, open } = fan(places);
      const choice = choosePorts(task, open, coarse);
      const best = Math.min(
        ...everyWay(places.length, 4).map(
          (way) => routeWires({ ...task, wires: wiresWith(task, open, way) }, coarse).crossings.length,
        ),
      );
      expect(choice.crossings).toBe(best);
      expect(choice.crossings).toBeLessThanOrEqual(choice.firstCrossings);
      const taken = open.map(({ id, options }) => options[choice.options[id] ?? -1]?.ports[0]);
      expect(new Set(taken).size).toBe(places.length);
    },
    300_000,
  );

  it('stay as they are where that crosses no more', () => {
    const { task, open } = fan([0, 1, 2]);
    expect(choosePorts(task, open, house)).toEqual({
      options: { w0: 0, w1: 1, w2: 2 },
      crossings: 0,
      firstCrossings: 0,
    });
  });

  it('give way to wires whose ports are fixed', () => {
    const { task, open } = fan([0, 1, 2, 3]);
    // The first wire runs to the top, and its port at the top is its own: the others take those below.
    const fixed: RouteWire = { id: 'w0', from: portAt(3), to: farAt(3), layer: 'power', diameterM: 0.006 };
    const others = open.slice(1).map((one, at) => ({
      ...one,
      options: one.options
        .filter(({ ports }) => !ports.includes('P3'))
        .map((option) => ({ ...option, to: farAt(2 - at) })),
      first: at,
    }));
    const wires = [
      fixed,
      ...task.wires.slice(1).map((wire, at) => ({ ...wire, from: portAt(at), to: farAt(2 - at) })),
    ];
    const choice = choosePorts({ ...task, wires }, others, house);
    expect(choice.firstCrossings).toBeGreaterThan(0);
    expect(choice).toMatchObject({ crossings: 0, options: { w1: 2, w2: 1, w3: 0 } });
  });
});
