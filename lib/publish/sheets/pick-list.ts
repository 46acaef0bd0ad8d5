import type { NestedSheet, Nesting } from '../../board/cut/nesting.ts';
import { alongSheet, cutFrom, nestedName, nestJobs } from '../../board/cut/sheet-pieces.ts';
import { offCutLetter } from '../../draw/nest/nest-list.ts';
import type { BuildPlan, PlanPick } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import type { LengthName } from '../../model/printed/lengths.ts';
import { promisedName } from '../site/lone/other-jobs.ts';
import { counted, spelledWithin } from '../words/words.ts';
import { type Writer, writerFor } from '../words/written.ts';
import { builderSheet } from './sheet.ts';
import { blank, type Cell, type ColumnOf, dense, strong, type Table, tableOf, tick } from './table.ts';

/** What to take from the shelf, and what the shelf lacks. */
export interface PickListSheet {
  readonly summary: string;
  /** What is counted. */
  readonly parts: Table | null;
  /** What is cut to length, with what each reel has left. */
  readonly reels: Table | null;
  /** Off-cuts of sheet to take. */
  readonly offCuts: Table | null;
  /** What is left of sheets and off-cuts once everything is cut, to go back on the shelf. */
  readonly left: Table | null;
  /** Heights that pads leave to make up with washers or packing. */
  readonly packing: Table | null;
}

function amount(pick: PlanPick, quantity: number, name: LengthName, write: Writer): { text: string } {
  return { text: pick.unit === 'm' ? write.wire(name, quantity).text : String(quantity) };
}

/** A length on one line: a narrow column breaks between lengths. */
function whole(length: string): string {
  return length.replaceAll(' ', '\u00a0');
}

/** Each piece that cuts come from, with what it has left. */
function reelsText({ reels = [] }: PlanPick, keptM: number, write: Writer): { text: string } {
  return {
    text: reels
      .map(({ offCut, lengthM, promisedM = 0, leftM }) => {
        const from = whole(write.wire('length-left', lengthM).text);
        const promised =
          promisedM > 0 ? ` (${whole(write.wire('length-taken', promisedM).text)} promised)` : '';
        const name = offCut === undefined ? '' : `off-cut ${offCut} `;
        const kept = promisedM === 0 && leftM < keptM ? ', not kept' : '';
        return `${name}${from}${promised}: ${whole(write.wire('length-left', leftM).text)}${kept}`;
      })
      .join('; '),
  };
}

/** What lies there beside that, and for whom. */
function promisedBeside(pick: PlanPick, write: Writer): string {
  const to = (pick.promised ?? []).map(
    ({ quantity, ...whom }) =>
      `${amount(pick, quantity, 'length-taken', write).text} for ${promisedName(whom)}`,
  );
  return `not counted: ${to.join('; ')}`;
}

const part: ColumnOf<PlanPick> = {
  title: 'Part',
  kind: 'words',
  cell: (pick) => strong(pick.title, pick.part),
};

function amountColumns(anyShort: boolean, write: Writer): ColumnOf<PlanPick>[] {
  const shortColumn: ColumnOf<PlanPick> = {
    title: 'Short',
    kind: 'figure',
    cell: (pick) =>
      pick.short > 0 ? { ...amount(pick, pick.short, 'length-taken', write), strong: true } : { text: '' },
  };
  return [
    {
      title: 'Take',
      kind: 'figure',
      leads: true,
      cell: (pick) => ({ ...amount(pick, pick.quantity, 'length-taken', write), strong: true }),
    },
    {
      title: 'In stock',
      kind: 'figure',
      cell: (pick) => ({
        ...inStock(pick, write),
        ...(pick.promised && { beside: promisedBeside(pick, write) }),
      }),
    },
    ...(anyShort ? [shortColumn] : []),
    tick('Taken'),
  ];
}

/** What lies on the shelf of a part; who has it, where that is not the shop. */
function inStock(pick: PlanPick, write: Writer): Cell {
  if (pick.suppliedWith !== undefined) return { text: `in the box of ${pick.suppliedWith}` };
  if (pick.broughtBy !== undefined) return { text: `the ${pick.broughtBy} brings it` };
  return amount(pick, pick.stockQuantity, 'length-left', write);
}

function tableOrNone(
  caption: string,
  picks: readonly PlanPick[],
  columns: readonly ColumnOf<PlanPick>[],
): Table | null {
  return picks.length === 0 ? null : dense(tableOf(caption, picks, columns, ({ part }) => part));
}

