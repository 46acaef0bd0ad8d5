import { onceFor } from '../../model/once-for.ts';
import type { NetworkElement } from '../../power/network/network-types.ts';
import type { Circuit } from './circuit/circuit.ts';
import { type PassiveInput, passiveElements } from './circuit/passive-elements.ts';

/** Nodes that a source is joined to; what hangs on nothing would only float. */
export const reachedNodes = onceFor(({ sources, edges }: Circuit): ReadonlySet<string> => {
  const nodes = new Set(sources.flatMap(({ positive, negative }) => [positive, negative]));
  for (let before = 0; before !== nodes.size; ) {
    before = nodes.size;
    for (const { from, to } of edges) if (nodes.has(from) || nodes.has(to)) nodes.add(from).add(to);
  }
  return nodes;
});

/** The passive elements of a circuit by whether its conductors are cold. */
type Passives = (circuit: Circuit, isCold: boolean) => readonly NetworkElement[];

/**
 * The passive elements of a network that sources reach, in a state of its circuit: as warm as their zones make them, or
 * cold. Points of one network differ in sources and loads alone, so these are put together once.
 */
export function passivesOf(
  input: PassiveInput,
  circuit: Circuit,
  isCold: boolean,
): readonly NetworkElement[] {
  return passivesFrom(input)(circuit, isCold);
}

const passivesFrom = onceFor((input: PassiveInput): Passives => {
  const at = (conductorC?: number) =>
    onceFor((circuit: Circuit) => {
      const reached = reachedNodes(circuit);
      return circuit.edges
        .filter(({ from, to }) => reached.has(from) && reached.has(to))
        .flatMap((edge) => passiveElements(input, edge, conductorC));
    });
  const [warm, cold] = [at(), at(input.job.rules['conductor-temperature'].value)];
  return (circuit, isCold) => (isCold ? cold : warm)(circuit);
});
