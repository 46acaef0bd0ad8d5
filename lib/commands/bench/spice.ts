import type { Simulation } from 'eecircuit-engine';
import type { Network, NetworkElement } from '../../power/network/network-types.ts';

/** Solves networks with ngspice, one run each: the node voltages, or null where it fails. */
export type SpiceRun = (network: Network, startV: number) => Promise<ReadonlyMap<string, number> | null>;

/** Opens ngspice, which only a development install has; null where it is missing. */
export async function openSpice(): Promise<SpiceRun | null> {
  const engine = await loadEngine();
  if (!engine) return null;
  await engine.start();
  return async (network, startV) => {
    const { text, names } = deck(network, startV);
    engine.setNetList(text);
    const result = await engine.runSim();
    if (result.dataType !== 'real') return null;
    const values = new Map(result.data.map(({ name, values: [value = Number.NaN] }) => [name, value]));
    return new Map(
      [...names].map(([node, spice]) => [
        node,
        spice === '0' ? 0 : (values.get(`v(${spice})`) ?? Number.NaN),
      ]),
    );
  };
}

async function loadEngine(): Promise<Simulation | null> {
  try {
    const { Simulation } = await import('eecircuit-engine');
    return new Simulation();
  } catch {
    return null;
  }
}

/** The network as an ngspice deck, started near its open-circuit voltages: else it lands on the root of low voltage. */
function deck(network: Network, startV: number): { text: string; names: ReadonlyMap<string, string> } {
  const names = new Map([[network.referenceNode, '0']]);
  const name = (node: string): string => {
    const known = names.get(node) ?? `n${names.size}`;
    names.set(node, known);
    return known;
  };
  const lines = network.elements.map((element, k) => line(element, k, name(element.from), name(element.to)));
  const isFeed = (node: string) => node.startsWith('feed') || node.endsWith('+');
  const sets = [...names].flatMap(([node, spice]) =>
    spice === '0' ? [] : [`.nodeset v(${spice})=${isFeed(node) ? startV : 0}`],
  );
  const options = '.options reltol=1e-9 vntol=1e-9 abstol=1e-12 itl1=500';
  return { text: ['network', ...lines, ...sets, options, '.op', '.end'].join('\n'), names };
}

function line(element: NetworkElement, k: number, from: string, to: string): string {
  switch (element.model) {
    case 'emf':
      return `v${k} e${k} ${to} dc ${element.emfV}\nr${k} e${k} ${from} ${element.ohm}`;
    case 'resistance':
      return `r${k} ${from} ${to} ${element.ohm}`;
    case 'square-law':
      return `r${k} ${from} ${to} ${(element.ratedV * element.ratedV) / element.powerW}`;
    case 'power':
      return `b${k} ${from} ${to} i=${element.powerW}/v(${from},${to})`;
    case 'two-slope':
    case 'converter':
      throw new Error(`The benchmark's networks have no ${element.model} element.`);
    case 'current':
      return `i${k} ${from} ${to} dc ${element.kind === 'source' ? -element.givenA : element.givenA}`;
  }
}
