import type { z } from 'zod';
import type { Read } from '../../model/problem.ts';
import type { YamlDocument } from '../yaml/yaml.ts';
import { schemaProblems } from './schema-problems.ts';

/** Checks the shape of a file. The value is null where it has not the shape; the problems say why. */
export function shape<S extends z.ZodType>(document: YamlDocument, schema: S): Read<z.output<S> | null> {
  const parsed = schema.safeParse(document.data);
  if (parsed.success) return { value: parsed.data, problems: [] };
  return { value: null, problems: schemaProblems(document, parsed.error, schema) };
}
