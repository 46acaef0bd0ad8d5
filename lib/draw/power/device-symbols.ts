import type { symbols } from '../symbols/index.ts';
import type { GridNode } from './feed-grid.ts';

/** What stands in the box of a device beside its name, for those that are told by a symbol. */
const deviceMarks: Readonly<Record<string, keyof typeof symbols>> = {
  'isolating-relay': 'makeContact',
  charger: 'converter',
  'capacitor-bank': 'capacitor',
};

/** The symbol in the box of a device; none for one that its name tells. */
export function deviceMark({ item }: GridNode): keyof typeof symbols | null {
  return deviceMarks[item.kind] ?? null;
}
