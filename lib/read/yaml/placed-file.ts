import type { SourceFile } from '../../model/content/source-file.ts';
import type { WrittenMeasures } from '../../model/content/written-measures.ts';
import { measuresIn } from './measures-in.ts';
import { lineFinder, type Position, type Positions, positions } from './positions.ts';
import type { YamlDocument } from './yaml.ts';

/** Where the values of a file stand and which of them are measures, as plain data. */
export interface FilePlaces {
  /** The JSON Pointer of each value. */
  readonly paths: readonly string[];
  /** Four offsets for each: start and end of its key, below 0 where it has none, and of the value itself. */
  readonly offsets: readonly number[];
  readonly measures: WrittenMeasures;
  /** What was opened out of rows: the JSON Pointer of each value, and its row. */
  readonly rows: readonly (readonly [string, string])[];
}

/** A file that was read, as far as a job asks for it beside its values. */
export interface PlacedFile extends Positions {
  readonly file: string;
  readonly measures: WrittenMeasures;
}

const noKey = { start: -1, end: -1 };

/** The places of a document. */
export function placesIn({ table, data, rows }: Pick<YamlDocument, 'table' | 'data' | 'rows'>): FilePlaces {
  return {
    rows: [...rows],
    paths: [...table.keys()],
    offsets: [...table.values()].flatMap(({ key, value }) => {
      const { start, end } = key ?? noKey;
      return [start, end, value.start, value.end];
    }),
    measures: measuresIn(data),
  };
}

/** A file with its places. The table of them is laid out once it is asked for: most files never are. */
export function placedFile({ path: file, text }: SourceFile, places: FilePlaces): PlacedFile {
  let known: Positions | null = null;
  const laidOut = (): Positions => {
    known ??= positions(file, tableOf(places), lineFinder(text), new Map(places.rows));
    return known;
  };
  return {
    file,
    measures: places.measures,
    placeOf: (path) => laidOut().placeOf(path),
    keyPlaceOf: (path) => laidOut().keyPlaceOf(path),
    span: (path) => laidOut().span(path),
    rowOf: (path) => laidOut().rowOf(path),
  };
}

function tableOf({ paths, offsets }: FilePlaces): ReadonlyMap<string, Position> {
  return new Map(
    paths.map((path, at) => {
      const [keyStart = -1, keyEnd = -1, start = 0, end = 0] = offsets.slice(4 * at, 4 * at + 4);
      const key = keyStart < 0 ? null : { start: keyStart, end: keyEnd };
      return [path, { key, value: { start, end } }];
    }),
  );
}
