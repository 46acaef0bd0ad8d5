import { nestJobs } from '../../board/sheet-pieces.ts';
import type { PlanRiserPiece } from '../../model/plan/board.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { namesOf } from '../plan-names.ts';
import { counted } from '../words.ts';
import { none, type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { dense, groupedTable, strong, type Table, tick } from './table.ts';

/** What lifts parts off a board and a board off its panel, and how all of it comes out of stock sheets. */
export interface RisersSheet {
  readonly note: string;
  readonly pieces: Table | null;
  /** What the drawings of the stock sheets show. */
  readonly sheets: string;
}

const forms: { readonly [K in PlanRiserPiece['form']]: string } = {
  rail: 'Rails, lying flat',
  'edge-rail': 'Rails, on edge',
  pad: 'Pad',
};

function made({ count, layers }: PlanRiserPiece): string {
  if (count === 0) return 'none: packing alone';
  return layers > 1 ? `${count}, in ${layers} layers` : String(count);
}

/** Every rail and pad, and the packing that makes up what the sheet's thickness leaves over. */
function piecesTable(plan: BuildPlan, write: Writer): Table | null {
  const groups = plan.boards.map(({ title, pieces }) => ({ title, things: pieces }));
  if (groups.every(({ things }) => things.length === 0)) return null;
  const { item } = namesOf(plan);
  const isItem = (id: string): boolean => plan.items.some((one) => one.id === id);
  return dense(
    groupedTable(
      'Rails below parts and pads below fixings, cut from the sheet of the board',
      groups,
      [
        {
          title: 'Below',
          cell: ({ carries }) =>
            isItem(carries) ? strong(item(carries), carries) : strong(`Fixing ${carries}`),
        },
        { title: 'Form', cell: ({ form }) => forms[form] },
        { title: 'Pieces', cell: (piece) => made(piece) },
        {
          title: 'Width',
          kind: 'figure',
          cell: ({ count, widthM }) => (count === 0 ? none : write.length(widthM)),
        },
        {
          title: 'Length',
          kind: 'figure',
          cell: ({ count, lengthM }) => (count === 0 ? none : write.length(lengthM)),
        },
        {
          title: 'Height made',
          kind: 'figure',
          cell: ({ makesM }) => (makesM === 0 ? none : write.length(makesM)),
        },
        {
          title: 'Pack with',
          kind: 'figure',
          cell: ({ packM }) => (packM === 0 ? none : write.short(packM)),
        },
        { title: 'Hole', kind: 'figure', cell: ({ holeM }) => (holeM === null ? none : write.short(holeM)) },
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
  const opened = [...new Set(sheets.map(({ stock }) => stock.id))].map((id) => {
    const own = sheets.filter(({ stock }) => stock.id === id);
    return `${counted(own.length, 'sheet')} of ${id}`;
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
