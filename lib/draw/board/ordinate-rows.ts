import { printedDimension } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import { drawOrdinates, type OrdinateRow, ordinateDepthMm, ordinatePitchMm } from '../dimension.ts';
import { spacing } from '../line-styles.ts';
import type { PaperBox } from '../paper.ts';
import type { Parent } from '../pen.ts';
import { onPaper, type PlanView, type ScaleRatio } from '../sheet/scale.ts';
import type { Drawing } from '../surface.ts';
import type { BoardWindow } from './board-view.ts';

/** A place that is measured from the datum. */
export interface Feature {
  readonly xM: number;
  readonly yM: number;
  /** The number of a hole, which stands before the figure. */
  readonly n?: number;
  /** The one axis along which it is measured; both where left out. */
  readonly only?: 'x' | 'y';
}

type Side = OrdinateRow['side'];

/** One row of running dimensions before it is drawn: places along it, and how far in their feature lies. */
export interface RowPlan {
  readonly side: Side;
  readonly marks: readonly { readonly alongM: number; readonly acrossM: number; readonly text: string }[];
}

/** Two places nearer than this are one dimension. */
const sameM = 0.0002;
/** How far past the ends of the outline the figures of a row may spread, millimetres: where another row stands, and where none does. */
const spreadPastMm = { besideRow: 9, besideNone: 1.5 } as const;
/** Room on a side without a row. */
const freeMm = 2;

interface Axis {
  readonly name: 'x' | 'y';
  readonly along: (place: { xM: number; yM: number }) => number;
  readonly across: (place: { xM: number; yM: number }) => number;
  /** The side that is used first, and where it lies across the axis. */
  readonly sides: readonly [Side, Side];
}

const axes: readonly Axis[] = [
  { name: 'x', along: ({ xM }) => xM, across: ({ yM }) => yM, sides: ['bottom', 'top'] },
  { name: 'y', along: ({ yM }) => yM, across: ({ xM }) => xM, sides: ['left', 'right'] },
];

export interface RowsRequest {
  readonly features: readonly Feature[];
  readonly window: BoardWindow;
  readonly style: LengthStyle;
  /** Axes whose figures stand on the side that their feature is nearer to; all others on the first side. */
  readonly nearest: readonly ('x' | 'y')[];
  /** Extension lines begin at the feature, or only at the edge of the outline. */
  readonly from: 'feature' | 'edge';
}

/** Sorts features into rows of dimensions round an outline; equal places share a figure. */
export function planRows({ features, window, style, nearest, from }: RowsRequest): RowPlan[] {
  return axes.flatMap((axis) => {
    const [low, high] =
      axis.sides[0] === 'bottom' ? [window.fromYM, window.toYM] : [window.fromXM, window.toXM];
    const marks = sharedPlaces(
      features.filter(({ only }) => !only || only === axis.name),
      axis,
    ).map((group) => {
      const nearLow = Math.min(...group.map((feature) => axis.across(feature) - low));
      const nearHigh = Math.min(...group.map((feature) => high - axis.across(feature)));
      const second = nearest.includes(axis.name) && nearHigh < nearLow - sameM;
      const [first] = group;
      const alongM = first ? axis.along(first) : 0;
      const edgeM = second ? high : low;
      const featureM = second ? high - nearHigh : low + nearLow;
      return {
        second,
        alongM,
        acrossM: from === 'edge' ? edgeM : featureM,
        text: figure(group, alongM, style),
      };
    });
    return [false, true].map((second, index): RowPlan => {
      return { side: axis.sides[index] ?? 'bottom', marks: marks.filter((mark) => mark.second === second) };
    });
  });
}

function sharedPlaces(features: readonly Feature[], { along }: Axis): Feature[][] {
  const groups: Feature[][] = [];
  for (const feature of [...features].sort((a, b) => along(a) - along(b))) {
    const last = groups.at(-1)?.[0];
    if (last && Math.abs(along(last) - along(feature)) < sameM) groups.at(-1)?.push(feature);
    else groups.push([feature]);
  }
  return groups;
}

function figure(group: readonly Feature[], alongM: number, style: LengthStyle): string {
  const names = group.flatMap(({ n }) => n ?? []);
  const text = printedDimension('position', alongM, style);
  return names.length === 0 ? text : `${numbersText(names)}: ${text}`;
}

