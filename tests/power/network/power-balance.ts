import type { Network, NetworkResult } from '../../../lib/power/network/network-types.ts';

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
