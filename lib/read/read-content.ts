import { nothingReleased, type ReleasedFacts } from '../model/content/built.ts';
import type { Guide } from '../model/content/guide.ts';
import type { PromisedTo } from '../model/content/promised.ts';
import type { ReadJob } from '../model/content/resolved-job.ts';
import type { Shop } from '../model/content/shop.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import type { Vehicle } from '../model/content/vehicle.ts';
import { computeAnew, type Keep } from '../model/keep.ts';
import type { Part } from '../model/kinds/index.ts';
import type { Problem, Read } from '../model/problem.ts';
import { offeredStock } from '../shelf/offered-stock.ts';
import { formerNameProblems } from './names/look-part.ts';
import { jobNamesAt, vehicleNamesAt, withNamesMeant } from './names/names-meant.ts';
import { UnreadNames } from './names/unread-names.ts';
import { vehicleNames } from './names/vehicle-names.ts';
import { jobFile, readAll, type Shaped, shopFile, vehicleFile } from './read-file.ts';
import { readGuide } from './read-guide.ts';
import { readHouseRules } from './read-house-rules.ts';
import { type Catalogue, readParts } from './read-parts.ts';
import { Report } from './report.ts';
import { resolveJob, type Surroundings } from './resolve/resolve-job.ts';
import { stockProblems } from './stock/stock-problems.ts';
import { strayFiles } from './stray-files.ts';

/** All that a shop wrote, as far as it could be read. */
export interface Content {
  readonly shop: Shop | null;
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
  readonly jobs: readonly ReadJob[];
  /** Names of the job files that could not be read in full. */
  readonly unreadJobs: readonly string[];
  readonly guides: readonly Guide[];
  /** Every problem of every file, by file, line and column. */
  readonly problems: readonly Problem[];
}

/** What released revisions fixed, by job. */
export type ReleasedJobs = Readonly<Record<string, ReleasedFacts>>;

/** What of the stock is promised to others than a job, by job. */
export type PromisedJobs = Readonly<Record<string, readonly PromisedTo[]>>;

/** The files of a shop by what they hold, each list by path. */
export interface ContentFiles {
  readonly shop: readonly SourceFile[];
  readonly parts: readonly SourceFile[];
  readonly vehicles: readonly SourceFile[];
  readonly guides: readonly SourceFile[];
  readonly jobs: readonly SourceFile[];
}

/** The shop file and the parts, read. */
export interface ReadCatalogue {
  readonly shop: Shaped<Shop> | null;
  readonly parts: Catalogue;
  readonly unread: UnreadNames;
  readonly problems: readonly Problem[];
}

/** A shop whose own files are read, and that reads one job after another. */
export interface OpenShop extends Omit<Content, 'jobs' | 'unreadJobs'> {
  /**
   * A job of this shop; null where it can't be read in full, or the shop file can't.
   *
   * @param promised What of the stock is promised to other jobs. Default: nothing.
   */
  readJob(file: SourceFile, released: ReleasedFacts, promised?: readonly PromisedTo[]): Read<ReadJob | null>;
  /** Names whose definitions stand there, but could not be read. */
  readonly unread: UnreadNames;
}

/**
 * Reads the files of `content/`: shape first, then names, then what they say together, each on all that
 * could be read so far. Nothing throws for bad input: the problems tell, each with its place.
 */
export function readContent(
  files: readonly SourceFile[],
  released: ReleasedJobs = {},
  keep: Keep = computeAnew,
  promised: PromisedJobs = {},
): Content {
  const sorted = contentFiles(files);
  const { readJob, problems, unread: _, ...shop } = openShop(sorted, readCatalogue(sorted, keep), keep);
  const read = sorted.jobs.map((file) => {
    const name = baseName(file.path);
    return { name, ...readJob(file, released[name] ?? nothingReleased, promised[name]) };
  });
  return {
    ...shop,
    jobs: read.flatMap(({ value }) => value ?? []),
    unreadJobs: read.flatMap(({ name, value }) => (value ? [] : [name])),
    problems: [...problems, ...strayFiles(files), ...read.flatMap((one) => one.problems)].toSorted(byPlace),
  };
}

