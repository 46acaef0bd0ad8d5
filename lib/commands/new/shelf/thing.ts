import { extent, faultBy, wireSize } from '../../../model/fields.ts';
import { kinds } from '../../../model/kinds/index.ts';
import { ferruleFor } from '../../../model/tables/ferrules.ts';
import { between } from '../ask/rows.ts';
import { idOf } from '../id-of.ts';
import type { Named } from '../yaml-text.ts';
import { type Slot, slotForms, type ThingForm, thingForms } from './thing-forms.ts';

/** What a line tells of a thing on the shelf. */
export interface Thing {
  /** What it is, without how much of it: it names a part that is new. */
  readonly words: string;
  /** The same with what stands behind commas: it names a part where another one has the shorter name. */
  readonly longer: string;
  readonly form: ThingForm;
  /** Its fields as a file has them: by its words, its measures, and what stands behind commas by name. */
  readonly fields: Named;
  readonly count: Count;
}

/** How much of it lies there: pieces, or the lengths on reels. */
export interface Count {
  readonly pieces: number | null;
  readonly reels: readonly string[];
}

const colours: Readonly<Record<string, string>> = {
  ...{ black: 'BK', brown: 'BN', red: 'RD', orange: 'OG', yellow: 'YE', green: 'GN', blue: 'BU' },
  ...{ violet: 'VT', grey: 'GY', gray: 'GY', white: 'WH', pink: 'PK', turquoise: 'TQ', clear: 'CLR' },
};

const reelLengths = /^(\d[\d./ ]*\s?(?:in|cm|ft|m)(?:\s*\+\s*\d[\d./ ]*\s?(?:in|cm|ft|m))*)$/;

/** How much of it a line tells at its end, and what is left of the line; `none` is what is known and not there. */
export function countAtEnd(line: string): { readonly left: string; readonly pieces: number | null } {
  const [, without] = /^(.*\S)\s+none$/i.exec(line.trim()) ?? [];
  if (without !== undefined) return { left: without, pieces: 0 };
  const [, left, by, beside] = /^(.*\S)\s+(?:[x×]\s?(\d+)|(\d+)\s?(?:pieces|pcs))$/.exec(line.trim()) ?? [];
  const pieces = by ?? beside;
  return left === undefined || pieces === undefined
    ? { left: line.trim(), pieces: null }
    : { left, pieces: Number(pieces) };
}

/** The lengths of reels in a text, `30 ft + 8 ft`; null where it is none. */
export function reelsIn(text: string): readonly string[] | null {
  if (!reelLengths.test(text)) return null;
  const lengths = text.split(/\s*\+\s*/);
  return lengths.every((one) => faultBy(extent, one) === null) ? lengths : null;
}

/** Reads a line such as `ring lug 4 AWG M8 x10, strip 18 mm`; as a text what is wrong with it, and how it is written. */
export function readThing(line: string): Thing | string {
  const [head = '', ...behind] = line.split(between).map((one) => one.trim());
  const form = thingForms.find(({ words }) => words.test(`${head} `));
  if (!form) return strangeThing(head);
  const { named, ...inHead } = countedBehind(behind);
  const { left, pieces } = inHead.pieces === null ? countAtEnd(head) : { left: head, pieces: inHead.pieces };
  let rest = left.replace(form.words, '').trim();
  const values: Record<string, Named[string]> = {};
  for (const slot of form.slots) {
    const found = slotValue(slot, rest);
    if (!found) {
      if (slot.optional) continue;
      return `lacks ${slot.field} where "${rest}" stands: write it so: ${form.example}`;
    }
    Object.assign(values, found.fields);
    rest = found.rest;
  }
  const reels = reelsIn(rest);
  if (rest !== '' && !reels) return `has "${rest}", which tells nothing of it: write it so: ${form.example}`;
  const words = reels ? left.slice(0, left.length - rest.length).trim() : left;
  const own = namedFields(named, Object.keys(kinds[form.kind].schema.shape));
  if (typeof own === 'string') return own;
  return {
    words,
    longer: [words, ...named].join(' '),
    form,
    fields: { ...form.fields, ...values, ...own },
    count: { pieces, reels: reels ?? [] },
  };
}

/** What stands behind commas, with how much there is where that stands at its end: `, tab 2.8 mm x50`. */
function countedBehind(behind: readonly string[]) {
  const { left, pieces } = countAtEnd(behind.at(-1) ?? '');
  return pieces === null ? { named: behind, pieces } : { named: [...behind.slice(0, -1), left], pieces };
}

/** What is said of a thing that no line tells: which command makes a part of it, in the person's own words. */
function strangeThing(head: string): string {
  const { left, pieces } = countAtEnd(head);
  const { kind, form } = kindByForm(left) ?? { kind: kindByName(left) ?? 'KIND', form: null };
  const rest = form === null ? null : left.slice(form.length).trim();
  const facts = isTap(left)
    ? tapFacts(left)
    : rest === null
      ? ''
      : ` --facts "${[form, ...figuresIn(rest)].join(', ')}"`;
  const title = `${left.charAt(0).toUpperCase()}${left.slice(1)}`.replaceAll('"', "'");
  const id = idOf(left) ?? 'NAME';
  const of = kind === 'KIND' ? ` with its kind for KIND: ${Object.keys(kinds).join(', ')}` : '';
  return `begins with no thing that is known here. Make it a part: rackleaf new part ${id} --kind ${kind} --title "${title}"${facts}${of}; then give its row as ${id} x${pieces ?? 1}. Known here are: ${kindsOfThings()}; or the name of a part`;
}

