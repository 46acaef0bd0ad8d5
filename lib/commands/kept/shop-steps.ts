import type { JobFile } from '../../model/content/job.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Step } from '../../model/keep.ts';
import type { Place } from '../../model/place.ts';
import type { Problem, Read } from '../../model/problem.ts';
import { type ContentFiles, openShop, type ReadCatalogue, readCatalogue } from '../../read/read-content.ts';
import { readYaml } from '../../read/yaml/yaml.ts';

/** Every file that a job is read from, and no other. */
export interface JobFiles {
  readonly job: SourceFile;
  readonly shop: readonly SourceFile[];
  readonly parts: readonly SourceFile[];
  /** The vehicle that it names; all of them where there is none of that name. */
  readonly vehicles: readonly SourceFile[];
  /** Wire labels that released revisions of it fixed. */
  readonly labels: Readonly<Record<string, string>>;
}

/** What the commands tell of a job without its plan. */
export interface JobHead {
  readonly id: string;
  readonly revision: string;
  readonly status: JobFile['status'];
  /** Where its revision is written. */
  readonly revisionAt: Place;
}

/** The vehicle that a job names; null where it names none that could be read. */
export const vehicleStep: Step<SourceFile, string | null> = {
  id: 'vehicle',
  compute: ({ path, text }) => {
    const data = readYaml(path, text).value?.data;
    const named = typeof data === 'object' && data !== null ? Reflect.get(data, 'vehicle') : null;
    return typeof named === 'string' ? named : null;
  },
};

/** Reads a job from its files. */
export type JobReader = (files: JobFiles) => Read<Job | null>;

/** Reads jobs; a catalogue that several share is read once. */
export function jobReader(catalogueOf: CatalogueReader = lastRead()): JobReader {
  return ({ job, vehicles, labels, ...files }) =>
    openShop({ vehicles, guides: [] }, catalogueOf(files)).readJob(job, labels);
}

/** Steps that read the files of a shop. */
export interface ShopSteps {
  /** The problems of the shop file, the parts, the vehicles and the guides. */
  readonly problems: Step<Omit<ContentFiles, 'jobs'>, readonly Problem[]>;
  /** A job as read; null where it can't be read in full. */
  readonly job: Step<JobFiles, Read<JobHead | null>>;
}

/** The steps of one run: it reads a catalogue once for all jobs that share it. */
export function shopSteps(): ShopSteps {
  const catalogueOf = lastRead();
  const readJob = jobReader(catalogueOf);
  return {
    problems: { id: 'problems', compute: (files) => openShop(files, catalogueOf(files)).problems },
    job: {
      id: 'job',
      compute: (files) => {
        const { value: job, problems } = readJob(files);
        if (!job) return { value: null, problems };
        const { revision, status } = job.file;
        return { value: { id: job.id, revision, status, revisionAt: job.place('/revision') }, problems };
      },
    },
  };
}

type CatalogueFiles = Pick<ContentFiles, 'shop' | 'parts'>;
type CatalogueReader = (files: CatalogueFiles) => ReadCatalogue;

/** Reads catalogues; the last one is held, since the next job most often has the same. */
function lastRead(): CatalogueReader {
  let last: { readonly files: readonly SourceFile[]; readonly read: ReadCatalogue } | null = null;
  return ({ shop, parts }) => {
    const files = [...shop, ...parts];
    if (!last || !sameFiles(last.files, files)) last = { files, read: readCatalogue({ shop, parts }) };
    return last.read;
  };
}

function sameFiles(a: readonly SourceFile[], b: readonly SourceFile[]): boolean {
  return (
    a.length === b.length && a.every(({ path, text }, at) => path === b[at]?.path && text === b[at].text)
  );
}
