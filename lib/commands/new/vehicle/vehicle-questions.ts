import { isRelay, type KindName, type Part, partFacts } from '../../../model/kinds/index.ts';
import { terminalsOf } from '../../../model/kinds/kind.ts';
import type { Problem } from '../../../model/problem.ts';
import type { AskedTable } from '../../../model/survey/asked-table.ts';
import { walk } from '../../../model/survey/order-of-questions.ts';
import type { TerminalRole } from '../../../model/vocabulary.ts';
import { type Answers, lineOf, linesOf, type Question } from '../ask/question.ts';
import { readingFault } from '../ask/reading-fault.ts';
import type { Row } from '../ask/rows.ts';
import { type Beside, tableQuestion } from '../ask/table-question.ts';
import { idOf } from '../id-of.ts';
import { missingPart, type Stocked } from '../part-fault.ts';
import { partNames } from '../part-names.ts';
import { cableId, sourceName, vehicleText } from './vehicle-file.ts';
import { columnsOf, rowsOf, spaceIds } from './vehicle-rows.ts';
import { wayOf } from './ways.ts';

/** What the walk's questions are asked against. */
export interface Surroundings extends Stocked {
  /** What the reader finds in a vehicle file of this text. */
  readonly problemsIn: (id: string, text: string) => readonly Problem[];
}

/** The walk round a vehicle as questions, in its order. */
export function vehicleQuestions(around: Surroundings): readonly Question[] {
  return walk.flatMap(({ tables }) => tables.map((table) => tableQuestion(table, besideOf(table, around))));
}

function besideOf(table: AskedTable, around: Surroundings): Beside {
  const problems = (so: Answers) => {
    const id = lineOf(so, 'id');
    return around.problemsIn(id, vehicleText(id, so, around.parts, []));
  };
  const asksOutputs = table.key === 'output' || table.key === 'source-does';
  return {
    columns: (answers) => columnsOf(table, answers),
    hints: (answers) => hintsOf(table, answers, around.parts),
    fault: (row, answers, line) =>
      rowFault(table, row, answers) ??
      (missingFitted(table, row, around) === null
        ? readingFault({ key: table.key, line, answers }, problems)
        : null),
    doubt: (row) => missingFitted(table, row, around),
    ...(table.oneEach && { whole: (answers: Answers) => spaceIds(answers).length }),
    ...(asksOutputs && {
      needless: (answers: Answers) =>
        sourceName(answers, around.parts) === null
          ? 'belongs to a source unit: tell one by --fitted, or leave it out'
          : null,
    }),
    ...(table.within === 'space' && {
      needless: (answers: Answers) =>
        linesOf(answers, 'space').length > 0
          ? null
          : 'belongs to a space for a board: tell one by --space, or leave it out',
    }),
  };
}

/** Kinds of part that a vehicle comes with. */
const fittedKinds: readonly KindName[] = ['battery', 'alternator', 'source-unit'];

function missingFitted(table: AskedTable, { cells }: Row, stocked: Stocked): string | null {
  return table.key === 'fitted' ? missingPart(stocked, fittedKinds, cells.part) : null;
}

function hintsOf(
  table: AskedTable,
  answers: Answers,
  parts: Readonly<Record<string, Part>>,
): readonly string[] {
  switch (table.key) {
    case 'fitted':
      return fittedKinds.map((kind) => `In the catalogue: ${partNames(parts, kind).join(', ')}`);
    case 'cable':
      return [
        `Terminals: ${terminalNames(answers, parts).join(', ')}`,
        ...cablesAsked(answers, parts),
        ...unwrittenHint(answers, parts),
      ];
    case 'output':
      return outputHints(answers, parts);
    case 'way':
      return [`Names: ${servedNames(answers, parts).join(', ')}`, `Spaces: ${spaceIds(answers).join(', ')}`];
    default:
      return [];
  }
}

function groundNames(answers: Answers): readonly string[] {
  return rowsOf(answers, 'ground').map(({ cells }) => `body.${cells.name}`);
}

function terminalNames(answers: Answers, parts: Readonly<Record<string, Part>>): readonly string[] {
  const devices = rowsOf(answers, 'fitted').flatMap(({ cells }) => {
    const part = parts[String(cells.part)];
    const isSource = part?.kind === 'source-unit' || isRelay(part);
    return part && !isSource
      ? Object.keys(partFacts(part).terminals).map((name) => `${cells.name}.${name}`)
      : [];
  });
  return [...devices, ...groundNames(answers)];
}

