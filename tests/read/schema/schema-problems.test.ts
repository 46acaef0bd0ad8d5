import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { builders } from '../../../lib/model/audience.ts';
import {
  count,
  day,
  id,
  privateText,
  quantity,
  terminalRef,
  text,
  wireSize,
} from '../../../lib/model/fields.ts';
import { placeText } from '../../../lib/model/place.ts';
import type { Problem } from '../../../lib/model/problem.ts';
import { schemaProblems } from '../../../lib/read/schema/schema-problems.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';

function problems(schema: z.ZodType, source: string): Problem[] {
  const { value: document } = readYaml('job.yaml', source);
  if (!document) throw new Error('The source of the test can not be parsed.');
  const parsed = schema.safeParse(document.data);
  if (parsed.success) throw new Error('The source of the test fits.');
  return schemaProblems(document, parsed.error, schema);
}

function said(schema: z.ZodType, source: string): string[] {
  return problems(schema, source).map((one) => `${placeText(one.where)} ${one.message}`);
}

const amplifier = z.strictObject({
  kind: z.literal('amplifier'),
  width: quantity('length'),
  channels: count.optional(),
});
const battery = z.strictObject({ kind: z.enum(['battery', 'capacitor']), capacity: quantity('charge') });
const part = z.discriminatedUnion('kind', [amplifier, battery]);
const job = z.strictObject({
  title: text('Front amplifiers'),
  status: z.enum(['draft', 'released', 'installed', 'superseded']).optional(),
  'issued-on': day.optional(),
  parts: z.record(id, part).optional(),
  links: z.array(z.strictObject({ from: terminalRef, size: wireSize.optional() })).optional(),
});

