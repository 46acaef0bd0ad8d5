import type { Network, NetworkElement, NetworkResult } from './network-types.ts';

/**
 * The elements of a solved network written so that they alone rebuild it: a battery that takes all the charge it
 * accepts becomes a constant-current load of that much, since its electromotive force and resistance no longer set
 * its current. All others stay: an alternator at its limit is told by `limitA` beside its current.
 */
export function settledElements(network: Network, result: NetworkResult): readonly NetworkElement[] {
  if (result.state !== 'solved' && result.state !== 'cut-out') return network.elements;
  const charging = new Set(
    result.elements.filter(({ regime }) => regime === 'accepting').map(({ id }) => id),
  );
  return network.elements.map((element) => {
    if (element.model !== 'emf' || element.acceptA === undefined || !charging.has(element.id)) return element;
    const { id, of, from, to, acceptA } = element;
    return { id, from, to, kind: 'load', model: 'current', givenA: acceptA, ...(of !== undefined && { of }) };
  });
}

/** Where the power of a solved network comes from and goes (W). */
export interface PowerBalance {
  /** Delivered by the sources inside, before their own resistance; charging counts as negative. */
  readonly sourceW: number;
  readonly loadW: number;
  /** Heat in conductors, fuses, joints and inside the sources. */
  readonly heatW: number;
}

/** The balance of power: sourceW = loadW + heatW, as far as rounding allows (Tellegen's theorem). Null where unsolved. */
export function powerBalance(network: Network, result: NetworkResult): PowerBalance | null {
  if (result.state !== 'solved' && result.state !== 'cut-out') return null;
  const kinds = new Map(network.elements.map(({ id, kind }) => [id, kind]));
  const balance = { sourceW: 0, loadW: 0, heatW: 0 };
  for (const { id, currentA, dropV, heatW } of result.elements) {
    balance.heatW += heatW;
    if (kinds.get(id) === 'source') balance.sourceW += heatW - currentA * dropV;
    if (kinds.get(id) === 'load') balance.loadW += currentA * dropV;
  }
  return balance;
}
