import { isRelay, type Part } from '../index.ts';

/** What a part draws through its turn-on lead (A): a coil or a fan all that it takes; null where its part is silent. */
export function turnOnDrawA(part: Part | null): number | null {
  if (isRelay(part)) return part['coil-current'];
  if (part?.kind === 'fan') return part.draw;
  const supply =
    part?.kind === 'charger'
      ? part.input
      : part?.kind === 'amplifier' || part?.kind === 'processor' || part?.kind === 'source-unit'
        ? part.supply
        : null;
  return supply?.['turn-on-draw'] ?? null;
}
