import { nestedName, nestJobs } from '../../../board/cut/sheet-pieces.ts';
import type { PlanRiserPiece } from '../../../model/plan/board.ts';
import type { BuildPlan } from '../../../model/plan/index.ts';
import { namesOf, type PlanNames } from '../../words/plan-names.ts';
import { counted } from '../../words/words.ts';
import { type Writer, type Written, writerFor } from '../../words/written.ts';
import { builderSheet } from '../sheet.ts';
import { dense, type Group, groupedTable, groupsBy, strong, type Table, tick } from '../table.ts';

/** What lifts parts off a board and a board off its panel, and how all of it comes out of stock sheets. */
export interface RisersSheet {
  readonly note: string;
  readonly pieces: Table | null;
  /** What the drawings of the stock sheets show. */
  readonly sheets: string;
}

const formNames: { readonly [K in PlanRiserPiece['form']]: string } = {
  rail: 'Rails, lying flat',
  'edge-rail': 'Rails, on edge',
  pad: 'Pads',
};

/** What is cut for such a piece, and what else goes below it: `Pads, 2 in by 2 in; 3/4 in high`. */
function cutText(
  { count, layers, form, parts, ...piece }: PlanRiserPiece,
  partOf: PlanNames['part'],
  write: Writer,
): string {
  const { widthM, lengthM, makesM, packM, holeM } = piece;
  const shelf = parts.map((one) => `${one.count} x ${partOf(one.part)}`).join(' + ');
  const high = `${forms(write.length('made', makesM))} high`;
  const rest = [
    packM === 0 ? '' : `packing ${forms(write.short('made', packM))}`,
    holeM === null ? '' : `hole ${write.bore(holeM, 'clearance')}`,
  ].filter((text) => text !== '');
  if (count === 0) return [...(shelf === '' ? ['No piece'] : [shelf, high]), ...rest].join('; ');
  const wide = forms(write.length('cut', widthM));
  const long = forms(write.length('cut', lengthM));
  const sizes = wide === long ? `${wide} square` : `${wide} by ${long}`;
  const made = layers > 1 ? `${high} in ${layers} layers` : high;
  return [`${formNames[form]}, ${sizes}`, ...(shelf === '' ? [] : [`with ${shelf}`]), made, ...rest].join(
    '; ',
  );
}

function forms({ text, beside }: Written): string {
  return beside === undefined ? text : `${text} ${beside}`;
}

/** The pieces of each board, those cut alike together. */
function groupsOf(
  { boards }: Pick<BuildPlan, 'boards'>,
  partOf: PlanNames['part'],
  write: Writer,
): Group<PlanRiserPiece>[] {
  return boards.flatMap(({ title: board, pieces }) =>
    groupsBy(pieces, (piece) => cutText(piece, partOf, write)).map(({ title, things }) => ({
      title: boards.length > 1 ? `${board}. ${title}` : title,
      things,
    })),
  );
}

/** Every rail, pad and spacer, and the packing that makes up what these leave over. */
function piecesTable(plan: BuildPlan, write: Writer): Table | null {
  const { item, part } = namesOf(plan);
  const groups = groupsOf(plan, part, write);
  if (groups.length === 0) return null;
  const isItem = (id: string): boolean => plan.items.some((one) => one.id === id);
  return dense(
    groupedTable(
      'Below parts and fixings: rails and pads from the sheet of the board, spacers and packing from the shelf',
      groups,
      [
        {
          title: 'Below',
          kind: 'words',
          cell: ({ carries }) =>
            isItem(carries) ? strong(item(carries), carries) : strong(`Fixing ${carries}`),
        },
        {
          title: 'Pieces to cut',
          kind: 'figure',
          cell: ({ count, parts }) => {
            if (count > 0) return String(count);
            return parts.length > 0 ? 'from the shelf' : 'packing alone';
          },
        },
        tick('Cut'),
        tick('Fixed'),
      ],
      ({ carries }) => carries,
    ),
  );
}

/** How many sheets of each material are opened. */
function sheetsText(plan: BuildPlan): string {
  const { sheets, unplaced } = nestJobs([plan]);
  const opened = [...new Set(sheets.map(({ stock }) => stock.id))].flatMap((id) => {
    const own = sheets.filter(({ stock }) => stock.id === id);
    const [{ stock } = {}] = own;
    if (!stock || stock.offCut !== undefined) return own.map(nestedName);
    return [`${counted(own.length, 'sheet')} of ${id}`];
  });
  const left =
    unplaced.length === 0 ? '' : ` ${counted(unplaced.length, 'piece fits', 'pieces fit')} on no sheet.`;
  return `Everything is cut from ${opened.join(' and ')}.${left}`;
}

function risersModel(plan: BuildPlan): RisersSheet | null {
  if (plan.boards.length === 0) return null;
  const write = writerFor(plan.shop);
  return { note: write.note, pieces: piecesTable(plan, write), sheets: sheetsText(plan) };
}

export const risers = builderSheet('risers', 'Risers and nesting', risersModel);
