import {
  drilledM,
  drillFaults,
  drillTable,
  type HoleToDrill,
  holesToDrill,
  type MountingScrew,
} from '../../board/cut/drill.ts';
import type { Drilling } from '../../board/cut/holes-short.ts';
import type { FixingHead } from '../../board/layout/check-placements.ts';
import type { Item, MountingHole, Placement } from '../../board/layout/item.ts';
import type { BoardRemark } from '../../board/remark.ts';
import { type BoardShape, drawOutline, type RoundHole } from '../../board/shape/outline.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { PlanHole } from '../../model/plan/index.ts';
import type { PlanBook } from '../plan-book.ts';
import { remarksOnBoard } from './remark-words.ts';
import { mountingScrew, screwedInto } from './screws/mounting-screw.ts';

/** The shape of a board as written; what is wrong with it goes into the book. Null where its base can't be drawn. */
export function boardShape(job: Job, board: Board, book: PlanBook): BoardShape | null {
  const { shape, faults } = drawOutline(board.given.outline);
  const noticed = faults.map((fault) => ({ ...fault, of: [...fault.of, board.id] }));
  remarksOnBoard(job, board.id, noticed, () => ({ path: `${board.path}/outline` }), book);
  return shape;
}

/** Where the datum corner of a board stands in its space; as the job says, else as chosen; its corner before that. */
export function datumInSpace({ given, place }: Board): { readonly xM: number; readonly yM: number } {
  return { xM: given.at?.x ?? place?.xM ?? 0, yM: given.at?.y ?? place?.yM ?? 0 };
}

/** Width and height of a board that is written as a plain rectangle, uncut, metres; null for any other. */
export function writtenRectangle({
  given,
}: Pick<Board, 'given'>): { readonly widthM: number; readonly heightM: number } | null {
  const { rectangle, cuts = [] } = given.outline;
  return rectangle && cuts.length === 0 ? { widthM: rectangle.width, heightM: rectangle.height } : null;
}

/** A fixing of a board on its sound point, metres from the board's datum. */
export interface BoardFixing {
  readonly id: string;
  readonly xM: number;
  readonly yM: number;
  readonly partId: string;
  readonly part: PartOf<'fixing'>;
  readonly point: string;
  readonly behind: string;
  readonly spacerM: number;
}

/** The fixings of a board. Each stands where its sound point is: that is where the panel holds. */
export function boardFixings(board: Board, parts: Job['parts']): BoardFixing[] {
  const datum = datumInSpace(board);
  return Object.entries(board.given.fixings).flatMap(([id, fixing]): BoardFixing[] => {
    const part = parts[fixing.fixing];
    const point = board.space['sound-points'][fixing.point];
    if (part?.kind !== 'fixing' || !point) return [];
    return [
      {
        id,
        xM: point.x - datum.xM,
        yM: point.y - datum.yM,
        partId: fixing.fixing,
        part,
        point: fixing.point,
        behind: point.behind,
        spacerM: fixing.spacer ?? 0,
      },
    ];
  });
}

/** Every hole of a board, those of the screws of its ribs too, numbered; what is wrong with them goes to the faults. */
export function boardHoles(
  board: Board,
  shape: BoardShape,
  fixings: readonly BoardFixing[],
  laid: { readonly items: readonly Item[]; readonly placements: readonly Placement[] },
  job: Screws,
  screws: readonly HoleToDrill[] = [],
): { readonly holes: PlanHole[]; readonly faults: readonly BoardRemark[] } {
  const placed = holesToDrill(shape, {
    ...laid,
    // Where the fixing does not tell its clearance, a tenth over its nominal thread would be a guess: the rules ask for it.
    fixings: fixings.map(({ part, ...at }) => ({ ...at, diameterM: part.clearance ?? 0 })),
    thicknessM: board.sheet.thickness,
    screwFor: (hole) => screwFor(hole, job, board),
  });
  const drilled = [...placed, ...screws];
  return { holes: drillTable(drilled).map(({ id: _, ...hole }) => hole), faults: drillFaults(drilled) };
}

type Screws = Pick<Job, 'parts' | 'rules' | 'shop'>;

function screwFor(
  hole: Pick<MountingHole, 'diameterM' | 'footM'>,
  job: Screws,
  board: Pick<Board, 'given' | 'sheet'>,
): MountingScrew | null {
  const screw = mountingScrew(hole, job, screwedInto(board, board.sheet.thickness));
  if (!screw) return null;
  const { pilot, length } = screw.part;
  return { part: screw.id, pilotM: pilot ?? hole.diameterM, lengthM: length ?? 0 };
}

/**
 * What mounting holes keep away from on a board that is laid out. Only fibreboard splits at its corners; a board whose
 * sheet the plan chooses once it is laid out may come to be of that.
 */
export function drilling(board: Board, job: Screws, items: readonly Item[]): Drilling {
  const { sheet, given } = board;
  const { rules } = job;
  const splits = sheet.material === 'fibreboard' || given.sheet === undefined;
  return {
    toEdgeM: rules['hole-edge'].value,
    toCornerM: splits ? rules['hole-corner'].value : 0,
    drilledM: new Map(
      items.flatMap(({ mountingHoles = [] }) =>
        mountingHoles.map((hole) => [hole.id, drilledM(hole.diameterM, screwFor(hole, job, board))] as const),
      ),
    ),
  };
}

/** The heads of the fixings on the mounting side: a head or washer is about twice its hole across (common practice). */
export function fixingHeads(fixings: readonly BoardFixing[]): FixingHead[] {
  return fixings.map(({ id, xM, yM, part }) => ({ id, xM, yM, radiusM: part.clearance ?? unknownHeadM }));
}

/** Radius of a head where the hole of its fixing is not known: that of an M6, metres. */
const unknownHeadM = 0.006;

/** The shape with its drilled holes, so that webs and edge distances are judged for these too. */
export function drilledShape(shape: BoardShape, holes: readonly PlanHole[]): BoardShape {
  const drilled = holes
    .filter(({ purpose, diameterM }) => purpose === 'fixing' && diameterM > 0)
    .map(({ of, xM, yM, diameterM }): RoundHole => ({ id: of, xM, yM, diameterM, purpose: 'fixing' }));
  return { ...shape, holes: [...shape.holes, ...drilled] };
}