describe('a file against its schema', () => {
  test('a bare number names its key and the unit it needs', () => {
    expect(said(job, 'title: A\nparts:\n  amp:\n    kind: amplifier\n    width: 12\n')).toEqual([
      'job.yaml:5:12 width is a bare number, but a length needs its unit: write 13 5/8 in, 13-5/8", 346 mm or 12 ft',
    ]);
  });

  test('what a codec refuses is told with the name before it', () => {
    expect(said(job, 'title: A\nparts: { amp: { kind: amplifier, width: 5 lb } }\n')).toEqual([
      'job.yaml:2:41 width: "lb" is not a unit of length (known: in, ", ft, \', mm, cm, m); write a length such as 13 5/8 in, 13-5/8", 346 mm or 12 ft',
    ]);
  });

  test('an unknown name stands at its key, with the nearest and all known ones', () => {
    const [problem, ...others] = problems(
      job,
      'title: A\nparts:\n  amp:\n    kind: amplifier\n    widht: 3 in\n',
    );
    expect(others).toEqual([]);
    expect(problem && placeText(problem.where)).toBe('job.yaml:5:5');
    expect(problem?.where.path).toBe('/parts/amp/widht');
    expect(problem?.message).toBe('widht is not a known name in amp; did you mean width?');
    expect(problem?.expected).toBe('known names: channels, kind, width');
  });

  test('an unknown name that is near to none is told without a guess, beside what is missing', () => {
    expect(said(job, 'colour: red\n')).toEqual([
      'job.yaml:1:1 title is missing in the file; write it, such as title: Front amplifiers',
      'job.yaml:1:1 colour is not a known name in the file',
    ]);
  });

  test('a missing name stands at its parent, with an example that may be pasted', () => {
    expect(said(job, 'title: A\nlinks:\n  - size: 4 AWG\nparts:\n  cell:\n    kind: battery\n')).toEqual([
      'job.yaml:3:5 from is missing in entry 1 of links; write it, such as from: amp-front.B+',
      'job.yaml:5:3 capacity is missing in cell; write it, such as capacity: 70 Ah',
    ]);
  });

  test('an example that YAML would misread is quoted', () => {
    const schema = z.strictObject({ serial: text('0012') });
    expect(said(schema, '{}')).toEqual([
      "job.yaml:1:1 serial is missing in the file; write it, such as serial: '0012'",
    ]);
  });

  test('an unknown word of an enumeration comes with the known ones and the nearest', () => {
    expect(said(job, 'title: A\nstatus: relased\n')).toEqual([
      'job.yaml:2:9 status can\'t be "relased": it needs one of draft, released, installed, superseded; did you mean released?',
    ]);
  });

  test('an unknown kind likewise, and a missing one', () => {
    expect(
      said(job, 'title: A\nparts:\n  a: { kind: amplifer }\n  b: { width: 3 in }\n  c: { kind: 3 }\n'),
    ).toEqual([
      'job.yaml:3:14 kind can\'t be "amplifer": it needs one of amplifier, battery, capacitor; did you mean amplifier?',
      'job.yaml:4:3 kind is missing in b; it needs one of amplifier, battery, capacitor',
      "job.yaml:5:14 kind can't be 3: it needs one of amplifier, battery, capacitor",
    ]);
  });

  test('the names known are those of the given kind alone', () => {
    const [, problem] = problems(job, 'title: A\nparts:\n  a: { kind: capacitor, withd: 3 in }\n');
    expect(problem?.expected).toBe('known names: capacity, kind');
    expect(problem?.message).toBe('withd is not a known name in a');
  });

  test('a name that the pattern of ids refuses stands at its key', () => {
    expect(said(job, 'title: A\nparts:\n  Amp_1: { kind: amplifier, width: 3 in }\n')).toEqual([
      'job.yaml:3:3 the name Amp_1 is not an id: use lower case letters, digits and single hyphens, such as amp-front',
    ]);
  });

  test('what is left empty is told so', () => {
    expect(said(job, 'title:\nstatus:\nparts: { a: }\n')).toEqual([
      'job.yaml:1:7 title is left empty; write a text, such as Front amplifiers',
      'job.yaml:2:8 status is left empty; write one of draft, released, installed, superseded, or leave the name out too',
      'job.yaml:3:12 a is left empty; write lines of the form name: value',
    ]);
  });

  test('the wrong sort of value is told in words of a file', () => {
    expect(said(job, 'title: [A]\nlinks: none\nparts: [1]\n')).toEqual([
      'job.yaml:1:8 title needs a text, such as Front amplifiers',
      'job.yaml:2:8 links is a text, but needs a list, such as [{ from: amp-front.B+ }]',
      'job.yaml:3:8 parts is a list, but needs lines of the form name: value, such as { amp-front: { kind: amplifier, width: 13 5/8 in } }',
    ]);
    expect(said(job, '- a\n')).toEqual([
      'job.yaml:1:1 the file is a list, but needs lines of the form name: value, such as { title: Front amplifiers }',
    ]);
  });

  test('what is missing and holds others is told by their names, with the example of each where that is short', () => {
    const length = (example: string) => builders(quantity('length'), 'A length.', { example });
    const box = z.strictObject({
      width: length('10 in'),
      depth: length('6 1/2 in'),
      height: count.optional(),
    });
    const long = z.strictObject(
      Object.fromEntries(
        Array.from({ length: 12 }, (_, at) => [`side-${at}`, length(`${at + 1} in`)] as const),
      ),
    );
    const schema = z.strictObject({ size: box, sides: long, version: z.literal(1), dry: z.boolean() });
    const names = Object.keys(long.shape).map((name) => `${name}: ...`);
    expect(said(schema, '{}')).toEqual([
      'job.yaml:1:1 size is missing in the file; write it, such as size: { width: 10 in, depth: 6 1/2 in }',
      `job.yaml:1:1 sides is missing in the file; write it, such as sides: { ${names.join(', ')} }`,
      'job.yaml:1:1 version is missing in the file; write version: 1',
      'job.yaml:1:1 dry is missing in the file; it needs true or false',
    ]);
  });

  test('problems come in the order of the file, and once', () => {
    const lines = said(
      job,
      'status: x\nissued-on: 2026-02-30\nlinks:\n  - { from: a, size: 5 AWG }\ntitle: 5\n',
    );
    expect(lines.map((line) => line.split(' ')[0])).toEqual([
      'job.yaml:1:9',
      'job.yaml:2:12',
      'job.yaml:4:13',
      'job.yaml:4:22',
      'job.yaml:5:8',
    ]);
  });

  test('what the reader refused already is not told again', () => {
    expect(said(job, 'title: .nan\nlinks: *x\nstatus: x\n')).toEqual([
      expect.stringContaining('job.yaml:3:9 status'),
    ]);
  });

  test('a private value is never repeated', () => {
    const schema = z.strictObject({ phone: privateText('+1 555 0100'), plate: privateText('AB 123') });
    expect(said(schema, 'phone: 5550123\nplate: [XY 987]\n').join()).not.toMatch(/5550123|987/);
  });
});

