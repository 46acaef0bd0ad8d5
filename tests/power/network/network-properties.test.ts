import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import type { Network, NetworkElement, NetworkResult } from '../../../lib/power/network/network-types.ts';
import { imbalanceA } from './ngspice.ts';
import { powerBalance } from './power-balance.ts';
import { chargingTopologies, randomNetwork, topologies } from './reference-networks.ts';

const anyNetwork = fc
  .tuple(fc.nat(), fc.constantFrom(...topologies, ...chargingTopologies))
  .map(([seed, topology]) => randomNetwork(seed, topology));

const isFed = (result: NetworkResult) => result.state === 'solved' || result.state === 'cut-out';

describe('every network that is solved', () => {
  test('balances its currents to a microampere, by the solver and by the laws of its elements', () => {
    fc.assert(
      fc.property(anyNetwork, (network) => {
        const result = solveNetwork(network);
        if (result.state !== 'solved' && result.state !== 'cut-out') return;
        expect(result.residualA).toBeLessThan(1e-6);
        expect(
          imbalanceA(network, new Map(result.nodes.map(({ id, voltageV }) => [id, voltageV]))),
        ).toBeLessThan(1e-6);
      }),
      { numRuns: 300 },
    );
  });

  test('turns the power of its sources into loads and heat', () => {
    fc.assert(
      fc.property(anyNetwork, (network) => {
        const balance = powerBalance(network, solveNetwork(network));
        if (!balance) return;
        expect(Math.abs(balance.sourceW - balance.loadW - balance.heatW)).toBeLessThan(1e-6);
      }),
      { numRuns: 300 },
    );
  });
});

/** The voltage at each load of a network whose loads are all constant power or constant current. */
function loadVoltages(network: Network): Map<string, number> | null {
  const result = solveNetwork(network);
  if (result.state !== 'solved' && result.state !== 'cut-out') return null;
  const loads = new Set(network.elements.filter(({ kind }) => kind === 'load').map(({ id }) => id));
  return new Map(result.elements.filter(({ id }) => loads.has(id)).map(({ id, dropV }) => [id, dropV]));
}

const radial = fc
  .tuple(fc.nat(), fc.constantFrom('tree' as const, 'shared-ground' as const))
  .map(([seed, topology]) => {
    const network = randomNetwork(seed, topology);
    const elements = network.elements.filter(
      ({ kind, model }) => kind !== 'load' || model === 'power' || model === 'current',
    );
    return { ...network, elements };
  });

function lowered(element: NetworkElement, factor: number): NetworkElement {
  return element.kind === 'load' || element.model === 'current'
    ? element
    : { ...element, ohm: element.ohm * factor };
}

test('in a radial network a lower resistance never lowers the voltage of a device', () => {
  fc.assert(
    fc.property(radial, fc.nat(), fc.double({ min: 0, max: 0.99, noNaN: true }), (network, pick, factor) => {
      const before = loadVoltages(network);
      if (!before) return;
      const resistive = network.elements.filter(({ kind }) => kind !== 'load');
      const chosen = resistive[pick % resistive.length];
      const elements = network.elements.map((element) =>
        element === chosen ? lowered(element, factor) : element,
      );
      const after = loadVoltages({ ...network, elements });
      expect(after).not.toBeNull();
      for (const [id, voltageV] of before) expect(after?.get(id)).toBeGreaterThan(voltageV - 1e-9);
    }),
    { numRuns: 300 },
  );
});

test('a network that is fed stays fed with less load', () => {
  fc.assert(
    fc.property(anyNetwork, fc.double({ min: 0, max: 1, noNaN: true }), (network, factor) => {
      if (!isFed(solveNetwork(network))) return;
      const elements = network.elements.map((element) =>
        element.model === 'power' ? { ...element, powerW: element.powerW * factor } : element,
      );
      expect(isFed(solveNetwork({ ...network, elements }))).toBe(true);
    }),
  );
});

/** Elements without any sense: numbers and nodes by chance, zero, negative and no numbers among them. */
const number = fc.oneof(
  fc.constantFrom(0, -1, 1e-12, 1e12, Number.NaN, Number.POSITIVE_INFINITY),
  fc.double({ min: 0, max: 20, noNaN: true }),
);
const node = fc.constantFrom('a', 'b', 'c', 'd');
const senseless: fc.Arbitrary<NetworkElement> = fc
  .record({
    id: fc.uuid(),
    from: node,
    to: node,
    one: number,
    two: number,
    model: fc.constantFrom('emf', 'limited', 'wire', 'power', 'square-law', 'current', 'resistance'),
  })
  .map(({ id, from, to, one, two, model }): NetworkElement => {
    const ends = { id, from, to };
    const table: Record<typeof model, NetworkElement> = {
      emf: { ...ends, kind: 'source', model: 'emf', emfV: one, ohm: two },
      limited: { ...ends, kind: 'source', model: 'emf', emfV: one, ohm: two, limitA: 5 },
      wire: { ...ends, kind: 'conductor', model: 'resistance', ohm: one },
      power: { ...ends, kind: 'load', model: 'power', powerW: one },
      'square-law': { ...ends, kind: 'load', model: 'square-law', powerW: one, ratedV: two },
      current: { ...ends, kind: 'load', model: 'current', givenA: one },
      resistance: { ...ends, kind: 'load', model: 'resistance', ohm: one },
    };
    return table[model];
  });

test('no network, however senseless, gives a number that is none', () => {
  fc.assert(
    fc.property(fc.array(senseless, { maxLength: 12 }), (elements) => {
      const result = solveNetwork({ referenceNode: 'a', elements });
      if (result.state !== 'solved' && result.state !== 'cut-out') return;
      const numbers = [
        result.residualA,
        ...result.nodes.map(({ voltageV }) => voltageV),
        ...result.elements.flatMap(({ currentA, dropV, heatW }) => [currentA, dropV, heatW]),
      ];
      expect(numbers.every(Number.isFinite)).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
