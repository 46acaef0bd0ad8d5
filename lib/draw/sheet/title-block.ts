import { drawText, fitText, linePitchMm } from '../lettering/lettering.ts';
import { lines, spacing, type TypeStyle, types } from '../line-styles.ts';
import { at, boxAt, cornersOf, heightMm, type PaperBox, widthMm } from '../paper.ts';
import { drawLine, drawShape, type Parent } from '../pen.ts';
import { type Drawing, keepPlace } from '../surface.ts';
import { type ScaleRatio, scaleText } from './scale.ts';
import type { SheetFormat } from './sheet-format.ts';

/** The fields of a title block after ISO 7200 (mem). An empty one stays blank, to be written in by hand. */
export interface TitleBlock {
  /** The shop. */
  readonly legalOwner: string;
  readonly title: string;
  readonly supplementaryTitle: string;
  readonly documentType: string;
  /** The job's id: the identification number. */
  readonly job: string;
  readonly revision: string;
  /** Null for a diagram that is not to scale. */
  readonly scale: ScaleRatio | null;
  /** As the job gives it; never from the clock. */
  readonly issuedOn: string;
  readonly drawnBy: string;
  readonly approvedBy: string;
  readonly status: string;
  readonly format: SheetFormat;
}

/** The number of a sheet among the drawings of the job: pages of the set are counted at their foot. */
export interface SheetNumber {
  readonly drawing: number;
  readonly drawings: number;
}

/** A title block as it was drawn: its number is known only once all sheets are. */
export interface DrawnTitleBlock {
  /** Captions of fields whose text is too long for its room even in the smallest type: they are drawn, but run over. */
  readonly tooLong: string[];
  /** Writes the number into its field, once; hands back the caption where it is too long. */
  readonly writeNumber: (number: SheetNumber) => string[];
}

interface Field {
  readonly caption: string;
  readonly text: string;
  /** Share of the row's width. */
  readonly share: number;
  readonly choices: readonly [TypeStyle, ...TypeStyle[]];
}

/** ISO 7200 (mem) sets 180 mm, the width of A4 inside its margins. */
export const titleBlockWidthMm = 180;
const rowHeightsMm = [17.5, 11.5, 11.5] as const;
export const titleBlockHeightMm = rowHeightsMm.reduce((sum, each) => sum + each, 0);

const padMm = 1.3;
const fieldTypes = [types.field, types.note] as const;
const titleTypes = [types.heading, types.field, types.note] as const;

function rowsOf(block: TitleBlock): readonly (readonly Field[])[] {
  const field = (caption: string, text: string, share: number): Field => ({
    caption,
    text,
    share,
    choices: fieldTypes,
  });
  return [
    [
      field('Legal owner', block.legalOwner, 50),
      { ...field('Title', block.title, 80), choices: titleTypes },
      field('For', block.supplementaryTitle, 50),
    ],
    [
      field('Job', block.job, 50),
      field('Document', block.documentType, 40),
      field('Scale', block.scale === null ? 'none' : scaleText(block.scale), 20),
      field('Format', block.format.name, 20),
      field('Status', block.status, 50),
    ],
    [
      field('Drawn by', block.drawnBy, 50),
      field('Approved by', block.approvedBy, 40),
      field('Revision', block.revision, 20),
      field(numberCaption, '', 20),
      field('Date of issue', block.issuedOn, 50),
    ],
  ];
}

/** Draws the title block into a box as high as `titleBlockHeightMm`. */
export function drawTitleBlock(
  drawing: Drawing,
  parent: Parent,
  box: PaperBox,
  block: TitleBlock,
): DrawnTitleBlock {
  const tooLong: string[] = [];
  let writeNumber = (_: SheetNumber): string[] => [];
  let topMm = box.topMm;
  rowsOf(block).forEach((fields, index) => {
    const rowMm = rowHeightsMm[index] ?? 0;
    const total = fields.reduce((sum, field) => sum + field.share, 0);
    let leftMm = box.leftMm;
    for (const field of fields) {
      const cell = boxAt(leftMm, topMm, (widthMm(box) * field.share) / total, rowMm);
      if (leftMm > box.leftMm) drawLine(parent, [at(leftMm, topMm), at(leftMm, topMm + rowMm)], lines.rule);
      if (!drawField(drawing, parent, cell, field)) tooLong.push(field.caption);
      if (field.caption === numberCaption) writeNumber = numberWriter(drawing, parent, cell, field);
      leftMm = cell.rightMm;
    }
    if (index > 0) drawLine(parent, [at(box.leftMm, topMm), at(box.rightMm, topMm)], lines.rule);
    topMm += rowMm;
  });
  drawShape(parent, cornersOf(box), lines.frame);
  return { tooLong, writeNumber };
}

const numberCaption = 'Drawing';

function numberWriter(
  drawing: Drawing,
  parent: Parent,
  cell: PaperBox,
  field: Field,
): DrawnTitleBlock['writeNumber'] {
  const draw = keepPlace(parent);
  return (number) => {
    let fits = true;
    draw(() => {
      fits = drawFieldText(drawing, parent, cell, {
        ...field,
        text: `${number.drawing} of ${number.drawings}`,
      });
    });
    return fits ? [] : [numberCaption];
  };
}

/** Caption on top, text at the foot; false where the text runs over. */
function drawField(drawing: Drawing, parent: Parent, cell: PaperBox, field: Field): boolean {
  const point = at(cell.leftMm + padMm, cell.topMm + padMm + types.caption.capMm);
  drawText(drawing, parent, field.caption, point, { type: types.caption, ink: 'quiet' });
  return drawFieldText(drawing, parent, cell, field);
}

function drawFieldText(drawing: Drawing, parent: Parent, cell: PaperBox, field: Field): boolean {
  const leftMm = cell.leftMm + padMm;
  const captionMm = cell.topMm + padMm + types.caption.capMm;
  const captionFootMm = captionMm - cell.topMm + drawing.metrics.descentMm(types.caption) + spacing.clearMm;
  const room = {
    widthMm: widthMm(cell) - 2 * padMm,
    heightMm: heightMm(cell) - captionFootMm - padMm / 2,
  };
  const { type, lines: texts, fits } = fitText(drawing.metrics, field.text, room, field.choices);
  const lastMm = cell.bottomMm - padMm / 2 - drawing.metrics.descentMm(type);
  texts.forEach((text, index) => {
    const baselineMm = lastMm - (texts.length - 1 - index) * linePitchMm(type);
    drawText(drawing, parent, text, at(leftMm, baselineMm), { type });
  });
  return fits;
}