describe('a union without a discriminator', () => {
  const auto = z.strictObject({
    size: z.union([z.literal('auto'), wireSize, quantity('resistance')]).optional(),
  });

  test.each([
    ['size: atuo', ['size can\'t be "atuo": it needs auto; did you mean auto?']],
    ['size: 5 AWG', [expect.stringContaining('size: "5 AWG" is not a conductor size made here')]],
    ['size: [4 AWG]', ['size needs a conductor size with its unit, such as 4 AWG, 1/0 AWG or 16 mm2']],
  ])('%s: the option that fits best is told', (source, expected) => {
    expect(problems(auto, source).map((one) => one.message)).toEqual(expected);
  });

  test('of two blocks, the one with the fewest faults', () => {
    const round = z.strictObject({ diameter: quantity('length') });
    const square = z.strictObject({
      width: quantity('length'),
      height: quantity('length'),
      turn: quantity('angle'),
    });
    const schema = z.strictObject({ holes: z.array(z.union([round, square])) });
    expect(said(schema, 'holes:\n  - width: 3 in\n    height: 4\n    turn: 5 deg\n')).toEqual([
      expect.stringMatching(/^job.yaml:3:13 height is a bare number/),
    ]);
    expect(said(schema, 'holes:\n  - width: 3 in\n    height: 4 in\n')).toEqual([
      'job.yaml:2:5 turn is missing in entry 1 of holes; write it, such as turn: 90 deg',
    ]);
  });

  test('where none is nearer than the others, all that may stand there is told', () => {
    const schema = z.strictObject({ a: z.union([z.array(z.string()), z.number(), z.enum(['x', 'y'])]) });
    expect(said(schema, 'a: { b: 1 }')).toEqual([
      'job.yaml:1:4 a does not fit; it needs x or y, a list or a number',
    ]);
  });
});

