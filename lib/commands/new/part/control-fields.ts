import { controlSpecSchema } from '../../../model/kinds/fields/control-spec.ts';
import { controlFill } from '../../../model/short-forms/control-defaults.ts';
import type { Row } from '../ask/rows.ts';
import { filled, type Named } from '../yaml-text.ts';

/** Controls as a file has them. */
export function controlsOf(rows: readonly Row[]): Named {
  return Object.fromEntries(rows.map(({ cells }) => [String(cells.name), controlOf(cells)]));
}

function controlOf({ name: _, sets, slope, channels, ...cells }: Row['cells']): Named {
  const what = String(cells.what);
  const shape = slope === undefined ? {} : slopeOf(String(slope));
  return {
    ...cells,
    ...(channels !== undefined && { channels: String(channels).split(/\s+/) }),
    ...(sets === undefined ? filled('filter', shape) : setFields(what, String(sets), shape)),
  };
}

/** What it sets and to what: of a knob a range, of a switch its positions with what each of them passes. */
function setFields(what: string, sets: string, shape: Named): Named {
  const range =
    /^(?:(high-pass|low-pass|subsonic)\s+)?(?:(\d\S* ?[kM]?Hz)\s+)?([^=]*\S\s+to\s+\S[^=]*)$/.exec(sets);
  if (!range) return switchFields(what, sets, shape);
  const [, pass, centre, span = ''] = range;
  const [from = '', to = ''] = span.split(/\s+to\s+/);
  if (what === 'boost')
    return { form: 'knob', boost: { ...(centre !== undefined && { centre }), range: { from, to } } };
  return { form: 'knob', filter: { ...shape, ...(pass !== undefined && { pass }), range: { from, to } } };
}

/** A position with what it passes, a corner that it always cuts at, or both: `ON=25 Hz`, `ON=subsonic 25 Hz`. */
const position = /^([^\s=]+)(?:=(?:(high-pass|low-pass|subsonic)(?:\s+(\d\S* ?k?Hz))?|(\d\S* ?k?Hz)))?$/;

/** The words of a switch's positions, each with what follows its sign of equality. */
function positionsOf(sets: string): readonly string[] {
  return sets.split(/\s+(?=[^\s=]+(?:=|\s|$))(?!k?Hz\b|\d\S*\s*k?Hz\b)/);
}

function isRange(sets: string): boolean {
  return /\sto\s/.test(sets);
}

/** What is wrong with the positions of a switch; null for a range or for positions that can be read. */
export function positionsFault(sets: string): string | null {
  if (isRange(sets)) return null;
  if (/\bdB\b/.test(sets))
    return `has "${sets}": a slope stands in its own column behind it, such as butterworth 24 dB`;
  const odd = positionsOf(sets).find((one) => !position.test(one));
  if (odd === undefined && switchOf('other', sets).corners.length < 2) return null;
  return `${odd === undefined ? 'has two corners' : `has "${odd}"`}: write positions with blanks between them, such as FULL HPF=high-pass, and a corner that never moves behind its position, OFF ON=subsonic 25 Hz; a knob beside it is a line of its own`;
}

/** What a switch lacks of which no position is the safe one of its kind; null where it follows from what is told. */
export function safeFault({ what, sets, safe }: Row['cells']): string | null {
  const kind = controlSpecSchema.shape.what.safeParse(what);
  if (safe !== undefined || sets === undefined || !kind.success) return null;
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
  /** Frequencies at which it always cuts; a switch has one at most. */
  readonly corners: readonly string[];
}

function switchOf(what: string, sets: string): SwitchTold {
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
  return { positions, automatic, passes, corners: [...new Set(corners)] };
}

function switchFields(what: string, sets: string, shape: Named): Named {
  const { positions, automatic, passes, corners } = switchOf(what, sets);
  const [corner] = corners;
  return {
    form: 'switch',
    positions,
    ...(automatic.length > 0 && { automatic }),
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
