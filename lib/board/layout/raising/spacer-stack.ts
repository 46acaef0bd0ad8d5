/** A part on the shelf that adds its height to a stack below a fixing. */
export interface StackPart {
  readonly part: string;
  readonly heightM: number;
  /** Washers and packing are thin; of them a stack takes few. */
  readonly form: 'spacer' | 'packing';
  /** How many are left on the shelf. */
  readonly quantity: number;
}

/** What makes a height below a fixing: layers of sheet, and parts from the shelf. */
export interface SpacerStack {
  readonly layers: number;
  readonly parts: readonly { readonly part: string; readonly count: number }[];
  readonly makesM: number;
}

/** Pieces that one stack may have in all, and thin ones among them: a taller stack of loose pieces shifts (cp). */
const mostOf = { pieces: 8, thin: 4 } as const;

/** Below this, heights are the same, metres. */
const hairM = 1e-6;

interface Kind {
  /** Null for a layer of the sheet. */
  readonly part: string | null;
  readonly heightM: number;
  readonly thin: boolean;
  readonly quantity: number;
}

/**
 * The stack of a height, metres: never lower than asked, higher by the tolerance at most; null where neither the sheet
 * nor the shelf makes it. Of the stacks that do, the one of fewest pieces; then the one that is least too high; then
 * the one with fewest layers to be sawn. No more is taken of a part than there is.
 */
export function spacerStack(
  heightM: number,
  layerM: number,
  shelf: readonly StackPart[],
  toleranceM: number,
): SpacerStack | null {
  const kinds = kindsOf(layerM, shelf);
  for (let pieces = 1; pieces <= mostOf.pieces; pieces += 1) {
    const [best] = stacksOf(kinds, pieces, heightM + toleranceM)
      .filter(({ makesM }) => makesM >= heightM - hairM)
      .toSorted((a, b) => compareM(a.makesM, b.makesM) || a.layers - b.layers);
    if (best) return best;
  }
  return null;
}

/** Tallest first, then by name, so that the same shelf gives the same stack however it is written. */
function kindsOf(layerM: number, shelf: readonly StackPart[]): Kind[] {
  const parts = shelf.map(({ part, heightM, form, quantity }): Kind => {
    return { part, heightM, thin: form === 'packing', quantity };
  });
  const layer: Kind = { part: null, heightM: layerM, thin: false, quantity: Infinity };
  return [layer, ...parts]
    .filter((kind) => kind.heightM > hairM)
    .toSorted((a, b) => b.heightM - a.heightM || ((a.part ?? '') < (b.part ?? '') ? -1 : 1));
}

/** Every stack of so many pieces that is not above a height. */
function stacksOf(kinds: readonly Kind[], pieces: number, mostM: number): SpacerStack[] {
  const stacks: SpacerStack[] = [];
  const counts = kinds.map(() => 0);
  const add = (at: number, left: number, thin: number, makesM: number): void => {
    if (makesM > mostM + hairM) return;
    if (left === 0) stacks.push(stackOf(kinds, counts, makesM));
    const kind = kinds[at];
    if (left === 0 || !kind) return;
    const most = Math.min(left, kind.quantity, kind.thin ? mostOf.thin - thin : left);
    for (let count = 0; count <= most; count += 1) {
      counts[at] = count;
      add(at + 1, left - count, thin + (kind.thin ? count : 0), makesM + count * kind.heightM);
    }
    counts[at] = 0;
  };
  add(0, pieces, 0, 0);
  return stacks;
}

function stackOf(kinds: readonly Kind[], counts: readonly number[], makesM: number): SpacerStack {
  const used = kinds
    .map(({ part }, at) => ({ part, count: counts[at] ?? 0 }))
    .filter(({ count }) => count > 0);
  return {
    layers: used.find(({ part }) => part === null)?.count ?? 0,
    parts: used.flatMap(({ part, count }) => (part === null ? [] : [{ part, count }])),
    makesM: Number(makesM.toFixed(9)),
  };
}

function compareM(a: number, b: number): number {
  return Math.abs(a - b) < hairM ? 0 : a - b;
}
