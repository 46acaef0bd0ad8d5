import type { FigureName } from './figures.ts';

/** A line of the record of measurements, as far as its figures go. */
interface Line {
  readonly id: string;
  readonly unit: string;
  readonly predicted: number | null;
  readonly least: number | null;
  readonly greatest: number | null;
}

/** The kinds of figure of a line: as predicted, and its limits, so that what lies within the printed ones is right. */
export interface LineFigures {
  readonly predicted: FigureName;
  readonly least: FigureName;
  readonly greatest: FigureName;
}

type UnitFigures = (line: Line, most: number) => LineFigures;

const ohms: LineFigures = { predicted: 'resistance', least: 'resistance-from', greatest: 'resistance-to' };
const volts: LineFigures = {
  predicted: 'voltage',
  least: 'voltage-at-least',
  greatest: 'voltage-at-most',
};
const small = { least: 'small-voltage-at-least', greatest: 'small-voltage-at-most' } as const;

/** By the unit that a line is read in; a meter is set to the range that holds the largest of its figures. */
const unitFigures: Readonly<Record<string, UnitFigures>> = {
  V: ({ id, predicted, greatest }, most) => {
    if (predicted !== null && predicted === greatest) return { ...volts, predicted: 'gain-voltage' };
    if (most >= 2) return volts;
    return { ...small, predicted: /-drop\./.test(id) ? 'voltage-lost' : 'small-voltage' };
  },
  mV: () => ({ predicted: 'millivolts', least: 'millivolts-at-least', greatest: 'loss-at-most' }),
  A: (_, most) =>
    most < 1
      ? {
          predicted: 'small-current-carried',
          least: 'small-current-at-least',
          greatest: 'small-current-allowed',
        }
      : { predicted: 'current-carried', least: 'current-at-least', greatest: 'current-allowed' },
  ohm: () => ohms,
  ms: () => ({ predicted: 'delay', least: 'delay-from', greatest: 'delay-to' }),
  Hz: () => ({ predicted: 'frequency', least: 'frequency-from', greatest: 'frequency-to' }),
};

/** The figures of a line; one of a unit that no meter here reads is told in full, and unrounded. */
export function lineFigures(line: Line): LineFigures | null {
  const most = Math.max(0, ...[line.predicted, line.least, line.greatest].map((one) => Math.abs(one ?? 0)));
  return (Object.hasOwn(unitFigures, line.unit) ? unitFigures[line.unit] : undefined)?.(line, most) ?? null;
}
