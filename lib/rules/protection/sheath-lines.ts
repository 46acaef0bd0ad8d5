import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { VehicleRoute } from '../../model/content/vehicle-route.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { linkEntry, linkName } from '../../model/ports/pair-name.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import { coverPass } from '../../plan/wiring/runs/run-coverings.ts';
import { flowText } from '../../read/yaml/write-value.ts';
import type { Case } from '../rule.ts';

/** What is written so that a wire lies covered from end to end, and the entries that lines go into. */
export interface SheathLines {
  readonly text: string;
  readonly writesAt: readonly (readonly string[])[];
}

/** Lengths that differ by less are one. */
const sameM = 1e-6;

/**
 * The lines that cover a wire from end to end: the covering at its run, or a run along the vehicle's own route between its
 * two ends, and the length that it has, so that no loops come to it that the covering does not reach. Null where no route
 * is as long as the wire, and where nothing of the catalogue goes over it.
 */
export function sheathLines({ job, plan }: Case, id: string): SheathLines | null {
  const wire = plan.wires.find((one) => one.id === id);
  const link = job.links.find((one) => one.id === id);
  const covering = wire && coveringOver(job, wire);
  if (!link || !wire || !covering) return null;
  const name = linkName(id);
  const run = job.runs.find((one) => one.id === link.run);
  const route = run ? { id: run.routeId, route: run.route } : routeBetween(job, link);
  if (!route) return null;
  const wayM = routeLengthM(route.route);
  if (link.given?.length !== undefined && link.given.length > wayM + sameM) return null;
  const covered = run
    ? `covering: ${covering} at the run ${run.id}`
    : `${flowText({ [name]: { route: route.id, links: [name], covering } }).slice(2, -2)} under runs:`;
  const kept =
    link.given?.length === undefined
      ? `, and length: ${tapeText(wayM, job.shop.units)} at the link ${name}, so that no loops come to it`
      : `; the length that ${name} has stands as it is`;
  return {
    text: `${covered}${kept}`,
    writesAt: [linkEntry(id), ...(run ? [['runs', run.id]] : [])],
  };
}

/** The vehicle's route whose two ends are those of a link, by its devices or the places that they stand in. */
function routeBetween(
  job: Job,
  { from, to }: Link,
): { readonly id: string; readonly route: VehicleRoute } | null {
  const namesOf = ({ device }: Link['from']) => {
    const place = job.devices.find(({ id }) => id === device)?.seat ?? null;
    return [device, ...(place === null ? [] : [place])];
  };
  const [here, there] = [namesOf(from), namesOf(to)];
  const found = Object.entries(job.vehicle.routes).find(([, { ends = [] }]) => {
    const [one = '', other = ''] = ends;
    return (
      ends.length === 2 &&
      ((here.includes(one) && there.includes(other)) || (here.includes(other) && there.includes(one)))
    );
  });
  return found ? { id: found[0], route: found[1] } : null;
}

/** The covering against heat and wear that goes over a wire, from the shelf first; null where none does. */
function coveringOver(job: Job, { diameterM, lengthM }: PlanWire): string | null {
  if (!diameterM) return null;
  return coverPass(job, { covering: null }, 'engine-bay', diameterM, lengthM).part;
}
