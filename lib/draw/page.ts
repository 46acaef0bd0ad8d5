import type { BuildPlan } from '../model/plan/index.ts';
import { sheetMark } from '../model/plan/sheet-mark.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import type { PaperBox } from './paper.ts';
import { drawFrame, type Frame, type FrameRequest, frameRoom } from './sheet/frame.ts';
import type { ScaleRatio } from './sheet/scale.ts';
import { type SheetFormat, sheetSize } from './sheet/sheet-format.ts';
import type { SheetNumber } from './sheet/title-block.ts';
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
  /** True on the larger sheet of the shop, where it has one. Default no. */
  readonly large?: boolean;
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
  /** Names of what found no place in the room. */
  readonly left: readonly string[];
  /** Captions of title block fields that run over. */
  readonly tooLong: readonly string[];
  readonly writeNumber: Frame['writeNumber'];
}

/** A page with its number, as a job's set of drawings holds it. */
export interface NumberedPage extends Pick<DrawnPage, 'page' | 'drawing' | 'room'> {
  /** Names of what found no place, and captions of title block fields that run over. */
  readonly unplaced: readonly string[];
}

/**
 * Draws a page in its frame, without its number, which is known only once all pages are: so a page that was drawn to
 * see whether all found room need not be drawn anew.
 */
export function drawPage(plan: BuildPlan, metrics: TextMetrics, page: Page): DrawnPage {
  const { id, title, description } = page;
  const request = frameRequest(plan, page);
  const drawing = openDrawing({
    job: plan.job.id,
    sheet: id,
    ...sheetSize(request.block.format),
    title,
    description,
    metrics,
  });
  const { room, tooLong, writeNumber } = drawFrame(drawing, request);
  const left = page.paint(drawing, room);
  return { page, drawing, room, left, tooLong, writeNumber };
}

/** Numbers a page, once. */
export function numberPage(drawn: DrawnPage, number: SheetNumber): NumberedPage {
  const { page, drawing, room, left, tooLong, writeNumber } = drawn;
  const captions = [...tooLong, ...writeNumber(number)];
  return {
    page,
    drawing,
    room,
    unplaced: [...captions.map((caption) => `title block: ${caption}`), ...left],
  };
}

/** How many texts of pages found no room, those of title blocks too. */
export function leftOf(pages: readonly DrawnPage[]): number {
  return pages.reduce((sum, { left, tooLong }) => sum + left.length + tooLong.length, 0);
}

/** The room that the frame of a page leaves for its content. */
export function roomOf(plan: BuildPlan, metrics: TextMetrics, page: Omit<Page, 'paint'>): PaperBox {
  return frameRoom(metrics, frameRequest(plan, page));
}

function frameRequest(plan: BuildPlan, page: Omit<Page, 'paint'>): FrameRequest {
  const { job, shop } = plan;
  const format = formatOf(shop, page);
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
      format,
    },
    mark: sheetMark(plan),
    projection: page.projection,
    notes: page.notes,
  };
}

const larger = { tabloid: 'Tabloid', a3: 'A3' } as const satisfies Record<string, SheetFormat['name']>;

/** The sheet of a page: the shop's paper, or its larger one where the page asks for it. */
export function formatOf(
  { paper, largerPaper }: Pick<BuildPlan['shop'], 'paper' | 'largerPaper'>,
  { orientation, large = false }: Pick<Page, 'orientation' | 'large'>,
): SheetFormat {
  if (large && largerPaper !== null) return { name: larger[largerPaper], orientation };
  return { name: paper === 'a4' ? 'A4' : 'Letter', orientation };
}
