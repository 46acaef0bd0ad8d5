import { pointer } from '../model/place.ts';
import type { Problem } from '../model/problem.ts';
import { nearestName } from './nearest-name.ts';
import type { Positions } from './positions.ts';

type Path = readonly (string | number)[];

/** Collects the problems of one file, each at the place of the value that it is about. */
export class Report {
  readonly problems: Problem[] = [];
  readonly #positions: Positions;

  constructor(positions: Positions) {
    this.#positions = positions;
  }

  /** A problem with the value at a path. */
  at(path: Path, message: string, remedy?: string): void {
    this.problems.push({
      where: this.#positions.placeOf(pointer(path)),
      message,
      ...(remedy ? { remedy } : {}),
    });
  }

  /** A problem with the key at a path. */
  atKey(path: Path, message: string, remedy?: string): void {
    this.problems.push({
      where: this.#positions.keyPlaceOf(pointer(path)),
      message,
      ...(remedy ? { remedy } : {}),
    });
  }

  /** Looks a name up; where it is not known, says so with the nearest name that is. */
  look<T>(path: Path, what: string, name: string, known: Readonly<Record<string, T>>): T | null {
    if (Object.hasOwn(known, name)) return known[name] ?? null;
    this.unknown(path, what, name, Object.keys(known));
    return null;
  }

  /** The problem of a name that is not known. */
  unknown(path: Path, what: string, name: string, known: readonly string[]): void {
    this.at(path, `there is no ${what} "${name}"`, remedyFor(name, known));
  }
}

function remedyFor(name: string, known: readonly string[]): string {
  if (known.length === 0) return 'none is defined yet: add it first';
  const near = nearestName(name, known);
  if (near) return `did you mean "${near}"?`;
  return known.length <= 12 ? `known: ${[...known].sort().join(', ')}` : 'write a name that is defined';
}
