import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { jobSchema } from '../../lib/model/content/job.ts';
import { fileSchema } from '../../lib/model/short-forms/file-schema.ts';
import { privateLeaks } from '../../lib/read/private-leaks.ts';
import { Report } from '../../lib/read/report.ts';
import { schemasAt } from '../../lib/read/schema/schema-walk.ts';
import { type Field, fieldOf } from '../fields/leaves.ts';
import { dataAfter, dataOf } from '../fields/shop.ts';

/* Each field of a job that takes whatever is written, found by the schema of its file, with the plate in it. */

const plate = 'QZX 471';
const written = fileSchema(jobSchema);

/** Every text of a value with its keys. */
function textsIn(value: unknown, keys: readonly string[] = []): (readonly [readonly string[], string])[] {
  if (typeof value === 'string') return [[keys, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => textsIn(inner, [...keys, key]));
}

function leaksOf(job: z.output<typeof jobSchema>): string[] {
  const place = (path: string) => ({ file: 'job.yaml', line: 1, column: path.length, path });
  const report = new Report({ placeOf: place, keyPlaceOf: place, rowOf: () => null, span: () => null });
  privateLeaks(job, report);
  return report.problems.map(({ where }) => where.path);
}

/** The paths of all fields that say anything, each with what is told once it holds the plate. */
function tried(sheet: 'wired' | 'board') {
  const data = dataOf(sheet);
  return textsIn(data).flatMap(([keys, text]) => {
    const schemas = schemasAt(written, keys, data);
    if (keys[0] === 'customer' || !schemas.some((one) => z.safeParse(one, `${text}, zyx 1.`).success))
      return [];
    const edits = [
      { sheet, keys, value: `${text} ${plate}` },
      { sheet, keys: ['customer'], value: { plate } },
    ];
    const job = jobSchema.safeParse(dataAfter(sheet, edits));
    const field: Field = fieldOf(sheet, keys, data);
    return job.success ? [{ field, path: `/${keys.join('/')}`, told: leaksOf(job.data) }] : [];
  });
}

describe.each(['wired', 'board'] as const)('the plate in a text of the job %s', (sheet) => {
  test('is told in whatever field it stands, at its place', () => {
    const all = tried(sheet);
    expect(new Set(all.map(({ field }) => field)).size).toBeGreaterThan(5);
    for (const { path, told } of all) expect(told, path).toEqual([path]);
  });
});

test('every field that takes any text is among them', () => {
  const fields = new Set((['wired', 'board'] as const).flatMap(tried).map(({ field }) => field));
  for (const field of ['job/title', 'job/notes[]', 'job/boards/*/title', 'job/photos/*/shows'])
    expect([...fields]).toContain(field);
});
