import { expect, test } from 'vitest';
import type { BuildPlan, NetworkElement as Listed, OperatingPoint } from '../../../lib/model/plan/index.ts';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import type { Network, NetworkElement } from '../../../lib/power/network/network-types.ts';
import { outsideCheck } from '../../outside-check.ts';
import { scaleLoads } from '../../power/network/greatest-load.ts';
import { lawA, Spice } from '../../power/network/ngspice.ts';

// Outside reference: ngspice 45, operating points, as carried by the npm package eecircuit-engine.

const num = (value: number | undefined): number => value ?? Number.NaN;

/** What the laws of the test know: a converter stands as the power that it draws. */
type Rebuilt = Exclude<NetworkElement, { readonly model: 'converter' }>;

/**
 * The network again, from what the plan lists of it: a source that gives its limit is a current source, a battery has
 * its two lines, any other holds its electromotive force behind its resistance. A converter draws what the source that
 * it feeds gives over its efficiency.
 */
function rebuilt(element: Listed, all: readonly Listed[]): Rebuilt {
  const { id, from, to, kind, model, cutoutV } = element;
  const between = { id, from, to };
  if (kind === 'source' && model === 'two-slope') {
    const { emfV, ohm, chargeOhm, acceptA } = element;
    return {
      ...between,
      kind,
      model,
      emfV: num(emfV),
      ohm: num(ohm),
      chargeOhm: num(chargeOhm),
      acceptA: num(acceptA),
    };
  }
  if (kind === 'source') {
    const atLimit = element.limitA !== undefined && -num(element.currentA) > element.limitA * (1 - 1e-9);
    return atLimit
      ? { ...between, kind, model: 'current', givenA: num(element.limitA) }
      : { ...between, kind, model: 'emf', emfV: num(element.emfV), ohm: num(element.ohm) };
  }
  if (kind !== 'load') return { ...between, kind, model: 'resistance', ohm: num(element.ohm) };
  const load = { ...between, kind, ...(cutoutV === undefined ? {} : { cutoutV }) };
  if (model === 'converter') {
    const fed = all.find((one) => one.id === element.feeds);
    return {
      ...load,
      model: 'power',
      powerW: (-num(fed?.currentA) * num(fed?.dropV)) / num(element.efficiency),
    };
  }
  if (model === 'power') return { ...load, model, powerW: num(element.powerW) };
  if (model === 'square-law')
    return { ...load, model, powerW: num(element.powerW), ratedV: num(element.ratedV) };
  if (model === 'current') return { ...load, model, givenA: num(element.givenA) };
  return { ...load, model: 'resistance', ohm: num(element.ohm) };
}

/** Nodes that a joint without resistance makes one: the name of each in the network without those joints. */
function merged(elements: readonly Rebuilt[]): (node: string) => string {
  const names = new Map<string, string>();
  const find = (node: string): string => {
    const next = names.get(node);
    return next === undefined ? node : find(next);
  };
  for (const { from, to, ...element } of elements) {
    const [a, b] = [find(from), find(to)];
    if (element.kind !== 'source' && element.model === 'resistance' && element.ohm === 0 && a !== b)
      names.set(a, b);
  }
  return find;
}

interface RebuiltNetwork extends Network {
  readonly elements: readonly Rebuilt[];
}

interface Rebuilding {
  readonly network: RebuiltNetwork;
  /** The voltages of its nodes without any load, each source with its limit: where ngspice starts. */
  readonly openV: ReadonlyMap<string, number>;
  readonly find: (node: string) => string;
}

function networkOf(point: OperatingPoint): Rebuilding {
  const elements = point.elements.map((element) => rebuilt(element, point.elements));
  const find = merged(elements);
  const joined = (all: readonly Rebuilt[]): RebuiltNetwork => {
    const kept = all
      .map((element) => ({ ...element, from: find(element.from), to: find(element.to) }))
      .filter(({ from, to }) => from !== to);
    return { referenceNode: find(point.referenceNode), elements: kept };
  };
  const limited = elements.map((element, k): Rebuilt => {
    const { emfV, ohm, limitA } = point.elements[k] ?? {};
    if (element.kind !== 'source' || limitA === undefined) return element;
    const { id, kind, from, to } = element;
    return { id, kind, model: 'emf', emfV: num(emfV), ohm: num(ohm), limitA, from, to };
  });
  const open = solveNetwork(scaleLoads(joined(limited), 0));
  if (open.state !== 'solved' && open.state !== 'cut-out') throw new Error(`${open.state} without any load`);
  const openV = new Map(open.nodes.map(({ id, voltageV }) => [id, voltageV]));
  return { network: joined(elements), openV, find };
}

const isStiff = (element: NetworkElement): boolean => element.model === 'emf' && element.ohm === 0;

/** The largest imbalance at any node whose elements all have a current by their own law. */
function worstImbalanceA({ elements }: RebuiltNetwork, voltageV: (node: string) => number): number {
  const held = new Set(elements.filter(isStiff).flatMap(({ from, to }) => [from, to]));
  const sums = new Map<string, number>();
  for (const element of elements.filter((one) => !isStiff(one))) {
    const current = lawA(element, voltageV(element.from) - voltageV(element.to));
    sums.set(element.from, (sums.get(element.from) ?? 0) + current);
    sums.set(element.to, (sums.get(element.to) ?? 0) - current);
  }
  return Math.max(...[...sums].flatMap(([node, sum]) => (held.has(node) ? [] : [Math.abs(sum)])));
}

