import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import { controlDefaults, controlFill } from '../../model/short-forms/control-defaults.ts';
import { rowNames } from '../../model/short-forms/row-names.ts';
import { type ShortForm, wordFor } from '../../model/short-forms/short-form.ts';
import { inWords } from '../../propose/draft/open-groups.ts';
import type { FormFaults } from './faults.ts';
import { openRows } from './open-rows.ts';
import { steppedLength } from './step-length.ts';
import {
  below,
  type Entry,
  textOf,
  type Written,
  type WrittenBlock,
  withEntries,
  without,
} from './written-tree.ts';

/** What a value with a short form stands in. */
export interface Around {
  /** Its name; none for an entry of a list. */
  readonly name: string | null;
  /** What holds it. */
  readonly parent: Written | null;
  readonly faults: FormFaults;
}

/** The long form of a value; the value itself where it is written long, or is neither. */
export function openedForm(form: ShortForm, node: Written, around: Around): Written {
  switch (form.form) {
    case 'rows':
      return node.kind === 'block' ? openRows(node, form.along, around.faults) : node;
    case 'range':
      return openText(node, /^(?<from>.+?) to (?<to>.+)$/);
    case 'table':
      return openTable(node, form.key, form.value);
    case 'names':
      return openNames(node, around.faults);
    case 'corners':
      return openCorners(node, around.parent);
    case 'control':
      return fillControl(node);
    case 'channel':
      return openChannel(node, around.faults);
    case 'coil':
      return openCoil(node, around.name);
    case 'titled':
      return openTitle(node, around.name);
    case 'rectangle':
      return openRectangle(node);
    case 'stretch':
      return openText(node, /^(?<zone>[a-z-]+) +(?<length>.+)$/);
    case 'measure':
      return node.kind === 'leaf' ? block(node, { [form.field]: node }) : node;
    case 'words':
      return leafOf(node, wordFor(form.words, textOf(node) ?? ''));
  }
}

const leaf = ({ at }: Written, value: unknown): Written => ({ kind: 'leaf', at, value });

/** A word in the place of another; the value itself where there is none. */
const leafOf = (node: Written, word: string | null): Written => (word === null ? node : leaf(node, word));

/** Named values that one written value stands for. */
function block({ at }: Written, values: Readonly<Record<string, Written>>): WrittenBlock {
  const entries = Object.entries(values).map(([name, node]): [string, Entry] => [name, { key: at, node }]);
  return { kind: 'block', at, entries: new Map(entries) };
}

/** A block with those of the values in it that it does not have itself; their names stand where another value does. */
function filledUp(node: WrittenBlock, by: Written, values: Readonly<Record<string, Written>>): WrittenBlock {
  const lacking = [...block(by, values).entries].filter(([name]) => !node.entries.has(name));
  return withEntries(node, lacking);
}

/** Named values in one text, by the groups of its form. */
function openText(node: Written, form: RegExp): Written {
  const { groups } = form.exec(textOf(node)?.trim() ?? '') ?? {};
  if (!groups) return node;
  return block(
    node,
    Object.fromEntries(Object.entries(groups).map(([name, text]) => [name, leaf(node, text)])),
  );
}

function openTable(node: Written, key: string, value: string): Written {
  if (node.kind !== 'block') return node;
  const items = [...node.entries].map(([name, { key: at, node: held }]) =>
    block(held, { [key]: leaf({ ...held, at }, name), [value]: held }),
  );
  return { kind: 'list', at: node.at, items };
}

function openNames(node: Written, faults: FormFaults): Written {
  const items = node.kind === 'list' ? node.items : [node];
  return { kind: 'list', at: node.at, items: items.flatMap((item) => namesOf(item, faults)) };
}

function namesOf(item: Written, faults: FormFaults): readonly Written[] {
  if (item.kind === 'list') {
    faults.value(
      item.at,
      'a list stands in a list, and there is no row for it',
      'write the names in one list',
    );
    return [];
  }
  if (item.kind !== 'leaf') return [item];
  const names = rowNames(String(item.value));
  if (!('unreadable' in names)) return names.map((name) => leaf(item, name));
  faults.value(item.at, `"${String(item.value)}" ${names.unreadable}`);
  return [];
}

