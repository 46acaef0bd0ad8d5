import { z } from 'zod';
import { faultBy, faultless, quantity } from '../../../model/fields.ts';
import { equipmentBase } from '../../../model/kinds/fields/equipment.ts';
import { parseQuantity } from '../../../model/quantity/quantity.ts';
import { steppedLength } from '../../../read/short-forms/step-length.ts';
import type { Row } from '../ask/rows.ts';
import { known, type Named } from '../yaml-text.ts';
import { bracketHoles } from './bracket-holes.ts';

const ofHole = equipmentBase['mounting-holes'].unwrap().element.shape;
const length = quantity('length');

/** How far holes lie from the edges, or how far their centres lie apart along width and depth. */
export const fromEdgesField = z
  .string()
  .check(faultless((written) => centresOf(written)?.map(lengthFault).find(isFault) ?? ownFault(written)));

function ownFault(written: string): string | null {
  return centresOf(written) === null ? lengthFault(written) : null;
}

const lengthFault = (written: string) => faultBy(length, written);
const isFault = (fault: string | null) => fault !== null;

/** Across a hole, or across a slot, `slot 5 mm`. */
export const diameterField = z
  .string()
  .check(faultless((written) => faultBy(ofHole.diameter, slotWidth(written) ?? written)));

/** What is written behind centres: two lengths, of which the first may take its unit from the second. */
function centresOf(written: string): readonly [string, string] | null {
  const [, first, second] = /^cent(?:re|er)s?\s+(.+?)\s*[x×]\s*(.+)$/.exec(written.trim()) ?? [];
  if (first === undefined || second === undefined) return null;
  const [unit = ''] = /[^\d\s/.,]+$/.exec(second) ?? [];
  return [/[^\d\s/.,]$/.test(first) ? first : `${first} ${unit}`, second];
}

/** The width of a slot, where one is told; null for a round hole. */
function slotWidth(written: string): string | null {
  const width = written.trim().replace(/^slots?\s+(?:of\s+)?|\s+slots?$/, '');
  return width === written.trim() ? null : width;
}

/** Places along one side of a case as written lengths. */
type Places = readonly (string | null)[];

/** Two places that lie so far apart, the middle between them at that of the case. */
function apart(side: string, centres: string): Places {
  const middle = steppedLength(side, side, -0.5);
  return middle === null ? [] : [steppedLength(middle, centres, -0.5), steppedLength(middle, centres, 0.5)];
}

/** Two places that lie so far from the ends of a side. */
function inside(side: string, inset: string): Places {
  return [inset, steppedLength(side, inset, -1)];
}

/** What was told of the holes, as written. */
function toldOf({ cells }: Pick<Row, 'cells'>) {
  const told: Readonly<Record<string, string | undefined>> = Object.fromEntries(
    Object.entries(cells).map(([key, cell]) => [key, String(cell)]),
  );
  const { where, off, ends, width, depth, diameter } = told;
  return { where, off, ends, width, depth, across: diameter && (slotWidth(diameter) ?? diameter) };
}

type Told = ReturnType<typeof toldOf>;

/** Where holes lie along width and depth, by centres or by two insets; null where one inset or a bracket tells it. */
function grid({ where, off, ends, width, depth }: Told): { readonly xs: Places; readonly ys: Places } | null {
  if (off === undefined || width === undefined || depth === undefined) return null;
  const centres = centresOf(off);
  if (centres) return { xs: apart(width, centres[0]), ys: apart(depth, centres[1]) };
  if (where !== 'corners' || ends === undefined) return null;
  const [fromSides, fromTop] = metres(width) > metres(depth) ? [ends, off] : [off, ends];
  return { xs: inside(width, fromSides), ys: inside(depth, fromTop) };
}

function metres(written: string): number {
  const read = parseQuantity(written, 'length');
  return typeof read === 'number' ? read : Number.NaN;
}

/** What is wrong with holes beside the case that they are in, as the end of a sentence about its row; null for nothing. */
export function holesFault(row: Pick<Row, 'cells'>): string | null {
  const told = toldOf(row);
  const { where, off, ends, width, depth } = told;
  if (where === undefined || off === undefined) return null;
  const centres = centresOf(off);
  if (centres && ends !== undefined)
    return 'tells the places of holes twice: by centres, and from the ends; leave one out';
  const isByTwo = centres !== null || (where === 'corners' && ends !== undefined);
  if (!isByTwo) return null;
  if (width === undefined || depth === undefined)
    return 'tells holes by centres or by two insets, and these are counted from width and depth: write both, or ? for holes';
  if (!centres && metres(width) === metres(depth))
    return 'is as wide as deep and has no long edges: write centres, along width and depth, such as centres 14.8 x 6.9 in';
  return outsideFault(told);
}

/** Holes in corners lie inside the case, and apart; of a bracket beside the two edges that it names. */
function outsideFault(told: Told): string | null {
  const { where, width = '', depth = '' } = told;
  const found = grid(told);
  if (!found) return null;
  const sides = [
    { places: found.xs, side: width, title: 'width', isBeside: where === 'left-right' },
    { places: found.ys, side: depth, title: 'depth', isBeside: where === 'top-bottom' },
  ];
  for (const { places, side, title, isBeside } of sides) {
    const [first = Number.NaN, last = Number.NaN] = places.map((one) => metres(one ?? ''));
    if (!(first < last)) return `has holes that leave no room between them in its ${title} of ${side}`;
    const isWithin = first >= 0 && last <= metres(side);
    if (isBeside && isWithin)
      return `has holes within its ${title} of ${side}, and those of a bracket ${where} lie outside: write corners`;
    if (!isBeside && !isWithin)
      return `has holes outside its ${title} of ${side}: write that along its width first; holes of a bracket outside are left-right or top-bottom`;
  }
  return null;
}

/** Holes as a file has them: in the corners, or of a bracket. */
export function holeFields(row: Row): Named {
  const told = toldOf(row);
  const { where, off, across } = told;
  const found = grid(told);
  const field = where === 'corners' ? 'mounting-holes' : 'bracket-holes';
  if (found)
    return {
      [field]: found.xs.flatMap((x) =>
        found.ys.flatMap((y) => (x === null || y === null ? [] : [known({ x, y, diameter: across })])),
      ),
    };
  if (where === 'corners') return { [field]: known({ inset: off, diameter: across }) };
  const holes = bracketHoles(
    across === undefined ? row : { ...row, cells: { ...row.cells, diameter: across } },
  );
  return holes.length > 0 ? { [field]: [...holes] } : {};
}

/** That slots count as holes; null where the part has round ones. */
export function slotRemark({ cells: { diameter } }: Row): string | null {
  const width = diameter === undefined ? null : slotWidth(String(diameter));
  return width === null ? null : `holes: slots of ${width}, counted as holes of ${width} in their middle.`;
}
