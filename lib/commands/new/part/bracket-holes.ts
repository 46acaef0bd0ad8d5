import { steppedLength } from '../../../read/short-forms/step-length.ts';
import type { Row } from '../ask/rows.ts';
import type { Named } from '../yaml-text.ts';

/**
 * Where a bracket is screwed down, from the measures of the part that it holds: beside two opposite edges, at the middle
 * of each, or at two places of each that lie so far from its ends. Nothing where a measure is not known.
 */
export function bracketHoles({ cells }: Row): readonly Named[] {
  const { where, off: beside, diameter, ends: inset, width, depth } = asTexts(cells);
  if (!where || !beside || !diameter || !width || !depth) return [];
  const isAcross = where === 'left-right';
  const [across, along] = isAcross ? [width, depth] : [depth, width];
  const outside = [steppedLength(beside, beside, -2), steppedLength(across, beside, 1)];
  const inside =
    inset === undefined ? [steppedLength(along, along, -0.5)] : [inset, steppedLength(along, inset, -1)];
  return outside.flatMap((out) =>
    inside.flatMap((at): readonly Named[] => {
      if (out === null || at === null) return [];
      return [{ ...(isAcross ? { x: out, y: at } : { x: at, y: out }), diameter }];
    }),
  );
}

function asTexts(cells: Row['cells']): Readonly<Record<string, string | undefined>> {
  return Object.fromEntries(Object.entries(cells).map(([key, cell]) => [key, String(cell)]));
}