/** Sorts the files of a shop by what they hold; what is none of it is left out. */
export function contentFiles(files: readonly SourceFile[]): ContentFiles {
  const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
  const inside = (folder: string, end: string): SourceFile[] =>
    sorted.filter(({ path }) => new RegExp(`(^|/)content/${folder}[^/]+\\${end}$`).test(path));
  return {
    shop: inside('', '.yaml').filter(({ path }) => baseName(path) === 'shop'),
    parts: inside('parts/', '.yaml'),
    vehicles: inside('vehicles/', '.yaml'),
    guides: inside('guides/', '.md'),
    jobs: inside('jobs/', '.yaml'),
  };
}

/** The parts of a shop, read without its shop file. */
export type ReadParts = Omit<ReadCatalogue, 'shop'>;

/** Reads the files of parts. */
export function readPartFiles(files: ContentFiles['parts'], keep: Keep = computeAnew): ReadParts {
  const problems: Problem[] = [];
  const unread = new UnreadNames();
  const parts = readParts(files, problems, unread, keep);
  problems.push(...formerNameProblems(parts.parts, parts.partPlace));
  return { parts, unread, problems };
}

/** Reads the shop file beside the parts; these anew where they are not given. */
export function readCatalogue(
  files: Pick<ContentFiles, 'shop' | 'parts'>,
  keep: Keep = computeAnew,
  { parts, unread, problems: ofParts }: ReadParts = readPartFiles(files.parts, keep),
): ReadCatalogue {
  const problems: Problem[] = [];
  const shop = readShop(files.shop, problems, keep);
  problems.push(...ofParts);
  if (shop) problems.push(...stockProblems(shop, parts.parts, unread));
  return { shop, parts, unread, problems };
}

/** Reads the vehicles and the guides of a shop: with the catalogue, all but its jobs. */
export function openShop(
  files: Pick<ContentFiles, 'vehicles' | 'guides'>,
  { shop, parts, unread: unreadParts, problems: ofCatalogue }: ReadCatalogue,
  keep: Keep = computeAnew,
): OpenShop {
  const problems = [...ofCatalogue];
  const unread = unreadParts.copy();
  const vehicles = readVehicles(files.vehicles, parts.parts, { problems, unread, keep });
  const guides = files.guides.flatMap((file) => {
    const guide = readGuide(file);
    problems.push(...guide.problems);
    return guide.value ? [guide.value] : [];
  });
  // Names are checked even where there is no shop to plan them for.
  const { value: ownShop, placed: shopFile } = shop ?? standIn();
  const around: JobSurroundings = {
    surroundings: {
      ...{ shop: ownShop, shopFile, ...parts, rules: readHouseRules(ownShop.rules) },
      vehicles: Object.fromEntries(
        vehicles.map(({ placed, value, isWhole }) => [value.id, { vehicle: value, placed, isWhole }]),
      ),
    },
    unread,
  };
  return {
    shop: shop?.value ?? null,
    parts: parts.parts,
    vehicles: Object.fromEntries(vehicles.map(({ value }) => [value.id, value])),
    guides,
    problems: problems.toSorted(byPlace),
    unread,
    readJob: (file, released, promised = []) => {
      const { value, problems: own } = readJobOf(file, released, promised, around);
      return { value: shop ? value : null, problems: own };
    },
  };
}

interface JobSurroundings {
  readonly surroundings: Omit<Surroundings, 'promised'>;
  readonly unread: UnreadNames;
}

