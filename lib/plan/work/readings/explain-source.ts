import type { Explain, ReadingKind } from './readings.ts';

type SourceKind = Extract<
  ReadingKind,
  | 'contact-current'
  | 'contact-drop'
  | 'contact-open'
  | 'charger-voltage'
  | 'charger-current'
  | 'no-current'
  | 'bank-charge'
>;

const isOver = ({ line, reading }: Parameters<Explain>[0]): boolean =>
  reading > (line.greatest ?? Number.POSITIVE_INFINITY);

/** What a difference at an isolating relay, a charger or a capacitor bank points at. Common practice, no source. */
export const explainSource: Readonly<Record<SourceKind, Explain>> = {
  'contact-current': (difference) =>
    isOver(difference)
      ? 'more than music and recharge ask for: a battery behind the contact is run down or bad; charge and test it apart, then read again'
      : 'the contact has not closed, or its fuse is open: read the volts at its coil and over its contact',
  'contact-drop': (difference) =>
    isOver(difference)
      ? 'the contact has not closed, is burnt, or a lug on it is loose: read the volts at its coil, then over each lug in turn'
      : 'less current flowed than was reckoned with: read again at the stated load',
  'contact-open': () =>
    'as little as a closed contact drops: it sticks or its coil is still fed, or both batteries stand alike; the current through it tells which',
  'charger-voltage': (difference) =>
    isOver(difference)
      ? 'its setting is that of another battery, or it does not regulate: set it by the battery behind it before it stays on'
      : 'it is off, at its current limit, or its input is low: read its input at the same time',
  'charger-current': (difference) =>
    isOver(difference)
      ? 'the battery behind it is run down, or something else draws there: charge the battery, then read again'
      : 'it is off, or the battery behind it is full: read its output voltage at the same time',
  'no-current': () =>
    'something still flows where nothing should: a contact that sticks, a coil or a charger that is told that the engine runs; find it, or it flattens the starter battery',
  'bank-charge': (difference) =>
    isOver(difference) && difference.line.predicted !== 0
      ? 'above the feed: the feed is charging, or the meter is off; do not go on above the rated voltage of the bank'
      : 'not charged yet, or its bridge does not conduct: charge on, and do not fit the fuse before it reads within its limit',
};
