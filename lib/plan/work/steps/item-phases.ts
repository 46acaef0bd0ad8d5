import type { PlanBoard, PlanWire } from '../../../model/plan/index.ts';
import { itemOf, type Wait } from '../work.ts';
import { ringOf } from './sort-steps.ts';

/** Things that wait for each other, named, with the way out. */
export interface WaitingRing {
  readonly items: readonly string[];
  readonly message: string;
  readonly remedy: string;
}

export interface Phases {
  /** In which round each item is mounted: 0 first. */
  readonly ofItem: ReadonlyMap<string, number>;
  /** The waits that are kept: those of a ring are cut at one place, so that an order is left. */
  readonly waits: readonly Wait[];
  readonly rings: readonly WaitingRing[];
  /** Items that can't be mounted on the bench: they stand over a wire from the vehicle, or wait for one that does. */
  readonly late: ReadonlySet<string>;
}

/** A raised part waits for every wire that lies beneath it, its own aside: those slide under as it is set down. */
export function waitsOfRaisedItems(board: PlanBoard, wires: readonly PlanWire[]): Wait[] {
  const raised = board.placements.filter(({ raisedM }) => raisedM > 0);
  return raised.flatMap(({ item, xM, yM, widthM, depthM }) => {
    const beneath = board.routes.filter(({ points }) =>
      points.some((to, index) => {
        const from = points[index - 1] ?? to;
        return (
          Math.max(from.xM, to.xM) > xM &&
          Math.min(from.xM, to.xM) < xM + widthM &&
          Math.max(from.yM, to.yM) > yM &&
          Math.min(from.yM, to.yM) < yM + depthM
        );
      }),
    );
    return wires
      .filter(({ id }) => beneath.some(({ along }) => along.includes(id)))
      .filter(({ ends }) => ends.every(({ terminal }) => itemOf(terminal) !== item))
      .map(({ id, label }): Wait => ({ item, after: id, why: `${item} stands over ${label}` }));
  });
}

/** A part that stands over another waits for it. */
export function waitsOfStackedItems({ placements }: PlanBoard): Wait[] {
  return placements.flatMap((upper) =>
    placements
      .filter(
        (lower) =>
          lower.item !== upper.item &&
          upper.raisedM > 0 &&
          lower.raisedM + lower.heightM <= upper.raisedM + 1e-9 &&
          lower.xM < upper.xM + upper.widthM &&
          upper.xM < lower.xM + lower.widthM &&
          lower.yM < upper.yM + upper.depthM &&
          upper.yM < lower.yM + lower.depthM,
      )
      .map(({ item }): Wait => ({ item: upper.item, after: item, why: `${upper.item} stands over ${item}` })),
  );
}

/**
 * The rounds in which the items of a board are mounted. An item comes a round after each item that it waits for, and
 * after both ends of each wire that it waits for. Items that wait for each other are told, and one of their waits is
 * cut. `overVehicleWires` are those that stand over a wire that reaches the board in the vehicle only.
 */
export function itemPhases(
  items: readonly string[],
  wires: readonly PlanWire[],
  all: readonly Wait[],
  overVehicleWires: readonly Wait[],
): Phases {
  const rings: WaitingRing[] = [];
  let waits = all.filter(({ item, after }) => items.includes(item) && after !== item);
  const before = ({ item, after }: Wait): readonly string[] =>
    items.includes(after) ? [after] : endsAmong(items, wires, after).filter((end) => end !== item);
  for (;;) {
    const graph = new Map(
      items.map((item) => [item, waits.filter((wait) => wait.item === item).flatMap(before)]),
    );
    const ring = ringOf(graph);
    const [first = '', second = first] = ring ?? [];
    if (!ring) break;
    rings.push(ringText(ring, waits, before));
    waits = waits.filter((wait) => wait.item !== first || !before(wait).includes(second));
  }
  const ofItem = new Map<string, number>();
  const phase = (item: string): number => {
    const known = ofItem.get(item);
    if (known !== undefined) return known;
    const own = waits.filter((wait) => wait.item === item);
    const found = Math.max(0, ...own.map((wait) => 1 + Math.max(0, ...before(wait).map(phase))));
    ofItem.set(item, found);
    return found;
  };
  for (const item of items) phase(item);
  const late = new Set(overVehicleWires.map(({ item }) => item));
  // In the order of the rounds, so that what an item waits for is known to be late before it.
  for (const item of items.toSorted((a, b) => phase(a) - phase(b)))
    if (waits.some((wait) => wait.item === item && before(wait).some((other) => late.has(other))))
      late.add(item);
  return { ofItem, waits, rings, late };
}

function endsAmong(items: readonly string[], wires: readonly PlanWire[], name: string): readonly string[] {
  return wires
    .filter(({ id, link }) => id === name || link === name)
    .flatMap(({ ends }) => ends.map(({ terminal }) => itemOf(terminal)))
    .filter((item) => items.includes(item));
}

function ringText(
  ring: readonly string[],
  waits: readonly Wait[],
  before: (wait: Wait) => readonly string[],
): WaitingRing {
  const reasons = ring.map((item, index) => {
    const next = ring[(index + 1) % ring.length] ?? item;
    const wait = waits.find((one) => one.item === item && before(one).includes(next));
    return `${item} waits for ${next} (${wait?.why ?? 'as written'})`;
  });
  return {
    items: ring,
    message: `${ring.join(' and ')} wait for each other: ${reasons.join('; ')}`,
    remedy: `lower ${ring[0] ?? 'one of them'} to the board, lead the wire round it, or take one after: out of the job`,
  };
}
