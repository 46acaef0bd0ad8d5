import { z } from 'zod';
import { hasFields } from '../../model/content/proposal.ts';
import { extent, idPattern } from '../../model/fields.ts';
import { idWords } from '../../model/writing/id-words.ts';
import type { Keys } from './schema-walk.ts';

/**
 * The line to write for one that somebody wrote in a shape of their own: an arrow between the ends of a link, a list of
 * terminals that stay open, an acceptance without its dash. With their own names in it; texts, which may be private, are
 * not repeated. Null where nothing can be made of it.
 */
export function lineMeant(keys: Keys, value: unknown): string | null {
  const [section, name, field, ...more] = keys;
  if (more.length > 0) return sideMeant(keys, value);
  if (section === 'links') return linkMeant(name, value, field);
  if (section === 'left-open') return openMeant(name, value);
  if (section === 'accepted' && name === undefined) return acceptedMeant(value);
  if (section === 'boards' && field === 'outline') return outlineMeant(value);
  return sideMeant(keys, value);
}

const terminal = String.raw`[a-z0-9]+(?:-[a-z0-9]+)*\.[^\s,>=]+`;
const arrow = new RegExp(String.raw`^(${terminal})\s*(?:-+>|=+>|→|\bto\b|\s[-–]+\s)\s*(${terminal})$`);

/** A link by its ends: `to-sub: { from: amp.CH5, to: sub.C1 }`, called by what it goes to where it has no name. */
function linkMeant(name: Keys[number] | undefined, value: unknown, field: unknown): string | null {
  if (field !== undefined) return null;
  const told = [value, name].flatMap((one) =>
    typeof one === 'string' ? (arrow.exec(one.trim()) ?? []) : [],
  );
  const listed = Array.isArray(value)
    ? value.flatMap((one) => linkMeant(undefined, one, undefined) ?? [])
    : [];
  if (listed.length > 0)
    return `write under links: ${listed.map((one) => one.replace(/^write /, '')).join(' and ')}`;
  const isEnd = (one: unknown): one is string => typeof one === 'string' && isTerminal.test(one.trim());
  const [, from, to] = told;
  const ends = from && to ? [from, to] : isEnd(name) && isEnd(value) ? [name, value] : null;
  if (!ends) return null;
  const own =
    typeof name === 'string' && idPattern.test(name) ? name : `to-${idWords(ends[1]?.split('.')[0] ?? '')}`;
  return `write ${own}: { from: ${ends[0]}, to: ${ends[1]} }`;
}

const isTerminal = new RegExp(`^${terminal}$`);
const reason = 'not used on this job';

/** Terminals that stay open, each with a reason: of several of one device `amp.IN5|IN6: not used on this job`. */
function openMeant(name: Keys[number] | undefined, value: unknown): string | null {
  if (typeof name === 'string') {
    const opened = openNames(name);
    return opened === null || opened === name ? null : `write ${opened}: with the reason behind it`;
  }
  if (name !== undefined) return null;
  const listed = (Array.isArray(value) ? value : [value]).filter((one) => typeof one === 'string');
  const lines = listed.flatMap((one) => openNames(one) ?? []);
  return lines.length === 0 || lines.length < listed.length
    ? null
    : `write it with a reason: left-open: { ${lines.map((one) => `${one}: ${reason}`).join(', ')} }`;
}

/** Terminals of one device as one name, `amp.IN5|IN6`: of a range, or of several with commas between them. */
export function openNames(written: string): string | null {
  const parts = written.split(/\s*(?:,|&|\band\b|\+(?=\s*[a-z]+\.))\s*/).map((one) => one.trim());
  const [device, ...others] = new Set(
    parts.flatMap((one) => (one.includes('.') ? one.split('.')[0] : []) ?? []),
  );
  if (device === undefined || others.length > 0) return null;
  const names = parts.flatMap((one) => rangeNames(one.replace(`${device}.`, '')));
  return names.every((one) => /^[^\s.]+$/.test(one)) ? `${device}.${names.join('|')}` : null;
}

/** `IN5..6`, `IN5-6` and `IN5-IN6` as their names. */
function rangeNames(written: string): readonly string[] {
  const [, stem = '', first, last, end = ''] =
    /^(.*?)(\d+)\s*(?:\.\.|[-–])\s*(?:\1)?(\d+)([+-]?)$/.exec(written) ?? [];
  const [from, to] = [Number(first), Number(last)];
  if (first === undefined || to <= from || to - from > mostInRange) return [written];
  return Array.from({ length: to - from + 1 }, (_, at) => `${stem}${from + at}${end}`);
}

const mostInRange = 32;

/** Acceptances are a list: one begins with a dash. */
function acceptedMeant(value: unknown): string | null {
  const told = hasFields(value) ? value : typeof value === 'string' ? { finding: value } : null;
  if (!told) return null;
  const [only] = Object.keys(told);
  const finding = told.finding ?? only;
  if (typeof finding !== 'string' || !idPattern.test(finding)) return null;
  const of = typeof told.of === 'string' && /^[\w.|+-]+$/.test(told.of) ? told.of : '';
  const figures = ['value', 'limit'].flatMap((key) => (told[key] === undefined ? [] : [`${key}: `]));
  const fields = [`finding: ${finding}`, `of: ${of}`, ...figures, 'reason: ', 'by: '];
  return `write it behind a dash, as rackleaf check prints it: accepted: on a line of its own, then   - { ${fields.join(', ').trimEnd()} }`;
}

/** A board of two numbers is a rectangle. */
function outlineMeant(value: unknown): string | null {
  const sides = hasFields(value)
    ? [value.width, value.height]
    : (/^(.+?)\s*[x×]\s*(.+)$/.exec(typeof value === 'string' ? value : '') ?? []).slice(1);
  const [width, height] = sides;
  const isRight = [width, height].every((one) => z.safeParse(extent, one).success);
  return isRight ? `write outline: { rectangle: { width: ${width}, height: ${height} } }` : null;
}

/** Sides are told as one sits in the vehicle, which is the driver's side by where its wheel is. */
function sideMeant(keys: Keys, value: unknown): string | null {
  const isSide = keys.at(-1) === 'side' || keys.at(-2) === 'side';
  const [left, right] = value === 'passenger' ? ['right', 'left'] : ['left', 'right'];
  return isSide && (value === 'driver' || value === 'passenger')
    ? `left and right are as one sits in it: with the steering wheel on the left write side: ${left}, with it on the right side: ${right}`
    : null;
}
