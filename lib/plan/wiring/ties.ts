import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanBoard, PlanWire } from '../../model/plan/index.ts';
import { bundleDiameterM } from '../../power/conductor/bundle-diameter.ts';
import { wireDiameterM } from './wire-diameter.ts';

/** The shortest tie of the catalogue that goes round a bundle and stands more than the ambient; null where none does. */
export function tieFor(job: Job, aroundM: number, ambientC: number): string | null {
  const needM = Math.PI * aroundM + job.rules['tie-tail'].value;
  const plainC = job.rules['tie-temperature'].value;
  const fitting = partsOfKind(job.parts, 'fixing')
    .filter(([, { form }]) => form === 'tie')
    .filter(([, { length = 0, withstands = plainC }]) => length >= needM && withstands > ambientC)
    .toSorted(([idA, a], [idB, b]) => (a.length ?? 0) - (b.length ?? 0) || (idA < idB ? -1 : 1));
  return fitting[0]?.[0] ?? null;
}

/** Ties on a length, one each spacing begun. */
export function tieCount(lengthM: number, spacingM: number): number {
  return lengthM <= 0 || spacingM <= 0 ? 0 : Math.ceil(lengthM / spacingM - 1e-9);
}

/**
 * The ties on a board, by part: wires of one layer that pass the same square, as wide as the spacing of ties, share
 * one there. A model that counts, not a place for each tie.
 */
export function boardTies(
  job: Job,
  board: { readonly routes: readonly BoardWay[] },
  wires: readonly PlanWire[],
): ReadonlyMap<string, number> {
  const spacingM = job.rules['tie-spacing-board'].value;
  const squares = new Map<string, number[]>();
  for (const route of board.routes) {
    const diameterM = routeDiameterM(job, route.along, wires);
    for (const square of squaresPassed(route.points, spacingM)) {
      const key = `${route.layer} ${square}`;
      squares.set(key, [...(squares.get(key) ?? []), diameterM]);
    }
  }
  const counts = new Map<string, number>();
  for (const diameters of squares.values()) {
    const bundle = bundleDiameterM(diameters.filter((diameterM) => diameterM > 0));
    const tie = isFault(bundle) ? null : tieFor(job, bundle.value, job.rules['ambient-cabin'].value);
    if (tie) counts.set(tie, (counts.get(tie) ?? 0) + 1);
  }
  return counts;
}

/** A way of wires across a board. */
type BoardWay = Pick<PlanBoard['routes'][number], 'along' | 'layer' | 'points'>;

/** The squares of a lattice that a route passes, looked at four times a square. */
function squaresPassed(
  points: readonly { readonly xM: number; readonly yM: number }[],
  widthM: number,
): ReadonlySet<string> {
  const passed = new Set<string>();
  if (widthM <= 0) return passed;
  points.forEach((to, index) => {
    const from = points[index - 1] ?? to;
    const steps = Math.max(1, Math.ceil((4 * Math.hypot(to.xM - from.xM, to.yM - from.yM)) / widthM));
    for (let step = 0; step <= steps; step += 1) {
      const along = step / steps;
      const column = Math.floor((from.xM + along * (to.xM - from.xM)) / widthM);
      const row = Math.floor((from.yM + along * (to.yM - from.yM)) / widthM);
      passed.add(`${column} ${row}`);
    }
  });
  return passed;
}

function routeDiameterM(job: Job, along: readonly string[], wires: readonly PlanWire[]): number {
  const diameters = new Map<string, number>();
  for (const { id, part, size } of wires.filter((wire) => along.includes(wire.id))) {
    const cable = job.links.find((link) => link.id === id)?.cable;
    const spec = cable ? job.parts[cable.part] : undefined;
    const outsideM = spec?.kind === 'cable' ? spec['outside-diameter'] : undefined;
    if (cable && outsideM !== undefined) diameters.set(cable.id, outsideM);
    else diameters.set(id, wireDiameterM(job, { part: part ?? '', size }));
  }
  const bundle = bundleDiameterM([...diameters.values()]);
  return isFault(bundle) ? 0 : bundle.value;
}
