import { controlSpecSchema } from '../../../../model/kinds/fields/control-spec.ts';
import { parseQuantity } from '../../../../model/quantity/quantity.ts';
import { controlFill } from '../../../../model/short-forms/control-defaults.ts';
import { filterTypeSchema } from '../../../../model/vocabulary.ts';
import type { Row } from '../../ask/rows.ts';
import { filled, type Named } from '../../yaml-text.ts';
import { isOff, type KnobRange, knobRange } from './knob-range.ts';
import { levelSteps } from './level-steps.ts';

/** Controls as a file has them. */
export function controlsOf(rows: readonly Row[]): Named {
  return Object.fromEntries(
    rows.map(({ cells }) => [String(cells.name), controlOf(withOwnPass(cells, rows))]),
  );
}

/** A subsonic knob is a filter of its own, unless a switch brings that in and the knob only moves its corner. */
function withOwnPass(cells: Row['cells'], rows: readonly Row[]): Row['cells'] {
  const sets = String(cells.sets);
  if (cells.what !== 'subsonic' || knobRange(sets)?.pass !== null) return cells;
  const isSwitched = rows.some(
    ({ cells: { what, sets: others } }) =>
      others !== undefined &&
      !isRange(String(others)) &&
      Object.values(switchOf(String(what), String(others)).passes).includes('subsonic'),
  );
  return isSwitched ? cells : { ...cells, sets: `subsonic ${sets}` };
}

function controlOf({ name: _, sets, slope, channels, why, ...cells }: Row['cells']): Named {
  const what = String(cells.what);
  const shape = slope === undefined ? {} : slopeOf(String(slope));
  return {
    ...cells,
    ...(why !== undefined && { why }),
    ...(channels !== undefined && { channels: String(channels).split(/\s+/) }),
    ...(sets === undefined ? filled('filter', shape) : setFields(what, String(sets), shape)),
    ...(cells.safe !== undefined && { safe: cells.safe }),
  };
}

/** What it sets and to what: of a knob a range, of a switch its positions with what each of them passes. */
function setFields(what: string, sets: string, shape: Named): Named {
  if (isFormAlone(sets)) return { form: sets };
  const knob = knobRange(sets);
  if (!knob) return switchFields(what, sets, shape);
  const { pass, centre, from, to, off } = knob;
  // How far a gain reaches is what the inputs take: it stands at these.
  if (what === 'gain') return { form: 'knob' };
  if (what === 'boost')
    return { form: 'knob', boost: { ...(centre !== null && { centre }), range: flatAtOff(from, to) } };
  if (what === 'level') return levelFields(knob);
  const ends = { ...(pass !== null && { pass }), range: { from, to }, ...(off !== null && { off }) };
  return { form: 'knob', filter: { ...shape, ...ends } };
}

/** A boost that is off raises nothing. */
function flatAtOff(from: string, to: string): Named {
  return { from: isOff(from) ? '0 dB' : from, to: isOff(to) ? '0 dB' : to };
}

/** Gains are set with every level at 0 dB, where its range has that; of one that ends in OFF no least level is known. */
function levelFields({ from, to }: KnobRange): Named {
  const isTold = !isOff(from) && !isOff(to);
  return {
    form: 'knob',
    ...(isTold && { level: { range: { from, to } } }),
    ...(holdsFlat({ from, to }) && { safe: '0 dB' }),
  };
}

/** True for a range of levels in which 0 dB lies. */
function holdsFlat({ from, to }: Pick<KnobRange, 'from' | 'to'>): boolean {
  const [least, most] = [from, to].map((end) =>
    isOff(end) ? Number.NEGATIVE_INFINITY : Number(parseQuantity(end, 'level')),
  );
  return least !== undefined && most !== undefined && least <= 0 && most >= 0;
}

/** True for the form of a control whose ends tell nothing. */
function isFormAlone(sets: unknown): boolean {
  return sets === 'knob' || sets === 'menu';
}

/** A position with what it passes, a corner that it always cuts at, or both: `ON=25 Hz`, `ON=subsonic 25 Hz`. */
const position = /^([^\s=]+)(?:=(?:(high-pass|low-pass|subsonic)(?:\s+(\d\S* ?k?Hz))?|(\d\S* ?k?Hz)))?$/;

/** A position of a switch for inputs with those that it hears: `LINE=IN1/IN2`. */
const hearing = /^([^\s=]+)=(\S+)$/;

/** The words of a switch's positions, each with what follows its sign of equality. */
function positionsOf(sets: string): readonly string[] {
  return sets.split(/\s+(?=[^\s=]+(?:=|\s|$))(?!k?Hz\b|\d\S*\s*k?Hz\b)/);
}

function isRange(sets: string): boolean {
  return knobRange(sets) !== null;
}

/** What is wrong with the positions of a switch; null for a range or for positions that can be read. */
export function positionsFault(sets: string, what?: unknown): string | null {
  if (what === 'input-mode') return null;
  if (isRange(sets) || levelSteps(sets)) return null;
  if (/\bdB\b/.test(sets))
    return `has "${sets}": a slope stands in its own column behind it, such as butterworth 24 dB`;
  const odd = positionsOf(sets).find((one) => !position.test(one));
  if (odd === undefined && switchOf('other', sets).corners.length < 2) return null;
  return `${odd === undefined ? 'has two corners' : `has "${odd}"`}: write positions with blanks between them, such as FULL HPF=high-pass, and a corner that never moves behind its position, OFF ON=subsonic 25 Hz; a knob beside it is a line of its own`;
}

