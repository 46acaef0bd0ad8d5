import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { audiencesOf } from '../../lib/model/audience.ts';
import { outlineSchema } from '../../lib/model/outline.ts';

const rectangle = { width: '36 in', height: '18 in' };

function messages(value: unknown): string[] {
  const read = outlineSchema.safeParse(value);
  return read.success ? [] : read.error.issues.map((issue) => `${issue.path.join('/')} ${issue.message}`);
}

/** Every leaf of a schema: what holds no further fields, items or options. */
function leaves(schema: z.ZodType, path = ''): [string, z.ZodType][] {
  if (audiencesOf(schema).length > 0) return [[path, schema]];
  if (schema instanceof z.ZodObject)
    return Object.entries(schema.shape).flatMap(([key, field]) => leaves(asSchema(field), `${path}/${key}`));
  if (schema instanceof z.ZodOptional) return leaves(asSchema(schema.unwrap()), path);
  if (schema instanceof z.ZodArray) return leaves(asSchema(schema.element), `${path}/*`);
  if (schema instanceof z.ZodTuple)
    return schema.def.items.flatMap((item, at) => leaves(asSchema(item), `${path}/${at}`));
  if (schema instanceof z.ZodUnion)
    return schema.options.flatMap((option) => leaves(asSchema(option), `${path}`));
  return [[path, schema]];
}

function asSchema(value: unknown): z.ZodType {
  if (value instanceof z.ZodType) return value;
  throw new Error('not a schema');
}

describe('the outline of a board, as written', () => {
  it('reads fractions of an inch, feet and millimetres into metres', () => {
    const read = outlineSchema.parse({
      polygon: [
        ['0 in', '0 in'],
        ['13 5/8 in', '0 mm'],
        ["1' 6 in", '-25.4 mm'],
      ],
    });
    expect(read.polygon).toEqual([
      [0, 0],
      [0.346075, 0],
      [0.4572, -0.0254],
    ]);
  });

  it('reads every kind of cut', () => {
    const cuts = [
      { cut: 'corner', corner: 'lower-left', dx: '3 in', dy: '4 in' },
      { cut: 'corner', corner: 2, radius: '2 in' },
      { cut: 'notch', edge: 'top', from: 'right', offset: '6 in', width: '4 in', depth: '3 in' },
      { cut: 'step', corner: 'lower-right', dx: '5 in', dy: '2 in' },
      { cut: 'slot', x: '10 in', y: '9 in', length: '4 in', width: '1 in', turn: '30 deg' },
      { cut: 'hole', from: 'upper-left', x: '1 in', y: '1 in', diameter: '1/2 in', purpose: 'wire' },
      { cut: 'window', x: '2 in', y: '2 in', width: '5 in', height: '3 in', radius: '1/2 in' },
      { cut: 'arc-corner', radius: '1/2 in', corners: ['upper-left', 3] },
    ];
    const profile = { kind: 'round-over', size: '1/8 in' };
    const read = outlineSchema.parse({ rectangle, cuts, 'edge-profile': profile });
    expect(read.cuts).toHaveLength(cuts.length);
    expect(read.cuts?.[4]).toMatchObject({ cut: 'slot', x: 0.254, turn: 30 });
    expect(read['edge-profile']?.size).toBe(0.003175);
  });

  it('says what is wrong, each fault at its place', () => {
    expect(messages({})).toEqual([expect.stringContaining('needs one base shape')]);
    expect(
      messages({
        rectangle,
        polygon: [
          ['0 in', '0 in'],
          ['1 in', '0 in'],
          ['0 in', '1 in'],
        ],
      }),
    ).toEqual([expect.stringContaining('not both')]);
    expect(
      messages({
        rectangle,
        cuts: [
          { cut: 'nick' },
          { cut: 'notch', edge: 'top', offset: 6, width: '4 in', depth: '3' },
          { cut: 'corner', corner: 'middle', dx: '1 in', dy: '1 in' },
        ],
      }),
    ).toEqual([
      expect.stringMatching(/^cuts\/0\/cut is not a cut: write one of corner, notch/),
      expect.stringMatching(/^cuts\/1\/offset is a bare number/),
      expect.stringMatching(/^cuts\/1\/depth "3" has no unit/),
      expect.stringMatching(/^cuts\/2\/corner is not a corner/),
    ]);
    expect(messages({ rectangle, cuts: [{ cut: 'corner', corner: 'lower-left', dx: '1 in' }] })).toEqual([
      expect.stringContaining('needs dx and dy'),
    ]);
    expect(messages({ rectangle, cut: [] })).toEqual([expect.stringContaining('cut')]);
  });

  it('shows every leaf to those who build, and to nobody else', () => {
    const found = leaves(outlineSchema);
    expect(found.length).toBeGreaterThan(40);
    for (const [path, leaf] of found) expect([path, audiencesOf(leaf)]).toEqual([path, ['bench', 'shop']]);
  });

  it('has a JSON Schema of what is written', () => {
    const schema = z.toJSONSchema(outlineSchema, { io: 'input' });
    expect(JSON.stringify(schema)).toContain('"edge-profile"');
  });
});
