import type { Job } from '../../../model/content/resolved-job.ts';
import type { BuildPlan, SourceReading } from '../../../model/plan/index.ts';
import type { Figure } from '../../../model/trace.ts';
import { type BankFuse, bankFuses } from './bank-fuses.ts';
import type { Prediction } from './readings.ts';

type Limits = Pick<Prediction, 'least' | 'greatest'>;

/** What a line of the record says and how it is limited, by what is read. */
interface LineOf {
  readonly kind: Prediction['kind'];
  readonly when: Prediction['when'];
  readonly says: (reading: SourceReading) => string;
  /** Null: a reading would tell nothing there, and is not asked for. */
  readonly limits: (reading: SourceReading, rules: Job['rules']) => Limits | null;
}

const across = ({ at }: SourceReading) => `between ${at.join(' and ')}`;
const round = ({ at }: SourceReading) => `clamp round every lead on ${at.join(' and ')} together`;

/** The band of a reading, widened by what the meter may add; a reading without a sign is not asked to be below zero. */
function widened({ band }: SourceReading, tolerance: number): Limits {
  if (!band) return { least: null, greatest: null };
  return { least: Math.max(0, band.from - tolerance), greatest: band.to + tolerance };
}

/** No current: what a clamp shows of one that is not there. */
const none = (_: SourceReading, rules: Job['rules']): Limits => {
  return { least: null, greatest: rules['clamp-tolerance'].value };
};

const lineOf: Readonly<Record<SourceReading['what'], LineOf>> = {
  'contact-current': {
    kind: 'contact-current',
    when: 'load',
    says: (reading) => `current through the closed contact, ${round(reading)}`,
    limits: (reading, rules) => widened(reading, rules['clamp-tolerance'].value),
  },
  'contact-drop': {
    kind: 'contact-drop',
    when: 'load',
    says: (reading) => `drop over the closed contact, ${across(reading)}`,
    limits: (reading, rules) =>
      reading.value === null
        ? { least: null, greatest: rules['joint-drop-limit'].value }
        : widened(reading, rules['reading-tolerance'].value),
  },
  'contact-open': {
    kind: 'contact-open',
    when: 'load',
    says: (reading) => `volts over the open contact, once it has let go, ${across(reading)}`,
    // A closed contact shows no more than one joint may lose: what is above that is open. Where its two sides are not
    // sure to differ by more, volts tell nothing, and the current beside decides.
    limits: ({ band }, rules) => {
      const closedV = rules['joint-drop-limit'].value;
      const isTold = band !== null && band.from > closedV + rules['reading-tolerance'].value;
      return isTold ? { least: closedV, greatest: null } : null;
    },
  },
  'contact-open-current': {
    kind: 'no-current',
    when: 'load',
    says: (reading) => `current through the open contact, once it has let go, ${round(reading)}`,
    limits: none,
  },
  'output-voltage': {
    kind: 'charger-voltage',
    when: 'load',
    says: (reading) => `output voltage, ${across(reading)}`,
    limits: (reading, rules) => widened(reading, rules['reading-tolerance'].value),
  },
  'output-current': {
    kind: 'charger-current',
    when: 'load',
    says: (reading) => `output current, ${round(reading)}`,
    limits: (reading, rules) => widened(reading, rules['clamp-tolerance'].value),
  },
  'input-current': {
    kind: 'no-current',
    when: 'power',
    says: (reading) => `current at the input, ${round(reading)}`,
    limits: none,
  },
  'bank-charge': {
    kind: 'bank-charge',
    when: 'banks',
    says: (reading) => `charge, ${across(reading)}`,
    limits: ({ band }, rules) => {
      if (!band) return null;
      // At most what may be left across the open holder is missing to the weakest feed.
      return {
        least: band.from - rules['bank-charged-within'].value,
        greatest: band.to + rules['reading-tolerance'].value,
      };
    },
  },
};

/**
 * What is read at isolating relays, chargers and capacitor banks, each in a state that is reached without opening a live
 * feed: with a clamp, or with probes on two terminals. A bank is read twice, at its posts and across its open fuse.
 */
export function sourceLines(
  { rules }: Pick<Job, 'rules'>,
  plan: Pick<BuildPlan, 'items' | 'power'>,
): Prediction[] {
  const { sourceReadings = [], points } = plan.power;
  const banks = bankFuses(plan);
  return sourceReadings.flatMap((reading): Prediction[] => {
    const { item, what, point, value, unit } = reading;
    const { kind, when, says, limits } = lineOf[what];
    const limited = limits(reading, rules);
    const bank = banks.find((one) => one.bank === item);
    if (!limited || (when === 'banks' && !bank)) return [];
    const { title = point, reach } = points.find(({ name }) => name === point) ?? {};
    const state =
      when === 'banks'
        ? 'fuse out, everything off, charged through a resistor or a lamp, which is taken off'
        : `${title}: ${reach ?? ''}`;
    const line: Prediction = {
      id: when === 'banks' ? `${item}.charge` : `${item}.${what}.${point}`,
      kind,
      what: `${item}: ${says(reading)}. ${state}`,
      predicted: value,
      unit,
      ...limited,
      when,
      figures: figuresOf(reading, rules),
    };
    return bank ? [line, acrossFuse(bank, rules)] : [line];
  });
}

/** What the limits of a reading follow from: what is solved, and what a meter, a joint and a holder may add. */
function figuresOf({ value, band, unit }: SourceReading, rules: Job['rules']): readonly Figure[] {
  const added: readonly Figure[] =
    unit === 'A'
      ? [['tolerance', rules['clamp-tolerance'].value, 'A']]
      : [
          ['tolerance', rules['reading-tolerance'].value, 'V'],
          ['what one joint may lose', rules['joint-drop-limit'].value, 'V'],
          ['what may be left over the open holder', rules['bank-charged-within'].value, 'V'],
        ];
  const solved: readonly Figure[] = value === null ? [] : [['X', value, unit]];
  const ends: readonly Figure[] = band
    ? [
        ['from', band.from, unit],
        ['to', band.to, unit],
      ]
    : [];
  return [...solved, ...ends, ...added];
}

/** What decides whether the fuse of a bank may go in: hardly a volt across its open holder. */
function acrossFuse({ bank, fuse }: BankFuse, rules: Job['rules']): Prediction {
  return {
    id: `${bank}.across-fuse`,
    kind: 'bank-charge',
    what: `${bank}: volts across the open holder of ${fuse}, once its bridge is off`,
    predicted: 0,
    unit: 'V',
    least: null,
    greatest: rules['bank-charged-within'].value,
    when: 'banks',
    figures: [['tolerance', rules['bank-charged-within'].value, 'V']],
  };
}
