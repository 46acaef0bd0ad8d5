import { Simulation } from 'eecircuit-engine';
import type {
  ConverterLoad,
  EmfSource,
  Network,
  NetworkElement,
} from '../../../lib/power/network/network-types.ts';

/** What ngspice says of a network: node voltages, or the lines of its error list. */
export type SpiceAnswer =
  | { readonly voltages: ReadonlyMap<string, number> }
  | { readonly errors: readonly string[] };

/** A network as an ngspice deck, with `nodeset` voltages to start from, and the names of its nodes there. */
function deck(
  network: Network,
  start: ReadonlyMap<string, number>,
): { text: string; names: Map<string, string> } {
  const names = new Map([[network.referenceNode, '0']]);
  const name = (node: string): string => {
    const known = names.get(node) ?? `n${names.size}`;
    names.set(node, known);
    return known;
  };
  const lines = network.elements.map((element, k) => {
    const ends = [name(element.from), name(element.to)] as const;
    return element.model === 'converter'
      ? `b${k} ${ends.join(' ')} i=(${deliveredW(network, element, name)})/${element.efficiency}/v(${ends.join(',')})`
      : line(element, k, ...ends);
  });
  const sets = [...names].flatMap(([node, spice]) =>
    spice === '0' ? [] : [`v(${spice})=${start.get(node) ?? 0}`],
  );
  const text = [
    'network',
    ...lines,
    ...sets.map((set) => `.nodeset ${set}`),
    '.options reltol=1e-9 vntol=1e-9 abstol=1e-12 itl1=500',
    '.op',
    '.end',
  ].join('\n');
  return { text, names };
}

/** What the other side of a converter delivers, as ngspice computes it: voltage times current. */
function deliveredW(network: Network, { feeds }: ConverterLoad, name: (node: string) => string): string {
  const fed = network.elements.find(({ id }) => id === feeds);
  if (fed?.model !== 'emf') throw new Error(`${feeds} is no source`);
  const u = `v(${name(fed.from)},${name(fed.to)})`;
  return `${u}*${limitedA(fed, u)}`;
}

const limitedA = ({ emfV, ohm, limitA }: EmfSource, u: string): string =>
  `min(${limitA},max(0,(${emfV}-${u})/${ohm}))`;

function line(element: Exclude<NetworkElement, ConverterLoad>, k: number, from: string, to: string): string {
  switch (element.model) {
    case 'two-slope': {
      // Which of its two lines holds is left to ngspice: the lesser current, the ceiling at most.
      const { emfV, ohm, chargeOhm, acceptA } = element;
      const over = `(v(${from},${to})-${emfV})`;
      return `b${k} ${from} ${to} i=min(${acceptA},min(${over}/${ohm},${over}/${chargeOhm}))`;
    }
    case 'emf':
      if (element.limitA !== undefined)
        return `b${k} ${to} ${from} i=${limitedA(element, `v(${from},${to})`)}`;
      if (element.ohm === 0) return `v${k} ${from} ${to} dc ${element.emfV}`;
      return `v${k} e${k} ${to} dc ${element.emfV}\nr${k} e${k} ${from} ${element.ohm}`;
    case 'resistance':
      // A resistor of no ohms would count as one of a milliohm.
      return element.ohm === 0 ? `v${k} ${from} ${to} dc 0` : `r${k} ${from} ${to} ${element.ohm}`;
    case 'square-law':
      return `r${k} ${from} ${to} ${(element.ratedV * element.ratedV) / element.powerW}`;
    case 'power':
      return `b${k} ${from} ${to} i=${element.powerW}/v(${from},${to})`;
    case 'current':
      return `i${k} ${from} ${to} dc ${element.kind === 'source' ? -element.givenA : element.givenA}`;
  }
}

/** Runs networks through ngspice one after another; a new engine after each failure, which leaves the old one spoilt. */
export class Spice {
  #engine: Simulation | null = null;

  async solve(network: Network, start: ReadonlyMap<string, number>): Promise<SpiceAnswer> {
    this.#engine ??= await fresh();
    const { text, names } = deck(network, start);
    this.#engine.setNetList(text);
    const result = await this.#engine.runSim();
    const errors = this.#engine.getError().filter((entry) => entry.trim() !== '');
    if (errors.length > 0 || result.dataType !== 'real') {
      this.#engine = null;
      return { errors };
    }
    const values = new Map(result.data.map(({ name, values: [value = Number.NaN] }) => [name, value]));
    return {
      voltages: new Map(
        [...names].map(([node, spice]) => [
          node,
          spice === '0' ? 0 : (values.get(`v(${spice})`) ?? Number.NaN),
        ]),
      ),
    };
  }
}

/** An engine that has solved something before: one whose first run fails never answers. */
async function fresh(): Promise<Simulation> {
  const engine = new Simulation();
  await engine.start();
  engine.setNetList('warm-up\nv1 a 0 dc 1\nr1 a 0 1\n.op\n.end');
  await engine.runSim();
  return engine;
}

/** The current of an element by its own law at given voltages: written for the check, apart from the solver. */
export function lawA(element: Exclude<NetworkElement, ConverterLoad>, u: number): number {
  switch (element.model) {
    case 'two-slope': {
      const over = u - element.emfV;
      return over < 0 ? over / element.ohm : Math.min(element.acceptA, over / element.chargeOhm);
    }
    case 'emf': {
      const free = (u - element.emfV) / element.ohm;
      return element.limitA === undefined ? free : -Math.min(element.limitA, Math.max(0, -free));
    }
    case 'resistance':
      return u / element.ohm;
    case 'square-law':
      return (u * element.powerW) / element.ratedV ** 2;
    case 'power':
      return element.powerW / u;
    case 'current':
      return element.kind === 'source' ? -element.givenA : element.givenA;
  }
}

/** The largest imbalance of current at any node when every element follows its law at these voltages. */
export function imbalanceA(network: Network, voltages: ReadonlyMap<string, number>): number {
  const sums = new Map<string, number>();
  const overV = ({ from, to }: NetworkElement) =>
    (voltages.get(from) ?? Number.NaN) - (voltages.get(to) ?? Number.NaN);
  const currentA = (element: NetworkElement): number => {
    if (element.model !== 'converter') return lawA(element, overV(element));
    const fed = network.elements.find(({ id }) => id === element.feeds);
    const givenW = fed ? -overV(fed) * currentA(fed) : Number.NaN;
    return givenW / element.efficiency / overV(element);
  };
  for (const element of network.elements) {
    const current = currentA(element);
    sums.set(element.from, (sums.get(element.from) ?? 0) + current);
    sums.set(element.to, (sums.get(element.to) ?? 0) - current);
  }
  return Math.max(...[...sums.values()].map(Math.abs));
}
