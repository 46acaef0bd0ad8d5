import { printed, printedTone } from '../../model/printed/index.ts';
import { anchorAt } from '../lettering/label-candidates.ts';
import { drawLines, linePitchMm, wrapText } from '../lettering/lettering.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { type LineStyle, lines, lineWidthsMm, spacing, types } from '../line-styles.ts';
import { at, cornersOf, grown, type PaperBox, type PaperPoint, widthMm } from '../paper.ts';
import { drawCircle, drawLine, fillShape, type Parent } from '../pen.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import { axes, axisRoomMm, drawAxes, drawGrid, labelledHz, placeIn } from './response-axes.ts';
import type { ResponseGraph, ResponsePath } from './response-graphs.ts';

/** Paths in the order in which they are drawn, the ones most easily told apart first. */
export const pathLooks: readonly LineStyle[] = [
  { ...lines.part, elements: 'dashed' },
  { ...lines.part, elements: 'longDashDot' },
  { ...lines.part, elements: 'shortDashed' },
  lines.part,
  { ...lines.part, elements: 'dotted', widthMm: lineWidthsMm.heavy },
  { ...lines.part, elements: 'longDashTwoDots' },
];
const sumLook: LineStyle = { ...lines.cut, widthMm: 2 * lineWidthsMm.wide };
const labelMm = 48;
const markMm = 1.2;

/** A response as it lies in its field: level by frequency, cut at the edges. */
type Curve = readonly (readonly PaperPoint[])[];

/** Draws a graph with its heading into a box; names the labels that find no place. */
export function paintResponse(
  drawing: Drawing,
  graph: ResponseGraph,
  frequenciesHz: readonly number[],
  box: PaperBox,
): string[] {
  const group = openGroup(drawing);
  const headMm = drawHeading(drawing, group, graph, box);
  const field: PaperBox = {
    leftMm: box.leftMm + axisRoomMm.left,
    rightMm: box.rightMm - axisRoomMm.right,
    topMm: box.topMm + headMm + 2,
    bottomMm: box.bottomMm - axisRoomMm.bottom,
  };
  // In the order in which they lie on each other; the grid is filled last, so that labels do not dodge it.
  const [gridGroup, paper, curves] = [
    openGroup(drawing, group),
    openGroup(drawing, group),
    openGroup(drawing, group),
  ];
  drawAxes(drawing, curves, field, labelledHz);
  const labels = graph.paths.map((path, index) =>
    drawPathOf(drawing, curves, path, index, frequenciesHz, field),
  );
  const sums = drawSum(drawing, curves, graph, frequenciesHz, field);
  const before = drawing.texts.length;
  const left = drawLabels(drawing, curves, [...sums, ...labels], grown(field, -spacing.clearMm));
  for (const { box: text } of drawing.texts.slice(before))
    fillShape(paper, cornersOf(grown(text, spacing.clearMm / 2)), 'paper');
  drawGrid(gridGroup, field);
  return left;
}

/** Height of a heading in a width. */
export function headingLines(
  drawing: Pick<Drawing, 'metrics'>,
  graph: ResponseGraph,
  wideMm: number,
): {
  readonly title: readonly string[];
  readonly alike: readonly string[];
} {
  const [first, ...others] = graph.of.map((ids) => ids.join(', '));
  const isSum = graph.sum !== null;
  const title = isSum ? `Sum of ${first ?? ''}` : 'Paths that hand over to no other';
  const alike = isSum
    ? others.map((ids) => `Alike, and not drawn again: ${ids}`)
    : [[first, ...others].join(', ')];
  return {
    title: wrapText(drawing.metrics, title, wideMm, types.item),
    alike: alike.flatMap((each) => wrapText(drawing.metrics, each, wideMm, types.note)),
  };
}

function drawHeading(drawing: Drawing, parent: Parent, graph: ResponseGraph, box: PaperBox): number {
  const { title, alike } = headingLines(drawing, graph, widthMm(box));
  const titleMm = title.length * linePitchMm(types.item);
  drawLines(drawing, parent, title, at(box.leftMm, box.topMm + types.item.capMm), { type: types.item });
  drawLines(drawing, parent, alike, at(box.leftMm, box.topMm + titleMm + types.note.capMm), {
    type: types.note,
  });
  return titleMm + alike.length * linePitchMm(types.note);
}

function drawPathOf(
  drawing: Drawing,
  parent: Parent,
  path: ResponsePath,
  index: number,
  frequenciesHz: readonly number[],
  field: PaperBox,
): TextLabel {
  const ids = path.channels.map(({ id }) => id);
  // A curve that stands for several channels is the subject of each.
  const group = ids.reduce((outer, id) => openSubject(drawing, outer, id), openGroup(drawing, parent));
  const look = pathLooks[index % pathLooks.length] ?? lines.part;
  drawCurve(group, curveIn(field, frequenciesHz, path.levelsDb), look);
  const name = path.channels.flatMap(({ speakers }) => speakers).join(', ');
  const subject = ids.at(-1) ?? '';
  return {
    id: `path-${index}`,
    lines: wrapText(drawing.metrics, name === '' ? subject : name, labelMm, types.terminal),
    type: types.terminal,
    subject,
    anchors: slopesFirst(frequenciesHz, path.levelsDb).map(([hz, db]) => anchorAt(placeIn(field, hz, db))),
    own: [subject],
  };
}

