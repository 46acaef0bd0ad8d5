import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type Page, roomOf } from '../page.ts';
import { heightMm, type PaperBox, widthMm } from '../paper.ts';
import type { PlanView } from '../sheet/scale.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import type { Drawing } from '../surface.ts';
import type { BoardWindow } from './board-view.ts';

/** Room to leave free round a thing that is drawn to scale, millimetres of paper. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** How a thing is put on a sheet. */
export interface ScaledSheet {
  readonly ratio: ScaleRatio;
  readonly orientation: Page['orientation'];
  /** On the larger sheet of the shop. Default no. */
  readonly large?: boolean;
}

const orientations = ['landscape', 'portrait'] as const;

/** The rooms that the frame of a page leaves on a sheet that lies and on one that stands. */
export type SheetRooms = readonly {
  readonly orientation: Page['orientation'];
  readonly large?: boolean;
  readonly room: PaperBox;
}[];

/** Both rooms of a page; measured once, they serve every scale. */
export function sheetRooms(
  plan: BuildPlan,
  metrics: TextMetrics,
  page: Omit<Page, 'paint' | 'scale' | 'orientation'>,
  large = false,
): SheetRooms {
  return orientations.map((orientation) => {
    return {
      orientation,
      large,
      room: roomOf(plan, metrics, { ...page, orientation, large, scale: 1 }),
    };
  });
}

/**
 * The largest scale at which a window of a board, with its margins, fits one sheet, and the way that the
 * sheet lies; null where none is small enough. `accepts` may refuse a scale, such as one too small for its figures.
 */
export function sheetFor(
  rooms: SheetRooms,
  window: BoardWindow,
  marginsAt: (ratio: ScaleRatio) => Margins,
  accepts: (ratio: ScaleRatio) => boolean = () => true,
): ScaledSheet | null {
  for (const ratio of scaleRatios.filter((each) => each >= 1 && accepts(each)))
    for (const { orientation, large = false, room } of rooms)
      if (fits(window, ratio, marginsAt(ratio), room)) return { ratio, orientation, large };
  return null;
}

function fits(window: BoardWindow, ratio: ScaleRatio, margins: Margins, room: PaperBox): boolean {
  const wide = ((window.toXM - window.fromXM) * 1000) / ratio + margins.left + margins.right;
  const high = ((window.toYM - window.fromYM) * 1000) / ratio + margins.top + margins.bottom;
  return wide <= widthMm(room) && high <= heightMm(room);
}

/** The box that is left inside margins. */
export function within(room: PaperBox, { left, right, top, bottom }: Margins): PaperBox {
  return {
    leftMm: room.leftMm + left,
    topMm: room.topMm + top,
    rightMm: room.rightMm - right,
    bottomMm: room.bottomMm - bottom,
  };
}

/** A drawing of a board that may be spread over several sheets. */
export interface BoardPicture {
  readonly base: Omit<Page, 'paint' | 'scale' | 'orientation'>;
  readonly margins: (ratio: ScaleRatio) => Margins;
  readonly paint: (drawing: Drawing, scene: BoardScene) => readonly string[];
}

/** A board, or a part of it, as one sheet shows it. */
export interface BoardScene {
  readonly plan: BuildPlan;
  readonly board: PlanBoard;
  readonly view: PlanView;
  /** The part of the board that is shown, on paper; null where all of it is. */
  readonly clip: PaperBox | null;
  readonly room: PaperBox;
  /** Where another sheet of the same picture shows a place of the board; null where none does. */
  readonly elsewhere: (place: { readonly xM: number; readonly yM: number }) => Continuation | null;
}

/** The sheet and the zone in which a line goes on that this sheet cuts. */
export interface Continuation {
  readonly part: string;
  readonly zone: string;
  /** What of the board that sheet shows, in the view of this one. */
  readonly box: PaperBox;
}
