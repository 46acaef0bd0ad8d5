import { bodyId } from '../../model/content/resolved-job.ts';
import type { DropPart, NetworkElement, OperatingPoint } from '../../model/plan/index.ts';
import { onceEach } from '../once-each.ts';

/** An element with the way that it is gone along. */
interface Stretch {
  readonly element: NetworkElement;
  readonly onto: string;
  /** What is lost along that way (V); below zero where the current runs against it. */
  readonly lostV: number;
}

/** What is lost from one node to another (V), told by what it is lost in. */
export type DropsBetween = (from: string, to: string) => DropPart[];

/**
 * What is lost between two nodes of a solved point (V), told by what it is lost in: conductors, fuses, joints, the body;
 * largest first. Along any way the parts add to the voltage between the two nodes (Kirchhoff's voltage law); of several
 * the one with fewest elements is told, of these the one that most current takes. Empty where no way joins the nodes.
 */
export function dropParts(point: OperatingPoint): DropsBetween {
  const onward = stretchesOf(point);
  const waysFrom = onceEach(
    (from: string) => waysOf(onward, from),
    (from) => from,
  );
  return (from, to) => partsOf(wayBack(waysFrom(from), to));
}

function partsOf(way: readonly Stretch[]): DropPart[] {
  const parts = new Map<string, DropPart>();
  for (const { element, lostV } of way) {
    const kind = kindOf(element);
    if (kind === null) continue;
    const key = `${kind} ${element.of}`;
    parts.set(key, { kind, of: element.of, dropV: (parts.get(key)?.dropV ?? 0) + lostV });
  }
  return [...parts.values()].toSorted((a, b) => b.dropV - a.dropV || (a.of < b.of ? -1 : 1));
}

function kindOf({ kind, of }: NetworkElement): DropPart['kind'] | null {
  if (kind === 'joint') return of === bodyId ? 'body' : 'joint';
  return kind === 'conductor' || kind === 'fuse' ? kind : null;
}

/** The stretches that leave each node, through what carries current and draws none. */
type Onward = ReadonlyMap<string, readonly Stretch[]>;

function stretchesOf({ elements }: OperatingPoint): Onward {
  const onward = new Map<string, Stretch[]>();
  const add = (node: string, stretch: Stretch): void => {
    const there = onward.get(node);
    if (there) there.push(stretch);
    else onward.set(node, [stretch]);
  };
  for (const element of elements) {
    if (kindOf(element) === null) continue;
    const { from, to, dropV: lostV = 0 } = element;
    add(from, { element, onto: to, lostV });
    if (to !== from) add(to, { element, onto: from, lostV: -lostV });
  }
  return onward;
}

/** The stretch by which each node is come to, and from where; none for the node that ways begin at. */
type Arrivals = ReadonlyMap<string, { readonly stretch: Stretch; readonly from: string } | null>;

/** How each node that one is joined to is come to along the way with fewest elements. */
function waysOf(onward: Onward, start: string): Arrivals {
  const arrivals = new Map<string, { readonly stretch: Stretch; readonly from: string } | null>([
    [start, null],
  ]);
  for (let front = [start]; front.length > 0; ) {
    const next = front.flatMap((from) => (onward.get(from) ?? []).map((stretch) => ({ from, stretch })));
    front = [];
    for (const arrival of next.sort((a, b) => flow(b.stretch) - flow(a.stretch))) {
      const { onto } = arrival.stretch;
      if (arrivals.has(onto)) continue;
      arrivals.set(onto, arrival);
      front.push(onto);
    }
  }
  return arrivals;
}

/** The stretches of the way to a node, in order; none where it is not come to. */
function wayBack(arrivals: Arrivals, to: string): Stretch[] {
  const way: Stretch[] = [];
  for (let at = arrivals.get(to); at; at = arrivals.get(at.from)) way.push(at.stretch);
  return way.reverse();
}

const flow = ({ element: { currentA = 0 } }: Stretch): number => Math.abs(currentA);
