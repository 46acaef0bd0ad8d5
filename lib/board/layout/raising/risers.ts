import type { RiserForm } from '../../../model/vocabulary.ts';
import type { SpacerStack } from './spacer-stack.ts';

/** What risers and spacers are made for: the raised items of a board and the spacers of its fixings. */
export interface RiserBoard {
  readonly id: string;
  /** Thickness of the sheet that the pieces are cut from as well. */
  readonly thicknessM: number;
  readonly placements: readonly {
    readonly item: string;
    readonly widthM: number;
    readonly depthM: number;
    readonly raisedM: number;
  }[];
  readonly fixings: readonly { readonly id: string; readonly spacerM: number }[];
  /** What makes the heights of the fixings; one that is missing has layers of sheet alone. */
  readonly stacks?: ReadonlyMap<string, SpacerStack>;
  /** How much too high a stack may be, metres. */
  readonly toleranceM: number;
  /** Width of a flat rail, and side of a pad, metres. */
  readonly railWidthM: number;
  readonly padM: number;
  readonly holes: readonly { readonly of: string; readonly diameterM: number }[];
}

/** One size of piece, cut from the sheet of the board. */
export interface RiserPiece {
  /** Board, what it carries, and its form: `board.amp-front.rail`. */
  readonly id: string;
  readonly carries: string;
  /** `rail`: laid flat in layers below two sides. `edge-rail`: the same, one strip standing. `pad`: below a fixing. */
  readonly form: RiserForm;
  readonly count: number;
  readonly widthM: number;
  readonly lengthM: number;
  readonly thicknessM: number;
  /** Pieces that lie on each other at one place. */
  readonly layers: number;
  /** From the shelf, at one place: spacers, washers, packing. */
  readonly parts: { readonly part: string; readonly count: number }[];
  /** The height that all of it makes, and what nothing on the shelf fills. */
  readonly makesM: number;
  readonly packM: number;
  /** Hole for the fixing, through the middle; null where it is screwed through in place, or is not known. */
  readonly holeM: number | null;
}

/**
 * Pieces that raise items and fixings. An item stands on two rails below its left and right sides, as long as the
 * item is deep. Where whole layers of the sheet make its height, never lower and no more than the tolerance higher, the
 * rails lie flat in layers; where they do not, a strip as wide as the height stands on its edge. Fixings stand on
 * their stacks. One without a stack has pads, as many layers as go into the height; what they leave is told as
 * packing, never rounded away. Where the height is less than one layer no pad is cut, and the whole of it is packing.
 */
export function riserPieces(board: RiserBoard): RiserPiece[] {
  const rails = board.placements
    .filter(({ raisedM }) => raisedM > 0)
    .map(({ item, widthM, depthM, raisedM }) => rail(board, item, { widthM, depthM }, raisedM));
  const pads = board.fixings
    .filter(({ spacerM }) => spacerM > 0)
    .map(({ id, spacerM }) => pad(board, id, spacerM));
  return [...rails, ...pads];
}

interface Layers {
  readonly layers: number;
  readonly makesM: number;
  readonly packM: number;
}

/** Whole layers that go into a height, or one more where that is too high by no more than the tolerance. */
function layersOf(
  heightM: number,
  { thicknessM, toleranceM }: Pick<RiserBoard, 'thicknessM' | 'toleranceM'>,
): Layers {
  const whole = Math.floor(heightM / thicknessM + 1e-6);
  const leftM = Math.max(0, Number((heightM - whole * thicknessM).toFixed(9)));
  if (leftM < 1e-6) return { layers: whole, makesM: whole * thicknessM, packM: 0 };
  const over = (whole + 1) * thicknessM;
  if (over <= heightM + toleranceM + 1e-9) return { layers: whole + 1, makesM: over, packM: 0 };
  return { layers: whole, makesM: whole * thicknessM, packM: leftM };
}

function rail(
  board: RiserBoard,
  item: string,
  print: { readonly widthM: number; readonly depthM: number },
  raisedM: number,
): RiserPiece {
  const { id, thicknessM } = board;
  const stack = layersOf(raisedM, board);
  const flat = stack.layers > 0 && stack.packM === 0;
  const form = flat ? 'rail' : 'edge-rail';
  const layers = flat ? stack.layers : 1;
  return {
    id: `${id}.${item}.${form}`,
    carries: item,
    form,
    count: 2 * layers,
    // Two rails never lie over each other below a narrow item.
    widthM: flat ? Math.min(board.railWidthM, print.widthM / 2) : raisedM,
    lengthM: print.depthM,
    thicknessM,
    layers,
    parts: [],
    makesM: flat ? stack.makesM : raisedM,
    packM: 0,
    holeM: null,
  };
}

function pad(board: RiserBoard, fixing: string, spacerM: number): RiserPiece {
  const { id, thicknessM, holes, stacks, padM } = board;
  const made = stacks?.get(fixing);
  const stack = made
    ? { ...made, parts: [...made.parts], packM: 0 }
    : { ...layersOf(spacerM, board), parts: [] };
  const diameterM = holes.find(({ of }) => of === fixing)?.diameterM ?? 0;
  return {
    id: `${id}.${fixing}.pad`,
    carries: fixing,
    form: 'pad',
    count: stack.layers,
    widthM: padM,
    lengthM: padM,
    thicknessM,
    ...stack,
    holeM: diameterM > 0 && stack.layers > 0 ? diameterM : null,
  };
}