// Every issue that the schema library knows, as far as YAML can bring it about, without any message of ours.
const raw: readonly [string, z.ZodType, string][] = [
  ['invalid_type', z.object({ a: z.string() }), 'a: 1'],
  ['invalid_type', z.object({ a: z.string() }), 'a: true'],
  ['invalid_type', z.object({ a: z.string() }), 'a: {}'],
  ['invalid_type', z.object({ a: z.string() }), '{}'],
  ['invalid_type', z.object({ a: z.number() }), 'a: x'],
  ['invalid_type', z.object({ a: z.int() }), 'a: 1.5'],
  ['invalid_type', z.object({ a: z.boolean() }), 'a: x'],
  ['invalid_type', z.object({ a: z.null() }), 'a: x'],
  ['invalid_type', z.object({ a: z.undefined() }), 'a: x'],
  ['invalid_type', z.object({ a: z.never() }), 'a: x'],
  ['invalid_type', z.object({ a: z.nan() }), 'a: 1'],
  ['invalid_type', z.object({ a: z.date() }), 'a: 2026-03-14'],
  ['invalid_type', z.object({ a: z.bigint() }), 'a: 1'],
  ['invalid_type', z.object({ a: z.symbol() }), 'a: 1'],
  ['invalid_type', z.object({ a: z.map(z.string(), z.string()) }), 'a: 1'],
  ['invalid_type', z.object({ a: z.set(z.string()) }), 'a: 1'],
  ['invalid_type', z.object({ a: z.tuple([z.string()]) }), 'a: 1'],
  ['invalid_type', z.object({ a: z.record(z.string(), z.string()) }), 'a: []'],
  ['invalid_type', z.object({ a: z.nonoptional(z.string().optional()) }), '{}'],
  ['invalid_type', z.object({ a: z.string().default('x') }), 'a: null'],
  ['invalid_type', z.object({ a: z.lazy(() => z.string()) }), 'a: 1'],
  ['invalid_type', z.intersection(z.object({ a: z.string() }), z.object({ b: z.number() })), 'b: x'],
  ['invalid_type', z.object({ a: z.string().transform((one) => one.length) }), 'a: 1'],
  ['invalid_type', z.object({ a: z.preprocess((one) => one, z.string()) }), 'a: 1'],
  ['invalid_type', z.string(), 'a: 1'],
  ['invalid_value', z.object({ a: z.literal('x') }), 'a: y'],
  ['invalid_value', z.object({ a: z.literal([1, null, true]) }), 'a: 2'],
  ['invalid_value', z.object({ a: z.enum(['x', 'y']) }), 'a: [x]'],
  ['invalid_value', z.object({ a: z.enum(['x', 'y']) }), '{}'],
  ['too_small', z.object({ a: z.number().min(2) }), 'a: 1'],
  ['too_small', z.object({ a: z.number().gt(2) }), 'a: 2'],
  ['too_small', z.object({ a: z.string().min(2) }), 'a: x'],
  ['too_small', z.object({ a: z.string().length(2) }), 'a: x'],
  ['too_small', z.object({ a: z.array(z.string()).min(1) }), 'a: []'],
  ['too_small', z.object({ a: z.tuple([z.string(), z.string()]) }), 'a: [x]'],
  ['too_big', z.object({ a: z.number().max(2) }), 'a: 3'],
  ['too_big', z.object({ a: z.int() }), 'a: 1e300'],
  ['too_big', z.object({ a: z.string().max(2) }), 'a: xyz'],
  ['too_big', z.object({ a: z.array(z.string()).max(1) }), 'a: [x, y]'],
  ['too_big', z.object({ a: z.tuple([z.string()]) }), 'a: [x, y]'],
  ['not_multiple_of', z.object({ a: z.number().multipleOf(2) }), 'a: 3'],
  ['invalid_format', z.object({ a: z.string().regex(/^y/) }), 'a: x'],
  ['invalid_format', z.object({ a: z.string().startsWith('y') }), 'a: x'],
  ['invalid_format', z.object({ a: z.string().endsWith('y') }), 'a: x'],
  ['invalid_format', z.object({ a: z.string().includes('y') }), 'a: x'],
  ['invalid_format', z.object({ a: z.email() }), 'a: x'],
  ['invalid_format', z.object({ a: z.url() }), 'a: x'],
  ['invalid_format', z.object({ a: z.iso.datetime() }), 'a: x'],
  ['invalid_format', z.object({ a: z.uuid() }), 'a: x'],
  ['invalid_format', z.object({ a: z.jwt() }), 'a: x'],
  ['invalid_format', z.object({ a: z.templateLiteral(['y', z.number()]) }), 'a: x'],
  ['unrecognized_keys', z.strictObject({}), 'a: x'],
  ['unrecognized_keys', z.partialRecord(z.enum(['x']), z.number()), 'y: 1'],
  ['invalid_union', z.object({ a: z.union([z.number(), z.boolean()]) }), 'a: x'],
  ['invalid_union', z.object({ a: z.union([z.number(), z.boolean()]) }), 'a:'],
  ['invalid_union', z.object({ a: z.union([z.number(), z.boolean()]) }), '{}'],
  ['invalid_union', z.object({ a: z.xor([z.string(), z.literal('x')]) }), 'a: x'],
  ['invalid_union', z.object({ a: part }), 'a: { kind: x }'],
  ['invalid_key', z.record(z.string().min(3), z.number()), 'y: 1'],
  ['invalid_key', z.record(z.string().regex(/^x/), z.number()), 'y: 1'],
  ['custom', z.object({ a: z.string().refine(() => false) }), 'a: x'],
  ['invalid_type', z.object({ a: z.instanceof(Date) }), 'a: x'],
  ['custom', z.object({ a: z.custom(() => false) }), 'a: x'],
];

test('a text in the place of a list is told once, and no length of it', () => {
  const schema = z.object({ a: z.array(z.string()).min(3).max(4) });
  for (const source of ['a: left', 'a: xy'])
    expect(problems(schema, source).map(({ message }) => message)).toEqual([
      expect.stringMatching(/^a is a text, but needs a list/),
    ]);
  expect(problems(schema, 'a: [x, y]').map(({ message }) => message)).toEqual([
    'a must have at least 3 entries',
  ]);
});

describe('the schema library is never quoted', () => {
  test.each(raw)('%s, %#', (code, schema, source) => {
    const { value: document } = readYaml('job.yaml', source);
    const issues = schema.safeParse(document?.data).error?.issues ?? [];
    expect(issues.map((issue) => issue.code)).toContain(code);
    const found = problems(schema, source);
    expect(found.length).toBeGreaterThan(0);
    for (const { message, expected = '', remedy = '' } of found) {
      expect(message).toMatch(/^(?:a|b|y|kind|the file|the name y)\b/);
      expect(`${message} ${expected} ${remedy}`).not.toMatch(
        /invalid|expected|received|input|unrecognized|discriminator|undefined|NaN|object|array|string|boolean|regex|schema|\[|>=|<=|"null"/i,
      );
      expect(message).not.toMatch(/\b(?:a|an|needs|write|must)\s*$|\s{2}/);
    }
  });
});
