import { z } from 'zod';
import { extent, faultBy, faultless, quantityAbove, wireSize } from '../../../model/fields.ts';
import { signalVoltage } from '../../../model/kinds/fields/bounds.ts';
import { type AskedColumn, type AskedTable, column } from '../../../model/survey/asked-table.ts';
import { powerAt, powerFault } from '../../../model/survey/power-into-load.ts';
import { fieldExample, mayBeLeftOut } from '../../../model/writing/field-example.ts';
import { insideOf, withoutWrappers } from '../../../model/writing/schema-shape.ts';
import type { Row } from '../ask/rows.ts';
import { known, type Named } from '../yaml-text.ts';

/** What a leaflet is asked for, as one row or as several. */
export function leaflet(
  key: string,
  asks: string,
  columns: readonly AskedColumn[],
  more: Partial<Pick<AskedTable, 'hint' | 'rows' | 'seldom'>> = {},
): AskedTable {
  return { key, asks, by: 'leaflet', columns, rows: 1, ...more };
}

/** Columns for fields of a schema by their names; one that the schema lets out may be left empty. */
export function columnsOf(
  shape: Readonly<Record<string, z.ZodType>>,
  names: readonly string[],
  examples: Readonly<Record<string, string>> = {},
): readonly AskedColumn[] {
  return names.map((name) => {
    const field = shape[name];
    if (!field) throw new Error(`There is no field ${name}.`);
    const list = elementOf(field);
    const example = examples[name] ?? exampleText(fieldExample(field));
    return column(name, name.replaceAll('-', ' '), list ?? field, example, {
      ...(mayBeLeftOut(field) && { optional: true }),
      ...(list && { list: true }),
    });
  });
}

/** An example of a field as it is typed: a list by its words, true as yes. */
function exampleText(example: unknown): string {
  if (typeof example === 'boolean') return example ? 'yes' : 'no';
  return Array.isArray(example) ? example.map(String).join(' ') : String(example ?? '');
}

/** What a list holds, behind optional and default; null for what is no list. */
function elementOf(field: z.ZodType): z.ZodType | null {
  const inside = insideOf(withoutWrappers(field));
  return inside.shape === 'list' ? inside.element : null;
}

/** Both ends of a range in one cell, `8 AWG to 4 AWG`. */
function rangeOf(end: z.ZodType, example: string): z.ZodType {
  const faultOf = (written: string): string | null => {
    const ends = written.split(/\s+to\s+/);
    if (ends.length !== 2) return `is no range: write both ends, such as ${example}`;
    return ends.map((one) => faultBy(end, one)).find((fault) => fault !== null) ?? null;
  };
  return z.string().check(faultless(faultOf));
}

const sizes = rangeOf(wireSize, '18 AWG to 10 AWG');
const voltages = rangeOf(signalVoltage, '0.25 V to 6 V');

/** The thinnest conductor that is made here, for a maker who only tells the thickest. */
const thinnest = '24 AWG';

/** What is told by its upper end alone, `up to 12 AWG`; null for another text. */
export function upTo(written: string): string | null {
  return /^up to\s+(.+)$/.exec(written.trim())?.[1] ?? null;
}

/** Conductor sizes as a file has them: `up to 12 AWG` and one size, `4 AWG` or `4 AWG alone`, are ranges too. */
export function sizeRange(written: string): string {
  const most = upTo(written);
  if (most !== null) return `${thinnest} to ${most}`;
  const only = sizeAlone(written);
  return /\sto\s/.test(only) ? only : `${only} to ${only}`;
}

/** One size without the word that says that no other is taken. */
function sizeAlone(written: string): string {
  return written.trim().replace(/\s+alone$/, '');
}

/** Conductor sizes: both ends of their range, the thickest alone, or one size. */
export const sizesField = z
  .string()
  .check(
    faultless((written) =>
      suppliedLead(written)
        ? null
        : faultBy(/^up to |\sto\s/.test(written) ? sizes : wireSize, sizeRangeOrOne(written)),
    ),
  );

function sizeRangeOrOne(written: string): string {
  return /^up to |\sto\s/.test(written) ? sizeRange(written) : sizeAlone(written);
}

/** A lead that a maker supplies, by the size and the length of its conductor. */
export interface SuppliedLead {
  readonly size: string;
  readonly length: string | null;
}

/** A lead by its size and its length, `18 AWG 600 mm`, or by its size alone; null for what is none. */
export function suppliedLead(written: string): SuppliedLead | null {
  const [, size, length] = /^(\S+\s*(?:AWG|mm2))(?:\s+(\d.*))?$/.exec(written.trim()) ?? [];
  if (size === undefined || faultBy(wireSize, size) !== null) return null;
  return length !== undefined && faultBy(extent, length) !== null ? null : { size, length: length ?? null };
}

/** The size, the lead with its length, or the range of sizes that a terminal takes, by how a wire is joined at it. */
export function joinedBy(joint: unknown, written: string): Named {
  const lead = joint === 'supplied-lead' ? suppliedLead(written) : null;
  return lead
    ? known({ lead: lead.size, 'lead-length': lead.length ?? undefined })
    : { takes: sizeRange(written) };
}

/** What is wrong with a lead that is told of what is no lead of the maker's; null where nothing is. */
export function leadFault({ joint, takes }: Row['cells']): string | null {
  const lead = takes === undefined ? null : suppliedLead(factsTaken(String(takes)).conductor ?? '');
  if (!lead?.length || joint === 'supplied-lead') return null;
  return `takes "${String(takes)}": a length is told of a lead that its maker supplies, whose joint is supplied-lead; else write the size alone, ${lead.size}`;
}

