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
  return (from, to) => partsOf(waysFrom(from).get(to) ?? []);
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

/** The stretches of the way with fewest elements from one node to each that it is joined to. */
function waysOf(onward: Onward, from: string): ReadonlyMap<string, readonly Stretch[]> {
  const ways = new Map<string, readonly Stretch[]>([[from, []]]);
  for (let front = [from]; front.length > 0; ) {
    const next = front.flatMap((node) => (onward.get(node) ?? []).map((stretch) => [node, stretch] as const));
    front = [];
    for (const [node, stretch] of next.toSorted((a, b) => flow(b[1]) - flow(a[1]))) {
      if (ways.has(stretch.onto)) continue;
      ways.set(stretch.onto, [...(ways.get(node) ?? []), stretch]);
      front.push(stretch.onto);
    }
  }
  return ways;
}

const flow = ({ element: { currentA = 0 } }: Stretch): number => Math.abs(currentA);