function readJobOf(
  file: SourceFile,
  released: ReleasedFacts,
  promises: readonly PromisedTo[],
  { surroundings, unread }: JobSurroundings,
): Read<ReadJob | null> {
  const problems: Problem[] = [];
  const [shaped] = byId(readAll([file], jobFile, problems, computeAnew), 'job', problems);
  if (!shaped) {
    const vehicles = Object.fromEntries(
      Object.entries(surroundings.vehicles).map(([id, { vehicle }]) => [id, vehicle]),
    );
    const names = jobNamesAt({ parts: surroundings.parts, vehicles });
    return { value: null, problems: withNamesMeant(problems, file, names) };
  }
  const report = new Report(shaped.placed, unread);
  const { shop } = surroundings;
  const { stock, promised } = offeredStock(shop.stock, promises);
  // No plan follows from a price, nor from what an estimate reckons with.
  const around: Surroundings = {
    ...surroundings,
    shop: { ...shop, stock, prices: {}, estimate: {} },
    promised,
  };
  const job = resolveJob(shaped.value, shaped.placed, around, released, report);
  problems.push(...report.problems);
  const isWhole = job !== null && surroundings.vehicles[job.vehicle.id]?.isWhole === true;
  return { value: isWhole ? job : null, problems };
}

/** Orders problems by file, line and column. */
export function byPlace({ where: a }: Problem, { where: b }: Problem): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.line - b.line || a.column - b.column;
}

function readVehicles(
  files: readonly SourceFile[],
  parts: Content['parts'],
  { problems, unread, keep }: { problems: Problem[]; unread: UnreadNames; keep: Keep },
): ReadVehicle[] {
  const vehicles = files.flatMap((file) => {
    const own: Problem[] = [];
    const read = byId(readAll([file], vehicleFile, own, keep), 'vehicle', own);
    problems.push(...withNamesMeant(own, file, vehicleNamesAt({ parts })));
    return read;
  });
  for (const { path } of files) unread.add('vehicle', baseName(path));
  return vehicles.map((vehicle) => {
    const report = new Report(vehicle.placed, unread);
    vehicleNames(vehicle.value, parts, report);
    problems.push(...report.problems);
    return { ...vehicle, isWhole: report.problems.length === 0 && !report.incomplete };
  });
}

/** A vehicle; whole where every name in it stands for something, without which no job in it can be planned. */
type ReadVehicle = Shaped<Vehicle> & { readonly isWhole: boolean };

function readShop(files: readonly SourceFile[], problems: Problem[], keep: Keep): Shaped<Shop> | null {
  const [shop] = readAll(files, shopFile, problems, keep);
  if (files.length === 0)
    problems.push({
      where: { file: 'content/shop.yaml', line: 1, column: 1, path: '' },
      message: 'there is no content/shop.yaml',
      remedy:
        'rackleaf new --shop makes one in an empty folder; else write one: the name of the shop, its units, rules and stock',
    });
  return shop ?? null;
}

/** A shop of no stock and no rules of its own, for jobs whose shop can't be read. */
function standIn(): Shaped<Shop> {
  const problems: Problem[] = [];
  const file = { path: 'content/shop.yaml', text: 'rackleaf: 1\nname: unread\n' };
  const [shop] = readAll([file], shopFile, problems, computeAnew);
  if (!shop) throw new Error('The stand-in for a shop can not be read.');
  return shop;
}

/** The name of a YAML file: the id of what it holds. */
export function baseName(path: string): string {
  return path.replace(/^.*\//, '').replace(/\.yaml$/, '');
}

/** The id inside a file and the name of the file must be one: addresses are printed on paper. */
function byId<T extends { id: string }>(shaped: Shaped<T>[], what: string, problems: Problem[]): Shaped<T>[] {
  return shaped.filter(({ placed, value }) => {
    const name = baseName(placed.file);
    if (name === value.id) return true;
    const report = new Report(placed);
    report.at(
      ['id'],
      `the ${what} calls itself "${value.id}", but its file is ${name}.yaml`,
      'give both the same name',
    );
    problems.push(...report.problems);
    return false;
  });
}