/** Shares of the open voltages that ngspice is started at: from some it runs away to volts by the billion. */
const starts = [1, 0.98, 0.95, 0.9];

/** An engine takes a hundred times as long to start as to solve a point: one serves until an answer of it does not balance. */
let spice = new Spice();

/** What ngspice gives from the first start from which its own answer balances; a case is void where none does. */
async function spiceVoltages({ network, openV }: Rebuilding): Promise<(node: string) => number> {
  for (const share of starts) {
    const from = new Map([...openV].map(([node, volts]) => [node, volts * share]));
    const answer = await spice.solve(network, from);
    if ('errors' in answer) throw new Error(answer.errors.join('\n'));
    const voltageV = (node: string): number => answer.voltages.get(node) ?? Number.NaN;
    if (worstImbalanceA(network, voltageV) < 1e-6) return voltageV;
    spice = new Spice();
  }
  throw new Error('No answer of ngspice balances.');
}

interface InSpice {
  readonly again: Rebuilding;
  readonly voltageV: (node: string) => number;
}

const solved = new WeakMap<OperatingPoint, Promise<InSpice>>();

/** A point rebuilt, and what ngspice gives for it; each is solved once. */
function inSpiceOf(point: OperatingPoint): Promise<InSpice> {
  const solve = async (): Promise<InSpice> => {
    const again = networkOf(point);
    return { again, voltageV: await spiceVoltages(again) };
  };
  const known = solved.get(point) ?? solve();
  solved.set(point, known);
  return known;
}

/** What ngspice gives at the nodes of a point (V), by their names in the plan. */
export async function spiceAt(point: OperatingPoint): Promise<(node: string) => number> {
  const { again, voltageV } = await inSpiceOf(point);
  return (node) => voltageV(again.find(node));
}

/** Where power comes from and goes, by the law of each element at these voltages (W). */
function tally({ elements }: RebuiltNetwork, voltageV: (node: string) => number) {
  const loads = elements.filter(({ kind }) => kind === 'load');
  const drop = ({ from, to }: Rebuilt) => voltageV(from) - voltageV(to);
  const power = (element: Rebuilt) => drop(element) * lawA(element, drop(element));
  const sum = (some: readonly Rebuilt[]) => some.reduce((total, one) => total + power(one), 0);
  return {
    loadW: sum(loads),
    heatW: sum(elements.filter(({ kind }) => kind !== 'load' && kind !== 'source')),
  };
}

/** Every operating point of a plan, rebuilt from its elements alone, against ngspice. */
export function networkChecks(plan: () => BuildPlan): void {
  const inSpice = outsideCheck('jobs-in-ngspice');

  test('has its operating points, all of them fed', () => {
    expect(plan().power.points.map(({ name, state }) => `${name} ${state}`)).toEqual([
      'rated-power solved',
      'full-rating solved',
      'music solved',
      'engine-off solved',
      'cruise solved',
      'idle solved',
      'rest solved',
    ]);
  });

  test('every node voltage is within 10 microvolt of ngspice', async () => {
    for (const point of plan().power.points) {
      const voltageV = await spiceAt(point);
      for (const node of point.nodes)
        expect(
          Math.abs(inSpice.differs(num(node.voltageV ?? undefined), voltageV(node.id)) - voltageV(node.id)),
          `${point.name} ${node.id}`,
        ).toBeLessThan(10e-6);
      expect(point.residualA, point.name).toBeLessThan(1e-6);
    }
  });

  test('sources give what loads and heat take, and ngspice has the same of both', async () => {
    for (const point of plan().power.points) {
      const { again, voltageV } = await inSpiceOf(point);
      const tallied = tally(again.network, voltageV);
      const of = (kind: (one: Listed['kind']) => boolean, power: (one: Listed) => number) =>
        point.elements.filter((one) => kind(one.kind)).reduce((total, one) => total + power(one), 0);
      const takenW = (one: Listed) => num(one.currentA) * num(one.dropV);
      const sourceW = -of((kind) => kind === 'source', takenW);
      const loadW = of((kind) => kind === 'load', takenW);
      const heatW = of(
        (kind) => kind !== 'load' && kind !== 'source',
        (one) => num(one.heatW),
      );
      expect(Math.abs(sourceW - loadW - heatW), point.name).toBeLessThan(1e-6 * sourceW);
      expect(Math.abs(loadW - tallied.loadW), point.name).toBeLessThan(1e-6 * sourceW);
      expect(Math.abs(heatW - tallied.heatW), point.name).toBeLessThan(1e-6 * sourceW);
    }
  });

  test('no source gives more than its limit, and one below its limit holds its voltage', () => {
    for (const { elements, nodes } of plan().power.points) {
      const voltageV = (id: string) => num(nodes.find((node) => node.id === id)?.voltageV ?? undefined);
      for (const { kind, limitA, currentA, emfV, from, to } of elements) {
        if (kind !== 'source' || limitA === undefined) continue;
        expect(-num(currentA)).toBeLessThanOrEqual(limitA * (1 + 1e-9));
        const terminalV = voltageV(from) - voltageV(to);
        expect(terminalV).toBeLessThanOrEqual(num(emfV) + 1e-9);
        if (-num(currentA) < limitA * (1 - 1e-9)) expect(terminalV).toBeCloseTo(num(emfV), 9);
      }
    }
  });
}