/** Packing below fixings, those of one height together. */
function packingTable({ boards }: Pick<BuildPlan, 'boards'>, write: Writer): Table | null {
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
      'Heights that nothing in stock makes up: find washers or packing',
      [...heights.values()],
      [
        { title: 'Board', cell: ({ board }) => strong(board) },
        { title: 'Height', kind: 'figure', cell: ({ packM }) => write.short('made', packM) },
        { title: 'Stacks', kind: 'figure', cell: ({ at }) => String(at.length) },
        { title: 'Below', kind: 'words', cell: ({ at }) => at.join(', ') },
        tick('Taken'),
      ],
    ),
  );
}

/** The off-cuts that pieces are cut from, instead of whole sheets. */
function offCutsTable(plan: BuildPlan, { sheets }: Nesting, write: Writer): Table | null {
  const taken = sheets.filter(({ stock }) => stock.offCut !== undefined);
  if (taken.length === 0) return null;
  return dense(
    tableOf(
      'Off-cuts of sheet, instead of whole ones',
      taken.map((sheet) => ({ ...sheet, ...alongWhole(plan, sheet, sheet.stock) })),
      [
        { title: 'Off-cut', kind: 'words', cell: (sheet) => strong(nestedName(sheet)) },
        ...sizeColumns('length-left', write),
        { title: 'Pieces from it', kind: 'figure', cell: ({ pieces }) => String(pieces.length) },
        tick('Taken'),
      ],
      ({ stock, copy }) => `${stock.id} ${copy}`,
    ),
  );
}

/** What is left of each sheet and off-cut, lettered as on its drawing; blank for the name that the shop gives it. */
function leftTable(plan: BuildPlan, { sheets }: Nesting, write: Writer): Table | null {
  const left = sheets.flatMap((sheet) =>
    sheet.offCuts.map((offCut, nth) => {
      return { ...alongWhole(plan, sheet, offCut), of: nestedName(sheet), letter: offCutLetter(nth) };
    }),
  );
  if (left.length === 0) return null;
  return dense(
    tableOf(
      'Sheet left after cutting, to put back: sides as those of the whole sheet',
      left,
      [
        { title: 'Left of', kind: 'words', cell: ({ of }) => strong(of) },
        { title: 'Drawn as', cell: ({ letter }) => letter },
        ...sizeColumns('length-left', write),
        blank('Name written on it'),
        tick('Put back'),
      ],
      ({ of, letter }) => `${of} ${letter}`,
    ),
  );
}

interface Size {
  readonly widthM: number;
  readonly heightM: number;
}

/** A size as the stock of the shop tells it: along the width and the height of the whole sheet. */
function alongWhole(
  { boards }: Pick<BuildPlan, 'boards'>,
  { stock }: NestedSheet,
  { widthM, heightM }: Size,
): Size {
  const whole = cutFrom(boards).find(({ sheet }) => sheet === stock.sheet);
  return whole ? alongSheet({ widthM, heightM }, whole) : { widthM, heightM };
}

function sizeColumns(name: LengthName, write: Writer): ColumnOf<Size>[] {
  return [
    { title: 'Width', kind: 'figure', cell: ({ widthM }) => write.length(name, widthM) },
    { title: 'Height', kind: 'figure', cell: ({ heightM }) => write.length(name, heightM) },
  ];
}

function pickModel(plan: BuildPlan): PickListSheet | null {
  if (plan.pick.length === 0) return null;
  const write = writerFor(plan.shop);
  const short = plan.pick.filter((pick) => pick.short > 0).length;
  const sorted = [...plan.pick].sort((a, b) => (a.kind < b.kind ? -1 : Number(a.kind > b.kind)));
  const amounts = amountColumns(short > 0, write);
  const nesting = nestJobs([plan]);
  const keptM = ruleOf(plan, 'end-least');
  return {
    summary: `${plan.pickBeyond === undefined ? '' : `Beside what revision ${plan.pickBeyond.revision} has in place. `}${
      short === 0
        ? plan.shop.stockCounted === false
          ? ''
          : 'Everything is in stock.'
        : `${counted(short, 'entry is', 'entries are')} short: order before you begin.`
    }${
      plan.shop.stockCounted === false
        ? ' The shelf is not counted: see that each entry is there before you begin.'
        : ''
    }`,
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
        { title: 'Cut from, left on it', kind: 'words', cell: (pick) => reelsText(pick, keptM, write) },
        blank('Measured left'),
      ],
    ),
    offCuts: offCutsTable(plan, nesting, write),
    left: leftTable(plan, nesting, write),
    packing: packingTable(plan, write),
  };
}

export const pickList = builderSheet('pick-list', 'Pick list', pickModel);
