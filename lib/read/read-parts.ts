import { partsFileSchema } from '../model/content/catalogue.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import type { WrittenMeasure, WrittenMeasures } from '../model/content/written-measures.ts';
import type { Keep, Step } from '../model/keep.ts';
import { type Part, partSchema } from '../model/kinds/index.ts';
import { type Place, pointer } from '../model/place.ts';
import type { Problem } from '../model/problem.ts';
import { fileSchema } from '../model/short-forms/file-schema.ts';
import type { UnreadNames } from './names/unread-names.ts';
import { checkPartSense } from './part-sense.ts';
import { checkPartTerminals } from './part-terminals.ts';
import { Report } from './report.ts';
import { openShortForms } from './short-forms/open-short-forms.ts';
import { shapeOpened } from './short-forms/shape-opened.ts';
import { checkWireFigures } from './wire-figures.ts';
import { type FilePlaces, type PlacedFile, placedFile, placesIn } from './yaml/placed-file.ts';
import { readYaml, type YamlDocument } from './yaml/yaml.ts';

/** The catalogue of a shop, and where each part stands. */
export interface Catalogue {
  readonly parts: Readonly<Record<string, Part>>;
  /** Where a value stands, by JSON Pointer from `/parts`. */
  readonly partPlace: (path: string) => Place;
  readonly partMeasures: WrittenMeasures;
}

/** What stands in one file of parts. */
interface PartsFile {
  /** Null where it is not even YAML: any part may be defined in it. */
  readonly places: FilePlaces | null;
  readonly problems: readonly Problem[];
  /** Ids of parts that could not be read. */
  readonly unread: readonly string[];
  readonly parts: readonly ReadPart[];
}

interface ReadPart {
  readonly id: string;
  readonly part: Part;
  /** Why it can't be computed; empty where it can. */
  readonly problems: readonly Problem[];
}

/**
 * Reads one file of parts. A part that is wrong does not take its neighbours in the file with it: they are kept,
 * and its own id counts as unread, so that what uses it is not called unknown as well.
 */
const partsFile: Step<SourceFile, PartsFile> = {
  id: 'parts-file',
  compute: ({ path, text }) => {
    const { value: written, problems } = readYaml(path, text);
    if (!written) return { places: null, problems, unread: [], parts: [] };
    const { parts, unread, document, problems: ofShape } = partsOf(written);
    return {
      places: placesIn(document),
      problems: [...problems, ...ofShape],
      unread,
      parts: Object.entries(parts).map(([id, part]) => ({ id, part, problems: lacksOf(id, part, document) })),
    };
  },
};

/** Reads every file of parts. */
export function readParts(
  files: readonly SourceFile[],
  problems: Problem[],
  unread: UnreadNames,
  keep: Keep,
): Catalogue {
  const parts: Record<string, Part> = {};
  const placed: Record<string, PlacedFile> = {};
  for (const file of files) {
    const { places, parts: read, unread: names, problems: own } = keep(partsFile, file);
    problems.push(...own);
    for (const id of names) unread.add('part', id);
    if (places) addParts(read, placedFile(file, places), { parts, placed, problems, unread });
    else unread.addAny('part');
  }
  const partPlace = (path: string): Place =>
    placed[path.split('/')[2] ?? '']?.placeOf(path) ?? {
      file: 'content/parts',
      line: 1,
      column: 1,
      path: '',
    };
  return { parts, partPlace, partMeasures: measuresOf(placed) };
}

interface Collected {
  readonly parts: Record<string, Part>;
  /** The file that each part stands in. */
  readonly placed: Record<string, PlacedFile>;
  readonly problems: Problem[];
  readonly unread: UnreadNames;
}

/** Adds the parts of a file, of those with one id the first. */
function addParts(
  read: readonly ReadPart[],
  file: PlacedFile,
  { parts, placed, problems, unread }: Collected,
): void {
  const report = new Report(file);
  for (const { id, part, problems: lacks } of read) {
    const first = placed[id];
    if (first) {
      report.atKey(['parts', id], `part "${id}" is in ${first.file} already: an id names one thing`);
      continue;
    }
    problems.push(...lacks);
    if (lacks.length > 0) unread.add('part', id);
    else {
      parts[id] = part;
      placed[id] = file;
    }
  }
  problems.push(...report.problems);
}

function measuresOf(placed: Readonly<Record<string, PlacedFile>>): WrittenMeasures {
  return Object.fromEntries(
    Object.entries(placed).flatMap(([id, { measures }]): [string, readonly WrittenMeasure[]][] => {
      const head = pointer(['parts', id]);
      const own = measures[head];
      return own ? [[head, own]] : [];
    }),
  );
}

/** What keeps a part from being computed: it lacks terminals of its kind, or its figures can't be. */
function lacksOf(id: string, part: Part, document: YamlDocument): readonly Problem[] {
  const report = new Report(document);
  checkPartTerminals(id, part, report);
  checkWireFigures(id, part, report);
  checkPartSense(id, part, report);
  return report.problems;
}

interface ShapedParts extends Pick<PartsFile, 'unread' | 'problems'> {
  readonly parts: Readonly<Record<string, Part>>;
  /** The file with the short forms opened out of all that could be read. */
  readonly document: YamlDocument;
}

function partsOf(written: YamlDocument): ShapedParts {
  const { value, document, problems } = shapeOpened(written, partsFileSchema);
  if (value) return { parts: value.parts, unread: [], document, problems: [] };
  const sound = soundParts(written, new Set(problems.map(({ where }) => where.path.split('/')[2])));
  const left = openShortForms(sound, partsFileSchema).document;
  const read = entriesOf(left.data).map(([id, opened]) => ({ id, part: partSchema.safeParse(opened) }));
  const parts = Object.fromEntries(read.flatMap(({ id, part }) => (part.success ? [[id, part.data]] : [])));
  const ids = entriesOf(written.data).map(([id]) => id);
  return { parts, unread: ids.filter((id) => !Object.hasOwn(parts, id)), document: left, problems };
}

/** A file with those of its parts alone that can be read; of the others something was told. */
function soundParts(written: YamlDocument, told: ReadonlySet<string | undefined>): YamlDocument {
  const part = fileSchema(partSchema);
  const sound = entriesOf(written.data).filter(([id, one]) => !told.has(id) && part.safeParse(one).success);
  return { ...written, data: { parts: Object.fromEntries(sound) } };
}

/** What stands under `parts:`, whatever it is. */
function entriesOf(data: unknown): [string, unknown][] {
  if (typeof data !== 'object' || data === null || !('parts' in data)) return [];
  const { parts } = data;
  return typeof parts === 'object' && parts !== null ? Object.entries(parts) : [];
}
