import type { Job } from '../../../model/content/resolved-job.ts';
import { cableSm } from '../../../power/conductor/conductor-choice.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import { conductanceGrace } from '../../../power/network/conductance.ts';
import { candidatesFor } from '../../wiring/cable-candidates.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { losesLug } from '../../wiring/terminal-parts.ts';
import type { CircuitEdge } from '../circuit/circuit.ts';
import { crossing, type SupplyGroup, type SupplyWire, supplyGroups } from '../supply-groups.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import { sumOf } from './ground-feeds.ts';
import type { LeastSizes } from './least-sizes.ts';
import { nextSizeMm2 } from './next-size.ts';
import { entersPorts } from './ports-fit.ts';

/** What grounds are grown in. */
export interface GroundGrowth {
  readonly job: Job;
  readonly devices: DevicesById;
  readonly edges: readonly CircuitEdge[];
  readonly conductors: ReadonlyMap<string, SizedConductor>;
  readonly least: LeastSizes;
  /** Sizes a conductor anew, once its least size was raised. */
  readonly resize: (edge: CircuitEdge) => void;
}

/**
 * Grows the computed grounds of every device and board until together they conduct at least as well as what feeds it,
 * which is how they are judged, or until their ports take no larger one or the catalogue has no lug for it. What the job gives stays as it is.
 */
export function growGrounds(growth: GroundGrowth): void {
  for (const group of supplyGroups(growth.job)) {
    const maxed = new Set<string>();
    while (growThinnest(growth, group, maxed));
  }
}

/** Grows the thinnest ground of a group by one size, of some as thin the one that carries most; false where nothing is to grow, or nothing can. */
function growThinnest(growth: GroundGrowth, group: SupplyGroup, maxed: Set<string>): boolean {
  const { job, devices, conductors, least, resize, edges } = growth;
  const rules = powerRules(job.rules);
  const sm = ({ cable }: SizedConductor) => cableSm(cable, rules);
  const feeds = across(growth, 'power', group);
  const grounds = across(growth, 'ground', group);
  if (sumOf(grounds, sm) >= sumOf(feeds, sm) * (1 - conductanceGrace)) return false;
  const [thinnest] = grounds
    .filter(({ chosen, link }) => chosen === 'computed' && !maxed.has(link.id))
    .toSorted((a, b) => sm(a) - sm(b) || b.neededA - a.neededA || (a.link.id < b.link.id ? -1 : 1));
  const edge = edges.find(({ id }) => id === thinnest?.link.id);
  if (!thinnest || !edge || feeds.length === 0) return false;
  const { link, role, cable } = thinnest;
  const next = nextSizeMm2(candidatesFor(job, link, role), cable, thinnest.lengthM);
  const ended = next !== null && !losesLug(job, link, { from: cable.size.areaMm2, to: next });
  if (next !== null && ended && entersPorts(job, devices, link, next)) {
    const names = feeds.map((feed) => `${feed.link.id}, ${feed.cable.size.label}`).join(', and ');
    const what =
      grounds.length > 1
        ? `the ${grounds.length} grounds of ${group.id} together are`
        : `the ground of ${group.id} is`;
    least.raise(link.id, next, `${what} at least as large as its feed ${names}`);
    resize(edge);
  }
  const grown = conductors.get(link.id);
  if (!grown || grown.cable.size.areaMm2 <= cable.size.areaMm2) maxed.add(link.id);
  return true;
}

/** The sized conductors that feed a group, or that ground it. */
function across(
  { job, edges, conductors }: GroundGrowth,
  role: 'power' | 'ground',
  group: SupplyGroup,
): SizedConductor[] {
  const wires = edges.flatMap(({ id, link, from, to }): SupplyWire[] => {
    const own = conductors.get(id);
    return own && link?.origin === 'job' ? [{ id, role: own.role, from, to }] : [];
  });
  return crossing(job, wires, role, group).flatMap(({ id }) => conductors.get(id) ?? []);
}