const current = quantityAbove('current');

/** True for what a turn-on output gives or a way carries, `0.5 A`. */
function isCurrent(written: string): boolean {
  return /\dm?A$|\sm?A$/.test(written.trim());
}

/** What a cell tells of the conductor of a terminal and of its signal, each as it is written. */
interface FactsTaken {
  readonly conductor?: string;
  readonly signal?: string;
  /** Of a turn-on output or a way: what it gives or carries. */
  readonly current?: string;
}

/** What stands between the ends of a range, in a file and in leaflets: `1 V to 12 V`, `1-12 V`, `1..12 V`. */
const toSign = String.raw`(?:\s+to\s+|\s*(?:-|–|\.\.)\s*)`;
const atMost = String.raw`(?:at most|max\.?)\s+`;
const volts = String.raw`(?:(?:up to\s+|${atMost})[\d.]+\s*m?V|[\d.]+\s*(?:m?V)?${toSign}[\d.]+\s*m?V|[\d.]+\s*m?V)`;
const parted = String.raw`\s*(?:[;+/]|\s(?:and|by|with)\s|\s)\s*`;
const signalFirst = new RegExp(`^(${volts})${parted}(\\d.*(?:AWG|mm2).*)$`);
const signalLast = new RegExp(`^(.*\\d\\s*(?:AWG|mm2)\\b.*?)${parted}(${volts})$`);
const amps = String.raw`[\d.]+\s*m?A`;
const currentFirst = new RegExp(`^(${amps})${parted}(\\S.*(?:AWG|mm2).*)$`);
const currentLast = new RegExp(`^(.*\\d\\s*(?:AWG|mm2)\\b.*?)${parted}(${amps})$`);
const mostAlone = new RegExp(`^${atMost}(.+)$`);
const range = new RegExp(`^([\\d.]+)\\s*(m?V)?${toSign}([\\d.]+)\\s*(m?V)$`);

/**
 * What a terminal takes and what goes through it, in either order: of an input whose lead its maker supplies
 * `20 AWG 300 mm 0.5 V to 12 V`, of a turn-on output `22 AWG to 16 AWG 0.2 A`.
 */
export function factsTaken(written: string): FactsTaken {
  const text = written.trim();
  const [, sizesBefore, given] = currentLast.exec(text) ?? [];
  if (sizesBefore !== undefined && given !== undefined)
    return { conductor: leadSpelt(sizesBefore), current: given };
  const [, carried, sizesBehind] = currentFirst.exec(text) ?? [];
  if (carried !== undefined && sizesBehind !== undefined)
    return { conductor: leadSpelt(sizesBehind), current: carried };
  if (isCurrent(text)) return { current: text };
  const [, signal, conductor] = signalFirst.exec(text) ?? [];
  if (signal !== undefined && conductor !== undefined)
    return { signal: signalSpelt(signal), conductor: leadSpelt(conductor) };
  const [, before, behind] = signalLast.exec(text) ?? [];
  if (before !== undefined && behind !== undefined)
    return { conductor: leadSpelt(before), signal: signalSpelt(behind) };
  return /V$/.test(text) ? { signal: signalSpelt(text) } : { conductor: leadSpelt(text) };
}

/** A range as a leaflet prints it, `1-12 V` or `max. 12 V`, as a file has it. */
function signalSpelt(text: string): string {
  const [, greatest] = mostAlone.exec(text) ?? [];
  if (greatest !== undefined) return `up to ${greatest}`;
  const [, from, own, to, unit = ''] = range.exec(text) ?? [];
  return from === undefined ? text : `${from} ${own ?? unit} to ${to} ${unit}`;
}

/** A lead by its size and then its length, whichever stands first: `300 mm of 20 AWG`, `20 AWG x 300 mm`. */
function leadSpelt(text: string): string {
  const [, length, size] =
    /^(\d[\d./ ]*(?:mm|cm|m|in|ft))\s+(?:of\s+|[x×]\s+)?(\S+\s*(?:AWG|mm2))$/.exec(text) ?? [];
  return length === undefined ? text.replace(/(AWG|mm2)\s+[x×]\s+/, '$1 ') : `${size} ${length}`;
}

/** What a terminal takes: conductors, or a signal; of an output the one voltage or current that it gives, or its power into a load. Of a lead that its maker supplies both. */
export const takesField = z.string().check(
  faultless((written) => {
    if (powerAt(written) !== null) return powerFault(written);
    const { conductor, signal, current: amperes } = factsTaken(written);
    return (
      (amperes === undefined ? null : faultBy(current, amperes)) ??
      (conductor === undefined ? null : leadOrSizeFault(written, conductor)) ??
      (signal === undefined ? null : signalFault(signal))
    );
  }),
);

/** What is wrong with a size; where a voltage stands beside it that could not be parted from it, how both are written. */
function leadOrSizeFault(written: string, conductor: string): string | null {
  const fault = faultBy(sizesField, conductor);
  const isBoth = /\d\s*m?V\b/.test(written) && /AWG|mm2/.test(written);
  return fault !== null && isBoth
    ? `${fault}; a supplied lead and its voltage stand one behind the other: 20 AWG 300 mm 0.5 V to 12 V`
    : fault;
}

function signalFault(signal: string): string | null {
  const most = upTo(signal);
  if (most !== null) return faultBy(signalVoltage, most);
  return faultBy(/ to /.test(signal) ? voltages : signalVoltage, signal);
}
