import { bodyId } from '../model/resolved-job.ts';
import type { Traced } from '../model/trace.ts';
import { prospectiveFaultA } from '../power/interrupting.ts';
import { solveNetwork } from '../power/network.ts';
import type { NetworkElement } from '../power/network-types.ts';
import { isPowerFault } from '../power/traced.ts';
import { batteryOhm, type NetworkInput, reachedNodes } from './operating-points.ts';
import { passiveElements } from './passive-elements.ts';

/** Conductors are cold when a short begins (C), which lets the most current through. */
const coldC = 20;
/** Resistance of the short itself (ohm): next to none. */
const shortOhm = 1e-6;

/**
 * The prospective fault current (A) at every fuse, by its id: all batteries at rest voltage behind their own
 * resistance, every conductor as sized and cold, the fuse's far side shorted to the body. The alternator is left
 * out: what it adds is a few times its rating and dies away. Fuses that no battery reaches have none.
 */
export function faultCurrents(input: NetworkInput): ReadonlyMap<string, Traced<number>> {
  const { job, circuit, fuses } = input;
  const reached = reachedNodes(input);
  const emfV = job.rules['voltage-rested'].value;
  const batteries = circuit.sources.flatMap(({ device, positive, negative }): BatteryElement[] =>
    device.spec?.kind === 'battery'
      ? [
          {
            id: `${device.id}:emf`,
            kind: 'source',
            model: 'emf',
            from: positive,
            to: negative,
            emfV,
            ohm: batteryOhm(job, device.spec),
          },
        ]
      : [],
  );
  const referenceNode = circuit.primary?.negative ?? bodyId;
  const ground = reached.has(bodyId) ? bodyId : referenceNode;
  const sourceOhm = 1 / batteries.reduce((sum, { ohm }) => sum + 1 / ohm, 0);
  const passive = circuit.edges
    .filter(({ from, to }) => reached.has(from) && reached.has(to))
    .flatMap((edge) => passiveElements(input, edge, coldC));
  const faults = new Map<string, Traced<number>>();
  for (const { edge } of fuses) {
    if (!reached.has(edge.to) || batteries.length === 0) continue;
    const currentA = shortA(referenceNode, [...batteries, ...passive], edge.to, ground);
    const traced = currentA > 0 ? prospectiveFaultA(emfV, sourceOhm, emfV / currentA - sourceOhm) : null;
    if (traced && !isPowerFault(traced)) faults.set(edge.id, traced);
  }
  return faults;
}

type BatteryElement = Extract<NetworkElement, { readonly model: 'emf' }>;

/** The current of a short between two nodes; 0 where the network has no answer. */
function shortA(
  referenceNode: string,
  elements: readonly NetworkElement[],
  from: string,
  to: string,
): number {
  const short: NetworkElement = {
    id: 'short',
    kind: 'conductor',
    model: 'resistance',
    from,
    to,
    ohm: shortOhm,
  };
  const result = solveNetwork({ referenceNode, elements: [...elements, short] });
  if (result.state !== 'solved') return 0;
  return result.elements.find(({ id }) => id === short.id)?.currentA ?? 0;
}
