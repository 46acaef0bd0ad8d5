/** A gauge printed at full size: hold a stripped end or a lug against it. Millimetres from its top left. */
export interface Gauge {
  readonly widthMm: number;
  readonly heightMm: number;
  /** A stroke that must measure 50 mm where the print is true. */
  readonly proof: { readonly fromMm: number; readonly toMm: number };
  readonly strips: readonly GaugeStrip[];
  readonly holes: readonly GaugeHole[];
}

interface GaugeStrip {
  readonly yMm: number;
  readonly lengthMm: number;
  readonly text: string;
}

interface GaugeHole {
  readonly yMm: number;
  readonly diameterMm: number;
  readonly text: string;
}

/** Clearance holes of lugs for metric studs (common practice). */
const lugHoles = [
  ['M5', 5.3],
  ['M6', 6.4],
  ['M8', 8.4],
  ['M10', 10.5],
] as const;

const proofMm = 50;
const pitchMm = 8;
const holePitchMm = 14;
const headMm = 14;
const widthMm = 36;

/** The gauge for the strip lengths of a job, shortest first. */
export function gaugeOf(stripsM: readonly number[], textOf: (lengthM: number) => string): Gauge {
  const lengths = [...new Map(stripsM.map((lengthM) => [textOf(lengthM), lengthM]))].sort(
    ([, a], [, b]) => a - b,
  );
  const strips = lengths.map(([text, lengthM], index) => ({
    yMm: headMm + (index + 0.5) * pitchMm,
    lengthMm: lengthM * 1000,
    text,
  }));
  const holesFromMm = headMm + strips.length * pitchMm;
  const holes = lugHoles.map(([stud, diameterMm], index) => ({
    yMm: holesFromMm + (index + 0.5) * holePitchMm,
    diameterMm,
    text: `${stud}, ${diameterMm}`,
  }));
  const heightMm = Math.max(headMm + proofMm + 2, holesFromMm + holes.length * holePitchMm);
  return { widthMm, heightMm, proof: { fromMm: headMm, toMm: headMm + proofMm }, strips, holes };
}
