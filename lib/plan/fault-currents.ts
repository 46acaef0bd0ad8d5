import { bodyId } from '../model/resolved-job.ts';
import type { Traced } from '../model/trace.ts';
import { prospectiveFaultA } from '../power/interrupting.ts';
import { solveNetwork } from '../power/network.ts';
import type { Network, NetworkElement } from '../power/network-types.ts';
import { isPowerFault } from '../power/traced.ts';
import { batteryOhm, type NetworkInput, reachedNodes } from './operating-points.ts';
import { passiveElements } from './passive-elements.ts';

/** Conductors are cold when a short begins (C), which lets the most current through. */
const coldC = 20;
/** Resistance of the short itself (ohm): next to none. */
const shortOhm = 1e-6;
const shortId = 'short';

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
  const passive = circuit.edges
    .filter(({ from, to }) => reached.has(from) && reached.has(to))
    .flatMap((edge) => passiveElements(input, edge, coldC));
  const faults = new Map<string, Traced<number>>();
  for (const { edge } of fuses) {
    if (!reached.has(edge.to) || batteries.length === 0) continue;
    const elements = [...batteries, ...passive];
    const flows = shortFlows({ referenceNode, elements }, edge.to, ground);
    const fault = flows && faultOf(emfV, elements, flows);
    if (fault && !isPowerFault(fault)) faults.set(edge.id, fault);
  }
  return faults;
}

type BatteryElement = Extract<NetworkElement, { readonly model: 'emf' }>;

/** The current through every element while two nodes are shorted, by id; null where the network has no answer. */
function shortFlows({ referenceNode, elements }: Network, from: string, to: string) {
  const ends = { id: shortId, from, to };
  const short: NetworkElement = { ...ends, kind: 'conductor', model: 'resistance', ohm: shortOhm };
  const result = solveNetwork({ referenceNode, elements: [...elements, short] });
  if (result.state !== 'solved') return null;
  return new Map(result.elements.map(({ id, currentA }) => [id, currentA]));
}

/**
 * The current of a short. All batteries have one electromotive force, so by the balance of power E / I is the sum of all
 * resistances, each times the square of the share of I that passes it: along a single line the plain sum.
 */
function faultOf(emfV: number, elements: readonly NetworkElement[], flows: ReadonlyMap<string, number>) {
  const faultA = flows.get(shortId) ?? 0;
  if (faultA <= 0) return null;
  const counted = (id: string, ohm: number): number => ohm * ((flows.get(id) ?? 0) / faultA) ** 2;
  const sources = elements.filter(({ kind }) => kind === 'source');
  const sourceOhm = sources.reduce((sum, one) => sum + ('ohm' in one ? counted(one.id, one.ohm) : 0), 0);
  const line = new Map<string, number>();
  for (const one of elements)
    if (one.kind !== 'source' && one.model === 'resistance')
      line.set(one.of ?? one.id, (line.get(one.of ?? one.id) ?? 0) + counted(one.id, one.ohm));
  const shares = [...line, [shortId, shortOhm] as const].filter(([, ohm]) => ohm > 1e-9);
  return prospectiveFaultA(emfV, sourceOhm, emfV / faultA - sourceOhm, shares);
}
