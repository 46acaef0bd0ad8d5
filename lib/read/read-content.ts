import type { z } from 'zod';
import type { Guide } from '../model/content/guide.ts';
import { type JobFile, jobSchema } from '../model/content/job.ts';
import type { Job } from '../model/content/resolved-job.ts';
import { type Shop, shopSchema } from '../model/content/shop.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import { type Vehicle, vehicleSchema } from '../model/content/vehicle.ts';
import type { Part } from '../model/kinds/index.ts';
import type { Problem } from '../model/problem.ts';
import { UnreadNames } from './names/unread-names.ts';
import { vehicleNames } from './names/vehicle-names.ts';
import { readGuide } from './read-guide.ts';
import { readHouseRules } from './read-house-rules.ts';
import { readParts } from './read-parts.ts';
import { Report } from './report.ts';
import { resolveJob, type Surroundings } from './resolve/resolve-job.ts';
import { shape } from './schema/shape.ts';
import { strayFiles } from './stray-files.ts';
import { readYaml, type YamlDocument } from './yaml/yaml.ts';

/** All that a shop wrote, as far as it could be read. */
export interface Content {
  readonly shop: Shop | null;
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
  readonly jobs: readonly Job[];
  /** Names of the job files that could not be read in full. */
  readonly unreadJobs: readonly string[];
  readonly guides: readonly Guide[];
  /** Every problem of every file, by file, line and column. */
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
  const inside = filesInside(files);
  const problems: Problem[] = [];
  const unread = new UnreadNames();
  const shop = readShop(inside('', '.yaml'), problems);
  const parts = readParts(inside('parts/', '.yaml'), problems, unread);
  const vehicles = readVehicles(inside('vehicles/', '.yaml'), parts.parts, problems, unread);
  const guides = inside('guides/', '.md').flatMap((file) => {
    const guide = readGuide(file);
    problems.push(...guide.problems);
    return guide.value ? [guide.value] : [];
  });
  problems.push(...strayFiles(files));
  const jobSources = inside('jobs/', '.yaml');
  const jobFiles = byId(readAll(jobSources, jobSchema, problems), 'job', problems);
  if (shop) problems.push(...stockProblems(shop, parts.parts, unread));
  // Names are checked even where there is no shop to plan them for.
  const { value: ownShop, document: shopDocument } = shop ?? standIn();
  const jobs = resolveJobs(
    jobFiles,
    { shop: ownShop, shopDocument, ...parts },
    vehicles,
    { releasedLabels, unread },
    problems,
  );
  const read = new Set(shop ? jobs.map(({ id }) => id) : []);
  return {
    shop: shop?.value ?? null,
    parts: parts.parts,
    vehicles: Object.fromEntries(vehicles.map(({ value }) => [value.id, value])),
    jobs: shop ? jobs : [],
    unreadJobs: jobSources.map(({ path }) => baseName(path)).filter((name) => !read.has(name)),
    guides,
    problems: problems.toSorted(byPlace),
  };
}

/** The files right inside a folder of `content/`, by path. */
function filesInside(files: readonly SourceFile[]): (folder: string, end: string) => SourceFile[] {
  const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
  return (folder, end) =>
    sorted.filter(({ path }) => new RegExp(`(^|/)content/${folder}[^/]+\\${end}$`).test(path));
}

function byPlace({ where: a }: Problem, { where: b }: Problem): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.line - b.line || a.column - b.column;
}

function readVehicles(
  files: readonly SourceFile[],
  parts: Content['parts'],
  problems: Problem[],
  unread: UnreadNames,
): ReadVehicle[] {
  const vehicles = byId(readAll(files, vehicleSchema, problems), 'vehicle', problems);
  for (const { path } of files) unread.add('vehicle', baseName(path));
  return vehicles.map((vehicle) => {
    const report = new Report(vehicle.document, unread);
    vehicleNames(vehicle.value, parts, report);
    problems.push(...report.problems);
    return { ...vehicle, isWhole: report.problems.length === 0 && !report.incomplete };
  });
}

/** A vehicle; whole where every name in it stands for something, without which no job in it can be planned. */
type ReadVehicle = Shaped<Vehicle> & { readonly isWhole: boolean };

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