/** What the switch of a filter lacks where no slope is told of it: a job counts a filter without one for none. */
export function slopeFault({ sets, slope }: Row['cells']): string | null {
  if (sets === undefined || slope !== undefined || isRange(String(sets))) return null;
  const cuts = Object.keys(switchOf('other', String(sets)).passes);
  return cuts.length === 0
    ? null
    : `lacks slope: a filter in ${cuts.join(' and ')} has a shape and a steepness; write them, such as ${filterTypeSchema.options[0]} 12 dB, or ? where the leaflet is silent`;
}

/** What a safe state lacks that its kind gives no reason for: the reason is printed beside the preset. */
export function whyFault({ what, sets, safe, why }: Row['cells']): string | null {
  const kind = controlSpecSchema.shape.what.safeParse(what);
  if (safe === undefined || why !== undefined || !kind.success) return null;
  const isKnob = sets === undefined || isRange(String(sets));
  const form = isKnob ? {} : { form: 'switch', positions: switchOf(kind.data, String(sets)).positions };
  if (controlFill({ what: kind.data, ...form }).why !== undefined) return null;
  return `lacks why: write why ${String(safe)} is the safe state, such as the radio comes in by its speaker wires`;
}

/** What a switch lacks of which no position is the safe one of its kind; null where it follows from what is told. */
export function safeFault({ what, sets, safe }: Row['cells']): string | null {
  if (isFormAlone(sets))
    return safe === undefined ? 'lacks safe: write its state before first power-up, such as flat' : null;
  const kind = controlSpecSchema.shape.what.safeParse(what);
  if (safe !== undefined || sets === undefined || !kind.success) return null;
  const level = what === 'level' ? knobRange(String(sets)) : null;
  if (level && !holdsFlat(level))
    return `lacks safe: write the level at which gains are set, such as ${isOff(level.to) ? level.from : level.to}`;
  const { positions, automatic, passes } = switchOf(kind.data, String(sets));
  if (
    isRange(String(sets)) ||
    controlFill({ what: kind.data, form: 'switch', positions, automatic, passes }).safe !== undefined
  )
    return null;
  return `lacks safe: write the position in which nothing can come to harm at first power-up, ${positions.join(' or ')}`;
}

interface SwitchTold {
  readonly positions: string[];
  /** Those in which a device turns itself on, as they are printed on it. */
  readonly automatic: string[];
  readonly passes: Record<string, string>;
  /** Of a switch for inputs: those that each position hears, where that is told. */
  readonly hears: Record<string, string[]>;
  /** Frequencies at which it always cuts; a switch has one at most. */
  readonly corners: readonly string[];
}

function switchOf(what: string, sets: string): SwitchTold {
  const steps = levelSteps(sets);
  if (steps) return { positions: [...steps], automatic: [], passes: {}, hears: {}, corners: [] };
  if (what === 'input-mode') return inputSwitch(positionsOf(sets));
  const read = positionsOf(sets).map((one) => position.exec(one) ?? [one, one]);
  const positions = read.map(([, name = '']) => name);
  const passes = Object.fromEntries(
    read.flatMap(([, name = '', pass, , alone]) => {
      const told = pass ?? (alone !== undefined && what === 'subsonic' ? 'subsonic' : undefined);
      return told === undefined ? [] : [[name, told]];
    }),
  );
  const automatic = what === 'turn-on-mode' ? positions.filter((name) => /^auto/i.test(name)) : [];
  const corners = read.flatMap(([, , , beside, alone]) => beside ?? alone ?? []);
  return { positions, automatic, passes, hears: {}, corners: [...new Set(corners)] };
}

/** A switch for inputs: `LINE HIGH`, whose words tell it, or `A=IN1/IN2 B=HIGH1/HIGH2`. */
function inputSwitch(words: readonly string[]): SwitchTold {
  const told = words.map((word) => hearing.exec(word) ?? [word, word]);
  const hears = Object.fromEntries(
    told.flatMap(([, name = '', inputs]) => (inputs === undefined ? [] : [[name, inputs.split('/')]])),
  );
  return { positions: told.map(([, name = '']) => name), automatic: [], passes: {}, hears, corners: [] };
}

function switchFields(what: string, sets: string, shape: Named): Named {
  const { positions, automatic, passes, hears, corners } = switchOf(what, sets);
  const [corner] = corners;
  return {
    form: 'switch',
    positions,
    ...(automatic.length > 0 && { automatic }),
    ...filled('hears', hears),
    ...filled('filter', { ...shape, ...filled('passes', passes), ...(corner !== undefined && { corner }) }),
  };
}

/** `butterworth 12 dB`: six decibels an octave for each order. */
export function slopeOf(slope: string): Named {
  const [, type, steepness] =
    /^(?:([a-z-]+)\s+)?(\d+)\s*dB(?:\s*(?:\/|per)\s*oct(?:ave)?)?$/.exec(slope.trim()) ?? [];
  if (steepness === undefined) return { type: slope };
  return { ...(type !== undefined && { type }), order: Number(steepness) / 6 };
}
