import type { SourceFile } from '../../model/content/source-file.ts';
import type { HouseRuleName } from '../../model/house-rules.ts';
import { isKindName, type KindName, kinds } from '../../model/kinds/index.ts';
import { ampsDrawn } from '../../model/printed/told.ts';
import type { Problem } from '../../model/problem.ts';
import { rowNames } from '../../model/short-forms/row-names.ts';
import { powerAt } from '../../model/survey/power-into-load.ts';
import { contentFiles, type ReadCatalogue, readCatalogue } from '../../read/read-content.ts';
import { readHouseRules } from '../../read/read-house-rules.ts';
import { remedyFor } from '../../read/report.ts';
import type { Effects } from '../effects.ts';
import type { ExitStatus } from '../exit-status.ts';
import { type Answers, type Asker, Interrupted, lineOf, type Question } from './ask/question.ts';
import { readingFault } from './ask/reading-fault.ts';
import { hasUnknown, type Row } from './ask/rows.ts';
import { tableQuestion } from './ask/table-question.ts';
import { openDraft } from './draft.ts';
import { type Given, type NewFile, newFile } from './new-file.ts';
import { anyPartFile } from './part/any-part-file.ts';
import { channelRows } from './part/channel-rows.ts';
import { setInJob } from './part/component-set.ts';
import { controlFault, shapeDoubt } from './part/controls/control-row.ts';
import { holesFault } from './part/hole-fields.ts';
import { leftOut } from './part/left-out.ts';
import { likeFile } from './part/like/like-file.ts';
import { leadFault } from './part/part-columns.ts';
import { needlessFor } from './part/part-rows.ts';
import { partTables } from './part/part-tables.ts';
import { fieldsOf, partText } from './part/part-text.ts';
import { madeTitle } from './part/part-title.ts';
import { passedFault } from './part/passed-fields.ts';
import { tabsFault } from './part/speaker-fields.ts';
import { coolingTable, isPair } from './part/terminal-tables.ts';
import { refused } from './refused.ts';

/** `rackleaf new part`: a part of the catalogue, from its leaflet. */
export async function newPart(effects: Effects, given: Given, asker: Asker | null): Promise<ExitStatus> {
  const { kind: kindLines = [], like: [like] = [], ...answers } = given.answers;
  try {
    if (like !== undefined) {
      const file = likeFile(await effects.readContent(), like, kindLines[0] ?? null);
      if (typeof file === 'string') return refused(effects, file);
      return await newFile(effects, file, { ...given, answers }, asker);
    }
    const kind = kindLines[0] ?? (await kindKept(effects, given.id)) ?? (await asker?.ask(kindAsked())) ?? '';
    if (!isKindName(kind)) {
      const fault = kind === '' ? '--kind is needed: ' : `there is no kind "${kind}"; `;
      return refused(effects, `${fault}${remedyFor(kind, kindNames)}`);
    }
    const file = partFile(await effects.readContent(), kind);
    return newFile(effects, file, { ...given, answers }, asker);
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    return refused(effects, 'no part is written');
  }
}

const kindNames = Object.keys(kinds);

/** The kind of a part of which an earlier try left answers; null where it left none, or of several kinds. */
async function kindKept(effects: Effects, id: string | null): Promise<string | null> {
  if (id === null) return null;
  const drafts = await Promise.all(
    kindNames.map(async (kind) => ({ kind, before: (await openDraft(effects, partDraft(kind, id))).before })),
  );
  // A fuse "holder-a" and a fuse-holder "a" would share a file: its answers tell whose they are.
  const own = drafts.filter(({ before }) => lineOf(before.answers, 'id') === id);
  return own.length === 1 ? (own[0]?.kind ?? null) : null;
}

function partDraft(kind: string, id: string): string {
  return `part-${kind}-${id}`;
}

function kindAsked() {
  const choices = Object.entries(kinds).map(([kind, { plural }]) => ({
    value: kind,
    says: `${kind}: ${plural}`,
  }));
  return { message: 'What kind of part is it?', choices, fallback: null, fault: () => null };
}

/** What a new part of a kind is asked for in a shop of these files. */
function partFile(files: readonly SourceFile[], kind: KindName): NewFile {
  const catalogue = readCatalogue(contentFiles(files));
  return {
    ...anyPartFile(files, catalogue),
    draft: `part-${kind}`,
    questions: partQuestions(kind, turnOnHint(catalogue), leadHint(catalogue)),
    text: (id, answers) => partText(kind, id, answers),
    told: (id, answers) => {
      const left = leftOut(kind, answers);
      const set = kind === 'speaker' && lineOf(answers, 'set') !== '' ? setInJob(id) : [];
      if (set.length > 0) return [...set, ...left.map((one) => `the leaflet may still tell: ${one}`)];
      return left.length === 0 ? [] : ['the leaflet may still tell:', ...left.map((one) => `  ${one}`)];
    },
  };
}

