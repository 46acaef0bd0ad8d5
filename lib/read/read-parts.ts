import { partsFileSchema } from '../model/content/catalogue.ts';
import type { WrittenMeasure } from '../model/content/resolved-job.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import { type Part, partSchema } from '../model/kinds/index.ts';
import type { Place } from '../model/place.ts';
import type { Problem } from '../model/problem.ts';
import type { UnreadNames } from './names/unread-names.ts';
import { checkPartSense } from './part-sense.ts';
import { checkPartTerminals } from './part-terminals.ts';
import { Report } from './report.ts';
import { shape } from './schema/shape.ts';
import { checkWireFigures } from './wire-figures.ts';
import { measuresAt } from './yaml/measures-at.ts';
import { readYaml, type YamlDocument } from './yaml/yaml.ts';

/** The catalogue of a shop, and where each part stands. */
export interface Catalogue {
  readonly parts: Readonly<Record<string, Part>>;
  /** Where a value stands, by JSON Pointer from `/parts`. */
  readonly partPlace: (path: string) => Place;
  /** The measures that are written there or below. */
  readonly partMeasures: (path: string) => readonly WrittenMeasure[];
}

/**
 * Reads every file of parts. A part that is wrong does not take its neighbours in the file with it: they are kept,
 * and its own id counts as unread, so that what uses it is not called unknown as well.
 */
export function readParts(files: readonly SourceFile[], problems: Problem[], unread: UnreadNames): Catalogue {
  const parts: Record<string, Part> = {};
  const documents: Record<string, YamlDocument> = {};
  for (const file of files) {
    const { value: document, problems: yamlProblems } = readYaml(file.path, file.text);
    problems.push(...yamlProblems);
    if (!document) {
      unread.addAny('part');
      continue;
    }
    const report = new Report(document);
    for (const [id, part] of Object.entries(partsOf(document, problems, unread))) {
      const first = documents[id];
      if (first)
        report.atKey(['parts', id], `part "${id}" is in ${first.file} already: an id names one thing`);
      else if (isWhole(id, part, document, problems)) {
        parts[id] = part;
        documents[id] = document;
      } else unread.add('part', id);
    }
    problems.push(...report.problems);
  }
  const partPlace = (path: string): Place =>
    documents[path.split('/')[2] ?? '']?.placeOf(path) ?? {
      file: 'content/parts',
      line: 1,
      column: 1,
      path: '',
    };
  const partMeasures = (path: string): readonly WrittenMeasure[] =>
    measuresAt(documents[path.split('/')[2] ?? '']?.data, path);
  return { parts, partPlace, partMeasures };
}

/** True for a part that can be computed: it has the terminals of its kind, and figures that can be. */
function isWhole(id: string, part: Part, document: YamlDocument, problems: Problem[]): boolean {
  const report = new Report(document);
  checkPartTerminals(id, part, report);
  checkWireFigures(id, part, report);
  checkPartSense(id, part, report);
  problems.push(...report.problems);
  return report.problems.length === 0;
}

function partsOf(
  document: YamlDocument,
  problems: Problem[],
  unread: UnreadNames,
): Readonly<Record<string, Part>> {
  const shaped = shape(document, partsFileSchema);
  if (shaped.value) return shaped.value.parts;
  problems.push(...shaped.problems);
  return Object.fromEntries(
    entriesOf(document.data).flatMap(([id, written]): [string, Part][] => {
      const part = partSchema.safeParse(written);
      if (!part.success) unread.add('part', id);
      return part.success ? [[id, part.data]] : [];
    }),
  );
}

/** What stands under `parts:`, whatever it is. */
function entriesOf(data: unknown): [string, unknown][] {
  if (typeof data !== 'object' || data === null || !('parts' in data)) return [];
  const { parts } = data;
  return typeof parts === 'object' && parts !== null ? Object.entries(parts) : [];
}
