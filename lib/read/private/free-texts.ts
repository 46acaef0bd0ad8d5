import type { z } from 'zod';
import { jobSchema, type WrittenJob } from '../../model/content/job.ts';
import { insideOf } from '../../model/writing/schema-shape.ts';

/** A text that its writer chose freely, and where the job has it. */
export interface FreeText {
  readonly path: readonly string[];
  readonly text: string;
}

/** A text and a name that mean nothing to any schema: what takes them takes whatever somebody writes. */
const probes = { text: 'Zyx, zyx 471', name: 'zyx-zyx' } as const;

/**
 * Every text of a job in which its writer may say anything, by the schema: texts, and the names that things are given.
 * Words that the schema chooses from, measures and names of what is defined elsewhere are none.
 */
export function freeTexts(job: Pick<WrittenJob, 'id'>): FreeText[] {
  return [{ path: ['id'], text: job.id }, ...textsIn(jobSchema, job, [])];
}

function textsIn(schema: z.ZodType, value: unknown, path: readonly string[]): FreeText[] {
  const inside = insideOf(schema);
  const below = (inner: z.ZodType | undefined, key: string, of: unknown): FreeText[] =>
    inner === undefined ? [] : textsIn(inner, of, [...path, key]);
  switch (inside.shape) {
    case 'object':
      return entriesOf(value).flatMap(([key, of]) => below(inside.fields.get(key), key, of));
    case 'record':
      return entriesOf(value).flatMap(([key, of]) => [
        ...(isNamedFreely(inside.key) ? [{ path: [...path, key], text: key }] : []),
        ...below(inside.value, key, of),
      ]);
    case 'list':
      return entriesOf(value).flatMap(([key, of]) => below(inside.element, key, of));
    case 'tuple':
      return entriesOf(value).flatMap(([key, of]) => below(inside.items[Number(key)], key, of));
    case 'union':
      return (
        inside.options.map((option) => textsIn(option, value, path)).find(({ length }) => length > 0) ?? []
      );
    case 'wrapper':
      return textsIn(inside.inner, value, path);
    case 'leaf':
      return typeof value === 'string' && schema.safeParse(probes.text).success
        ? [{ path, text: value }]
        : [];
  }
}

function entriesOf(value: unknown): [string, unknown][] {
  return typeof value === 'object' && value !== null ? Object.entries(value) : [];
}

/** True for the names of a record that its writer gives: names of terminals and controls are those of a part. */
function isNamedFreely(key: z.ZodType): boolean {
  return key.safeParse(probes.name).success && !key.safeParse(probes.text).success;
}
