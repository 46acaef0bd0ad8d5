import { turnedSize } from '../board/layout/item.ts';
import type { Box, Point } from '../board/shape/point.ts';
import { linkEndOf } from '../model/content/resolved-job.ts';
import type { BuildPlan, KeepClear, OutlinePoint } from '../model/plan/index.ts';
import type { Edge } from '../model/vocabulary.ts';
import type { PlanOfBoards } from './plan-of-boards.ts';

/** A part where it stands on a past board, metres, in the axes of the board. */
export interface PastItem {
  readonly id: string;
  readonly part: string;
  /** Its kind; of what distributes, also what for. Parts of a sort may stand in each other's place. */
  readonly sort: string;
  readonly kind: string;
  /** Its footprint as turned. */
  readonly at: Box;
  readonly turnDeg: number;
  readonly heightM: number;
  readonly raisedM: number;
  readonly keepClear: readonly KeepClear[];
  /** Where it is screwed down. */
  readonly holes: readonly Point[];
  /** What it draws at rated power (A); null where nothing feeds it. */
  readonly drawA: number | null;
  /** What it turns into heat with music (W). */
  readonly lossW: number;
}

/** What brings current onto a past board from elsewhere. */
export interface PastFeed {
  readonly wire: string;
  readonly sizeLabel: string;
  readonly ampacityA: number;
  /** The smallest fuse that protects it; null where it has none with a rating. */
  readonly fuse: {
    readonly id: string;
    readonly ratingA: number;
    /** The greatest fuse that its holder may carry; null where nobody tells. */
    readonly holderA: number | null;
    readonly ratedA: number;
  } | null;
  /** What of the board it feeds. */
  readonly items: readonly string[];
}

/** A board that the shop made or planned, with what is asked of it to make another like it. Plain data. */
export interface PastBoard {
  readonly job: string;
  readonly title: string;
  readonly revision: string;
  readonly status: BuildPlan['job']['status'];
  readonly issuedOn: string;
  readonly vehicle: string;
  readonly space: string;
  readonly board: string;
  readonly outline: readonly OutlinePoint[];
  readonly cutouts: readonly (readonly OutlinePoint[])[];
  readonly thicknessM: number;
  /** Its back over the mounting plane. */
  readonly standoffM: number;
  /** Where its datum stands in its own space. */
  readonly datum: Point;
  readonly fixings: readonly (Point & { readonly id: string })[];
  readonly items: readonly PastItem[];
  readonly feeds: readonly PastFeed[];
  /** How many wires leave it over each edge. */
  readonly exits: Readonly<Partial<Record<Edge, number>>>;
  /** Findings of its job that stop it, and those that ask for a look. */
  readonly stops: number;
  readonly cautions: number;
}

type BoardOfPlan = PlanOfBoards['boards'][number];

/** The boards of a plan, frozen or of today. */
export function pastBoards(plan: PlanOfBoards): PastBoard[] {
  const { job, vehicle, findings } = plan;
  const count = (level: string): number => findings.filter((one) => one.level === level).length;
  return plan.boards.map((board) => ({
    job: job.id,
    title: job.title,
    revision: job.revision,
    status: job.status,
    issuedOn: job.issuedOn,
    vehicle: vehicle.id,
    space: board.space,
    board: board.id,
    outline: board.outline,
    cutouts: board.cutouts,
    thicknessM: board.thicknessM,
    standoffM: Math.max(0, ...board.fixings.map(({ spacerM }) => spacerM)),
    datum: board.datumInSpace,
    fixings: board.fixings.map(({ id, xM, yM }) => ({ id, xM, yM })),
    items: itemsOf(plan, board),
    feeds: feedsOf(plan, board),
    exits: exitsOf(board),
    stops: count('stop'),
    cautions: count('caution'),
  }));
}

function itemsOf({ items, power, heat }: PlanOfBoards, board: BoardOfPlan): PastItem[] {
  const losses = heat.find(({ space }) => space === board.space)?.items ?? [];
  return board.placements.flatMap((at): PastItem[] => {
    const item = items.find(({ id }) => id === at.item);
    if (!item || item.part === null) return [];
    return [
      {
        ...{ id: item.id, part: item.part, kind: item.kind, turnDeg: at.turnDeg },
        sort: sortOf(
          item.kind,
          item.terminals.map(({ role }) => role),
        ),
        ...{ heightM: at.heightM, raisedM: at.raisedM, keepClear: at.keepClear },
        at: { minX: at.xM, minY: at.yM, maxX: at.xM + at.widthM, maxY: at.yM + at.depthM },
        holes: board.holes
          .filter(({ of, purpose }) => of === item.id && purpose === 'mounting')
          .map(({ xM, yM }) => ({ xM, yM })),
        drawA: power.loads.find((load) => load.item === item.id)?.ratedA ?? null,
        lossW: losses.find((loss) => loss.item === item.id)?.lossW ?? 0,
      },
    ];
  });
}

/** The conductors that bring current onto a board: from elsewhere to what stands on it. */
function feedsOf({ power }: PlanOfBoards, board: BoardOfPlan): PastFeed[] {
  const own = new Set(board.placements.map(({ item }) => item));
  const isOwn = (terminal: string): boolean => own.has(linkEndOf(terminal).device);
  return power.conductors
    .filter(({ role, from, to }) => role === 'power' && isOwn(from) !== isOwn(to))
    .map((wire): PastFeed => {
      const [fuse] = power.fuses
        .filter(({ id }) => wire.fuses.includes(id))
        .flatMap((one) => (one.ratingA === null ? [] : [{ ...one, ratingA: one.ratingA }]))
        .toSorted((a, b) => a.ratingA - b.ratingA);
      const reached = isOwn(wire.to) ? wire.to : wire.from;
      const fed = fuse?.loads.filter((item) => own.has(item)) ?? [];
      return {
        wire: wire.id,
        sizeLabel: wire.size.label,
        ampacityA: wire.ampacityA,
        fuse: fuse
          ? { id: fuse.id, ratingA: fuse.ratingA, holderA: fuse.holderA, ratedA: fuse.ratedA }
          : null,
        items: fed.length > 0 ? fed : [linkEndOf(reached).device],
      };
    });
}

function exitsOf({ exits }: BoardOfPlan): PastBoard['exits'] {
  const found: Partial<Record<Edge, number>> = {};
  for (const { edge } of exits) {
    const known = edges.find((one) => one === edge);
    if (known) found[known] = (found[known] ?? 0) + 1;
  }
  return found;
}

const edges = ['left', 'right', 'top', 'bottom'] as const satisfies readonly Edge[];

/** The footprint of a part turned as it stands, metres. */
export function asTurned(
  size: { readonly widthM: number; readonly depthM: number },
  turnDeg: number,
): { readonly xM: number; readonly yM: number } {
  return turnedSize(size, turnDeg % 180 === 0 ? 0 : 90);
}

/** What a part may stand in the place of: its kind; ground bars, fused blocks and strips are told apart by their terminals. */
export function sortOf(kind: string, roles: readonly string[]): string {
  return kind === 'distribution' ? [kind, ...new Set(roles.toSorted())].join(' ') : kind;
}
