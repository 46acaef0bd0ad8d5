import { lugHoles } from '../model/tables/lugs.ts';

/** A gauge printed at full size: hold a stripped end or a lug against it. Millimetres from its top left. */
export interface Gauge {
  readonly widthMm: number;
  readonly heightMm: number;
  /** A stroke that must measure 50 mm where the print is true. */
  readonly proofMm: number;
  readonly strips: readonly GaugeStrip[];
  readonly holes: readonly GaugeHole[];
}

interface GaugePlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly text: string;
}

interface GaugeStrip extends GaugePlace {
  readonly lengthMm: number;
}

interface GaugeHole extends GaugePlace {
  readonly diameterMm: number;
}

const proofMm = 50;
/** Inside the margins of A4, the narrower of the two papers. */
const widthMm = 170;
/** From one thing to the text beside it, and room for that text. */
const gapMm = 1.5;
const stripTextMm = 14;
const holeTextMm = 18;
const proofRowMm = 8;
const stripRowMm = 7;
const holeRowMm = 14;

/** The gauge for the strip lengths of a job, shortest first, row by row across the page. */
export function gaugeOf(stripsM: readonly number[], textOf: (lengthM: number) => string): Gauge {
  const lengths = [...new Map(stripsM.map((lengthM) => [textOf(lengthM), lengthM * 1000]))].sort(
    ([, a], [, b]) => a - b,
  );
  const strips = inRows(lengths, proofRowMm, stripRowMm, stripTextMm).map(({ sizeMm, ...place }) => ({
    ...place,
    lengthMm: sizeMm,
  }));
  const holesFromMm = Math.max(proofRowMm, ...strips.map(({ yMm }) => yMm + stripRowMm / 2));
  const studs = lugHoles.map(({ stud, holeM }) => {
    const diameterMm = Number((holeM * 1000).toFixed(1));
    return [`${stud}, ${diameterMm}`, diameterMm] as const;
  });
  const holes = inRows(studs, holesFromMm, holeRowMm, holeTextMm).map(({ sizeMm, ...place }) => ({
    ...place,
    diameterMm: sizeMm,
  }));
  return { widthMm, heightMm: holesFromMm + holeRowMm, proofMm, strips, holes };
}

/** Things side by side, each with room for its text; a new row where the page ends. */
function inRows(
  things: readonly (readonly [text: string, sizeMm: number])[],
  topMm: number,
  rowMm: number,
  textMm: number,
): (GaugePlace & { readonly sizeMm: number })[] {
  let xMm = 0;
  let yMm = topMm + rowMm / 2;
  return things.map(([text, sizeMm]) => {
    const wideMm = sizeMm + gapMm + textMm;
    if (xMm + wideMm > widthMm) {
      xMm = 0;
      yMm += rowMm;
    }
    const place = { text, sizeMm, xMm, yMm };
    xMm += wideMm;
    return place;
  });
}
