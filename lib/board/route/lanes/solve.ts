/** One number to find, between bounds, in the order in which it lies among the others. */
export interface Place {
  readonly lowM: number;
  readonly highM: number;
  /** Where it begins, before it is pulled. */
  readonly wishM: number;
}

/** That one place lies at least so far above another: `low` comes before `high` in the order. */
export interface Apart {
  readonly low: number;
  readonly high: number;
  readonly byM: number;
}

/** That a place is drawn to another, or to a fixed line, with a weight for each metre between them. */
export interface Pull {
  readonly place: number;
  /** The other place; -1 where it is the line. */
  readonly to: number;
  readonly lineM: number;
  readonly weight: number;
}

/** Places between two bounds, from low to high, for which there is too little room. */
export type Jam = readonly number[];

/**
 * Puts places in order between their bounds so that the weighted lengths of the pulls come to the least; or tells where
 * most room is lacking. Longest paths from either side tell what is possible (the critical path method).
 */
export function solvePlaces(
  places: readonly Place[],
  aparts: readonly Apart[],
  pulls: readonly Pull[],
): { readonly placesM: readonly number[] } | { readonly jam: Jam } {
  const ups = places.map((): Apart[] => []);
  const downs = places.map((): Apart[] => []);
  for (const apart of aparts) {
    ups[apart.low]?.push(apart);
    downs[apart.high]?.push(apart);
  }
  const low = reachedFrom(
    places.map(({ lowM }) => lowM),
    downs,
    true,
  );
  const high = reachedFrom(
    places.map(({ highM }) => highM),
    ups,
    false,
  );
  const highs = high.atM;
  const lackM = places.map((_, at) => (low.atM[at] ?? 0) - (high.atM[at] ?? 0));
  const worst = lackM.reduce((most, own, at) => (own > (lackM[most] ?? 0) + 1e-9 ? at : most), 0);
  if ((lackM[worst] ?? 0) > roundingM)
    return { jam: [...pathTo(low.by, worst).toReversed(), worst, ...pathTo(high.by, worst)] };
  const placesM = places.map(({ wishM }) => wishM);
  for (let at = 0; at < places.length; at += 1) {
    let lowM = places[at]?.lowM ?? -Infinity;
    for (const { low, byM } of downs[at] ?? []) lowM = Math.max(lowM, (placesM[low] ?? 0) + byM);
    placesM[at] = Math.max(lowM, Math.min(highs[at] ?? Infinity, placesM[at] ?? 0));
  }
  improve(places, placesM, { ups, downs }, pulls);
  return { placesM };
}

/** Room that is lacking by less than this is not lacking: what numbers are rounded by (m). */
const roundingM = 1e-7;

/** How far each place is held off by what lies before it, and by which place; -1: by its own bound. */
function reachedFrom(
  bounds: readonly number[],
  before: readonly (readonly Apart[])[],
  up: boolean,
): { readonly atM: readonly number[]; readonly by: readonly number[] } {
  const atM = [...bounds];
  const by = bounds.map(() => -1);
  for (let step = 0; step < bounds.length; step += 1) {
    const at = up ? step : bounds.length - 1 - step;
    for (const { low, high, byM } of before[at] ?? []) {
      const from = up ? low : high;
      const heldM = (atM[from] ?? 0) + (up ? byM : -byM);
      if (up ? heldM <= (atM[at] ?? 0) : heldM >= (atM[at] ?? 0)) continue;
      atM[at] = heldM;
      by[at] = from;
    }
  }
  return { atM, by };
}

function pathTo(by: readonly number[], place: number): number[] {
  const path: number[] = [];
  for (let at = by[place] ?? -1; at >= 0; at = by[at] ?? -1) path.push(at);
  return path;
}

interface Neighbours {
  readonly ups: readonly (readonly Apart[])[];
  readonly downs: readonly (readonly Apart[])[];
}

/** Moves each place with all that it would push for as long as that shortens the pulls. */
function improve(
  places: readonly Place[],
  placesM: number[],
  near: Neighbours,
  pulls: readonly Pull[],
): void {
  const own = places.map((): Pull[] => []);
  for (const pull of pulls) {
    own[pull.place]?.push(pull);
    if (pull.to >= 0) own[pull.to]?.push(pull);
  }
  for (let round = 0, moved = true; moved && round < 60; round += 1) {
    moved = false;
    for (let at = 0; at < places.length; at += 1)
      for (const up of [true, false]) if (shift(at, up, places, placesM, near, own)) moved = true;
  }
}

/** Moves one place, and what it pushes before it, to the next stop; false where that shortens nothing. */
function shift(
  at: number,
  up: boolean,
  places: readonly Place[],
  placesM: number[],
  near: Neighbours,
  pulls: readonly (readonly Pull[])[],
): boolean {
  const group = pushed(at, up, placesM, near);
  const gain = [...group].reduce((sum, one) => sum + gainOf(one, up, group, placesM, pulls[one] ?? []), 0);
  if (gain <= 1e-9) return false;
  let byM = Infinity;
  for (const one of group) {
    const hereM = placesM[one] ?? 0;
    const { lowM = 0, highM = 0 } = places[one] ?? {};
    byM = Math.min(byM, up ? highM - hereM : hereM - lowM);
    for (const { low, high, byM: apartM } of (up ? near.ups : near.downs)[one] ?? []) {
      const other = up ? high : low;
      if (!group.has(other)) byM = Math.min(byM, Math.abs((placesM[other] ?? 0) - hereM) - apartM);
    }
    for (const { place, to, lineM } of pulls[one] ?? []) {
      const other = to < 0 ? -1 : place === one ? to : place;
      if (other >= 0 && group.has(other)) continue;
      const offM = (other < 0 ? lineM : (placesM[other] ?? 0)) - hereM;
      if (up ? offM > 1e-9 : offM < -1e-9) byM = Math.min(byM, Math.abs(offM));
    }
  }
  if (byM <= 1e-7 || byM === Infinity) return false;
  for (const one of group) placesM[one] = (placesM[one] ?? 0) + (up ? byM : -byM);
  return true;
}

/** A place and all that it touches in a direction. */
function pushed(
  at: number,
  up: boolean,
  placesM: readonly number[],
  { ups, downs }: Neighbours,
): Set<number> {
  const group = new Set([at]);
  for (const one of group)
    for (const { low, high, byM } of (up ? ups : downs)[one] ?? [])
      if ((placesM[high] ?? 0) - (placesM[low] ?? 0) <= byM + 1e-7) group.add(up ? high : low);
  return group;
}

/** How much the pulls of one place get shorter for each metre that its group moves. */
function gainOf(
  one: number,
  up: boolean,
  group: ReadonlySet<number>,
  placesM: readonly number[],
  pulls: readonly Pull[],
): number {
  let gain = 0;
  for (const { place, to, lineM, weight } of pulls) {
    const other = to < 0 ? -1 : place === one ? to : place;
    if (other >= 0 && group.has(other)) continue;
    const offM = (other < 0 ? lineM : (placesM[other] ?? 0)) - (placesM[one] ?? 0);
    gain += (up ? offM > 1e-9 : offM < -1e-9) ? weight : -weight;
  }
  return gain;
}