/** `1, 4-6` of 1, 4, 5 and 6. */
export function numbersText(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const n of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else runs.push([n, n]);
  }
  const text = ([from, to]: readonly [number, number]): string =>
    from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}-${to}`;
  return runs.map(text).join(', ');
}

/** Room that rows take on each side of the outline, millimetres. */
export function rowMargins(
  drawing: Pick<Drawing, 'metrics'>,
  rows: readonly RowPlan[],
): Record<Side, number> {
  const margin = (side: Side): number => {
    const texts = rows
      .filter((row) => row.side === side)
      .flatMap(({ marks }) => marks.map(({ text }) => text));
    return texts.length === 0 ? freeMm : spacing.dimensionGapMm + ordinateDepthMm(drawing, texts);
  };
  return { top: margin('top'), bottom: margin('bottom'), left: margin('left'), right: margin('right') };
}

/** True where every row has room along its side for all of its figures. */
export function rowsHaveRoom(
  drawing: Pick<Drawing, 'metrics'>,
  rows: readonly RowPlan[],
  window: BoardWindow,
  ratio: ScaleRatio,
): boolean {
  const pitch = ordinatePitchMm(drawing);
  return rows.every(({ side, marks }) => {
    const level = side === 'top' || side === 'bottom';
    const lengthM = level ? window.toXM - window.fromXM : window.toYM - window.fromYM;
    const past = (level ? (['left', 'right'] as const) : (['top', 'bottom'] as const)).map((end) =>
      pastMm(rows, end),
    );
    return (marks.length - 1) * pitch <= (lengthM * 1000) / ratio + past.reduce((sum, each) => sum + each, 0);
  });
}

function pastMm(rows: readonly RowPlan[], side: Side): number {
  const beside = rows.some((row) => row.side === side && row.marks.length > 0);
  return beside ? spreadPastMm.besideRow : spreadPastMm.besideNone;
}

/** Draws rows round the box of an outline on paper. Returns the figures that found no room. */
export function drawRows(
  drawing: Drawing,
  parent: Parent,
  rows: readonly RowPlan[],
  view: PlanView,
  box: PaperBox,
): string[] {
  return rows
    .filter(({ marks }) => marks.length > 0)
    .flatMap((row) => drawRow(drawing, parent, row, rows, view, box));
}

/** Seen from the back, left and right change places. */
function seenSide(side: Side, mirrored: boolean): Side {
  if (!mirrored) return side;
  return side === 'left' ? 'right' : side === 'right' ? 'left' : side;
}

function drawRow(
  drawing: Drawing,
  parent: Parent,
  row: RowPlan,
  rows: readonly RowPlan[],
  view: PlanView,
  box: PaperBox,
): string[] {
  const side = seenSide(row.side, view.mirrored);
  const level = side === 'top' || side === 'bottom';
  const toPaper = (alongM: number, acrossM: number): readonly [number, number] => {
    const place = level ? { xM: alongM, yM: acrossM } : { xM: acrossM, yM: alongM };
    const { xMm, yMm } = onPaper(view, place);
    return level ? [xMm, yMm] : [yMm, xMm];
  };
  const gap = spacing.dimensionGapMm;
  const lineMm = {
    bottom: box.bottomMm + gap,
    top: box.topMm - gap,
    left: box.leftMm - gap,
    right: box.rightMm + gap,
  }[side];
  const past = (end: Side): number => pastMm(rows, seenSide(end, view.mirrored));
  const room = level
    ? { fromMm: box.leftMm - past('left'), toMm: box.rightMm + past('right') }
    : { fromMm: box.topMm - past('top'), toMm: box.bottomMm + past('bottom') };
  const { left } = drawOrdinates(drawing, parent, {
    side,
    lineMm,
    datumMm: level ? view.datum.xMm : view.datum.yMm,
    marks: row.marks.map(({ alongM, acrossM, text }) => {
      const [alongMm, featureMm] = toPaper(alongM, acrossM);
      return { alongMm, featureMm, text };
    }),
    room,
  });
  return left.map(({ text }) => text);
}
