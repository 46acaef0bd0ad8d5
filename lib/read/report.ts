import { type Place, pointer } from '../model/place.ts';
import type { Problem } from '../model/problem.ts';
import { editDistance, nearestName } from './names/nearest-name.ts';
import { rowMeant } from './names/row-meant.ts';
import { inRow } from './short-forms/in-row.ts';
import type { Positions } from './yaml/positions.ts';

type Path = readonly (string | number)[];

/** Names that stand in a file which could not be read in full: they are there, but nothing is known of them. */
export interface Unread {
  /** True for a name that may well be defined: its own problem is told where it stands. */
  has(what: string, name: string): boolean;
}

/** Collects the problems of one file, each at the place of the value that it is about. */
export class Report {
  readonly problems: Problem[] = [];
  readonly #positions: Positions;
  readonly #unread: Unread;
  readonly #lost = new Set<string>();
  readonly #told = new Set<string>();
  #spots: ReadonlyMap<string, string> = new Map();
  #incomplete = false;
  #isHushed = false;

  constructor(positions: Positions, unread: Unread = { has: () => false }) {
    this.#positions = positions;
    this.#unread = unread;
  }

  /** Where what the file does not write itself is told: paths of what was opened out or proposed, with what asked for it. */
  standsAt(spots: ReadonlyMap<string, string>): void {
    this.#spots = spots;
  }

  /** From here on nothing is told of proposed links, runs and cables: what is wrong with them follows from what was told. */
  hushProposed(): void {
    this.#isHushed = true;
  }

  /** True where a name led to something that could not be read, so that what uses it can't be made either. */
  get incomplete(): boolean {
    return this.#incomplete;
  }

  /** Notes that a name is defined, but by something that could not be read or found: it is not told twice. */
  lose(what: string, name: string): void {
    this.#lost.add(`${what} ${name}`);
    this.#incomplete = true;
  }

  /** A problem with the value at a path. */
  at(path: Path, message: string, remedy?: string): void {
    const spot = spotOf(pointer(path), this.#spots);
    if (this.#hushes(path, spot)) return;
    this.#tell(spot, this.#positions.placeOf(spot), message, remedy);
  }

  /** A problem with the key at a path. */
  atKey(path: Path, message: string, remedy?: string): void {
    const spot = spotOf(pointer(path), this.#spots);
    if (this.#hushes(path, spot)) return;
    this.#tell(spot, this.#positions.keyPlaceOf(spot), message, remedy);
  }

  /** True for what is proposed, where that is not told; nothing can be made of it either. */
  #hushes(path: Path, spot: string): boolean {
    const isHushed = this.#isHushed && spot !== pointer(path) && proposedHeads.has(String(path[0]));
    this.#incomplete ||= isHushed;
    return isHushed;
  }

  #tell(spot: string, where: Place, message: string, remedy?: string): void {
    const row = this.#positions.rowOf(spot);
    // What is wrong with what is written for several is so with each, and is told of the first; of a row by its number.
    const once = `${where.line}:${where.column} ${row === null ? message : message.replace(/\d+/g, '#')}`;
    if (this.#told.has(once)) return;
    this.#told.add(once);
    this.problems.push({ where, message: inRow(message, row), ...(remedy ? { remedy } : {}) });
  }

  /** Looks a name up; where it is not known, says so with the nearest name that is. `orElse`: what else may be done. */
  look<T>(
    path: Path,
    what: string,
    name: string,
    known: Readonly<Record<string, T>>,
    orElse?: string,
  ): T | null {
    if (Object.hasOwn(known, name)) return known[name] ?? null;
    this.unknown(path, what, name, Object.keys(known), orElse);
    return null;
  }

  /** The problem of a name that is not known; none where its definition has a problem of its own. `orElse`: what else may be done. */
  unknown(path: Path, what: string, name: string, known: readonly string[], orElse?: string): void {
    if (this.#lost.has(`${what} ${name}`) || this.#unread.has(what, name)) {
      this.#incomplete = true;
      return;
    }
    this.at(path, `there is no ${what} "${name}"`, remedyFor(name, known, orElse));
  }
}

/** What of a job is proposed link by link; a device that is opened out of a list is what the job writes. */
const proposedHeads: ReadonlySet<string> = new Set(['links', 'runs', 'cables', 'left-open']);

/** What to write instead of a name that is not known: the one that was meant, those that there are, or what else may be done. */
export function remedyFor(name: string, known: readonly string[], orElse?: string): string {
  if (known.length === 0) return orElse ?? 'none is defined yet: add it first';
  const row = rowMeant(name, known);
  if (row !== null) return row;
  const near = nearestName(name, known);
  const also = orElse === undefined ? '' : near ? ` If not, ${orElse}` : `; or ${orElse}`;
  if (near) return `did you mean "${near}"?${also}`;
  const all = [...known].sort().join(', ');
  if (all.length <= mostLetters) return `known: ${all}${also}`;
  const distance = (one: string) => editDistance(name.toLowerCase(), one.toLowerCase());
  const nearest = known.toSorted((a, b) => distance(a) - distance(b) || (a < b ? -1 : 1)).slice(0, 8);
  return `${known.length} are known, the nearest of them: ${nearest.join(', ')}${also}`;
}

/** A list of names longer than this is not read. */
const mostLetters = 400;

/** A path as it stands in the file: what was opened out or proposed is told at what asked for it. */
export function spotOf(path: string, spots: ReadonlyMap<string, string>): string {
  const [, head] = /^(\/[^/]+\/[^/]+)/.exec(path) ?? [];
  return (head !== undefined && spots.get(head)) || path;
}
