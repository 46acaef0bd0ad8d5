import type { z } from 'zod';
import { partsFileSchema } from '../../model/content/catalogue.ts';
import { frontMatterSchema } from '../../model/content/guide.ts';
import { jobSchema } from '../../model/content/job.ts';
import { shopSchema } from '../../model/content/shop.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import { vehicleSchema } from '../../model/content/vehicle.ts';
import { fileJsonSchema } from './file-json-schema.ts';
import { namesOfJob } from './job-names.ts';
import { dialect, type JsonSchema } from './json-schema.ts';
import { namesInJob, namesInShop, namesInVehicle, type ShopNames } from './shop-names.ts';
import { namesOfVehicleFile } from './vehicle-names.ts';

/** Where the schemas of a shop's files lie, from its root; the folder may be deleted at any time. */
export const schemaFolder = '.rackleaf/schemas';

/**
 * The schemas of each kind of file, with the names that the files of the shop give each other. `tell` puts the figures of
 * house rules into the texts of fields.
 */
export function kindSchemas(names: ShopNames, tell: (says: string) => string): readonly SourceFile[] {
  const of = (name: string, title: string, schema: z.ZodType, more: JsonSchema = {}): SourceFile => {
    const { $schema, ...file } = fileJsonSchema(schema, tell);
    return fileOf(`${name}.json`, { $schema, title, ...file, ...more });
  };
  return [
    of('shop', 'Shop', shopSchema, { allOf: [namesInShop(names)] }),
    of('parts', 'Parts', partsFileSchema),
    of('vehicle', 'Vehicle', vehicleSchema, { allOf: [namesInVehicle(names)] }),
    of('job', 'Job', jobSchema, { allOf: [namesInJob(names)] }),
    of('guide', 'First lines of a guide', frontMatterSchema),
  ];
}

/** What the files that give names of their own give: each has a schema of its own, which goes on from that of its kind. */
const namesOf = {
  job: namesOfJob,
  vehicle: namesOfVehicleFile,
} as const satisfies Record<string, (data: unknown, names: ShopNames) => JsonSchema>;
export type NamingKind = keyof typeof namesOf;

/** The schema of one job or vehicle: that of its kind, with the names that it gives itself. */
export function ownSchema(kind: NamingKind, id: string, data: unknown, names: ShopNames): SourceFile {
  const all = [{ $ref: `../${kind}.json` }, namesOf[kind](data, names)];
  return fileOf(`${kind}s/${id}.json`, { $schema: dialect, title: id, allOf: all });
}

function fileOf(name: string, schema: JsonSchema): SourceFile {
  return { path: `${schemaFolder}/${name}`, text: `${JSON.stringify(schema)}\n` };
}

/** The schema that a file of a shop is written by, from the root; null for a file that has none. */
export function schemaOf(path: string): string | null {
  if (path === 'content/shop.yaml') return `${schemaFolder}/shop.json`;
  const [, folder, name] = /^content\/(parts|vehicles|jobs)\/([^/]+)\.yaml$/.exec(path) ?? [];
  if (folder === undefined || name === undefined) return null;
  return folder === 'parts' ? `${schemaFolder}/parts.json` : `${schemaFolder}/${folder}/${name}.json`;
}