/** The cables that a battery and an alternator have: the negative post and the case go to ground points. */
function cablesAsked(answers: Answers, parts: Surroundings['parts']): readonly string[] {
  const rows = rowsOf(answers, 'fitted').flatMap(({ cells: { name, part } }) => {
    const spec = parts[String(part)];
    return spec?.kind === 'battery' || spec?.kind === 'alternator' ? [{ name: String(name), spec }] : [];
  });
  const ends = (kind: KindName, role: TerminalRole) =>
    rows.flatMap(({ name, spec }) =>
      spec.kind === kind ? terminalsOf(partFacts(spec).terminals, role).map((one) => `${name}.${one}`) : [],
    );
  const grounded = [...ends('battery', 'source-negative'), ...ends('alternator', 'source-negative')];
  const charged = ends('alternator', 'source-positive');
  const [post] = ends('battery', 'source-positive');
  const [ground = 'body.engine'] = groundNames(answers);
  const asked = [
    ...grounded.map((end) => `${end} to a ground point, such as ${ground}`),
    ...charged.map((end) => `${end} to ${post ?? 'the battery'}`),
  ];
  return asked.length === 0 ? [] : [`One line each: ${asked.join('; ')}.`];
}

/** Devices whose part is still to be written: what their terminals are called, it will tell. */
function unwrittenHint(answers: Answers, parts: Surroundings['parts']): readonly string[] {
  const names = rowsOf(answers, 'fitted').flatMap(({ cells }) =>
    parts[String(cells.part)] ? [] : [String(cells.name)],
  );
  return names.length === 0
    ? []
    : [
        `Of ${names.join(', ')} the part is still to be written: name each terminal as you will there, such as ${names[0]}.POS`,
      ];
}

/** What the outputs of the source unit are called by its part, a pair by its name. */
function outputHints(answers: Answers, parts: Surroundings['parts']): readonly string[] {
  const name = sourceName(answers, parts);
  const fitted = rowsOf(answers, 'fitted').find(({ cells }) => cells.name === name);
  const spec = parts[String(fitted?.cells.part)];
  if (name === null || !spec) return [];
  const { terminals } = partFacts(spec);
  const outputs = [
    ...terminalsOf(terminals, 'signal-out'),
    ...terminalsOf(terminals, 'speaker-out-positive').map((one) => one.replace(/\+$/, '')),
  ];
  return [`Outputs of ${name}: ${outputs.join(', ')}`];
}

/** What a way may lead to; of a fitted device with the terminals to which the cord is held. */
function servedNames(answers: Answers, parts: Surroundings['parts']): readonly string[] {
  return [
    ...rowsOf(answers, 'fitted').map(({ cells }) => {
      const part = parts[String(cells.part)];
      const posts = part?.kind === 'battery' ? Object.keys(partFacts(part).terminals) : [];
      return posts.length === 0 ? String(cells.name) : `${cells.name} (${posts.join(', ')})`;
    }),
    ...rowsOf(answers, 'place').map(({ cells }) => idOf(String(cells.title)) ?? ''),
    ...groundNames(answers),
  ];
}

/** What a row is called among its like; null for one that has no name. */
function nameOfRow(table: AskedTable, row: Row, answers: Answers): string | null {
  const { name, title, what } = row.cells;
  if (table.key === 'cable') return cableId(row.cells);
  if (table.key === 'way') {
    const read = wayOf(row, spaceIds(answers));
    return typeof read === 'string' ? null : read.id;
  }
  if (table.rows === 1) return null;
  if (name !== undefined) return String(name);
  const words = title ?? what;
  return words === undefined ? null : (idOf(String(words)) ?? '');
}

/** A ground point that an end of a way calls by its name alone, where nothing else has that name; null for none. */
function groundNamed({ cells: { from, to } }: Row, answers: Answers): string | null {
  const idsOf = (key: string, column: string) =>
    rowsOf(answers, key).map(({ cells }) => idOf(String(cells[column])) ?? '');
  const grounds = idsOf('ground', 'name');
  const others = [...idsOf('fitted', 'name'), ...idsOf('place', 'title')];
  const ends = [from, to].flatMap((end) => String(end).split(/\s+/));
  return ends.find((end) => grounds.includes(end) && !others.includes(end)) ?? null;
}

/** What is wrong with a row beside those that were answered before it. */
function rowFault(table: AskedTable, row: Row, answers: Answers): string | null {
  const spaces = spaceIds(answers);
  const { space } = row.cells;
  const isWithin = table.within === 'space' && spaces.length > 1;
  if (isWithin && !spaces.includes(String(space))) return `names no space: write ${spaces.join(' or ')}`;
  if (table.key === 'way') {
    const read = wayOf(row, spaces);
    if (typeof read === 'string') return read;
    const ground = groundNamed(row, answers);
    if (ground !== null) return `${ground} is a ground point: write body.${ground} in its place`;
  }
  const name = nameOfRow(table, row, answers);
  if (name === null) return null;
  if (name === '') return 'has no letter or digit that a name could be made of';
  const others = rowsOf(answers, table.key).filter((one) => !isWithin || one.space === space);
  return others.some((one) => nameOfRow(table, one, answers) === name)
    ? `is called ${name}, and there is one of that name already`
    : null;
}
