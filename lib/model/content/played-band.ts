import { z } from 'zod';
import { parseQuantity, writeQuantity } from '../quantity/quantity.ts';
import { quantityForm } from '../quantity/written-form.ts';

/** The band that a speaker plays (Hz): open below or above where a corner is left out. */
export interface PlayedBand {
  readonly fromHz?: number;
  readonly toHz?: number;
}

const examples = ['80 Hz to 3 kHz', 'from 3 kHz', 'up to 80 Hz', 'everything'];
const ways = `write ${examples.slice(0, -1).join(', ')} or ${examples.at(-1)}`;

/** The band of a speaker, `80 Hz to 3 kHz`, `from 3 kHz`, `up to 80 Hz` or `everything`. */
export const playedBandField: z.ZodCodec<z.ZodString, z.ZodCustom<PlayedBand, PlayedBand>> = z.codec(
  z
    .string({ error: () => `needs the band that it plays: ${ways}` })
    .meta({ examples, description: 'The band that a speaker plays.', pattern: bandForm() }),
  z.custom<PlayedBand>(),
  {
    decode: (value, ctx) => {
      const band = bandOf(value.trim());
      if (typeof band !== 'string') return band;
      const meant = bandMeant(value.trim());
      const message =
        meant === null ? `${band}; ${ways}` : `"${value}" is not how a band is written: write ${meant}`;
      ctx.issues.push({ code: 'custom', input: value, message });
      return z.NEVER;
    },
    encode: bandText,
  },
);

/** How a band is written, as a regular expression (ECMA-262). */
function bandForm(): string {
  const hertz = quantityForm('frequency');
  return String.raw`^\s*(?:everything|from \s*${hertz}|up to \s*${hertz}|${hertz}\s* to \s*${hertz})\s*$`;
}

/** A band as a job writes it. */
export function bandText({ fromHz, toHz }: PlayedBand): string {
  const hertz = (value: number) => writeQuantity(value, 'frequency');
  if (fromHz !== undefined && toHz !== undefined) return `${hertz(fromHz)} to ${hertz(toHz)}`;
  if (fromHz !== undefined) return `from ${hertz(fromHz)}`;
  return toHz === undefined ? 'everything' : `up to ${hertz(toHz)}`;
}

/** The band, or what is wrong with it. */
function bandOf(text: string): PlayedBand | string {
  if (text === 'everything') return {};
  const [, from] = /^from (.+)$/.exec(text) ?? [];
  if (from !== undefined) return corner(from, (fromHz) => ({ fromHz }));
  const [, upTo] = /^up to (.+)$/.exec(text) ?? [];
  if (upTo !== undefined) return corner(upTo, (toHz) => ({ toHz }));
  const [, low, high] = /^(.+) to (.+)$/.exec(text) ?? [];
  if (low === undefined || high === undefined) return `"${text.slice(0, 40)}" is not a band`;
  return corner(low, (fromHz) =>
    corner(high, (toHz) =>
      fromHz < toHz ? { fromHz, toHz } : `"${text}" runs downwards: the lower corner stands first`,
    ),
  );
}

/** Words for a part of what is heard: where it ends, only a corner tells. */
const partsOfBand: readonly (readonly [words: RegExp, write: string])[] = [
  [/^(?:full[ -]?range|full|all|wide ?band|everything)$/i, 'everything'],
  [/^(?:subs?|sub ?woofer|bass|lows?|low[ -]?pass|lp|lpf)$/i, 'up to and its corner, such as up to 80 Hz'],
  [/^(?:highs?|tweeters?|treble|high[ -]?pass|hp|hpf|tops?)$/i, 'from and its corner, such as from 3 kHz'],
  [/^(?:mids?|mid[ -]?range|mid[ -]?bass|band[ -]?pass|bp)$/i, 'both corners, such as 80 Hz to 3 kHz'],
];

/** What to write for a band that is told otherwise: `below 80 Hz`, `80-3000 Hz`, `80 Hz and up`; null where that is not known. */
function bandMeant(text: string): string | null {
  const words = partsOfBand.find(([found]) => found.test(text));
  if (words) return words[1];
  const hertz = String.raw`(\d+(?:\.\d+)?) ?(k?hz)?`;
  const [, low, lowUnit, high, highUnit] =
    new RegExp(`^${hertz} ?(?:-|\u2013|\u2014|\\.\\.|to) ?${hertz}$`, 'i').exec(text) ?? [];
  const unit = (told: string) => (/^k/i.test(told) ? 'kHz' : 'Hz');
  if (low !== undefined && high !== undefined && highUnit !== undefined)
    return checked(`${low} ${unit(lowUnit ?? highUnit)} to ${high} ${unit(highUnit)}`);
  const [, below, belowUnit = ''] =
    new RegExp(`^(?:below|under|until|to|<|lp|low-?pass) ?${hertz}$`, 'i').exec(text) ?? [];
  if (below !== undefined) return checked(`up to ${below} ${unit(belowUnit)}`);
  const [, above, aboveUnit = ''] =
    new RegExp(`^(?:above|over|>|hp|high-?pass) ?${hertz}$`, 'i').exec(text) ??
    new RegExp(`^${hertz} ?(?:and up|and above|up|\\+)$`, 'i').exec(text) ??
    [];
  if (above !== undefined) return checked(`from ${above} ${unit(aboveUnit)}`);
  const [, one, oneUnit] = new RegExp(`^${hertz}$`, 'i').exec(text) ?? [];
  return one === undefined || oneUnit === undefined
    ? null
    : `from ${one} ${unit(oneUnit)} for what is above, or up to ${one} ${unit(oneUnit)} for what is below`;
}

/** A band that can be read as it is told; null for one that can't. */
function checked(band: string): string | null {
  return typeof bandOf(band) === 'string' ? null : band;
}

/** Reads a corner; one that no ear hears is a slip. */
function corner(text: string, make: (hz: number) => PlayedBand | string): PlayedBand | string {
  const read = parseQuantity(text, 'frequency');
  if (typeof read !== 'number') return read.unreadable;
  return read >= 5 && read <= 40_000 ? make(read) : `"${text}" is outside 5 Hz to 40 kHz`;
}
