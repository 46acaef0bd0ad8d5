import { inchText } from '../quantity/length-text.ts';

/** What a hole must do for what goes into it: let it pass, or hold it. */
export type HoleFit = 'clearance' | 'pilot';

/** A bit as it is marked, and its diameter (m). */
export interface DrillBit {
  readonly name: string;
  readonly diameterM: number;
}

const inchM = 0.0254;

/**
 * Number drills 1 to 60, thousandths of an inch: ANSI B94.11M, from memory; two published lists agree with every one.
 */
const numberThousandths: readonly number[] = [
  228, 221, 213, 209, 205.5, 204, 201, 199, 196, 193.5, 191, 189, 185, 182, 180, 177, 173, 169.5, 166, 161,
  159, 157, 154, 152, 149.5, 147, 144, 140.5, 136, 128.5, 120, 116, 113, 111, 110, 106.5, 104, 101.5, 99.5,
  98, 96, 93.5, 89, 86, 82, 81, 78.5, 76, 73, 70, 67, 63.5, 59.5, 55, 52, 46.5, 43, 42, 41, 40,
];

/** Number drills, the thickest first. They hold what a fraction does not: they are for pilots. */
export const numberDrills: readonly DrillBit[] = numberThousandths.map((thousandths, at) => ({
  name: `#${at + 1}`,
  diameterM: (thousandths / 1000) * inchM,
}));

/** Bits by fractions: 1/64 in apart to 1 in (ANSI B94.11M, from memory), hole saws 1/16 in apart beyond (common practice). */
const fractions = { fine: 64, fineToM: inchM, coarse: 16 } as const;
/** Metric bits: 0.1 mm apart to 10 mm, 0.5 mm to 25 mm (ISO 235, from memory), hole saws 1 mm apart (common practice). */
const metric = { fineToM: 0.01, middleToM: 0.025, fine: 10, middle: 2, coarse: 1 } as const;

/** How far a pilot may be off what its maker asks for before a bit of another system is named, metres. */
export const pilotToleranceM = 0.0001;

/** What a product of written numbers may be off by without meaning more, metres. */
const noiseM = 1e-9;

/**
 * The bit for a hole (m) from one system: for a clearance the next size up, so that what it is for passes; for a pilot
 * the nearest size within 0.1 mm, where fractions fall short a number drill, or null where no bit of the system comes
 * so near. Null as well for a diameter that is not known (0).
 */
export function drillBit(diameterM: number, fit: HoleFit, system: 'inch' | 'mm'): DrillBit | null {
  if (!(diameterM > 0) || !Number.isFinite(diameterM)) return null;
  if (fit === 'clearance') return nextUp(diameterM, system);
  const named = numberDrills.toSorted((a, b) => offM(a, diameterM) - offM(b, diameterM)).slice(0, 1);
  const candidates = [...around(diameterM, system), ...(system === 'inch' ? named : [])];
  return candidates.find((bit) => offM(bit, diameterM) <= pilotToleranceM + noiseM) ?? null;
}

/**
 * The bits that do for a hole, the shop's own system first: never one of the other system alone where its own has one.
 * A pilot that neither system makes within 0.1 mm is named to the tenth of a millimetre as its maker asks for it.
 */
export function drillBits(diameterM: number, fit: HoleFit, system: 'inch' | 'mm'): readonly DrillBit[] {
  const other = system === 'inch' ? 'mm' : 'inch';
  const found = [drillBit(diameterM, fit, system), drillBit(diameterM, fit, other)].filter(
    (bit) => bit !== null,
  );
  const asked = Math.round(diameterM * 1e4);
  return found.length > 0 || !(asked > 0) ? found : [{ name: `${asked / 10} mm`, diameterM: asked / 1e4 }];
}

function offM(bit: DrillBit, diameterM: number): number {
  return Math.abs(bit.diameterM - diameterM);
}

function nextUp(diameterM: number, system: 'inch' | 'mm'): DrillBit {
  const steps = stepsAt(diameterM, system);
  return bitOf(Math.ceil((diameterM - noiseM) * steps.perM), steps);
}

/** The two sizes on either side, the nearer first. */
function around(diameterM: number, system: 'inch' | 'mm'): DrillBit[] {
  const steps = stepsAt(diameterM, system);
  const below = Math.max(1, Math.floor(diameterM * steps.perM));
  return [bitOf(below, steps), bitOf(below + 1, steps)].sort(
    (a, b) => offM(a, diameterM) - offM(b, diameterM),
  );
}

interface Steps {
  readonly system: 'inch' | 'mm';
  /** Steps to the inch or to the millimetre. */
  readonly per: number;
  readonly perM: number;
}

function stepsAt(diameterM: number, system: 'inch' | 'mm'): Steps {
  if (system === 'inch') {
    const per = diameterM <= fractions.fineToM + noiseM ? fractions.fine : fractions.coarse;
    return { system, per, perM: per / inchM };
  }
  const { fineToM, middleToM } = metric;
  const per =
    diameterM <= fineToM + noiseM
      ? metric.fine
      : diameterM <= middleToM + noiseM
        ? metric.middle
        : metric.coarse;
  return { system, per, perM: per * 1000 };
}

function bitOf(count: number, { system, per }: Steps): DrillBit {
  if (system === 'mm') return { name: `${count / per} mm`, diameterM: count / per / 1000 };
  return { name: `${inchText(count, per)} in`, diameterM: (count / per) * inchM };
}