function readShop(inContent: readonly SourceFile[], problems: Problem[]): Shaped<Shop> | null {
  const files = inContent.filter(({ path }) => baseName(path) === 'shop');
  const [shop] = readAll(files, shopSchema, problems);
  if (files.length === 0)
    problems.push({
      where: { file: 'content/shop.yaml', line: 1, column: 1, path: '' },
      message: 'there is no content/shop.yaml',
      remedy: 'write one: it names the shop, its units, its house rules and its stock',
    });
  return shop ?? null;
}

/** A shop of no stock and no rules of its own, for jobs whose shop can't be read. */
function standIn(): Shaped<Shop> {
  const problems: Problem[] = [];
  const file = { path: 'content/shop.yaml', text: 'rackleaf: 1\nname: unread\n' };
  const [shop] = readAll([file], shopSchema, problems);
  if (!shop) throw new Error('The stand-in for a shop can not be read.');
  return shop;
}

function baseName(path: string): string {
  return path.replace(/^.*\//, '').replace(/\.yaml$/, '');
}

/** The id inside a file and the name of the file must be one: addresses are printed on paper. */
function byId<T extends { id: string }>(shaped: Shaped<T>[], what: string, problems: Problem[]): Shaped<T>[] {
  return shaped.filter(({ document, value }) => {
    const name = baseName(document.file);
    if (name === value.id) return true;
    const report = new Report(document);
    report.at(
      ['id'],
      `the ${what} calls itself "${value.id}", but its file is ${name}.yaml`,
      'give both the same name',
    );
    problems.push(...report.problems);
    return false;
  });
}

/** True for what is cut to length; a made-up lead is taken as it is. */
function isOnReel(part: Part): boolean {
  return part.kind === 'cable'
    ? part['made-length'] === undefined
    : part.kind === 'wire' || part.kind === 'covering';
}

function stockProblems(
  { document, value }: Shaped<Shop>,
  parts: Content['parts'],
  unread: UnreadNames,
): readonly Problem[] {
  const report = new Report(document, unread);
  for (const [id, stock] of Object.entries(value.stock)) {
    const part = report.look(['stock', id], 'part', id, parts);
    if (part && 'reels' in stock !== isOnReel(part))
      report.at(
        ['stock', id],
        `"${id}" (${part.kind}) is kept ${isOnReel(part) ? 'on the reel' : 'by the piece'}`,
        isOnReel(part)
          ? 'write reels: with the length left on each, such as reels: [50 ft]'
          : 'write pieces: with how many there are, such as pieces: 4',
      );
    if (
      part &&
      part.kind !== 'board-sheet' &&
      'off-cuts' in stock &&
      Object.keys(stock['off-cuts']).length > 0
    )
      report.atKey(
        ['stock', id, 'off-cuts'],
        `"${id}" has off-cuts, but it is no board sheet (${part.kind})`,
        'leave off-cuts: to board sheets; for what comes on a reel write reels:',
      );
    if (part?.kind === 'board-sheet' && 'off-cuts' in stock)
      for (const [name, cut] of Object.entries(stock['off-cuts']))
        for (const side of ['width', 'height'] as const)
          if (cut[side] > part[side])
            report.at(
              ['stock', id, 'off-cuts', name, side],
              `the off-cut ${name} of ${id} is larger than the whole sheet`,
              'measure it along the sides of the whole sheet, and check the unit',
            );
  }
  return report.problems;
}

function resolveJobs(
  files: readonly Shaped<JobFile>[],
  around: Pick<Surroundings, 'shop' | 'shopDocument' | 'parts' | 'partPlace'>,
  vehicles: readonly ReadVehicle[],
  { releasedLabels, unread }: { readonly releasedLabels: ReleasedLabels; readonly unread: UnreadNames },
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
    const report = new Report(document, unread);
    const job = resolveJob(value, document, surroundings, releasedLabels[value.id] ?? {}, report);
    problems.push(...report.problems);
    const isWhole = vehicles.some((vehicle) => vehicle.value.id === job?.vehicle.id && vehicle.isWhole);
    return job && isWhole ? [job] : [];
  });
}
