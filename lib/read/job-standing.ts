import type { JobStanding } from '../model/content/promised.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import type { Step } from '../model/keep.ts';
import { valueAt } from './schema/schema-walk.ts';
import { readYaml } from './yaml/yaml.ts';

/** How far a job is, by its file, whatever else of that can be read: what its frozen plans do not tell. */
export const standingStep: Step<SourceFile, JobStanding> = {
  id: 'standing',
  compute: ({ path, text }) => {
    const data = readYaml(path, text).value?.data;
    return {
      revision: textAt(data, 'revision') ?? 'A',
      status: textAt(data, 'status'),
      revisions: listAt(data, 'revisions').flatMap((one) => {
        const revision = textAt(one, 'revision');
        return revision === null ? [] : [{ revision, isInstalled: textAt(one, 'installed') !== null }];
      }),
    };
  },
};

const ofStanding = /^content\/jobs\/([^/]+)\.standing\.json$/;

/** A file that says of a job no more than how far it is: it stands for the job file where only that is asked. */
export function standingFile(job: string, { revision, status, revisions }: JobStanding): SourceFile {
  const said = {
    revision,
    ...(status !== null && { status }),
    revisions: revisions.map((one) => ({
      revision: one.revision,
      ...(one.isInstalled && { installed: 'yes' }),
    })),
  };
  return { path: `content/jobs/${job}.standing.json`, text: JSON.stringify(said) };
}

/** The job that such a file is of; null for any other file. */
export function standingJob(path: string): string | null {
  return ofStanding.exec(path)?.[1] ?? null;
}

function textAt(data: unknown, key: string): string | null {
  const value = valueAt(data, [key]);
  return typeof value === 'string' ? value : null;
}

function listAt(data: unknown, key: string): readonly unknown[] {
  const value = valueAt(data, [key]);
  return Array.isArray(value) ? value : [];
}
