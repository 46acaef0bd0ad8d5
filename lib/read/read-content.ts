import type { z } from 'zod';
import { partsFileSchema } from '../model/catalogue.ts';
import type { Guide } from '../model/guide.ts';
import { type JobFile, jobSchema } from '../model/job.ts';
import type { Part } from '../model/kinds/index.ts';
import { type Place, pointer } from '../model/place.ts';
import type { Problem } from '../model/problem.ts';
import type { Job } from '../model/resolved-job.ts';
import { type Shop, shopSchema } from '../model/shop.ts';
import type { SourceFile } from '../model/source-file.ts';
import { type Vehicle, vehicleSchema } from '../model/vehicle.ts';
import { readGuide } from './read-guide.ts';
import { readHouseRules } from './read-house-rules.ts';
import { Report } from './report.ts';
import { resolveJob, type Surroundings } from './resolve-job.ts';
import { shape } from './shape.ts';
import { vehicleNames } from './vehicle-names.ts';
import { readYaml, type YamlDocument } from './yaml.ts';

/** All that a shop wrote, as far as it could be read. */
export interface Content {
  readonly shop: Shop | null;
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
  readonly jobs: readonly Job[];
  readonly guides: readonly Guide[];
  /** Every problem of every file, in the order of the files. */
  readonly problems: readonly Problem[];
}

/** Wire labels that a released revision fixed, by job and wire id. */
export type ReleasedLabels = Readonly<Record<string, Readonly<Record<string, string>>>>;

interface Shaped<T> {
  readonly document: YamlDocument;
  readonly value: T;
}

/**
 * Reads the files of `content/`: shape first, then names, then what they say together, each on all that
 * could be read so far. Nothing throws for bad input: the problems tell, each with its place.
 */
export function readContent(files: readonly SourceFile[], releasedLabels: ReleasedLabels = {}): Content {
  const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
  const inside = (folder: string, end: string) =>
    sorted.filter(({ path }) => new RegExp(`(^|/)content/${folder}[^/]+\\${end}$`).test(path));
  const problems: Problem[] = [];

  const shop = readShop(
    inside('', '.yaml').filter(({ path }) => path.endsWith('/shop.yaml') || path === 'content/shop.yaml'),
    problems,
  );
  const parts = readParts(inside('parts/', '.yaml'), problems);
  const vehicles = byId(readAll(inside('vehicles/', '.yaml'), vehicleSchema, problems), 'vehicle', problems);
  for (const { document, value } of vehicles)
    problems.push(...named(document, (report) => vehicleNames(value, parts.parts, report)));
  if (shop) problems.push(...named(shop.document, (report) => checkStock(shop.value, parts.parts, report)));
  const guides = inside('guides/', '.md').flatMap((file) => {
    const guide = readGuide(file);
    problems.push(...guide.problems);
    return guide.value ? [guide.value] : [];
  });
  const jobFiles = byId(readAll(inside('jobs/', '.yaml'), jobSchema, problems), 'job', problems);
  const jobs = shop
    ? resolveJobs(
        jobFiles,
        { shop: shop.value, shopDocument: shop.document, ...parts },
        vehicles,
        releasedLabels,
        problems,
      )
    : [];
  return {
    shop: shop?.value ?? null,
    parts: parts.parts,
    vehicles: Object.fromEntries(vehicles.map(({ value }) => [value.id, value])),
    jobs,
    guides,
    problems,
  };
}

function named(document: YamlDocument, check: (report: Report) => void): readonly Problem[] {
  const report = new Report(document);
  check(report);
  return report.problems;
}

function readAll<S extends z.ZodType>(
  files: readonly SourceFile[],
  schema: S,
  problems: Problem[],
): Shaped<z.output<S>>[] {
  return files.flatMap((file) => {
    const { value: document, problems: yamlProblems } = readYaml(file.path, file.text);
    problems.push(...yamlProblems);
    if (!document) return [];
    const shaped = shape(document, schema);
    problems.push(...shaped.problems);
    return shaped.value === null ? [] : [{ document, value: shaped.value }];
  });
}

function readShop(files: readonly SourceFile[], problems: Problem[]): Shaped<Shop> | null {
  const [shop] = readAll(files, shopSchema, problems);
  if (files.length === 0)
    problems.push({
      where: { file: 'content/shop.yaml', line: 1, column: 1, path: '' },
      message: 'there is no content/shop.yaml',
      remedy: 'write one: it names the shop, its units, its house rules and its stock',
    });
  return shop ?? null;
}

type Parts = Pick<Surroundings, 'parts' | 'partPlace'>;

function readParts(files: readonly SourceFile[], problems: Problem[]): Parts {
  const parts: Record<string, Part> = {};
  const documents: Record<string, YamlDocument> = {};
  for (const { document, value } of readAll(files, partsFileSchema, problems)) {
    for (const [id, part] of Object.entries(value.parts)) {
      const first = documents[id];
      if (first)
        problems.push(
          ...named(document, (report) =>
            report.atKey(['parts', id], `part "${id}" is in ${first.file} already: an id names one thing`),
          ),
        );
      else {
        parts[id] = part;
        documents[id] = document;
      }
    }
  }
  const partPlace = (id: string): Place => {
    const document = documents[id];
    return document
      ? document.placeOf(pointer(['parts', id]))
      : { file: 'content/parts', line: 1, column: 1, path: '' };
  };
  return { parts, partPlace };
}

/** The id inside a file and the name of the file must be one: addresses are printed on paper. */
function byId<T extends { id: string }>(shaped: Shaped<T>[], what: string, problems: Problem[]): Shaped<T>[] {
  return shaped.filter(({ document, value }) => {
    const name = document.file.replace(/^.*\//, '').replace(/\.yaml$/, '');
    if (name === value.id) return true;
    problems.push(
      ...named(document, (report) =>
        report.at(
          ['id'],
          `the ${what} calls itself "${value.id}", but its file is ${name}.yaml`,
          'give both the same name',
        ),
      ),
    );
    return false;
  });
}

function checkStock(shop: Shop, parts: Surroundings['parts'], report: Report): void {
  for (const id of Object.keys(shop.stock)) report.look(['stock', id], 'part', id, parts);
}

function resolveJobs(
  files: readonly Shaped<JobFile>[],
  around: Pick<Surroundings, 'shop' | 'shopDocument' | 'parts' | 'partPlace'>,
  vehicles: readonly Shaped<Vehicle>[],
  releasedLabels: ReleasedLabels,
  problems: Problem[],
): Job[] {
  const surroundings: Surroundings = {
    ...around,
    rules: readHouseRules(around.shop.rules),
    vehicles: Object.fromEntries(
      vehicles.map(({ document, value }) => [value.id, { vehicle: value, document }]),
    ),
  };
  return files.flatMap(({ document, value }) => {
    const report = new Report(document);
    const job = resolveJob(value, document, surroundings, releasedLabels[value.id] ?? {}, report);
    problems.push(...report.problems);
    return job ? [job] : [];
  });
}
