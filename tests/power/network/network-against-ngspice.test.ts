import { describe, expect, test, vi } from 'vitest';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import type { Network, NetworkResult } from '../../../lib/power/network/network-types.ts';
import { caseCount } from '../../long-run.ts';
import { outsideCheck } from '../../outside-check.ts';
import { greatestLoadShare, scaleLoads } from './greatest-load.ts';
import { imbalanceA, Spice } from './ngspice.ts';
import { randomNetwork, type Topology, topologies } from './reference-networks.ts';

const found = outsideCheck('networks-in-ngspice');

// Outside reference: ngspice 45, operating points, as carried by the npm package eecircuit-engine.

function voltagesOf(result: NetworkResult): ReadonlyMap<string, number> {
  if (result.state === 'no-solution' || result.state === 'fault') throw new Error(JSON.stringify(result));
  return new Map(result.nodes.map(({ id, voltageV }) => [id, voltageV]));
}

const openVoltages = (network: Network) => voltagesOf(solveNetwork(scaleLoads(network, 0)));

/** The network at a share of its greatest load; where nothing bounds it, at its own load. */
function atShare(network: Network, share: number): Network {
  const greatest = greatestLoadShare(network);
  return scaleLoads(network, Number.isFinite(greatest) ? share * greatest : 1);
}

async function compare(
  topology: Topology,
  seeds: number,
  shares: readonly number[],
  loaded: (network: Network, share: number) => Network = atShare,
) {
  const spice = new Spice();
  let compared = 0;
  let worstV = 0;
  const regimes = new Set<string>();
  const refused: number[] = [];
  for (let seed = 1; seed <= seeds; seed += 1) {
    const network = loaded(randomNetwork(seed, topology), shares[seed % shares.length] ?? 0.5);
    const result = solveNetwork(network);
    const own = voltagesOf(result);
    const answer = await spice.solve(network, openVoltages(network));
    if ('errors' in answer) {
      refused.push(seed);
      continue;
    }
    // A case is void unless ngspice's own answer balances.
    if (!(imbalanceA(network, answer.voltages) < 1e-6)) continue;
    compared += 1;
    for (const regime of regimesOf(result)) regimes.add(regime);
    for (const [node, voltageV] of answer.voltages)
      worstV = Math.max(worstV, Math.abs(voltageV - found.differs(own.get(node) ?? Number.NaN, voltageV)));
  }
  return { compared, worstV, refused, regimes };
}

/** The state of each source with more than one, by its name. */
const regimesOf = (result: NetworkResult): string[] =>
  'elements' in result
    ? result.elements.flatMap(({ id, regime }) => (regime === undefined ? [] : [`${id} ${regime}`]))
    : [];

describe('networks against ngspice', () => {
  test('carries the current of parts without resistance, too', async () => {
    const network: Network = {
      referenceNode: 'minus',
      elements: [
        { id: 'battery', kind: 'source', model: 'emf', emfV: 12.6, ohm: 0, from: 'plus', to: 'minus' },
        { id: 'bus', kind: 'joint', model: 'resistance', ohm: 0, from: 'plus', to: 'bus' },
        { id: 'wire', kind: 'conductor', model: 'resistance', ohm: 0.01, from: 'bus', to: 'amp' },
        { id: 'amp', kind: 'load', model: 'power', powerW: 500, from: 'amp', to: 'minus' },
      ],
    };
    const own = voltagesOf(solveNetwork(network));
    const answer = await new Spice().solve(network, openVoltages(network));
    if ('errors' in answer) throw new Error(answer.errors.join('\n'));
    for (const [node, voltageV] of answer.voltages) expect(own.get(node)).toBeCloseTo(voltageV, 6);
  });

  test.each(topologies)(
    'agrees within 10 microvolt up to 0.99 of the greatest load: %s',
    async (topology) => {
      const drawn = caseCount({ all: 60, some: 25 });
      const { compared, worstV, refused } = await compare(topology, drawn, [0.2, 0.5, 0.8, 0.95, 0.99]);
      expect(refused).toEqual([]);
      expect(compared / drawn).toBeGreaterThanOrEqual(52 / 60);
      expect(worstV).toBeLessThan(10e-6);
    },
  );

  test.each<[Topology, readonly string[]]>([
    [
      'charging',
      [
        'alternator accepting',
        'alternator limited',
        'alternator set-point',
        'battery accepting',
        'battery charging',
        'battery set-point',
        'second accepting',
        'second charging',
        'second set-point',
      ],
    ],
    [
      'charger',
      [
        'charger:out limited',
        'charger:out set-point',
        'second accepting',
        'second charging',
        'second set-point',
      ],
    ],
  ])('agrees in every state that its sources can be in: %s', async (topology, states) => {
    const { compared, worstV, refused, regimes } = await compare(
      topology,
      120,
      [0, 0.05, 0.1, 0.3],
      scaleLoads,
    );
    // ngspice itself finds no state of one in twenty: its steps go to and fro over the bends of a charger.
    expect(refused.length).toBeLessThanOrEqual(6);
    expect(compared).toBeGreaterThanOrEqual(108);
    expect(worstV).toBeLessThan(10e-6);
    expect([...regimes]).toEqual(expect.arrayContaining([...states]));
  });

  test('both say that a load past the greatest cannot be fed', async () => {
    // ngspice tells each failure on the console, too; here failing is what is asked of it.
    vi.spyOn(console, 'error').mockReturnValue();
    vi.spyOn(console, 'warn').mockReturnValue();
    const spice = new Spice();
    for (const topology of topologies)
      for (let seed = 1; seed <= caseCount({ all: 3, some: 1 }); seed += 1) {
        const network = atShare(randomNetwork(seed, topology), 1.05);
        const own = solveNetwork(network);
        expect(own.state).toBe('no-solution');
        const answer = await spice.solve(network, openVoltages(network));
        const fed = 'voltages' in answer && imbalanceA(network, answer.voltages) < 1e-6;
        expect(fed).toBe(false);
      }
  });
});
