import type { Vehicle } from '../../model/content/vehicle.ts';
import { placeText } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { baseName } from '../../read/read-content.ts';

/** A vehicle whose file stands there, and what keeps it from being read. */
export interface UnreadVehicle {
  readonly id: string;
  readonly path: string;
  readonly problems: readonly Problem[];
}

/** The vehicle files of a shop that could not be read, by path. */
export function unreadVehicles(
  paths: readonly string[],
  read: Readonly<Record<string, Vehicle>>,
  problems: readonly Problem[],
): readonly UnreadVehicle[] {
  return paths
    .filter((path) => !Object.hasOwn(read, baseName(path)))
    .map((path) => ({
      id: baseName(path),
      path,
      problems: problems.filter(({ where }) => where.file === path),
    }));
}

/** What the reader found of one part: in its own fields, or in a file of its name that is no list of parts at all. */
export function problemsOfPart(id: string, problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(({ where: { file, path } }) => {
    if (!/(?:^|\/)content\/parts\//.test(file)) return false;
    const [, , named] = path.split('/');
    return named === undefined ? baseName(file) === id : named === id;
  });
}

/** That a file stands there, and what is wrong in it: how many errors, and the first; null where nothing was found. */
export function unreadFault(problems: readonly Problem[]): string | null {
  const [first] = problems;
  if (!first) return null;
  const { where, message, remedy } = first;
  const more = remedy === undefined ? '' : `; ${remedy}`;
  return `${errorsOf(where.file, problems)}${problems.length === 1 ? '' : ', the first'} at ${placeText(where)}: ${message}${more}`;
}

/** `content/vehicles/van.yaml has 2 errors`. */
export function errorsOf(file: string, problems: readonly Problem[]): string {
  return `${file} has ${problems.length === 1 ? 'an error' : `${problems.length} errors`}`;
}
