import { type KeepClearKind, keepClearKinds } from '../../model/plan/board.ts';
import type { BuildPlan, PlanBoard, PlanItem } from '../../model/plan/index.ts';
import { edgeSchema } from '../../model/vocabulary.ts';
import { counted } from '../words.ts';
import { measure, none, type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { dense, strong, type Table, tableOf, tick } from './table.ts';

/** Where each part stands on its board, how the board is held, and what stands elsewhere in the vehicle. */
export interface PlacementSheet {
  readonly note: string;
  readonly boards: readonly BoardPlacement[];
  readonly elsewhere: Table | null;
}

interface BoardPlacement {
  readonly title: string;
  readonly space: string;
  readonly search: string;
  readonly parts: Table;
  readonly clear: Table | null;
  readonly layouts: Table | null;
  readonly fixings: Table | null;
}

type TitleOf = (item: string) => string;

function partsTable(board: PlanBoard, titleOf: TitleOf, write: Writer): Table {
  return tableOf(
    `Parts on ${board.title}`,
    board.placements,
    [
      { title: 'Part', cell: (placed) => strong(titleOf(placed.item), placed.item) },
      { title: 'x', kind: 'figure', cell: (placed) => write.length(placed.xM) },
      { title: 'y', kind: 'figure', cell: (placed) => write.length(placed.yM) },
      { title: 'Turn', kind: 'figure', cell: (placed) => measure(placed.turnDeg, '°', 0) },
      { title: 'Width', kind: 'figure', cell: (placed) => write.length(placed.widthM) },
      { title: 'Depth', kind: 'figure', cell: (placed) => write.length(placed.depthM) },
      { title: 'Raised', kind: 'figure', cell: (placed) => write.length(placed.raisedM) },
      { title: 'Place', cell: (placed) => placed.chosen },
      tick('Done'),
    ],
    (placed) => placed.item,
  );
}

const clearTitles: { readonly [K in KeepClearKind]: string } = {
  air: 'Air',
  connector: 'Connectors and bends',
  control: 'Control access',
  tool: 'Tool room',
};

/** One row for a side of a part that asks for room, as it faces on the board. */
function clearTable(board: PlanBoard, titleOf: TitleOf, write: Writer): Table | null {
  const sides = board.placements.flatMap(({ item, keepClear }) =>
    edgeSchema.options
      .map((side) => ({ item, side, rooms: keepClear.filter((room) => room.side === side) }))
      .filter(({ rooms }) => rooms.length > 0),
  );
  if (sides.length === 0) return null;
  return dense(
    tableOf(
      `Room to keep clear round the parts of ${board.title}, from each side outwards`,
      sides,
      [
        { title: 'Part', cell: ({ item }) => strong(titleOf(item), item) },
        { title: 'Side', cell: ({ side }) => side },
        ...keepClearKinds.map((kind) => ({
          title: clearTitles[kind],
          kind: 'figure' as const,
          cell: ({ rooms }: (typeof sides)[number]) => {
            const room = rooms.find((each) => each.kind === kind);
            return room ? write.length(room.depthM) : none;
          },
        })),
      ],
      ({ item }) => item,
    ),
  );
}

/** What a score is made up of, as the search calls it and as the sheet does. */
const scoreColumns = [
  ['length', 'Length'],
  ['crossings', 'Crossings'],
  ['signalToPower', 'Signal to power'],
  ['access', 'Access'],
  ['air', 'Air'],
  ['balance', 'Balance'],
] as const;

/** The layouts that the search found, best first, each with what its score is made up of. */
function layoutsTable(board: PlanBoard, write: Writer): Table | null {
  if (board.proposals.length === 0) return null;
  const ranked = board.proposals.map((proposal, index) => ({ ...proposal, rank: index + 1 }));
  return dense(
    tableOf(
      'Layouts found, scored in metres of wire. The first is built: once routed it crosses least',
      ranked,
      [
        { title: 'No.', kind: 'figure', cell: ({ rank }) => strong(String(rank)) },
        { title: 'Score', kind: 'figure', cell: ({ total }) => total.toFixed(2) },
        ...scoreColumns.map(([part, title]) => ({
          title,
          kind: 'figure' as const,
          cell: ({ score }: (typeof ranked)[number]) => (score[part] ?? 0).toFixed(2),
        })),
        {
          title: 'Places',
          kind: 'words',
          cell: ({ placements }) =>
            placements
              .map(({ item, xM, yM, turnDeg }) =>
                [item, write.length(xM).text, write.length(yM).text, measure(turnDeg, '°', 0)].join(' '),
              )
              .join('; '),
        },
      ],
      ({ rank }) => String(rank),
    ),
  );
}

function fixingsTable(board: PlanBoard, write: Writer): Table | null {
  if (board.fixings.length === 0) return null;
  return dense(
    tableOf(
      `Fixings of ${board.title}: their places stand in the drill table`,
      board.fixings,
      [
        { title: 'Fixing', cell: (fixing) => strong(fixing.id, fixing.part) },
        { title: 'Goes into', cell: (fixing) => fixing.point },
        {
          title: 'Spacer',
          kind: 'figure',
          cell: (fixing) => (fixing.spacerM === 0 ? none : write.length(fixing.spacerM)),
        },
        tick('Tight'),
      ],
      (fixing) => fixing.id,
    ),
  );
}

function elsewhereTable(items: readonly PlanItem[]): Table | null {
  const away = items.filter((item) => item.origin === 'job' && item.board === null);
  if (away.length === 0) return null;
  return dense(
    tableOf(
      'Parts elsewhere in the vehicle',
      away,
      [
        { title: 'Part', cell: (item) => strong(item.title, item.id) },
        { title: 'What it is', kind: 'words', cell: (item) => item.partTitle },
        { title: 'Place', kind: 'words', cell: (item) => item.seatTitle ?? none },
        { title: 'Side', cell: (item) => item.side },
        tick('Done'),
      ],
      (item) => item.id,
    ),
  );
}

/** Which parts the search raised over others, and why. */
function raisedText({ items, traces }: BuildPlan, board: PlanBoard, write: Writer): string {
  const titleOf = (id: string): string => items.find((item) => item.id === id)?.title ?? id;
  return board.placements
    .flatMap(({ item, raisedM }) => {
      const trace = traces[`boards.${board.id}.placements.${item}.raisedM`];
      const beneath = trace?.inputs.find(({ name }) => name === 'beneath')?.value;
      if (beneath === undefined) return [];
      const over = String(beneath).split(', ').map(titleOf).join(', ');
      return ` Side by side there is no room: ${titleOf(item)} stands ${write.length(raisedM).text} over the board, over ${over}.`;
    })
    .join('');
}

function placementModel(plan: BuildPlan): PlacementSheet | null {
  const write = writerFor(plan.shop);
  const titles = new Map(plan.items.map((item) => [item.id, item.title]));
  const elsewhere = elsewhereTable(plan.items);
  if (plan.boards.length === 0 && elsewhere === null) return null;
  return {
    note: write.note,
    boards: plan.boards.map((board) => ({
      title: board.title,
      space: board.spaceTitle,
      search:
        board.evaluations === 0
          ? 'Every place was given.'
          : `Open places were found by search: ${counted(board.evaluations, 'layout')} looked at.${raisedText(plan, board, write)}`,
      parts: partsTable(board, (item) => titles.get(item) ?? item, write),
      clear: clearTable(board, (item) => titles.get(item) ?? item, write),
      layouts: layoutsTable(board, write),
      fixings: fixingsTable(board, write),
    })),
    elsewhere,
  };
}

export const placement = builderSheet('placement', 'Placement', placementModel, { cautions: ['restraints'] });
