import type { ReleasedFacts } from '../../model/content/built.ts';
import type { JobFile } from '../../model/content/job.ts';
import type { PromisedTo } from '../../model/content/promised.ts';
import type { ReadJob } from '../../model/content/resolved-job.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Keep, Step } from '../../model/keep.ts';
import type { Place } from '../../model/place.ts';
import type { Problem, Read } from '../../model/problem.ts';
import {
  type ContentFiles,
  type OpenShop,
  openShop,
  readCatalogue,
  readPartFiles,
} from '../../read/read-content.ts';
import { valueAt } from '../../read/schema/schema-walk.ts';
import { readYaml } from '../../read/yaml/yaml.ts';

/** Every file that a job is read from, and no other. */
export interface JobFiles {
  readonly job: SourceFile;
  readonly shop: readonly SourceFile[];
  readonly parts: readonly SourceFile[];
  /** The vehicle that it names; all of them where there is none of that name. */
  readonly vehicles: readonly SourceFile[];
  /** What released revisions of it fixed. */
  readonly released: ReleasedFacts;
  /** What of the stock is promised to other jobs. */
  readonly promised: readonly PromisedTo[];
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
    const named = valueAt(readYaml(path, text).value?.data, ['vehicle']);
    return typeof named === 'string' ? named : null;
  },
};

/** Reads the files of shops on one thread: a catalogue that several jobs share once, and each job once. */
export interface ShopReader {
  readonly job: (files: JobFiles, keep: Keep) => Read<ReadJob | null>;
  readonly problems: (files: Omit<ContentFiles, 'jobs'>, keep: Keep) => readonly Problem[];
  /** The shop of these files, without its jobs. */
  readonly shop: (files: Omit<ContentFiles, 'jobs'>, keep: Keep) => OpenShop;
}

/** Opens a reader. It holds the last parts, catalogue and job, since what is asked for next most often has the same. */
export function shopReader(): ShopReader {
  const partsOf = holdingLast(
    (files: CatalogueFiles['parts'], keep) => readPartFiles(files, keep),
    (files) => files,
  );
  const catalogueOf = holdingLast(
    (files: CatalogueFiles, keep) => readCatalogue(files, keep, partsOf(files.parts, keep)),
    ({ shop, parts }) => [...shop, ...parts],
  );
  return {
    job: holdingLast(
      ({ job, vehicles, released, promised, ...files }: JobFiles, keep) =>
        openShop({ vehicles, guides: [] }, catalogueOf(files, keep), keep).readJob(job, released, promised),
      ({ job, shop, parts, vehicles, released, promised }) => [
        ...[job, ...shop, ...parts, ...vehicles],
        { path: 'released', text: JSON.stringify(released) },
        { path: 'promised', text: JSON.stringify(promised) },
      ],
    ),
    problems: (files, keep) => openShop(files, catalogueOf(files, keep), keep).problems,
    shop: (files, keep) => openShop(files, catalogueOf(files, keep), keep),
  };
}

/** Steps that read the files of a shop. */
export interface ShopSteps {
  /** The problems of the shop file, the parts, the vehicles and the guides. */
  readonly problems: Step<Omit<ContentFiles, 'jobs'>, readonly Problem[]>;
  /** A job as read; null where it can't be read in full. */
  readonly job: Step<JobFiles, Read<JobHead | null>>;
}

/** The steps of one run. */
export function shopSteps(read: ShopReader): ShopSteps {
  return {
    problems: { id: 'problems', compute: read.problems },
    job: {
      id: 'job',
      compute: (files, keep) => {
        const { value: job, problems } = read.job(files, keep);
        if (!job) return { value: null, problems };
        const { revision, status } = job.file;
        return { value: { id: job.id, revision, status, revisionAt: job.place('/revision') }, problems };
      },
    },
  };
}

type CatalogueFiles = Pick<ContentFiles, 'shop' | 'parts'>;

/** A text by a name: all that a reading follows from. */
type Texts = readonly Pick<SourceFile, 'path' | 'text'>[];

/** The same reading, that gives its last result again where all texts are the same. */
function holdingLast<I, O>(
  read: (input: I, keep: Keep) => O,
  textsOf: (input: I) => Texts,
): (input: I, keep: Keep) => O {
  let last: { readonly texts: Texts; readonly result: O } | null = null;
  return (input, keep) => {
    const texts = textsOf(input);
    if (!last || !areSame(last.texts, texts)) last = { texts, result: read(input, keep) };
    return last.result;
  };
}

function areSame(a: Texts, b: Texts): boolean {
  return (
    a.length === b.length && a.every(({ path, text }, at) => path === b[at]?.path && text === b[at].text)
  );
}
