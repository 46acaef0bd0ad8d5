import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { kindSchemas, ownSchema, schemaOf } from '../../../lib/export/schemas/schema-files.ts';
import { namesOfShop } from '../../../lib/export/schemas/shop-names.ts';
import { nothingReleased } from '../../../lib/model/content/built.ts';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import type { Problem } from '../../../lib/model/problem.ts';
import {
  baseName,
  type ContentFiles,
  contentFiles,
  openShop,
  readCatalogue,
} from '../../../lib/read/read-content.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';

/** The data of a YAML file. */
export function dataOf({ path, text }: SourceFile): unknown {
  return readYaml(path, text).value?.data;
}

/** A shop with the schemas of its files, and what its reader says of one file in the place of its own. */
export class SchemaShop {
  readonly files: ContentFiles;
  readonly schemas: readonly SourceFile[];
  readonly #catalogue;
  readonly #shop;
  readonly #ajv = new Ajv2020({ strict: false, validateFormats: false, logger: false });

  constructor(files: readonly SourceFile[]) {
    this.files = contentFiles(files);
    this.#catalogue = readCatalogue(this.files);
    this.#shop = openShop(this.files, this.#catalogue);
    const names = namesOfShop(this.#shop);
    this.schemas = [
      ...kindSchemas(names, (says) => says),
      ...this.files.jobs.map((file) => ownSchema('job', baseName(file.path), dataOf(file), names)),
      ...this.files.vehicles.map((file) => ownSchema('vehicle', baseName(file.path), dataOf(file), names)),
    ];
    for (const { path, text } of this.schemas) this.#ajv.addSchema(JSON.parse(text), `file:///${path}`);
  }

  /** What the meta-schema finds wrong with a schema. */
  faultsOf(text: string): readonly string[] {
    const isValid = this.#ajv.validateSchema(JSON.parse(text));
    return isValid === true ? [] : (this.#ajv.errors ?? []).map(({ message }) => String(message));
  }

  /** What the schema of a file finds wrong with data in its place. */
  refusals(path: string, data: unknown): readonly string[] {
    const check: ValidateFunction | undefined = this.#ajv.getSchema(`file:///${schemaOf(path)}`);
    if (!check) throw new Error(`${path} has no schema.`);
    if (check(data)) return [];
    return (check.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
  }

  /** The problems that a reader tells of a file which stands in the place of the shop's own. */
  problems(file: SourceFile): readonly Problem[] {
    const own = (problems: readonly Problem[]) => problems.filter(({ where }) => where.file === file.path);
    const { shop, parts } = this.files;
    if (file.path.startsWith('content/jobs/')) return this.#shop.readJob(file, nothingReleased).problems;
    if (file.path.startsWith('content/vehicles/'))
      return own(openShop({ vehicles: [file], guides: [] }, this.#catalogue).problems);
    if (file.path === 'content/shop.yaml') return own(readCatalogue({ shop: [file], parts }).problems);
    return own(readCatalogue({ shop, parts: [file] }).problems);
  }
}
