import type { z } from 'zod';
import { jobSchema } from '../model/content/job.ts';
import { shopSchema } from '../model/content/shop.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import { vehicleSchema } from '../model/content/vehicle.ts';
import type { Keep, Step } from '../model/keep.ts';
import type { Problem } from '../model/problem.ts';
import { shapeOpened } from './short-forms/shape-opened.ts';
import { type FilePlaces, type PlacedFile, placedFile, placesIn } from './yaml/placed-file.ts';
import { readYaml } from './yaml/yaml.ts';

/** What stands in one file. */
export interface ReadFile<T> {
  /** Null where it has not the shape that it should have. */
  readonly value: T | null;
  /** Null where it is not even YAML. */
  readonly places: FilePlaces | null;
  readonly problems: readonly Problem[];
}

/** A value as it was read, with the file that it stands in. */
export interface Shaped<T> {
  readonly placed: PlacedFile;
  readonly value: T;
}

/** Reads a file of one shape. */
export type FileStep<T> = Step<SourceFile, ReadFile<T>>;

export const shopFile = fileStep('shop-file', shopSchema);
export const vehicleFile = fileStep('vehicle-file', vehicleSchema);
/** Its customer is private: what it gives is not kept. */
export const jobFile = fileStep('job-file', jobSchema);

function fileStep<S extends z.ZodType>(id: string, schema: S): FileStep<z.output<S>> {
  return {
    id,
    compute: ({ path, text }) => {
      const { value: document, problems } = readYaml(path, text);
      if (!document) return { value: null, places: null, problems };
      const shaped = shapeOpened(document, schema);
      return {
        value: shaped.value,
        places: placesIn(shaped.document),
        problems: [...problems, ...shaped.problems],
      };
    },
  };
}

/** Reads files of one shape; what has it not is told and left out. */
export function readAll<T>(
  files: readonly SourceFile[],
  step: FileStep<T>,
  problems: Problem[],
  keep: Keep,
): Shaped<T>[] {
  return files.flatMap((file) => {
    const { value, places, problems: own } = keep(step, file);
    problems.push(...own);
    return value === null || !places ? [] : [{ placed: placedFile(file, places), value }];
  });
}
