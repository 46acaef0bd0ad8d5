import type { BuildPlan, PlanPick } from '../../model/plan/index.ts';
import { counted, spelledWithin } from '../words.ts';
import { type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { blank, type ColumnOf, dense, strong, type Table, tableOf, tick } from './table.ts';

/** What to take from the shelf, and what the shelf lacks. */
export interface PickListSheet {
  readonly summary: string;
  /** What is counted. */
  readonly parts: Table | null;
  /** What is cut to length, with what each reel has left. */
  readonly reels: Table | null;
  /** Heights that pads leave to make up with washers or packing. */
  readonly packing: Table | null;
}

function amount(pick: PlanPick, quantity: number, write: Writer): { text: string } {
  return { text: pick.unit === 'm' ? write.wire(quantity).text : String(quantity) };
}

/** Each piece that cuts come from, with what it has left. */
function reelsText({ reels = [] }: PlanPick, write: Writer): { text: string } {
  return {
    text: reels
      .map(({ lengthM, leftM }) => `${write.wire(lengthM).text}: ${write.wire(leftM).text}`)
      .join('; '),
  };
}

const part: ColumnOf<PlanPick> = {
  title: 'Part',
  kind: 'words',
  cell: (pick) => strong(pick.title, pick.part),
};

function amountColumns(write: Writer): ColumnOf<PlanPick>[] {
  return [
    {
      title: 'Take',
      kind: 'figure',
      cell: (pick) => ({ ...amount(pick, pick.quantity, write), strong: true }),
    },
    { title: 'In stock', kind: 'figure', cell: (pick) => amount(pick, pick.stockQuantity, write) },
    {
      title: 'Short',
      kind: 'figure',
      cell: (pick) => (pick.short > 0 ? { ...amount(pick, pick.short, write), strong: true } : { text: '' }),
    },
    tick('Taken'),
  ];
}

function tableOrNone(
  caption: string,
  picks: readonly PlanPick[],
  columns: readonly ColumnOf<PlanPick>[],
): Table | null {
  return picks.length === 0 ? null : dense(tableOf(caption, picks, columns, ({ part }) => part));
}

/** Packing below fixings, those of one height together. */
function packingTable({ boards }: BuildPlan, write: Writer): Table | null {
  const heights = new Map<string, { board: string; packM: number; at: string[] }>();
  for (const { title, pieces } of boards)
    for (const { packM, carries } of pieces) {
      if (packM === 0) continue;
      const key = `${title} ${packM.toFixed(4)}`;
      const known = heights.get(key);
      heights.set(key, { board: title, packM, at: [...(known?.at ?? []), carries] });
    }
  if (heights.size === 0) return null;
  return dense(
    tableOf(
      'Washers or packing, to make up heights',
      [...heights.values()],
      [
        { title: 'Board', cell: ({ board }) => strong(board) },
        { title: 'Height', kind: 'figure', cell: ({ packM }) => write.short(packM) },
        { title: 'Stacks', kind: 'figure', cell: ({ at }) => String(at.length) },
        { title: 'Below', kind: 'words', cell: ({ at }) => at.join(', ') },
        tick('Taken'),
      ],
    ),
  );
}

function pickModel(plan: BuildPlan): PickListSheet | null {
  if (plan.pick.length === 0) return null;
  const write = writerFor(plan.shop);
  const short = plan.pick.filter((pick) => pick.short > 0).length;
  const sorted = [...plan.pick].sort((a, b) => (a.kind < b.kind ? -1 : Number(a.kind > b.kind)));
  const amounts = amountColumns(write);
  return {
    summary:
      short === 0
        ? 'Everything is in stock.'
        : `${counted(short, 'entry is', 'entries are')} short: order before you begin.`,
    parts: tableOrNone(
      'Parts, by the piece',
      sorted.filter(({ unit }) => unit !== 'm'),
      [part, { title: 'Kind', cell: ({ kind }) => spelledWithin(kind) }, ...amounts],
    ),
    reels: tableOrNone(
      'Cut to length, with what is left on each reel',
      sorted.filter(({ unit }) => unit === 'm'),
      [
        part,
        ...amounts,
        { title: 'Cut from, left on it', kind: 'words', cell: (pick) => reelsText(pick, write) },
        blank('Measured left'),
      ],
    ),
    packing: packingTable(plan, write),
  };
}

export const pickList = builderSheet('pick-list', 'Pick list', pickModel);
