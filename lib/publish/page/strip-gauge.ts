import { madeMm } from '../../model/printed/holes.ts';
import { lugHoles } from '../../model/tables/lugs.ts';

/** A gauge printed at full size in a margin: hold a stripped end or a lug against it. Millimetres from its top left. */
export interface Gauge {
  readonly widthMm: number;
  readonly heightMm: number;
  /** An upright stroke that must measure 50 mm where the print is true. */
  readonly proofMm: number;
  readonly captions: readonly GaugePlace[];
  readonly strips: readonly GaugeStrip[];
  readonly holes: readonly GaugeHole[];
}

interface GaugePlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly text: string;
}

/** A bar from the left edge of the gauge, and its text. */
interface GaugeStrip extends GaugePlace {
  readonly barMm: number;
  readonly lengthMm: number;
}

/** A circle at the left edge of the gauge, and its text. */
interface GaugeHole extends GaugePlace {
  readonly diameterMm: number;
}

const proofMm = 50;
/** What a margin of the sheet has room for. */
const widthMm = 30;
/** From one thing to the text beside it, and room for that text. */
const gapMm = 1.5;
const textMm = 14;
/** From line to line, and from the base of a line to the middle of its letters. */
const lineMm = 4.4;
const middleMm = 1.2;

/** The gauge for the strip lengths of a job, shortest first, one below the other; then that for lugs. */
export function gaugeOf(stripsM: readonly number[], textOf: (lengthM: number) => string): Gauge {
  const proofText = captionAt(['Full size', 'where this', 'line is', `${proofMm} mm.`], 4, lineMm);
  const stripTopMm = proofMm + 2 * lineMm;
  const stripText = captionAt(['Bars: strip', 'lengths.'], 0, stripTopMm);
  const strips = stripsBelow(stripsM, textOf, stripTopMm + 2 * lineMm);
  const holeTopMm = strips.endMm + lineMm;
  const holeText = captionAt(['Rings: holes', 'of lugs, mm.'], 0, holeTopMm);
  const holes = holesBelow(holeTopMm + lineMm + gapMm);
  return {
    widthMm,
    heightMm: rounded(holes.endMm),
    proofMm,
    captions: [...proofText, ...stripText, ...holeText].map(placed),
    strips: strips.things.map((one) => ({
      ...placed(one),
      lengthMm: rounded(one.lengthMm),
      barMm: rounded(one.barMm),
    })),
    holes: holes.things.map(placed),
  };
}

/** A length to a thousandth of a millimetre: sums of decimals are written as they are meant. */
function rounded(lengthMm: number): number {
  return Math.round(lengthMm * 1000) / 1000;
}

function placed<T extends GaugePlace>(one: T): T {
  return { ...one, xMm: rounded(one.xMm), yMm: rounded(one.yMm) };
}

/** Lines of text, the base of the first one at a height. */
function captionAt(lines: readonly string[], xMm: number, topMm: number): GaugePlace[] {
  return lines.map((text, index) => ({ text, xMm, yMm: topMm + index * lineMm }));
}

interface Column<T> {
  readonly things: readonly T[];
  readonly endMm: number;
}

/** Bars of different lengths, each with its text beside it, or above it where it is long. */
function stripsBelow(
  stripsM: readonly number[],
  textOf: (lengthM: number) => string,
  topMm: number,
): Column<GaugeStrip> {
  const lengths = [...new Map(stripsM.map((lengthM) => [textOf(lengthM), lengthM * 1000]))].sort(
    ([, a], [, b]) => a - b,
  );
  let endMm = topMm;
  const things = lengths.map(([text, lengthMm]): GaugeStrip => {
    const beside = lengthMm + gapMm + textMm <= widthMm;
    const barMm = beside ? endMm : endMm + lineMm - middleMm;
    endMm = barMm + lineMm + gapMm;
    const place = beside ? { xMm: lengthMm + gapMm, yMm: barMm + middleMm } : { xMm: 0, yMm: barMm - 2.4 };
    return { text, lengthMm, barMm, ...place };
  });
  return { things, endMm };
}

/** Circles as large as the holes of lugs, each with its stud. */
function holesBelow(topMm: number): Column<GaugeHole> {
  let endMm = topMm;
  const things = lugHoles.map(({ stud, holeM }): GaugeHole => {
    const diameterMm = madeMm(holeM);
    const yMm = endMm + Math.max(diameterMm, lineMm) / 2;
    endMm = yMm + Math.max(diameterMm, lineMm) / 2 + 2 * gapMm;
    return { text: `${stud}, ${diameterMm}`, diameterMm, xMm: diameterMm + gapMm + 0.5, yMm };
  });
  return { things, endMm };
}
