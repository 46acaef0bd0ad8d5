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
