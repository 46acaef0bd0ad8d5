import type { Circuit } from '../../../../lib/plan/power/circuit/circuit.ts';
import { circuitPaths } from '../../../../lib/plan/power/circuit/circuit-paths.ts';
import { conductorSizer } from '../../../../lib/plan/power/sizing/conductor-sizer.ts';
import type { SizedConductor } from '../../../../lib/plan/power/sizing/conductor-sizing.ts';
import { fuseChooser } from '../../../../lib/plan/power/sizing/fuse-chooser.ts';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import type { PowerSizing } from '../../../../lib/plan/power/sizing/power-sizing.ts';
import { protections } from '../../../../lib/plan/power/sizing/protection.ts';
import { jobOf } from '../../../rules/case.ts';
import { written } from '../../../rules/content.ts';
import { edgeOf } from '../circuits.ts';

/** What sizes follow from, of a circuit that stands for itself: every length is a metre, nothing draws anything. */
export function sizingOf(circuit: Circuit): PowerSizing {
  const paths = circuitPaths(circuit);
  const job = jobOf(written());
  return {
    job,
    devices: new Map(),
    circuit,
    paths,
    loads: [],
    protection: protections(circuit, paths),
    lengths: () => ({ lengthM: 1, measured: 'given', parts: [] }),
    least: new LeastSizes(),
    sizer: conductorSizer(job, new Map(), circuit.roles),
    choose: fuseChooser(job),
  };
}

/** A conductor of a circuit, sized: copper of so many mm2, which must carry so much. */
export function sizedIn(circuit: Circuit, id: string, areaMm2: number, neededA = 0): SizedConductor {
  const { link } = edgeOf(circuit, id);
  if (!link) throw new Error(`${id} is no conductor.`);
  return {
    link,
    role: circuit.roles.get(id) ?? 'power',
    cable: { part: '', size: { label: `${areaMm2} mm2`, areaMm2 }, material: 'copper', insulationC: 105 },
    judged: null,
    lengthM: 1,
    hottestC: 50,
    neededA,
    chosen: 'computed',
    reason: '',
    byFeed: false,
    grown: null,
    remarks: [],
    thinner: [],
    shortOf: null,
    alternatives: [],
  };
}

/** Conductors of a circuit by their id, each with its size and what it must carry. */
export function sizedAll(
  circuit: Circuit,
  sizes: Readonly<Record<string, readonly [areaMm2: number, neededA: number]>>,
): ReadonlyMap<string, SizedConductor> {
  return new Map(
    Object.entries(sizes).map(([id, [areaMm2, neededA]]) => [id, sizedIn(circuit, id, areaMm2, neededA)]),
  );
}
