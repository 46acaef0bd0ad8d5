import { quantity } from '../model/fields.ts';
import { printedBit } from '../model/printed/holes.ts';
import { type LengthName, lengths, printedLength } from '../model/printed/lengths.ts';
import { inch } from '../model/quantity/dimensions.ts';
import { formatLength, type LengthStyle } from '../model/quantity/length-text.ts';
import type { Direction } from '../model/quantity/safe-rounding.ts';
import { type Traced, traced } from '../model/trace.ts';
import type { Bench } from './bench.ts';
import { type Answer, type AnswerTable, calculator, type Figure, figureOf } from './calculator.ts';
import { choice, required } from './field.ts';
import { lengthExample } from './run-fields.ts';

/** The kinds of length that are turned over at a bench, as one asks for them. */
const kinds = {
  position: 'A place on a board',
  cut: 'A cut',
  wire: 'A piece of wire',
  size: 'The size of a part',
  'room-asked': 'Room that is needed',
  'room-free': 'Room that there is',
  'at-most': 'The most that is allowed',
} as const satisfies Partial<Record<LengthName, string>>;

const rounded = {
  up: 'rounded up',
  down: 'rounded down',
  nearest: 'to the nearest',
} as const satisfies Record<Direction, string>;

const names = ['position', 'cut', 'wire', 'size', 'room-asked', 'room-free', 'at-most'] as const;

const fields = {
  length: required(quantity('length'), {
    label: 'Length',
    hint: 'In any unit that a file takes: 13 5/8 in, 346 mm, 1 ft 2 in.',
    initial: lengthExample('13 5/8 in', '346 mm'),
  }),
  as: choice(
    names.map((value) => ({ value, title: `${kinds[value]}, ${rounded[lengths[value].direction]}` })),
    { label: 'What it is', initial: 'position' },
  ),
};

/** Fraction to millimetre: a length in every form that a sheet shows, rounded to its safe side. */
export const fractionCalculator = calculator({
  id: 'fraction',
  title: 'Fraction to millimetre',
  asks: 'What a length is in fractions of an inch, in decimals and in millimetres.',
  fields,
  compute: ({ length, as }, bench) => answerOf(length, as, bench),
});

function answerOf(lengthM: number, as: (typeof names)[number], { style }: Bench): Answer {
  const whole = printedLength(as, lengthM, style);
  const fine = printedLength(as, lengthM, { ...style, mmDecimals: 1 });
  const inches = inInches(lengthM);
  return {
    says: `${whole.fraction}, ${whole.decimal}, ${fine.mm}`,
    minds: [`${kinds[as]} is told ${rounded[lengths[as].direction]}: ${lengths[as].why}.`],
    figures: [
      figureOf('Fraction', whole.fraction, inches, `to 1/${style.fraction} in`),
      figureOf('Decimal', whole.decimal, inches, 'to 0.001 in'),
      figureOf('Millimetres', fine.mm, inMillimetres(lengthM), `whole: ${whole.mm}`),
      ...bits(lengthM, style),
    ],
    steps: [],
    table: stepsTable(lengthM),
  };
}

function inInches(lengthM: number): Traced<number> {
  return traced(lengthM / inch, 'in', {
    rule: 'length-in-inches',
    formula: 'L / 0.0254',
    citation: 'NIST SP 811: an inch is 25.4 mm exactly',
    inputs: [['L', lengthM, 'm']],
  });
}

function inMillimetres(lengthM: number): Traced<number> {
  return traced(lengthM * 1000, 'mm', {
    rule: 'length-in-millimetres',
    formula: '1000 * L',
    citation: 'SI: a millimetre is a thousandth of a metre',
    inputs: [['L', lengthM, 'm']],
  });
}

/** The twist drills for a hole of this diameter: they end at an inch. */
function bits(lengthM: number, { system }: LengthStyle): readonly Figure[] {
  if (lengthM <= 0 || lengthM > inch) return [];
  return [
    { label: 'Bit that lets it pass', text: printedBit(lengthM, 'clearance', system) },
    { label: 'Bit for a pilot of it', text: printedBit(lengthM, 'pilot', system) },
  ];
}

/** The steps of both tapes on either side of a length. */
function stepsTable(lengthM: number): AnswerTable {
  const at = (fraction: 16 | 32, direction: Direction) =>
    formatLength(lengthM, { system: 'inch', fraction, mmDecimals: 1, direction });
  return {
    caption: 'On either side of it',
    columns: [
      { title: 'Rounded' },
      { title: 'To 1/16 in', isFigure: true },
      { title: 'To 1/32 in', isFigure: true },
      { title: 'To 0.1 mm', isFigure: true },
    ],
    rows: (['down', 'nearest', 'up'] as const).map((direction) => [
      rounded[direction],
      at(16, direction).fraction,
      at(32, direction).fraction,
      at(16, direction).mm,
    ]),
  };
}