/** Thick line of the sum, its handovers marked; what is to be written at it. */
function drawSum(
  drawing: Drawing,
  parent: Parent,
  { sum }: ResponseGraph,
  frequenciesHz: readonly number[],
  field: PaperBox,
): TextLabel[] {
  if (sum === null) return [];
  const subject = `sum:${sum.id}`;
  const group = openSubject(drawing, parent, subject);
  drawCurve(group, curveIn(field, frequenciesHz, sum.levelsDb), sumLook);
  const type = types.terminal;
  const marks = sum.handovers.map(({ upper, lower, frequencyHz, sumDb }): TextLabel => {
    const inField = Math.min(axes.toDb, Math.max(axes.fromDb, sumDb));
    const point = placeIn(field, frequencyHz, inField);
    drawCircle(group, point, markMm, lines.part, 'paper');
    const texts = [hertzText(frequencyHz), `sum ${levelText(sumDb)}`];
    const anchors = [grown(anchorAt(point), markMm)];
    return { id: `${upper}>${lower}`, lines: texts, type, subject, anchors, own: [subject] };
  });
  const taken = [axes.fromHz, axes.toHz, ...sum.handovers.map(({ frequencyHz }) => frequencyHz)];
  const free = ([hz]: Sample): number => Math.min(...taken.map((each) => Math.abs(Math.log(hz / each))));
  const anchors = shown(samplesOf(frequenciesHz, sum.levelsDb))
    .toSorted((a, b) => free(b) - free(a))
    .map(([hz, db]) => anchorAt(placeIn(field, hz, db)));
  return [...marks, { id: 'sum', lines: ['Sum'], type, subject, anchors, own: [subject] }];
}

type Sample = readonly [frequencyHz: number, levelDb: number];

function samplesOf(frequenciesHz: readonly number[], levelsDb: readonly number[]): Sample[] {
  return frequenciesHz.flatMap((hz, index): Sample[] => {
    const db = levelsDb[index];
    const isIn = hz >= axes.fromHz && hz <= axes.toHz;
    return db === undefined || !isIn ? [] : [[hz, db]];
  });
}

function shown(samples: readonly Sample[]): Sample[] {
  return samples.filter(([, db]) => db > axes.fromDb && db < axes.toDb);
}

/** Places to write at: on a slope, where no other path lies; in the pass band only where there is no slope. */
function slopesFirst(frequenciesHz: readonly number[], levelsDb: readonly number[]): Sample[] {
  const seen = shown(samplesOf(frequenciesHz, levelsDb));
  const slope = seen.filter(([, db]) => db <= -5 && db >= -24);
  if (slope.length === 0) return middleFirst(frequenciesHz, levelsDb);
  return slope.toSorted(([, a], [, b]) => Math.abs(a + 12) - Math.abs(b + 12));
}

/** Samples from the middle of what is shown outwards, every second one. */
function middleFirst(frequenciesHz: readonly number[], levelsDb: readonly number[]): Sample[] {
  const seen = shown(samplesOf(frequenciesHz, levelsDb)).filter((_, index) => index % 2 === 0);
  const middle = (seen.length - 1) / 2;
  return seen
    .map((sample, index) => ({ sample, off: Math.abs(index - middle) }))
    .toSorted((a, b) => a.off - b.off)
    .map(({ sample }) => sample);
}

/** The parts of a response that lie between the least and the greatest level, cut where it leaves them. */
export function curveIn(
  field: PaperBox,
  frequenciesHz: readonly number[],
  levelsDb: readonly number[],
): Curve {
  const runs: PaperPoint[][] = [];
  let before: Sample | null = null;
  for (const sample of samplesOf(frequenciesHz, levelsDb)) {
    const part = before && cutToRange(before, sample);
    if (part) {
      const [from, to] = part.map(([hz, db]) => placeIn(field, hz, db));
      const run = runs.at(-1);
      const last = run?.at(-1);
      const joins = last && from && last.xMm === from.xMm && last.yMm === from.yMm;
      if (run && to && joins) run.push(to);
      else if (from && to) runs.push([from, to]);
    }
    before = sample;
  }
  return runs;
}

/** A piece between two samples, straight over the logarithm of frequency; null where none of it is in range. */
function cutToRange(a: Sample, b: Sample): readonly [Sample, Sample] | null {
  const [[fromHz, fromDb], [toHz, toDb]] = [a, b];
  const least = Math.min(fromDb, toDb);
  const most = Math.max(fromDb, toDb);
  if (most < axes.fromDb || least > axes.toDb) return null;
  const cut = (hz: number, db: number): Sample => {
    const held = Math.min(axes.toDb, Math.max(axes.fromDb, db));
    if (held === db) return [hz, db];
    return [fromHz * (toHz / fromHz) ** ((held - fromDb) / (toDb - fromDb)), held];
  };
  return [cut(fromHz, fromDb), cut(toHz, toDb)];
}

function drawCurve(parent: Parent, curve: Curve, look: LineStyle): void {
  for (const run of curve) drawLine(parent, run, look);
}

/** `80 Hz`, `3.5 kHz`. */
export function hertzText(frequencyHz: number): string {
  return printedTone(frequencyHz);
}

/** To a tenth of a decibel, never `-0`. */
export function levelText(levelDb: number): string {
  return printed('level', levelDb);
}