function partQuestions(kind: KindName, drawHint: string, leadsHint: string): readonly Question[] {
  return partTables[kind].map((table) =>
    tableQuestion(table, {
      ...(table.key === 'title' && madeTitle),
      fault: ({ cells, rest }, answers, line) =>
        powerFault(rest) ??
        leadFault(cells) ??
        tabsFault(cells) ??
        (['case', 'set'].includes(table.key) ? holesFault({ cells }) : null) ??
        (table.key === 'terminal' ? placeFault(kind, cells, line) : null) ??
        (table.key === 'control' ? controlFault(cells, line) : null) ??
        (table.key === 'pass' ? passedFault(cells) : null) ??
        readingFault({ key: table.key, line, answers }, (so) => problemsIn(kind, table.key, so)),
      needless: (answers) => needlessFor(table.key, answers),
      ...(table.key === 'channel' && { spread: channelRows }),
      ...(table.key === 'control' && { doubt: ({ cells }) => shapeDoubt(cells.slope) }),
      ...(table.columns.some(({ key }) => key === 'turn-on-draw') && { hints: () => [drawHint] }),
      ...(['set', 'terminal'].includes(table.key) && { hints: () => [leadsHint] }),
    }),
  );
}

/** What is reckoned where a leaflet is silent: the shop's own rule, else the trade's. */
function turnOnHint(catalogue: ReadCatalogue): string {
  const { value, by } = ruleThere(catalogue, 'turn-on-draw');
  return `Left empty, a turn on draw of ${ampsDrawn(value)} is reckoned, by ${by}.`;
}

/** What a lead counts for whose size nobody tells. */
function leadHint(catalogue: ReadCatalogue): string {
  const { value, by } = ruleThere(catalogue, 'lead-untold');
  return `A supplied lead of no size counts as ${value} AWG, by ${by}: gauge it, since its splice follows from it.`;
}

function ruleThere({ shop }: ReadCatalogue, name: HouseRuleName) {
  const { value, given } = readHouseRules(shop?.value.rules ?? {})[name];
  return { value, by: given ? 'the rules of this shop' : 'the house rules (common practice)' };
}

function powerFault(powers: readonly string[]): string | null {
  const wrong = powers.find((power) => powerAt(power) === null);
  return wrong === undefined
    ? null
    : `has the power "${wrong}": write it with its load, such as 75 W at 4 ohm`;
}

/** Terminals of a part that stands on a board lie where they were measured: on one point no wires can be laid. */
function placeFault(
  kind: KindName,
  { names, role, at, pitch, joint }: Row['cells'],
  line: string,
): string | null {
  const isOnBoard = standsOnBoard(kind);
  if (!isOnBoard || hasUnknown(line)) return null;
  // What plugs into a slot of a fuse panel, and the lead that comes out of it, lie on no panel.
  if (kind === 'distribution' && at === undefined && ['plug', 'supplied-lead'].includes(String(joint)))
    return null;
  const isRow = rowNames(String(names).split(/\s+/).join(', '));
  const isSeveral = !('unreadable' in isRow) && (isRow.length > 1 || isPair(String(role)));
  if (at === undefined)
    return 'lacks first place: write where the first of them lies on its panel, or ? where that is not known';
  return isSeveral && pitch === undefined
    ? 'lacks from one to the next: all would lie on one point; write it, or ? where it is not known: they then count as in the middle of their panel'
    : null;
}

/** True for a kind of part that stands on a board with wires to all of its terminals: it is asked for what cools it. */
function standsOnBoard(kind: KindName): boolean {
  return partTables[kind].includes(coolingTable);
}

const asked = 'content/parts/asked.yaml';

/** What the reader finds in the fields of one answer: elsewhere something may still be missing. */
function problemsIn(kind: KindName, key: string, answers: Answers): readonly Problem[] {
  const text = partText(kind, 'asked', answers);
  const fields = Object.keys(fieldsOf(kind, key, answers));
  const lines = sectionLines(text, fields);
  return readCatalogue({ shop: [], parts: [{ path: asked, text }] }).problems.filter(({ where }) =>
    lines.has(where.line),
  );
}

/** The lines on which some fields of a part stand in its file, counted from 1. */
function sectionLines(text: string, fields: readonly string[]): ReadonlySet<number> {
  const lines = new Set<number>();
  let inside = false;
  for (const [at, line] of text.split('\n').entries()) {
    const [, field] = /^ {4}([^\s:]+):/.exec(line) ?? [];
    if (field !== undefined) inside = fields.includes(field);
    if (inside) lines.add(at + 1);
  }
  return lines;
}
