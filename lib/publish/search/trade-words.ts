/**
 * Short names and other spellings of the trade, by the word that stands for all of them: common practice, no source. What is
 * indexed and what is asked for are both put so; what a shop's own texts say is never changed by it.
 */
export const tradeWords: Readonly<Record<string, string>> = {
  alt: 'alternator',
  aluminium: 'aluminum',
  amp: 'amplifier',
  batt: 'battery',
  bonnet: 'hood',
  boot: 'cargo',
  cap: 'capacitor',
  centre: 'center',
  coax: 'coaxial',
  colour: 'color',
  crossover: 'filter',
  dist: 'distribution',
  distro: 'distribution',
  dsp: 'processor',
  fibre: 'fiber',
  fibreboard: 'fiberboard',
  gnd: 'ground',
  grey: 'gray',
  hdpe: 'polyethylene',
  litre: 'liter',
  mdf: 'fiberboard',
  mid: 'midrange',
  ply: 'plywood',
  preset: 'setting',
  radio: 'source',
  rca: 'phono',
  spkr: 'speaker',
  sub: 'subwoofer',
  trunk: 'cargo',
  wagon: 'estate',
  xover: 'filter',
};

/** Names of several words, or for several words, put before the words are taken apart: common practice, no source. */
export const tradePhrases: readonly (readonly [RegExp, string])[] = [
  [/\bhead[ -]?units?\b/g, 'source unit'],
  [/\bagm\b/g, 'absorbed glass mat'],
  [/\bmono[ -]?block\b|\bmono(?= (?:bass )?amp)/g, '1 channel mono'],
  [/\bturn[ -]on\b|\bremote(?= (?:wire|lead))/g, 'turnon'],
  [/\bheat[ -]shrink\b/g, 'heatshrink'],
];

/** Numbers as they are written out. */
export const numberWords: Readonly<Record<string, string>> = {
  one: '1',
  two: '2',
  three: '3',
  four: '4',
  five: '5',
  six: '6',
  seven: '7',
  eight: '8',
  nine: '9',
  ten: '10',
  eleven: '11',
  twelve: '12',
};

/** Words that say nothing of what is looked for. */
export const idleWords: ReadonlySet<string> = new Set(
  'a an and at board by for from in is it job of on or that the to was which with'.split(' '),
);
