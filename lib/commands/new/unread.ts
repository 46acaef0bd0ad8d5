import { hasFields } from '../../model/content/proposal.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { Part } from '../../model/kinds/index.ts';
import { placeText } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { baseName } from '../../read/read-content.ts';
import { readYaml } from '../../read/yaml/yaml.ts';

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

/** A part that is written, and could not be read. */
export interface UnreadPart {
  readonly id: string;
  /** As its file has it; null where the file itself could not be read. */
  readonly kind: string | null;
  readonly problems: readonly Problem[];
}

/** The parts of a shop that its catalogue lacks since their files have errors, in the order of the files. */
export function unreadParts(
  files: readonly SourceFile[],
  read: Readonly<Record<string, Part>>,
  problems: readonly Problem[],
): readonly UnreadPart[] {
  return files.flatMap(({ path, text }): readonly UnreadPart[] => {
    const data = readYaml(path, text).value?.data;
    const parts = hasFields(data) && hasFields(data.parts) ? data.parts : null;
    const own = parts ? Object.keys(parts) : [baseName(path)];
    return own
      .filter((id) => !Object.hasOwn(read, id))
      .map((id) => {
        const part = parts?.[id];
        const kind = hasFields(part) && typeof part.kind === 'string' ? part.kind : null;
        return { id, kind, problems: problemsOfPart(id, problems) };
      })
      .filter((one) => one.problems.length > 0);
  });
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
