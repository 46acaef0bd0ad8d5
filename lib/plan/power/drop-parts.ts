import { bodyId } from '../../model/content/resolved-job.ts';
import type { DropPart, NetworkElement, OperatingPoint } from '../../model/plan/index.ts';

/** An element with the way that it is gone along. */
interface Stretch {
  readonly element: NetworkElement;
  readonly onto: string;
  /** What is lost along that way (V); below zero where the current runs against it. */
  readonly lostV: number;
}

/**
 * What is lost between two nodes of a solved point (V), told by what it is lost in: conductors, fuses, joints, the body;
 * largest first. Along any way the parts add to the voltage between the two nodes (Kirchhoff's voltage law); of several
 * the one with fewest elements is told, of these the one that most current takes. Empty where no way joins the nodes.
 */
export function dropParts(point: OperatingPoint, from: string, to: string): DropPart[] {
  const parts = new Map<string, DropPart>();
  for (const { element, lostV } of wayBetween(point, from, to)) {
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

/** The stretches of the way with fewest elements from one node to another, through what carries current and draws none. */
function wayBetween({ elements }: OperatingPoint, from: string, to: string): readonly Stretch[] {
  const passive = elements.filter((element) => kindOf(element) !== null);
  const ways = new Map<string, readonly Stretch[]>([[from, []]]);
  for (let front = [from]; front.length > 0 && !ways.has(to); ) {
    const next = front.flatMap((node) => onward(passive, node).map((stretch) => [node, stretch] as const));
    front = [];
    for (const [node, stretch] of next.toSorted((a, b) => flow(b[1]) - flow(a[1]))) {
      if (ways.has(stretch.onto)) continue;
      ways.set(stretch.onto, [...(ways.get(node) ?? []), stretch]);
      front.push(stretch.onto);
    }
  }
  return ways.get(to) ?? [];
}

const flow = ({ element: { currentA = 0 } }: Stretch): number => Math.abs(currentA);

function onward(passive: readonly NetworkElement[], node: string): Stretch[] {
  return passive.flatMap((element): Stretch[] => {
    const lostV = element.dropV ?? 0;
    if (element.from === node) return [{ element, onto: element.to, lostV }];
    return element.to === node ? [{ element, onto: element.from, lostV: -lostV }] : [];
  });
}
