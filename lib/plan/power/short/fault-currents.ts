import { bodyId } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import { prospectiveFaultA } from '../../../power/interrupting.ts';
import type { NetworkElement } from '../../../power/network/network-types.ts';
import { type ShortCircuit, shortCircuit } from '../../../power/short-circuit.ts';
import type { CircuitEdge } from '../circuit/circuit.ts';
import { coldElements } from '../circuit/cold-elements.ts';
import { reachedNodes } from '../network-passives.ts';
import type { NetworkInput } from '../operating-points.ts';
import { type ShortSource, shortSources } from './short-sources.ts';

/** What a dead short behind one fuse drives through it. */
export interface FuseFault {
  /** Null where none of the sources that reach it says what it gives. */
  readonly faultA: Traced<number> | null;
  /** The end at which the short lies: the one that lets more through. */
  readonly at: string;
  readonly from: readonly { readonly source: ShortSource; readonly currentA: Traced<number> }[];
  readonly ways: readonly { readonly of: string; readonly currentA: number }[];
  /** What the batteries drive through it whose makers state their short-circuit current, and these alone (A). */
  readonly byMakersA: number;
  /** Sources that reach it too, of which nobody states what they give. */
  readonly unknown: readonly ShortSource[];
}

/**
 * The prospective current at every fuse, by its id: what would flow with the fuse replaced by a link of negligible
 * resistance (the definition of IEC 60269) and its far terminal joined to the body. All sources feed in at the highest
 * voltage of the system from their lowest resistance, through cold conductors and joints that count for nothing. Of the
 * short at either terminal the worse counts; what hangs on the shorted one drives no current through the fuse.
 */
export function faultCurrents(input: NetworkInput): ReadonlyMap<string, FuseFault> {
  const { job, circuit, fuses } = input;
  const sources = shortSources(job, circuit.sources);
  const ground = reachedNodes(circuit).has(bodyId) ? bodyId : (circuit.primary?.negative ?? bodyId);
  const passive = circuit.edges.map((edge) => ({ edge, elements: coldElements(input, edge) }));
  const faults = new Map<string, FuseFault>();
  for (const { edge } of fuses) {
    const sides = [
      [edge.from, edge.to],
      [edge.to, edge.from],
    ].flatMap(([near = '', far = '']) => {
      // Among what touches the far terminal is the fuse itself: it counts as a link.
      const others = passive.filter((one) => !touches(one.edge, far));
      const lines = others.flatMap(({ elements }) => elements);
      return sideFault({ sources, lines, near, far, ground }) ?? [];
    });
    const [worst] = sides.toSorted((a, b) => (b.faultA?.value ?? 0) - (a.faultA?.value ?? 0));
    const unknown = [...new Set(sides.flatMap((side) => side.unknown))];
    if (worst) faults.set(edge.id, { ...worst, unknown });
  }
  return faults;
}

const touches = ({ from, to }: CircuitEdge, node: string): boolean => from === node || to === node;

interface Side {
  readonly sources: readonly ShortSource[];
  readonly lines: readonly NetworkElement[];
  /** The terminal through which the current comes, and the shorted one. */
  readonly near: string;
  readonly far: string;
  readonly ground: string;
}

/** What flows through a fuse while its far terminal is shorted; null where no source reaches the near one. */
function sideFault({ sources, lines, near, far, ground }: Side): FuseFault | null {
  const short = shortCircuit([...lines, ...elementsOf(sources)], near, ground);
  const unknown = sources.filter(({ ohm, source }) => ohm === null && isJoined(lines, source.positive, near));
  if (!short && unknown.length === 0) return null;
  const makers = sources.filter(({ basis }) => basis === 'maker');
  const alone = makers.length > 0 ? shortCircuit([...lines, ...elementsOf(makers)], near, ground) : null;
  const fault = short && faultOf(sources, short);
  return {
    faultA: fault && !isFault(fault) ? fault : null,
    at: far,
    from: short ? contributions(sources, short) : [],
    ways: short ? short.ways.filter(({ currentA }) => currentA > leastA) : [],
    byMakersA: alone?.currentA ?? 0,
    unknown,
  };
}

/** Below this a current is what rounding leaves of none (A). */
const leastA = 1e-6;

const elementId = ({ source }: ShortSource): string => `${source.device.id}:emf`;

function elementsOf(sources: readonly ShortSource[]): NetworkElement[] {
  return sources.flatMap((one): NetworkElement[] => {
    const { ohm, emfV, source } = one;
    if (ohm === null) return [];
    const ends = { from: source.positive, to: source.negative };
    return [{ id: elementId(one), of: source.device.id, kind: 'source', model: 'emf', ...ends, emfV, ohm }];
  });
}

/** True where a conductor, fuse or joint leads from one node to the other, over however many. */
function isJoined(lines: readonly NetworkElement[], start: string, end: string): boolean {
  const nodes = new Set([start]);
  for (let before = 0; before !== nodes.size; ) {
    before = nodes.size;
    for (const { from, to } of lines) if (nodes.has(from) || nodes.has(to)) nodes.add(from).add(to);
  }
  return nodes.has(end);
}

/**
 * The current of a short. All sources that are joined have one electromotive force, so by the balance of power E / I is the sum of all
 * resistances, each times the square of the share of I that passes it: along a single line the plain sum.
 */
function faultOf(sources: readonly ShortSource[], { currentA, shares, sources: driven }: ShortCircuit) {
  const drives = (one: ShortSource) =>
    (driven.find(({ id }) => id === elementId(one))?.currentA ?? 0) > leastA;
  const emfV = sources.find(drives)?.emfV ?? 0;
  const inner = new Set(sources.map(({ source }) => source.device.id));
  const counted = new Map<string, number>();
  for (const { of, ohm, share } of shares) counted.set(of, (counted.get(of) ?? 0) + ohm * share ** 2);
  const sourceOhm = [...counted].reduce((sum, [of, ohm]) => sum + (inner.has(of) ? ohm : 0), 0);
  const line = [...counted].filter(([of, ohm]) => !inner.has(of) && ohm > 1e-10);
  const given = sources.flatMap((one): (readonly [string, number])[] => {
    const own = driven.find(({ id }) => id === elementId(one));
    return own && own.currentA > leastA ? [[one.source.device.id, own.currentA]] : [];
  });
  return prospectiveFaultA(emfV, sourceOhm, emfV / currentA - sourceOhm, line, given);
}

/** What each source drives into the short, as its own working. */
function contributions(
  sources: readonly ShortSource[],
  { sources: driven }: ShortCircuit,
): FuseFault['from'] {
  return sources.flatMap((source) => {
    const own = driven.find(({ id }) => id === elementId(source));
    if (!own || source.ohm === null || own.currentA <= leastA) return [];
    const { emfV, ohm, basis, from } = source;
    const working = traced(own.currentA, 'A', {
      rule: 'fuse-interrupting',
      formula: 'I = (E - U) / Rs; U is what is left at its posts while the short lasts',
      citation: basis === 'maker' ? "Ohm's law, from the part's data" : "Ohm's law",
      ...(basis === 'assumed' && { mark: 'cp' as const }),
      inputs: [['E', emfV, 'V'], ['U', own.postsV, 'V'], ['Rs', ohm, 'ohm'], ...from],
    });
    return [{ source, currentA: working }];
  });
}