/** Holes at one distance from both edges, from the lower left corner up, then those at the right. */
function openCorners(node: Written, part: Written | null): Written {
  const [inset, diameter] = [below(node, 'inset'), below(node, 'diameter')];
  const size = below(part, 'size');
  const [width, depth] = [textOf(below(size, 'width')), textOf(below(size, 'depth'))];
  if (!inset || !diameter || width === null || depth === null) return node;
  const near = textOf(inset) ?? '';
  const far = (side: string) => leaf(inset, steppedLength(side, near, -1) ?? side);
  const at = leaf(inset, near);
  const corners = [at, far(width)].flatMap((x) => [at, far(depth)].map((y) => ({ x, y, diameter })));
  return { kind: 'list', at: node.at, items: corners.map((corner) => block(node, corner)) };
}

function fillControl(node: Written): Written {
  const what = below(node, 'what');
  if (node.kind !== 'block' || !what) return node;
  const word = textOf(what);
  if (!isControlWhat(word)) return node;
  const filter = below(node, 'filter');
  const passes = below(filter, 'passes');
  const fill = controlFill({
    what: word,
    form: textOf(below(node, 'form')) ?? undefined,
    positions: textsOf(below(node, 'positions')),
    safe: textOf(below(node, 'safe')) ?? undefined,
    automatic: textsOf(below(node, 'automatic')),
    pass: textOf(below(filter, 'pass')) ?? undefined,
    passes:
      passes?.kind === 'block'
        ? Object.fromEntries([...passes.entries].map(([name, one]) => [name, textOf(one.node) ?? '']))
        : undefined,
  });
  const values = Object.entries(fill).map(([name, value]): [string, Written] => [name, filled(what, value)]);
  return filledUp(node, what, Object.fromEntries(values));
}

function filled(what: Written, value: string | readonly string[]): Written {
  if (typeof value === 'string') return leaf(what, value);
  return { kind: 'list', at: what.at, items: value.map((one) => leaf(what, one)) };
}

function textsOf(node: Written | null): readonly string[] | undefined {
  return node?.kind === 'list' ? node.items.map((item) => textOf(item) ?? '') : undefined;
}

function isControlWhat(word: string | null): word is ControlSpec['what'] {
  return word !== null && Object.hasOwn(controlDefaults, word);
}

/** What an amplifier's outputs go by: the pair whose name they share. */
function openChannel(node: Written, faults: FormFaults): Written {
  const output = below(node, 'output');
  const pair = textOf(output);
  if (node.kind !== 'block' || !output || pair === null) return node;
  const both = ['positive', 'negative'].find((name) => node.entries.has(name));
  if (both !== undefined)
    faults.value(
      output.at,
      `output and ${both} stand together`,
      'keep output: or positive: and negative:, not both',
    );
  const ends = { positive: leaf(output, `${pair}+`), negative: leaf(output, `${pair}-`) };
  return withEntries(without(node, 'output'), block(output, ends).entries);
}

function openCoil(node: Written, name: string | null): Written {
  if (node.kind !== 'block' || name === null) return node;
  return filledUp(node, node, { positive: leaf(node, `${name}+`), negative: leaf(node, `${name}-`) });
}

/** What has no title is called by its id in words; common practice, no source. */
function openTitle(node: Written, name: string | null): Written {
  if (node.kind !== 'block' || name === null) return node;
  return filledUp(node, node, { title: leaf(node, inWords(name)) });
}

/** Width and height in one text, the unit of both behind the second where it stands once: `20 x 15 in`. */
function openSides(node: Written): Written {
  const { groups } =
    /^(?<width>.*\d\S*(?:\s*[a-z]+)?)\s*[x×]\s*(?<height>\d.*)$/i.exec(textOf(node)?.trim() ?? '') ?? {};
  const { width, height } = groups ?? {};
  if (width === undefined || height === undefined) return node;
  const [unit = ''] = /[^\d\s./-]+$/.exec(height) ?? [];
  const whole = /\d$/.test(width.trim()) ? `${width.trim()} ${unit}` : width.trim();
  return block(node, { width: leaf(node, whole), height: leaf(node, height) });
}

/** The corners of a rectangle, from the datum counter-clockwise. */
function openRectangle(written: Written): Written {
  const node = openSides(written);
  const [width, height] = [below(node, 'width'), below(node, 'height')];
  if (node.kind !== 'block' || !width || !height) return node;
  const none = (like: Written) => leaf(like, steppedLength(textOf(like) ?? '', textOf(like) ?? '', -1));
  const corners = [
    [none(width), none(height)],
    [width, none(height)],
    [width, height],
    [none(width), height],
  ];
  return { kind: 'list', at: node.at, items: corners.map((items) => ({ kind: 'list', at: node.at, items })) };
}