/** The kind whose form a text begins with: a rubber bush is a fixing. */
function kindByForm(text: string): { readonly kind: string; readonly form: string } | null {
  const words = text.toLowerCase().replaceAll(/\s+/g, '-');
  for (const kind of formedKinds)
    for (const form of kinds[kind].schema.shape.form.options)
      if (words === form || words.startsWith(`${form}-`)) return { kind, form };
  return null;
}

/** A tap plugs into a slot of a fuse panel: it takes the fuse of the slot and its own, and is a distribution of one way. */
const isTap = (text: string): boolean => /\bfuse[\s-]taps?\b/i.test(text);

/** The kind that a text calls by its name, in words or with hyphens; null where it calls none. */
function kindByName(text: string): string | null {
  if (isTap(text)) return 'distribution';
  const words = ` ${text.toLowerCase().replaceAll(/[\s-]+/g, ' ')} `;
  const called = Object.keys(kinds).filter((kind) => words.includes(` ${kind.replaceAll('-', ' ')} `));
  // A fuse holder is called a fuse too.
  return called.toSorted((a, b) => b.length - a.length)[0] ?? null;
}

/** The rows of a tap, with what the line tells of it: what the leaflet tells takes their place. */
function tapFacts(text: string): string {
  const [current = '10 A'] = /\d+(?:\.\d+)?\s*A\b/.exec(text) ?? [];
  const form = /standard/i.test(text) ? 'standard-blade' : 'mini-blade';
  const [lead = '16 AWG'] = /\d+ AWG/.exec(text) ?? [];
  return ` --case "60 mm, 30 mm, 30 mm, 0.05 kg" --terminal "IN, feed-in, , , , plug" --terminal "TAP, feed-out, , , , supplied-lead, ${lead} 150 mm" --way "TAP, IN, ${form}" --facts "${current}"`;
}

const formedKinds = ['fixing', 'terminal', 'covering'] as const;

/** Figures in a text, each with its unit: `M6 10 mm` is two. */
function figuresIn(text: string): readonly string[] {
  return text.match(/\S*\d\S*(?:\s+(?:mm2|mm|cm|m|in|ft|AWG)\b)?|\S+/g) ?? [];
}

function kindsOfThings(): string {
  return thingForms
    .map(({ example }) => example)
    .filter((one, at, all) => all.indexOf(one) === at)
    .join('; ');
}

interface Found {
  readonly fields: Named;
  readonly rest: string;
}

function slotValue({ field, form }: Slot, text: string): Found | null {
  // What a value is may stand before it or behind it: `tab 2.8 mm`, `2.8 mm tab`.
  const value = text.replace(new RegExp(`^${field}\\s+`, 'i'), '');
  const read = slotForms[form].exec(value);
  if (!read) return null;
  const fields = fieldsOf(field, form, read);
  const behind = value
    .slice(read[0].length)
    .replace(new RegExp(`^\\s*${field}(?=\\s|$)`, 'i'), '')
    .replace(/^\s*(?:[x×]\s+)?/, '');
  return fields && { fields, rest: behind };
}

function fieldsOf(
  field: string,
  form: Slot['form'],
  [, first = '', last, only]: RegExpExecArray,
): Named | null {
  switch (form) {
    case 'colour': {
      const letters = first.split(/\s?\/\s?|\s+with\s+/).map((word) => colours[word] ?? word);
      return letters.every((one) => /^[A-Z]{2,3}$/.test(one)) ? { [field]: letters.join('/') } : null;
    }
    case 'sizes': {
      const size = only === undefined ? null : sizeOf(only);
      if (only !== undefined) return size === null ? null : { [field]: { from: size, to: size } };
      return { [field]: { from: `${first} AWG`, to: last ?? '' } };
    }
    case 'sides': {
      const [unit = ''] = /[^\d\s./]+$/.exec(last ?? '') ?? [];
      return { width: /[^\d\s./]$/.test(first) ? first : `${first.trim()} ${unit}`, height: last ?? '' };
    }
    case 'size':
    case 'length':
    case 'thread':
    case 'current':
    case 'temperature':
      return { [field]: first.trim() };
  }
}

/** Conductors that a ferrule of this size is made for: it is called by its own area, the next above theirs. */
function sizeOf(written: string): string | null {
  const [, area] = /^(\d+(?:\.\d+)?)\s?mm2$/.exec(written) ?? [];
  if (area === undefined) return written;
  const gauges = ['20', '18', '16', '14', '12', '10', '8', '6', '4', '2'].map((gauge) => `${gauge} AWG`);
  return gauges.find((gauge) => ferruleFor(wireSize.parse(gauge).areaMm2)?.areaMm2 === Number(area)) ?? null;
}

/** `strip 18 mm`: a field by its name, with hyphens or blanks, `outside diameter 9 mm`. */
function namedFields(named: readonly string[], known: readonly string[]): Named | string {
  const fields: Record<string, string> = {};
  for (const one of named) {
    const spelt = known.find((name) => one.startsWith(`${name.replaceAll('-', ' ')} `));
    const written = spelt === undefined ? one : `${spelt}${one.slice(spelt.length)}`;
    const [, name, value] = /^([a-z][a-z-]*)[\s:]+(\S.*)$/.exec(written) ?? [];
    if (name === undefined || value === undefined)
      return `has "${one}" behind a comma: there stand fields of the part by their names, such as strip 18 mm`;
    fields[name] = value;
  }
  return fields;
}
