import fc from 'fast-check';
import { CORE_SCHEMA, dump, load } from 'js-yaml';
import { describe, expect, test } from 'vitest';
import { placeText, pointer } from '../../../lib/model/place.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';

function read(source: string) {
  const { value, problems } = readYaml('job.yaml', source);
  if (!value) throw new Error(`not read: ${problems.map((one) => one.message).join()}`);
  return { ...value, said: problems.map((one) => `${placeText(one.where)} ${one.message}`) };
}

function said(source: string): string[] {
  return readYaml('job.yaml', source).problems.map((one) => `${placeText(one.where)} ${one.message}`);
}

/** The text that a value covers in its source. */
function covered(source: string, path: string): string | null {
  const span = read(source).span(path);
  return span && source.slice(span.start, span.end);
}

const job = `rackleaf: 1
title: "Two amplifiers" # as ordered
devices:
  amp-front:
    part: amp-4ch
    position: [3 in, 4 in]
  # the bass
  amp-bass: { part: amp-mono, gain: }
notes: |  # free | text
  Line one
  line two

left-open:
  - amp-front.REM
  -
`;

describe('plain data', () => {
  test('a job comes out as written', () => {
    expect(JSON.parse(JSON.stringify(read(job).data))).toEqual({
      rackleaf: 1,
      title: 'Two amplifiers',
      devices: {
        'amp-front': { part: 'amp-4ch', position: ['3 in', '4 in'] },
        'amp-bass': { part: 'amp-mono', gain: null },
      },
      notes: 'Line one\nline two\n',
      'left-open': ['amp-front.REM', null],
    });
    expect(read(job).said).toEqual([]);
  });

  // YAML 1.2.2, section 10.3.2, "Tag Resolution" of the core schema: its examples and its table.
  test.each([
    ['null', null],
    ['~', null],
    ['Null', null],
    ['true', true],
    ['False', false],
    ['0', 0],
    ['0o7', 7],
    ['0x3A', 58],
    ['-19', -19],
    ['0.', 0],
    ['-0.0', -0],
    ['.5', 0.5],
    ['+12e03', 12000],
    ['-2E+05', -200000],
    ['yes', 'yes'],
    ['on', 'on'],
    ['1_000', '1_000'],
    ['-0x1', '-0x1'],
    ['2026-03-14', '2026-03-14'],
    ['13-5/8"', '13-5/8"'],
    ['1:30', '1:30'],
  ])('core schema: %s', (written, value) => {
    expect(read(`a: ${written}`).data).toEqual({ a: value });
  });

  test('quotes keep a text a text, and so does the tag of a text', () => {
    expect(read('a: "12"\nb: \'true\'\nc: !!str 12\nd: !!float 3\n').data).toEqual({
      a: '12',
      b: 'true',
      c: '12',
      d: 3,
    });
  });

  test('agrees with the loader of the library on what both accept', () => {
    const leaf = fc.oneof(
      fc.string(),
      fc.integer(),
      // Whole numbers past 2^53 lose digits, and the reader refuses them: see its own case.
      fc.double({
        noNaN: true,
        noDefaultInfinity: true,
        min: -(2 ** 53),
        max: 2 ** 53,
        maxExcluded: true,
        minExcluded: true,
      }),
      fc.boolean(),
      fc.constant(null),
    );
    const { tree } = fc.letrec((tie) => ({
      tree: fc.oneof(
        { depthSize: 'small' },
        leaf,
        fc.array(tie('tree'), { maxLength: 4 }),
        fc.dictionary(fc.string({ minLength: 1 }), tie('tree'), { maxKeys: 4, noNullPrototype: true }),
      ),
    }));
    fc.assert(
      fc.property(tree, fc.integer({ min: -1, max: 3 }), fc.boolean(), (data, flowLevel, forceQuotes) => {
        fc.pre(data !== null && !JSON.stringify(data).includes('__proto__'));
        const source = dump(data, { flowLevel, forceQuotes });
        const document = read(source);
        expect(document.said).toEqual([]);
        expect(document.data).toEqual(load(source, { schema: CORE_SCHEMA }));
      }),
    );
  });

  test('no text makes the reader fail, and every place lies within the file', () => {
    const fragments = [
      'a: ',
      '- ',
      '? ',
      '\n',
      '  ',
      '{',
      '}',
      '[',
      ']',
      ',',
      '&x ',
      '*x',
      '!t ',
      '"',
      "'",
      '|',
    ];
    const more = [
      '#',
      ':',
      '\t',
      '---\n',
      '%TAG ! x\n',
      '.nan',
      '1',
      '__proto__: ',
      '\r\n',
      '\ufeff',
      '<<: ',
    ];
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(fc.constantFrom(...fragments, ...more), { maxLength: 12 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (source) => {
        const { value, problems } = readYaml('job.yaml', source);
        expect(value !== null || problems.length > 0).toBe(true);
        const lines = source.split(/\r\n|\r|\n/);
        for (const { where, message } of problems) {
          expect(where.column).toBeLessThanOrEqual((lines[where.line - 1] ?? '').length + 1);
          expect(message).not.toMatch(/undefined|\[object/);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('names of object machinery are plain names, and __proto__ is refused', () => {
    const document = read('constructor: 1\ntoString: 2\n__proto__: { polluted: true }\n');
    expect(Object.entries(document.data ?? {})).toEqual([
      ['constructor', 1],
      ['toString', 2],
    ]);
    expect(Object.getPrototypeOf(document.data)).toBeNull();
    expect('polluted' in {}).toBe(false);
    expect(document.said).toEqual(["job.yaml:3:1 __proto__ can't be used as a name"]);
  });
});

describe('places', () => {
  test('value and key have each a line and a column', () => {
    const document = read(job);
    expect(document.placeOf('/title')).toEqual({ file: 'job.yaml', line: 2, column: 8, path: '/title' });
    expect(placeText(document.keyPlaceOf('/title'))).toBe('job.yaml:2:1');
    expect(placeText(document.placeOf('/devices/amp-front/position/1'))).toBe('job.yaml:6:22');
    expect(placeText(document.keyPlaceOf('/devices/amp-front/position/1'))).toBe('job.yaml:6:22');
    expect(placeText(document.keyPlaceOf('/devices/amp-bass'))).toBe('job.yaml:8:3');
    expect(placeText(document.placeOf('/devices/amp-bass/gain'))).toBe('job.yaml:8:36');
    expect(placeText(document.placeOf('/notes'))).toBe('job.yaml:9:8');
  });

  test('what the file does not have takes the place of its nearest ancestor', () => {
    expect(read(job).placeOf('/devices/amp-front/turn/deg')).toEqual({
      file: 'job.yaml',
      line: 5,
      column: 5,
      path: '/devices/amp-front',
    });
    expect(read(job).span('/devices/amp-front/turn')).toBeNull();
  });

  test.each([
    ['/title', '"Two amplifiers"'],
    ['/devices/amp-front/position', '[3 in, 4 in]'],
    ['/devices/amp-front', 'part: amp-4ch\n    position: [3 in, 4 in]'],
    ['/devices/amp-bass', '{ part: amp-mono, gain: }'],
    ['/notes', '|  # free | text\n  Line one\n  line two'],
    ['/left-open', '- amp-front.REM\n  -'],
    ['/left-open/1', ''],
  ])('%s covers its text', (path, text) => {
    expect(covered(job, path)).toBe(text);
  });

  test.each([
    ['{a, b}', '/b', ''],
    ['{a: [1, # ]\n 2], b: {}}', '/a', '[1, # ]\n 2]'],
    ['[a: 1, {b: 2}]', '/0', 'a: 1'],
    ['[a: 1, {b: 2}]', '/1', '{b: 2}'],
    ["a: 'it''s'", '/a', "'it''s'"],
    ['a: first\n  second # c\nb: 1', '/a', 'first\n  second'],
    ['? a\n: x', '/a', 'x'],
    ['a: >-\n\n  x\n\nb: 1', '/a', '>-\n\n  x'],
    ['a: |', '/a', '|'],
    ['a:\n- x\n- y\n', '/a', '- x\n- y'],
  ])('in %j, %s covers its text', (source, path, text) => {
    expect(covered(source, path)).toBe(text);
  });

  test('keys with a slash or a tilde are escaped after RFC 6901', () => {
    const path = pointer(['a/b', 'c~d']);
    expect(path).toBe('/a~1b/c~0d');
    expect(covered('a/b: { c~d: x }', path)).toBe('x');
  });

  test('line ends of other systems, and a byte order mark, do not shift places', () => {
    expect(placeText(read('\ufeffa: 1\r\nb: 2\r\n').placeOf('/a'))).toBe('job.yaml:1:4');
    expect(placeText(read('\ufeffa: 1\r\nb: 2\r\n').placeOf('/b'))).toBe('job.yaml:2:4');
    expect(placeText(read('a: 1\rb: 2\r').placeOf('/b'))).toBe('job.yaml:2:4');
  });
});

describe('refusals', () => {
  test.each([
    ['a: &x 1\nb: *x\n', ['1:4 a has an anchor', '2:4 b is an alias']],
    [
      'a: 1\nb: 2\na: 3\na: [*y]\n',
      ['3:1 a stands here twice: first in line 1', '4:1 a stands', '4:5 entry 1 of a'],
    ],
    [
      '12: x\ntrue: y\n.inf: z\n"13": w\n',
      ['1:1 the name 12 is read as a number', '2:1 the name true', '3:1 the name .inf'],
    ],
    ['a:\n  : x\n', ['2:3 a name is missing']],
    ['? [a, b]\n: 1\nc: 2\n', ["1:3 a list, a block or an alias can't be a name"]],
    [
      'a: .nan\nb: -.inf\nc: 1e999\n',
      ['1:4 a is not a number', '2:4 b is not a number', '3:4 c is too large'],
    ],
    ['vin: 12345678901234567\n', ['1:6 vin has more digits than a number can hold']],
    ['a: !own x\nb: !own {c: 1}\n', ['1:9 a has the tag !own', '2:4 b has the tag !own']],
    ['a: !!int x\n', ['1:10 a has the tag !!int, but is something else']],
    ['a: 1\n---\nb: 2\n', ['2:1 a second document begins here']],
    ['a: 1\n---\n', ['2:1 a second document begins here']],
    ['%TAG !e! tag:x,2000:\n---\na: 1\n', ['1:1 a line that begins with %TAG']],
  ])('%j', (source, expected) => {
    const found = said(source);
    expect(found.length).toBe(expected.length);
    expected.forEach((start, index) => {
      expect(found[index]).toContain(`job.yaml:${start}`);
    });
  });

  test('the first of two equal names counts, and what was refused is marked as unread', () => {
    const document = read('a: 1\na: 2\nb: .nan\nc: [*x, 3]\n');
    expect(document.data).toEqual({ a: 1, b: null, c: [null, 3] });
    expect([...document.unread]).toEqual(['/b', '/c/0']);
    expect(placeText(document.placeOf('/a'))).toBe('job.yaml:1:4');
  });

  test.each(['', '# nothing\n', '---\n', '\n\n'])('an empty file, %j', (source) => {
    expect(readYaml('job.yaml', source).value).toBeNull();
    expect(said(source)).toEqual(['job.yaml:1:1 the file is empty: it begins with rackleaf: 1']);
  });
});
