import {
  type Filter,
  filterLevel,
  levelDb,
  lowestLevelDb,
  pathResponse,
} from '../audio/filter/filter-response.ts';
import { subsonicCorner } from '../audio/filter/subsonic-corner.ts';
import { cornersOf } from '../audio/test-tone.ts';
import { type Fault, faultOf, isFault } from '../model/fault.ts';
import { quantityAbove } from '../model/fields.ts';
import { printed, printedTone } from '../model/printed/index.ts';
import { preferredFrequenciesHz } from '../model/tables/preferred-frequencies.ts';
import { traced } from '../model/trace.ts';
import type { Bench } from './bench.ts';
import { type AnswerTable, calculator, type Figure, figureOf, type Step } from './calculator.ts';
import { optional, required } from './field.ts';
import { bandFields, filtersOf } from './filter-fields.ts';

const fields = {
  ...bandFields({ high: '80 Hz', low: '2.5 kHz' }),
  frequency: required(quantityAbove('frequency'), {
    label: 'Frequency that is asked about',
    initial: '40 Hz',
  }),
  tuning: optional(quantityAbove('frequency'), {
    label: 'Tuning of a ported box',
    hint: 'For its subsonic filter. Left empty: none.',
    initial: '',
  }),
};

/** What a filter is named as in a fault. */
const where = 'this path';

/** Filter: what a high-pass and a low-pass let through, and where a subsonic filter belongs. */
export const filterCalculator = calculator({
  id: 'filter',
  title: 'Filter',
  asks: 'What a high-pass and a low-pass let through at a frequency.',
  fields,
  compute: (entries, bench) => {
    const filters = filtersOf(entries);
    const empty = bandFault(filters);
    if (empty) return empty;
    const levels = levelsOf(filters, entries.frequency);
    if (isFault(levels)) return levels;
    const response = pathResponse({ id: where, filters });
    if (isFault(response)) return response;
    const subsonic = entries.tuning === null ? [] : subsonicOf(entries.tuning, bench);
    if (isFault(subsonic)) return subsonic;
    const levelAt = (hz: number) => levelDb(response(hz));
    const all = pathLevelAt(levelAt(entries.frequency), levels);
    const level = printed('level', all.value);
    const at = printedTone(entries.frequency);
    return {
      says: `${level} at ${at}`,
      minds: filters.length === 0 ? ['No filter has a corner: all is let through.'] : [],
      figures: [figureOf(`Level at ${at}`, level, all), ...levels.map(({ figure }) => figure), ...subsonic],
      steps: levels.map(({ step }) => step),
      table: tableOf(levelAt, entries.frequency),
    };
  },
});

/** A band whose high-pass is not below its low-pass lets nothing through whole. */
function bandFault(filters: readonly Filter[]): Fault | null {
  const { highPassHz = 0, lowPassHz = Number.POSITIVE_INFINITY } = cornersOf(filters);
  if (highPassHz < lowPassHz) return null;
  return faultOf(
    'band-empty',
    ['highCorner'],
    `the high-pass at ${printedTone(highPassHz)} is not below the low-pass at ${printedTone(lowPassHz)}`,
    'correct the corners, so that the path plays something',
  );
}

interface FilterShare {
  readonly name: string;
  readonly value: number;
  readonly figure: Figure;
  readonly step: Step;
}

/** What each filter takes at a frequency, and at its own corner. */
function levelsOf(filters: readonly Filter[], frequencyHz: number): readonly FilterShare[] | Fault {
  const shares: FilterShare[] = [];
  for (const filter of filters) {
    const level = filterLevel(where, filter, frequencyHz);
    const corner = filterLevel(where, filter, filter.cornerHz);
    if (isFault(level)) return level;
    if (isFault(corner)) return corner;
    const name = filter.pass === 'high-pass' ? 'High-pass' : 'Low-pass';
    const beside = `at its corner ${printed('level', corner.value)}`;
    shares.push({
      name,
      value: level.value,
      figure: figureOf(name, printed('level', level.value), level, beside),
      step: { label: `${name} at its corner`, trace: corner.trace },
    });
  }
  return shares;
}

/** The levels of filters in a row add up. */
function pathLevelAt(level: number, shares: readonly FilterShare[]) {
  return traced(level, 'dB', {
    rule: 'filters-in-a-row',
    formula: `L = the sum of the levels of the filters, at least ${lowestLevelDb} dB`,
    citation: 'Definition of the level in dB',
    inputs: shares.map(({ name, value }) => [name, value, 'dB'] as const),
  });
}

function subsonicOf(tuningHz: number, { rules }: Bench): readonly Figure[] | Fault {
  const share = { from: rules['subsonic-from'].value, to: rules['subsonic-to'].value };
  const corner = subsonicCorner('the box', tuningHz, share);
  if (isFault(corner)) return corner;
  return [
    figureOf(
      'Subsonic filter, fourth order, from',
      printed('frequency-from', corner.fromHz.value),
      corner.fromHz,
    ),
    figureOf('Subsonic filter, fourth order, to', printed('frequency-to', corner.toHz.value), corner.toHz),
  ];
}

/** Every third of the third-octave tones: one an octave. */
const octaves = preferredFrequenciesHz.filter((_, k) => k % 3 === 0);

function tableOf(levelAt: (hz: number) => number, askedHz: number): AnswerTable {
  const tones = [...new Set([...octaves, askedHz])].toSorted((a, b) => a - b);
  return {
    caption: 'Level by frequency',
    columns: [
      { title: 'Frequency', isFigure: true },
      { title: 'Level', isFigure: true },
    ],
    rows: tones.map((hz) => [printedTone(hz), printed('level', levelAt(hz))]),
  };
}
