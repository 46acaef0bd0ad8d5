import { readFileSync } from 'node:fs';
import type { z } from 'zod';
import { partsFileSchema } from '../../lib/model/content/catalogue.ts';
import { jobSchema } from '../../lib/model/content/job.ts';
import { shopSchema } from '../../lib/model/content/shop.ts';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { vehicleSchema } from '../../lib/model/content/vehicle.ts';
import { readYaml } from '../../lib/read/yaml/yaml.ts';

/** The files of a sound shop: where each lies in `content/`, and the schema that it is read by. */
export const sheets = {
  shop: { path: 'content/shop.yaml', schema: shopSchema },
  parts: { path: 'content/parts/parts.yaml', schema: partsFileSchema },
  vehicle: { path: 'content/vehicles/wagon.yaml', schema: vehicleSchema },
  wired: { path: 'content/jobs/wired.yaml', schema: jobSchema },
  board: { path: 'content/jobs/board.yaml', schema: jobSchema },
  banks: { path: 'content/jobs/banks.yaml', schema: jobSchema },
  charged: { path: 'content/jobs/charged.yaml', schema: jobSchema },
  short: { path: 'content/jobs/short.yaml', schema: jobSchema },
} as const satisfies Readonly<Record<string, { readonly path: string; readonly schema: z.ZodType }>>;
export type Sheet = keyof typeof sheets;

/** The jobs of the shop: amplifiers in the boot; one on a board; a second battery behind a relay, and behind a charger; one that leaves its links to the rules. */
export const jobSheets = ['wired', 'board', 'banks', 'charged', 'short'] as const;
export type JobSheet = (typeof jobSheets)[number];

export function isJobSheet(sheet: Sheet): sheet is JobSheet {
  return jobSheets.some((one) => one === sheet);
}

const names: readonly Sheet[] = ['shop', 'parts', 'vehicle', ...jobSheets];

function read(sheet: Sheet): unknown {
  const file = `${sheet === 'vehicle' ? 'wagon' : sheet}.yaml`;
  const text = readFileSync(new URL(`shop/${file}`, import.meta.url), 'utf8');
  const { value, problems } = readYaml(file, text);
  if (!value) throw new Error(problems.map(({ message }) => message).join('\n'));
  return value.data;
}

const written = Object.fromEntries(names.map((sheet) => [sheet, JSON.stringify(read(sheet), null, 1)]));

/** What stands in a file of the sound shop. */
export function dataOf(sheet: Sheet): unknown {
  return JSON.parse(written[sheet] ?? 'null');
}

/** The value of one field, as a slip leaves it; `gone` takes the line out. */
export interface Edit {
  readonly sheet: Sheet;
  readonly keys: readonly string[];
  readonly value: unknown;
}
export const gone = Symbol('gone');

/** What stands in a file after edits. */
export function dataAfter(sheet: Sheet, edits: readonly Edit[]): unknown {
  const data = dataOf(sheet);
  for (const { keys, value } of edits.filter((one) => one.sheet === sheet)) edit(data, keys, value);
  return data;
}

/** The files of the shop with one of its jobs, after edits. JSON is YAML: each value has a line of its own. */
export function shopWith(job: JobSheet, edits: readonly Edit[]): SourceFile[] {
  return names
    .filter((sheet) => !isJobSheet(sheet) || sheet === job)
    .map((sheet) => {
      const own = edits.filter((edit) => edit.sheet === sheet);
      const { path } = sheets[sheet];
      if (own.length === 0) return { path, text: written[sheet] ?? '' };
      return { path, text: JSON.stringify(dataAfter(sheet, own), null, 1) };
    });
}

function edit(data: unknown, keys: readonly string[], value: unknown): void {
  const [key, ...rest] = keys;
  if (key === undefined || typeof data !== 'object' || data === null)
    throw new Error(`There is no place for ${keys.join('/')}.`);
  if (rest.length > 0) {
    if (Reflect.get(data, key) === undefined) Reflect.set(data, key, {});
    edit(Reflect.get(data, key), rest, value);
  } else if (value === gone) Reflect.deleteProperty(data, key);
  else Reflect.set(data, key, structuredClone(value));
}
