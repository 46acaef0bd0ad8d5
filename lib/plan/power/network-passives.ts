import type { NetworkElement } from '../../power/network/network-types.ts';
import { onceEach } from '../once-each.ts';
import type { Circuit } from './circuit/circuit.ts';
import { type PassiveInput, passiveElements } from './circuit/passive-elements.ts';

const nodesKnown = new WeakMap<Circuit, ReadonlySet<string>>();

/** Nodes that a source is joined to; what hangs on nothing would only float. */
export function reachedNodes(circuit: Circuit): ReadonlySet<string> {
  const nodes = nodesKnown.get(circuit) ?? nodesReached(circuit);
  nodesKnown.set(circuit, nodes);
  return nodes;
}

function nodesReached({ sources, edges }: Circuit): ReadonlySet<string> {
  const nodes = new Set(sources.flatMap(({ positive, negative }) => [positive, negative]));
  for (let before = 0; before !== nodes.size; ) {
    before = nodes.size;
    for (const { from, to } of edges) if (nodes.has(from) || nodes.has(to)) nodes.add(from).add(to);
  }
  return nodes;
}

/** The passive elements of a circuit by whether its conductors are cold. */
type Passives = (circuit: Circuit, isCold: boolean) => readonly NetworkElement[];

const passivesKnown = new WeakMap<PassiveInput, Passives>();

/**
 * The passive elements of a network that sources reach, in a state of its circuit: as warm as their zones make them, or
 * cold. Points of one network differ in sources and loads alone, so these are put together once.
 */
export function passivesOf(
  input: PassiveInput,
  circuit: Circuit,
  isCold: boolean,
): readonly NetworkElement[] {
  const passives = passivesKnown.get(input) ?? passivesFrom(input);
  passivesKnown.set(input, passives);
  return passives(circuit, isCold);
}

function passivesFrom(input: PassiveInput): Passives {
  const at = (conductorC?: number) =>
    onceEach(
      (circuit: Circuit) => {
        const reached = reachedNodes(circuit);
        return circuit.edges
          .filter(({ from, to }) => reached.has(from) && reached.has(to))
          .flatMap((edge) => passiveElements(input, edge, conductorC));
      },
      (circuit) => circuit,
    );
  const [warm, cold] = [at(), at(input.job.rules['conductor-temperature'].value)];
  return (circuit, isCold) => (isCold ? cold : warm)(circuit);
}
