import type { BuildPlan, PlanRun, PlanWire, WireEnd } from '../../../lib/model/plan/index.ts';
import { counted, figure, listed, metres, type Section } from './words.ts';

/** Wires with role, size, length and ends, cables, runs, and terminals that nothing is joined to. */
export function wiringSections({ wires, cables, runs, branches, terminals }: BuildPlan): Section[] {
  return [
    { heading: 'Wires', lines: wires.map(wireLine) },
    {
      heading: 'Cables',
      lines: cables.map(({ id, part, lengthM, conductors }) => {
        const spare = conductors.filter(({ wire }) => wire === null).length;
        return `${id}: ${part}, ${metres(lengthM)}, ${counted(conductors.length, 'conductor')}, ${spare} spare`;
      }),
    },
    { heading: 'Runs', lines: runs.map(runLine) },
    {
      heading: 'Branches',
      lines: branches.map(
        ({ id, from, terminal, partsAtM }) =>
          `${id} leaves ${from} ${metres(partsAtM)} on the way from ${terminal}`,
      ),
    },
    {
      heading: 'Terminals that stay open',
      lines: terminals
        .filter(({ state }) => state !== 'connected')
        .map(({ item, terminal, state, reason }) => `${item}.${terminal}: ${listed(state, reason)}`),
    },
  ];
}

function wireLine(wire: PlanWire): string {
  const { label, id, role, size, lengthM, colour, part, cable, from, to, ends } = wire;
  const taken = cable === undefined ? (part ?? 'no reel') : `in ${cable}`;
  const made = ends.map(endWords).join(' to ');
  return `${label === '' ? id : `${label} ${id}`}: ${listed(role, size.label, metres(lengthM), colour, taken)}; ${from} to ${to}; ${made}`;
}

function endWords({ prep, part, torqueNm }: WireEnd): string {
  return listed(prep, part, torqueNm !== undefined && `${figure(torqueNm, 1)} Nm`);
}

function runLine({ id, route, side, wires, lengthM, bundleM, passes, grommets }: PlanRun): string {
  const zones = (passes ?? []).map(
    ({ zone, covering, tie, ties }) =>
      `${zone} ${covering ?? 'bare'}${ties > 0 ? ` with ${ties} ${tie ?? 'ties'}` : ''}`,
  );
  const edges = grommets.map(
    ({ zone, part, own }) => `grommet ${part ?? (own ? 'of the vehicle' : 'none')} at ${zone}`,
  );
  return `${id}: ${listed(route, side, counted(wires.length, 'wire'), metres(lengthM), `bundle ${figure(bundleM * 1000, 1)} mm`, ...zones, ...edges)}`;
}
