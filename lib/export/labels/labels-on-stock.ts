import type { TextMetrics } from '../../draw/lettering/text-metrics.ts';
import { types } from '../../draw/line-styles.ts';
import { fittedText } from '../fitted-text.ts';
import { element, svgOf } from '../svg-markup.ts';
import type { LabelStock } from './label-stock.ts';
import type { WireLabel } from './labels-of-both-ends.ts';

export interface LabelSheetRequest {
  readonly labels: readonly WireLabel[];
  readonly stock: LabelStock;
  readonly paper: { readonly widthMm: number; readonly heightMm: number };
  readonly metrics: TextMetrics;
  /** What each sheet says of itself. */
  readonly origin: string;
}

const padMm = 1.2;

/**
 * Sheets of labels as SVG at 1:1, filled row by row: the wire's label large, below it where this end goes and
 * where the other one is. No outline is drawn round a label: a printer that feeds askew would print it on two.
 */
export function labelSheets({ labels, stock, paper, metrics, origin }: LabelSheetRequest): string[] {
  const perSheet = stock.columns * stock.rows;
  const count = Math.ceil(labels.length / perSheet);
  return Array.from({ length: count }, (_, sheet) => {
    const own = labels.slice(sheet * perSheet, (sheet + 1) * perSheet);
    const words = {
      title: `Wire labels, sheet ${sheet + 1} of ${count}`,
      description: `${origin}. ${stock.columns} by ${stock.rows} labels. Print at 100 per cent.`,
    };
    const drawn = own.map((label, index) => labelMark(label, placeOf(stock, index), stock, metrics));
    return `${svgOf(paper, words, drawn)}\n`;
  });
}

interface LabelPlace {
  readonly leftMm: number;
  readonly topMm: number;
}

/** Where a label of the sheet begins, counted row by row from the top left. */
export function placeOf(stock: LabelStock, index: number): LabelPlace {
  return {
    leftMm: stock.leftMm + (index % stock.columns) * stock.pitchXMm,
    topMm: stock.topMm + Math.floor(index / stock.columns) * stock.pitchYMm,
  };
}

function labelMark(
  label: WireLabel,
  { leftMm, topMm }: LabelPlace,
  { widthMm, heightMm }: LabelStock,
  metrics: TextMetrics,
): string {
  const roomMm = widthMm - 2 * padMm;
  const innerMm = heightMm - 2 * padMm;
  // Two fifths for the label, two lines of a quarter each below it.
  const capMm = Math.min(5, innerMm * 0.36);
  const smallMm = Math.min(2.5, innerMm * 0.19);
  const gapMm = (innerMm - capMm - 2 * smallMm) / 3;
  const x = leftMm + padMm;
  const first = topMm + padMm + gapMm / 2 + capMm;
  const lines = [
    { text: label.label, capMm, type: types.wireLabel, y: first },
    { text: `${label.end}: ${label.here}`, capMm: smallMm, type: types.terminal, y: first + gapMm + smallMm },
    { text: `to ${label.there}`, capMm: smallMm, type: types.note, y: first + 2 * (gapMm + smallMm) },
  ];
  const beside = [label.size, label.colour].filter((text) => text !== '').join(' ');
  const labelWidthMm = (metrics.widthMm(label.label, types.wireLabel) * capMm) / types.wireLabel.capMm;
  const marks = lines.map(({ text, capMm: cap, type, y }) =>
    fittedText({ text, xMm: x, yMm: y, capMm: cap, roomMm, type, align: 'start' }, metrics),
  );
  const besideRoomMm = roomMm - labelWidthMm - 2;
  if (besideRoomMm > 4)
    marks.push(
      fittedText(
        {
          text: beside,
          xMm: x + roomMm,
          yMm: first,
          capMm: smallMm,
          roomMm: besideRoomMm,
          type: types.note,
          align: 'end',
        },
        metrics,
      ),
    );
  return element('g', { 'data-wire': label.wire, fill: '#000000' }, marks);
}
