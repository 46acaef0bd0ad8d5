import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { WrittenValue } from '../../../lib/model/content/proposal.ts';
import { type Additions, insertions } from '../../../lib/read/yaml/insertions.ts';
import { splice } from '../../../lib/read/yaml/splice.ts';
import { blockLines, flowText, sectionLines } from '../../../lib/read/yaml/write-value.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';

const order = ['id', 'devices', 'links', 'boards', 'runs'];

function dataOf(source: string): unknown {
  const { value: doc, problems } = readYaml('job.yaml', source);
  if (!doc || problems.length > 0) throw new Error(`${problems[0]?.message}\n${source}`);
  return doc.data;
}

function written(source: string, values: Additions): string {
  const doc = readYaml('job.yaml', source).value;
  if (!doc) throw new Error(`The source of the test can not be read: ${source}`);
  const text = splice(source, insertions(doc, values, order));
  if (typeof text !== 'string') throw new Error(text.fault);
  return text;
}

const lines = (...all: readonly string[]) => `${all.join('\n')}\n`;

describe('insertions', () => {
  test('go below the last line of their block, in its column, and leave comments where they are', () => {
    const source = lines(
      'devices: # all of them',
      '    amp:',
      '        part: amp-a # the large one',
      '        # to be placed',
      '',
      '# what is joined',
      'runs: {}',
    );
    expect(written(source, { devices: { amp: { turn: 90 }, sub: { part: 'sub-a' } } })).toBe(
      lines(
        'devices: # all of them',
        '    amp:',
        '        part: amp-a # the large one',
        '        # to be placed',
        '        turn: 90',
        '    sub: { part: sub-a }',
        '',
        '# what is joined',
        'runs: {}',
      ),
    );
  });

  test('within braces go behind the last entry, before a comma or a comment that stands there', () => {
    const added = (source: string) => written(source, { devices: { amp: { turn: 90, on: 'board' } } });
    expect(added('devices: { amp: { part: a } } # one\n')).toBe(
      'devices: { amp: { part: a, turn: 90, on: board } } # one\n',
    );
    expect(added('devices: { amp: {} }\n')).toBe('devices: { amp: { turn: 90, on: board } }\n');
    const open = lines('devices:', '  amp: {', '    part: a, # large', '   }');
    expect(dataOf(added(open))).toEqual({ devices: { amp: { part: 'a', turn: 90, on: 'board' } } });
    expect(added(open)).toContain('# large');
  });

  test('of a section go behind the nearest one that comes before it', () => {
    const source = lines('id: a', 'devices:', '  amp: { part: b }', '', '# the way', 'runs: {}', '# the end');
    expect(written(source, { links: { feed: { from: 'a.B', to: 'b.C' } }, notes: ['x: y'] })).toBe(
      lines(
        'id: a',
        'devices:',
        '  amp: { part: b }',
        '',
        'links:',
        '  feed: { from: a.B, to: b.C }',
        '',
        '# the way',
        'runs: {}',
        '# the end',
        '',
        'notes: ["x: y"]',
      ),
    );
  });

  test('put a single value in the place of the one that stands there', () => {
    expect(
      written('links: { feed: { from: d.O1|O2, to: "a.B+" } } # x\n', { links: { feed: { from: 'd.O2' } } }),
    ).toBe('links: { feed: { from: d.O2, to: "a.B+" } } # x\n');
  });

  test('are made with the line ends of the file, and without one at the end where it has none', () => {
    expect(written('devices:\r\n  amp: { part: a }', { devices: { b: { part: 'c' } }, links: {} })).toBe(
      'devices:\r\n  amp: { part: a }\r\n  b: { part: c }\r\n\r\nlinks: {}',
    );
  });
});

describe('a text that is written', () => {
  test.each([
    'true',
    '~',
    '12',
    '1e3',
    '0x1F',
    '-',
    'a: b',
    'a #b',
    "it's",
    ' a',
    'a ',
    '{a',
    'a,b',
    '',
    '1/2 in',
  ])('%j is read back as the same text, in a block and within braces', (text) => {
    expect(dataOf(blockLines('a', text, '').join('\n'))).toEqual({ a: text });
    expect(dataOf(`a: ${flowText([text, { b: text }])}`)).toEqual({ a: [text, { b: text }] });
  });
});

const key = fc.constantFrom('a', 'b', 'c', 'amp.B+', 'SP1-');
const leaf = fc.oneof(
  fc.string({ maxLength: 6 }),
  fc.integer({ min: -9, max: 999 }),
  fc.constantFrom('3 5/8 in', 'amp.CH1+', 'nothing plays it, yet'),
);
const block = fc.dictionary(key, fc.oneof(leaf, fc.array(leaf, { maxLength: 3 }), fc.dictionary(key, leaf)));
const file = fc.dictionary(fc.constantFrom('devices', 'links', 'boards', 'notes'), fc.dictionary(key, block));

type Tree = { [key: string]: WrittenValue };
const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What a file says once it says more. */
function merged(base: Tree, more: Tree): Tree {
  const both = Object.entries(more).map(([name, value]) => {
    const own = base[name];
    return [name, isTree(own) && isTree(value) ? merged(own, value) : value] as const;
  });
  return { ...base, ...Object.fromEntries(both) };
}

/** What puts no single value in the place of a block: nothing that is kept does. */
function addable(base: Tree, more: Tree): Tree {
  const both = Object.entries(more).flatMap(([name, value]) => {
    const own = base[name];
    if (!isTree(own)) return [[name, value] as const];
    return isTree(value) ? [[name, addable(own, value)] as const] : [];
  });
  return Object.fromEntries(both);
}

/** A file as somebody may write it: braces or blocks, a comment on each line and between them. */
function asWritten(data: Tree, inBraces: boolean): string {
  const body = inBraces
    ? Object.entries(data).map(([name, value]) => `${name}: ${flowText(value)}`)
    : Object.entries(data).flatMap(([name, value]) =>
        isTree(value) && Object.keys(value).length > 0
          ? [`${name}:`, ...sectionLines(value, '   ')]
          : [`${name}: ${flowText(value)}`],
      );
  return lines('id: x', ...body.flatMap((line, index) => [`${line} # ${index}`, `# below ${index}`]));
}

test('a file says what it said and what was added, with every comment and the order of its lines', () => {
  fc.assert(
    fc.property(file, file, fc.boolean(), fc.boolean(), (base, wish, inBraces, isCrlf) => {
      const more = addable(base, wish);
      const lf = asWritten(base, inBraces);
      const source = isCrlf ? lf.replaceAll('\n', '\r\n') : lf;
      const text = written(source, more);
      expect(dataOf(text)).toEqual(merged({ id: 'x', ...base }, more));
      const comments = (one: string) => one.match(/# (?:below )?\d+(?=\r?\n)/g);
      expect(comments(text)).toEqual(comments(source));
      expect(/\r(?!\n)|(?<!\r)\n/.test(text)).toBe(!isCrlf);
    }),
  );
});
