import type { Whereabouts } from '../remark.ts';

/** A measure as it stands in a file, `13 5/8 in`, and its JSON Pointer there. */
export interface WrittenMeasure {
  readonly text: string;
  readonly path: string;
}

/** The measures of a file in their order, by what they stand in: the first two names of their JSON Pointers. */
export type WrittenMeasures = Readonly<Record<string, readonly WrittenMeasure[]>>;

/** The measures of every file that a job is read from; of the files of parts together, from `/parts`. */
export type JobMeasures = Readonly<Record<NonNullable<Whereabouts['file']>, WrittenMeasures>>;

/** Measures by what they stand in. */
export function measuresByHead(measures: readonly WrittenMeasure[]): WrittenMeasures {
  const byHead = new Map<string, WrittenMeasure[]>();
  for (const measure of measures) {
    const head = headOf(measure.path);
    const there = byHead.get(head);
    if (there) there.push(measure);
    else byHead.set(head, [measure]);
  }
  return Object.fromEntries(byHead);
}

/** The measures that are written at a place or below it, in their order. */
export function measuresAt(
  { measures }: { readonly measures: JobMeasures },
  { path, file = 'job' }: Whereabouts,
): readonly WrittenMeasure[] {
  const own = measures[file];
  const near = hasHead(path) ? (own[headOf(path)] ?? []) : Object.values(own).flat();
  return near.filter((one) => path === '' || one.path === path || one.path.startsWith(`${path}/`));
}

function headOf(path: string): string {
  return path.split('/', 3).join('/');
}

/** False for a pointer that leads to several heads. */
function hasHead(path: string): boolean {
  return path.split('/', 3).length === 3;
}
