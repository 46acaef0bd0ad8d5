import { solveNetwork } from '../../../lib/power/network/network.ts';
import type { Network, NetworkElement } from '../../../lib/power/network/network-types.ts';

/** The network with every constant-power and constant-current load times `share`; square-law and resistance loads stay. */
export function scaleLoads(network: Network, share: number): Network {
  const scaled = (element: NetworkElement): NetworkElement => {
    if (element.kind !== 'load') return element;
    if (element.model === 'power') return { ...element, powerW: element.powerW * share };
    if (element.model === 'current') return { ...element, givenA: element.givenA * share };
    return element;
  };
  return { ...network, elements: network.elements.map(scaled) };
}

const largestShare = 1e6;

/**
 * The share of all constant-power and constant-current loads at which the voltage collapses, to one part in a
 * million from below, by bisection: 2 says that the network could feed twice its load. Infinity where no such
 * load bounds it, 0 where the network can't be fed or computed at all.
 */
export function greatestLoadShare(network: Network): number {
  const feeds = (share: number): boolean => {
    const { state } = solveNetwork(scaleLoads(network, share));
    return state === 'solved' || state === 'cut-out';
  };
  if (!feeds(0)) return 0;
  let good = 0;
  let bad = 1;
  while (feeds(bad)) {
    good = bad;
    bad *= 2;
    if (bad > largestShare) return Number.POSITIVE_INFINITY;
  }
  while (bad - good > 1e-6 * bad && bad > 1e-9) {
    const middle = (good + bad) / 2;
    if (feeds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
