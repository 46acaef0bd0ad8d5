import type { Wiring } from './coil-wiring.ts';

/** Coils that are joined to one two-ended thing between two points. */
export interface Strand {
  readonly from: string;
  readonly to: string;
  readonly wiring: Wiring;
  /** `reversed` where going from `from` to `to` enters the coil at its negative terminal. */
  readonly coils: readonly { readonly coil: string; readonly reversed: boolean }[];
}

export type Reduction =
  | { readonly kind: 'whole'; readonly strand: Strand }
  | { readonly kind: 'open' | 'shorted' | 'meshed'; readonly coils: readonly string[] };

/**
 * Joins strands in parallel and in series until one is left between `plus` and `minus`. The order of joining
 * doesn't change whether that works (Duffin 1965), so that the first pair found is as good as any.
 */
export function reduceToOne(strands: readonly Strand[], plus: string, minus: string): Reduction {
  let left = strands;
  for (;;) {
    const shorted = left.filter(({ from, to }) => from === to);
    if (shorted.length > 0) return { kind: 'shorted', coils: coilNames(shorted) };
    const open = left.filter((strand) => isDeadEnd(strand, left, plus, minus));
    if (open.length > 0) return { kind: 'open', coils: coilNames(open) };
    const next = joinParallel(left) ?? joinSeries(left, plus, minus);
    if (next) {
      left = next;
      continue;
    }
    const [only] = left;
    if (only && left.length === 1) return { kind: 'whole', strand: only.from === plus ? only : turned(only) };
    return { kind: 'meshed', coils: coilNames(left) };
  }
}

const coilNames = (strands: readonly Strand[]) =>
  strands.flatMap(({ coils }) => coils.map(({ coil }) => coil));

const touching = (node: string, strands: readonly Strand[]) =>
  strands.filter(({ from, to }) => from === node || to === node);

function isDeadEnd(strand: Strand, all: readonly Strand[], plus: string, minus: string): boolean {
  return [strand.from, strand.to].some(
    (node) => node !== plus && node !== minus && touching(node, all).length === 1,
  );
}

/** The same strand walked from its other end. */
function turned({ from, to, wiring, coils }: Strand): Strand {
  return {
    from: to,
    to: from,
    wiring: wiring.kind === 'series' ? { kind: 'series', members: wiring.members.toReversed() } : wiring,
    coils: coils.toReversed().map(({ coil, reversed }) => ({ coil, reversed: !reversed })),
  };
}

/** A group of two, in which a group of the same kind is opened out. */
function grouped(kind: 'series' | 'parallel', a: Wiring, b: Wiring): Wiring {
  const members = [a, b].flatMap((part) => (part.kind === kind ? part.members : [part]));
  return { kind, members };
}

function joinParallel(strands: readonly Strand[]): readonly Strand[] | null {
  for (const [index, a] of strands.entries()) {
    const b = strands
      .slice(index + 1)
      .find(({ from, to }) => (from === a.from && to === a.to) || (from === a.to && to === a.from));
    if (!b) continue;
    const same = b.from === a.from ? b : turned(b);
    const joined: Strand = {
      from: a.from,
      to: a.to,
      wiring: grouped('parallel', a.wiring, same.wiring),
      coils: [...a.coils, ...same.coils],
    };
    return strands.flatMap((strand) => (strand === a ? [joined] : strand === b ? [] : [strand]));
  }
  return null;
}

function joinSeries(strands: readonly Strand[], plus: string, minus: string): readonly Strand[] | null {
  for (const node of new Set(strands.flatMap(({ from, to }) => [from, to]))) {
    if (node === plus || node === minus) continue;
    const [a, b, more] = touching(node, strands);
    if (!a || !b || more) continue;
    const first = a.to === node ? a : turned(a);
    const second = b.from === node ? b : turned(b);
    const joined: Strand = {
      from: first.from,
      to: second.to,
      wiring: grouped('series', first.wiring, second.wiring),
      coils: [...first.coils, ...second.coils],
    };
    return strands.flatMap((strand) => (strand === a ? [joined] : strand === b ? [] : [strand]));
  }
  return null;
}
