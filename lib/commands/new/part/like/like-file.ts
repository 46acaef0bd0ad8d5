import { hasFields } from '../../../../model/content/proposal.ts';
import type { SourceFile } from '../../../../model/content/source-file.ts';
import type { KindName, Part } from '../../../../model/kinds/index.ts';
import type { Problem } from '../../../../model/problem.ts';
import { nearNames } from '../../../../read/names/nearest-name.ts';
import { contentFiles, readCatalogue } from '../../../../read/read-content.ts';
import { remedyFor } from '../../../../read/report.ts';
import { type Answers, lineOf, linesOf, type Question } from '../../ask/question.ts';
import { readingFault } from '../../ask/reading-fault.ts';
import { rowOf } from '../../ask/rows.ts';
import { tableQuestion } from '../../ask/table-question.ts';
import type { NewFile } from '../../new-file.ts';
import { problemsOfPart, unreadFault } from '../../unread.ts';
import type { Named } from '../../yaml-text.ts';
import { anyPartFile } from '../any-part-file.ts';
import { controlsOf } from '../controls/control-fields.ts';
import { controlFault, shapeDoubt } from '../controls/control-row.ts';
import { partTables, titleTable } from '../part-tables.ts';
import { madeTitle } from '../part-title.ts';
import { controlTable } from '../terminal-tables.ts';
import { differenceFault, mayDiffer } from './differences.ts';
import { tabsName } from './like-tabs.ts';
import { likeText, takenOver, untoldByMaker, writtenPart } from './part-like.ts';

/** The answer that tells what differs, and its flag. */
export const differsKey = 'differs';

/** What a part is asked for that is like another one of the shop: its title, and what differs. As a text why it can't be. */
export function likeFile(files: readonly SourceFile[], like: string, kind: string | null): NewFile | string {
  const sorted = contentFiles(files);
  const catalogue = readCatalogue(sorted);
  const { parts, problems } = catalogue;
  const part = writtenPart(sorted.parts, like);
  const read = parts.parts[like];
  if (!part || !read)
    return (
      (part && unreadFault(problemsOfPart(like, problems))) ??
      `there is no part "${like}"; ${meantBy(like, parts.parts, kind)}`
    );
  if (kind !== null && kind !== read.kind) return `"${like}" is of the kind ${read.kind}: leave --kind out`;
  const any = anyPartFile(files, catalogue);
  const text: NewFile['text'] = (id, answers) =>
    likeText(
      { id, title: lineOf(answers, 'title'), like, controls: controlsIn(answers) },
      part,
      lineOf(answers, differsKey),
    );
  return {
    ...any,
    draft: `part-like-${like}`,
    questions: [
      tableQuestion(titleTable, madeTitle),
      differsQuestion(like, part),
      controlQuestion(read.kind, (answers) => any.problems('asked', text('asked', answers), answers)),
    ],
    text,
    told: (_id, answers) => toldOf(like, part, answers),
  };
}

/** Knobs and switches that the other part has not, or has otherwise. */
function controlQuestion(kind: KindName, problems: (answers: Answers) => readonly Problem[]): Question {
  const hasControls = partTables[kind].includes(controlTable);
  return tableQuestion(
    { ...controlTable, seldom: 'those of the other part' },
    {
      needless: () =>
        hasControls
          ? null
          : `belongs to a part with knobs and switches, and a ${kind} has none: leave it out`,
      fault: ({ cells }, answers, line) =>
        controlFault(cells, line) ?? readingFault({ key: controlTable.key, line, answers }, problems),
      doubt: ({ cells }) => shapeDoubt(cells.slope),
    },
  );
}

function controlsIn(answers: Answers): Named {
  return controlsOf(linesOf(answers, controlTable.key).map((line) => rowOf(controlTable.columns, line)));
}

/** What is said of a part that is like another: which figures it has from there, and which it does not have. */
function toldOf(like: string, part: Named, answers: Answers): readonly string[] {
  const line = lineOf(answers, differsKey);
  const left = untoldByMaker(part, line);
  return [
    `as ${like} but for what was told: compare with its leaflet what is taken over:`,
    ...takenOver(part, line, controlsIn(answers)).map((one) => `  ${one}`),
    ...left.map((field) => {
      const how = field === tabsName ? 'write tab: at each of its terminals' : 'write it into the file';
      return `not taken over, since its own maker tells it: ${field}; ${how}`;
    }),
  ];
}

/** Which parts may have been meant, of the kind that was told where one was; where none is near, what there is. */
function meantBy(like: string, parts: Readonly<Record<string, Part>>, kind: string | null): string {
  const names = Object.keys(parts).filter((id) => kind === null || parts[id]?.kind === kind);
  const near = nearNames(like, names);
  return near.length > 1 ? `did you mean ${near.join(' or ')}?` : remedyFor(like, names);
}

function differsQuestion(like: string, part: Named): Question {
  const [told, own] = [mayDiffer(part), untoldByMaker(part, '')];
  return {
    key: differsKey,
    asks: `What differs from ${like}, in one line: each by its name, with a comma between`,
    hints: () => [
      `As it is there: ${told.join(', ')}`,
      ...(own.length === 0 ? [] : [`Taken over only where you tell it: ${own.join(', ')}`]),
      `Such as: ${told.slice(0, 2).join(', ')}`,
      ...(hasFields(part.terminals)
        ? [
            'What its maker printed at terminals, in their order, goes by mark: OUT1..2.mark FRONT L|FRONT R. A loose lead is no plug: REM-OUT.joint supplied-lead. A terminal or a control that it has not: REM-OUT none.',
          ]
        : []),
    ],
    many: false,
    fallback: () => '',
    fault: (line) => differenceFault(part, line),
  };
}
