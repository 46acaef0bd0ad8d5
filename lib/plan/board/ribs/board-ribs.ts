import { bodyOf, type Item, type Placement } from '../../../board/layout/item.ts';
import { type BoardRemark, length, phrase } from '../../../board/remark.ts';
import type { BoardShape } from '../../../board/shape/outline.ts';
import type { Point } from '../../../board/shape/point.ts';
import { regionBox } from '../../../board/shape/region.ts';
import {
  freeStretch,
  type LaidRib,
  lineAcross,
  onRib,
  type RibObstacle,
  type RibSection,
  ribRing,
  ribSection,
} from '../../../board/strength/rib.ts';
import { inTheWay, type RibLimits } from '../../../board/strength/rib-limits.ts';
import type { Board, BoardRib, Job, SheetPart } from '../../../model/content/resolved-job.ts';
import type { Chosen } from '../../../model/vocabulary.ts';
import { boardPose, mountingSpace } from '../board-pose.ts';
import { type BoardFixing, boardFixings, datumInSpace } from '../board-shape.ts';

/** A rib of a board where it runs, with what it is cut from. */
export interface StandingRib extends LaidRib {
  readonly joint: BoardRib['given']['joint'];
  readonly sheetId: string;
  readonly sheet: SheetPart;
  /** Null where its sheet does not make its section. */
  readonly section: RibSection | null;
  readonly ends: Chosen;
}

/** A board whose ribs are asked for: those of its parts count whose place the job gives. */
export interface RibbedBoard {
  readonly board: Board;
  readonly shape: BoardShape;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  readonly given: ReadonlySet<string>;
}

/** The ribs of a board where they run, in the order written; one that finds no way is left out, and told. */
export function standingRibs(
  job: Job,
  laid: RibbedBoard,
): { readonly ribs: readonly StandingRib[]; readonly faults: readonly BoardRemark[] } {
  const { board } = laid;
  const standing: StandingRib[] = [];
  const faults: BoardRemark[] = [];
  if (board.ribs.length === 0) return { ribs: standing, faults };
  const given = laid.placements.filter(({ item }) => laid.given.has(item));
  const ground = ribLimits(job, { ...laid, placements: given });
  for (const rib of board.ribs) {
    const made = ribAt(board, rib, ground, standing);
    if (made) standing.push(made);
    else faults.push(noStretch(board, rib));
  }
  return { ribs: standing, faults };
}

function ribAt(
  board: Board,
  { id, given, sheet }: BoardRib,
  ground: RibLimits,
  before: readonly LaidRib[],
): StandingRib | null {
  const cut = sheet ?? { id: board.sheetId, part: board.sheet };
  const widthM: number = given.width ?? cut.part.thickness;
  const section = { face: given.face, widthM, heightM: given.height };
  const ends = endsOf({ id, given, ...section }, ground, before);
  if (!ends) return null;
  const isGiven = given.from !== undefined || given.start !== undefined;
  return {
    ...{ id, ...section, ...ends, joint: given.joint },
    ...{ sheetId: cut.id, sheet: cut.part },
    section: ribSection(widthM, given.height, cut.part.thickness),
    ends: isGiven ? 'given' : 'computed',
  };
}

type Asked = Pick<BoardRib, 'id' | 'given'> & Pick<LaidRib, 'face' | 'widthM' | 'heightM'>;

function endsOf(
  { given, face, widthM, heightM }: Asked,
  ground: RibLimits,
  before: readonly LaidRib[],
): { readonly from: Point; readonly to: Point } | null {
  const { from, to, edge, distance = 0, start, length } = given;
  if (from && to) return { from: { xM: from[0], yM: from[1] }, to: { xM: to[0], yM: to[1] } };
  if (!edge) return null;
  const box = regionBox(ground.region);
  const line = {
    bottom: () => lineAcross(ground.region, 'level', box.minY + distance),
    top: () => lineAcross(ground.region, 'level', box.maxY - distance),
    left: () => lineAcross(ground.region, 'upright', box.minX + distance),
    right: () => lineAcross(ground.region, 'upright', box.maxX - distance),
  }[edge]();
  if (start !== undefined && length !== undefined)
    return { from: onRib(line, start), to: onRib(line, start + length) };
  const obstacles = [...inTheWay(ground, face, heightM), ...ribObstacles(before, face)];
  return freeStretch({ ...line, widthM }, ground.region, obstacles, ground.clearanceM);
}

/** Ribs that stand on a face, as others keep off them. */
export function ribObstacles(ribs: readonly LaidRib[], face: LaidRib['face']): RibObstacle[] {
  return ribs
    .filter((rib) => rib.face === face)
    .map((rib) => ({ of: rib.id, what: `the rib ${rib.id}`, ring: ribRing(rib) }));
}

function noStretch({ id: board }: Board, { id, given }: BoardRib): BoardRemark {
  const at =
    given.distance === undefined
      ? ''
      : phrase` ${length('told', given.distance)} from the ${given.edge ?? 'edge'}`;
  return {
    rule: 'rib-off-board',
    level: 'stop',
    of: [id],
    message: `the rib ${id} finds no free stretch of ${board}${at}`,
    remedy: 'choose another distance, or a narrower rib',
  };
}

/** What the ribs of a board keep off, its parts where they are placed. */
export function ribLimits(
  job: Job,
  { board, shape, items, placements }: Omit<RibbedBoard, 'given'>,
): RibLimits {
  const fixings = boardFixings(board, job.parts);
  const datum = datumInSpace(board);
  return {
    region: shape.region,
    fixings: fixings.map(fixingOnGround),
    holes: shape.holes.map(({ id, xM, yM, diameterM }) => ({ of: id, xM, yM, diameterM })),
    parts: placements.flatMap((at) => {
      const item = items.find(({ id }) => id === at.item);
      return item ? [{ id: item.id, box: bodyOf(item, at), raisedM: at.heightM }] : [];
    }),
    obstacles: mountingSpace(board).obstacles.map(({ id, outline, toM }) => {
      const ring = outline.map(({ xM, yM }) => ({ xM: xM - datum.xM, yM: yM - datum.yM }));
      return { id, ring, standsOutM: toM };
    }),
    standoffM: boardPose(board, fixings).standoffM,
    thicknessM: board.sheet.thickness,
    depthM: board.space.depth,
    clearanceM: job.rules['rib-clearance'].value,
    padM: job.rules['spacer-pad'].value,
  };
}

function fixingOnGround({ id, xM, yM, spacerM, part }: BoardFixing): RibLimits['fixings'][number] {
  return { id, xM, yM, spacerM, holeM: part.clearance ?? 0 };
}
