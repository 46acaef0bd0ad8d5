import type { BuildPlan } from '../model/plan/index.ts';
import { sheetMark } from '../model/plan/sheet-mark.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import type { PaperBox } from './paper.ts';
import { drawFrame, type FrameRequest } from './sheet/frame.ts';
import type { ScaleRatio } from './sheet/scale.ts';
import { type SheetFormat, sheetSize } from './sheet/sheet-format.ts';
import { type Drawing, openDrawing } from './surface.ts';

/** One drawing sheet, before its number among the sheets of the job is known. */
export interface Page {
  /** Unique in the job, built from the names in it: `cut-board`. */
  readonly id: string;
  readonly title: string;
  /** What of the job it shows, such as the board's title. */
  readonly subject: string;
  readonly documentType: string;
  /** Read out by a screen reader. */
  readonly description: string;
  readonly scale: ScaleRatio | null;
  readonly orientation: SheetFormat['orientation'];
  readonly projection: FrameRequest['projection'];
  readonly notes: readonly string[];
  /** Draws the content into the room inside the frame; names what found no place. */
  readonly paint: (drawing: Drawing, room: PaperBox) => readonly string[];
}

/** A page as it was drawn. */
export interface DrawnPage {
  readonly page: Page;
  readonly drawing: Drawing;
  /** Where its content may stand. */
  readonly room: PaperBox;
  /** Names of what found no place, and captions of title block fields that run over. */
  readonly unplaced: readonly string[];
}

/** Which drawing of how many. */
export interface PageNumber {
  readonly drawing: number;
  readonly drawings: number;
}

const unnumbered: PageNumber = { drawing: 1, drawings: 1 };

/** Draws a page in its frame. */
export function drawPage(
  plan: BuildPlan,
  metrics: TextMetrics,
  page: Page,
  number: PageNumber = unnumbered,
): DrawnPage {
  const { drawing, room, tooLong } = openPage(plan, metrics, page, number);
  const unplaced = page.paint(drawing, room);
  return {
    page,
    drawing,
    room,
    unplaced: [...tooLong.map((caption) => `title block: ${caption}`), ...unplaced],
  };
}

/** The room that the frame of a page leaves for its content. */
export function roomOf(plan: BuildPlan, metrics: TextMetrics, page: Omit<Page, 'paint'>): PaperBox {
  return openPage(plan, metrics, page, unnumbered).room;
}

function openPage(
  plan: BuildPlan,
  metrics: TextMetrics,
  page: Omit<Page, 'paint'>,
  number: PageNumber,
): { drawing: Drawing; room: PaperBox; tooLong: readonly string[] } {
  const format: SheetFormat = {
    name: plan.shop.paper === 'a4' ? 'A4' : 'Letter',
    orientation: page.orientation,
  };
  const { id, title, description } = page;
  const drawing = openDrawing({
    job: plan.job.id,
    sheet: id,
    ...sheetSize(format),
    title,
    description,
    metrics,
  });
  return { drawing, ...drawFrame(drawing, frameRequest(plan, page, number, format)) };
}

function frameRequest(
  plan: BuildPlan,
  page: Omit<Page, 'paint'>,
  number: PageNumber,
  format: SheetFormat,
): FrameRequest {
  const { job, shop } = plan;
  return {
    block: {
      legalOwner: shop.name,
      title: page.title,
      supplementaryTitle: page.subject,
      documentType: page.documentType,
      job: job.id,
      revision: job.revision,
      scale: page.scale,
      issuedOn: job.issuedOn,
      drawnBy: job.drawnBy ?? '',
      approvedBy: job.approvedBy ?? '',
      status: `${job.status.charAt(0).toUpperCase()}${job.status.slice(1)}`,
      ...number,
      format,
    },
    mark: sheetMark(plan),
    projection: page.projection,
    notes: page.notes,
  };
}
