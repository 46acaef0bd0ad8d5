import { partsFile, vehicleFile } from '../read/problem-case.ts';
import type { Change } from '../read/small-shop.ts';

/* Changes of one file of the small shop: what stands there, and what instead. */
export const inParts = (found: string, instead: string): Change => [partsFile, found, instead];
export const inVehicle = (found: string, instead: string): Change => [vehicleFile, found, instead];
export const inShop = (found: string, instead: string): Change => ['content/shop.yaml', found, instead];
/** More parts in the catalogue, a line each: `id: { kind: ... }`. */
export const addParts = (...lines: readonly string[]): Change =>
  inParts('  bolt-a:', `${lines.map((line) => `  ${line}\n`).join('')}  bolt-a:`);
