import { type KeepClearKind, keepClearKinds } from '../../../model/plan/board.ts';
import type { BuildPlan, PlanBoard, PlanItem } from '../../../model/plan/index.ts';
import { printed } from '../../../model/printed/index.ts';
import type { LengthName } from '../../../model/printed/lengths.ts';
import { edgeSchema } from '../../../model/vocabulary.ts';
import { namesOf } from '../../words/plan-names.ts';
import { counted, joined } from '../../words/words.ts';
import { bothForms, none, type Writer, type Written, writerFor } from '../../words/written.ts';
import { builderSheet } from '../sheet.ts';
import { type ColumnOf, dense, groupsBy, strong, type Table, tableOf, tick, ticks } from '../table.ts';
import { type LayoutFigure, layoutFigures, layoutsTable, scoresTable } from './layouts-found.ts';

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
  /** What the board takes of the depth of its space; empty for a plan that does not tell. */
  readonly depth: string;
  readonly parts: Table;
  readonly clear: Table | null;
  readonly pictures: readonly LayoutFigure[];
  readonly layouts: Table | null;
  readonly scores: Table | null;
  readonly fixings: Table | null;
}

type TitleOf = (item: string) => string;
type Placement = PlanBoard['placements'][number];
type Fixing = PlanBoard['fixings'][number];

function partsTable(board: PlanBoard, titleOf: TitleOf, write: Writer): Table {
  const raised: ColumnOf<Placement> = {
    title: `Raised, ${write.unit}`,
    kind: 'figure',
    cell: (placed) => (placed.raisedM === 0 ? none : write.bare('made', placed.raisedM)),
  };
  return dense(
    tableOf(
      `Parts on ${board.title}: x and y of the lower left corner, once turned`,
      board.placements,
      [
        ...(board.proposals.length > 1 ? [numberIn(board)] : []),
        { title: 'Part', kind: 'words', cell: (placed) => strong(titleOf(placed.item), placed.item) },
        { title: `x, ${write.unit}`, kind: 'figure', cell: (placed) => write.bare('position', placed.xM) },
        { title: `y, ${write.unit}`, kind: 'figure', cell: (placed) => write.bare('position', placed.yM) },
        ...(board.placements.some(({ raisedM }) => raisedM > 0) ? [raised] : []),
        { title: 'Turn', kind: 'figure', cell: (placed) => printed('angle', placed.turnDeg) },
        { title: 'Width, depth', kind: 'figure', cell: (placed) => sizeText(placed, write) },
        { title: 'Place', cell: (placed) => placed.chosen },
        tick('Done'),
      ],
      (placed) => placed.item,
    ),
  );
}

/** The number of a part on the pictures of the layouts. */
function numberIn({ placements }: PlanBoard): ColumnOf<Placement> {
  return { title: 'No.', kind: 'figure', cell: (placed) => String(placements.indexOf(placed) + 1) };
}

/** What the part measures as it stands, to know it by: `7 1/2 by 12 1/2 in`. */
function sizeText({ widthM, depthM }: Placement, write: Writer): string {
  return `${write.bare('size', widthM).text} by ${write.length('size', depthM).text}`;
}

const clearTitles: { readonly [K in KeepClearKind]: string } = {
  air: 'Air',
  connector: 'Connectors and bends',
  control: 'Control access',
  tool: 'Tool room',
};

/** The sides of a part that ask for room, as they face on the board; those that ask for the same together. */
function clearSides({ item, keepClear }: Placement) {
  const sides = edgeSchema.options
    .map((side) => ({ side, rooms: keepClear.filter((room) => room.side === side) }))
    .filter(({ rooms }) => rooms.length > 0);
  const asked = ({ rooms }: (typeof sides)[number]): string =>
    keepClearKinds.map((kind) => rooms.find((each) => each.kind === kind)?.depthM ?? 0).join(' ');
  return groupsBy(sides, asked).map(({ things }) => ({
    item,
    side: joined(things.map(({ side }) => side)),
    rooms: things[0]?.rooms ?? [],
  }));
}

function clearTable(board: PlanBoard, titleOf: TitleOf, write: Writer): Table | null {
  const sides = board.placements.flatMap(clearSides);
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
            return room ? write.length('room-asked', room.depthM) : none;
          },
        })),
      ],
      ({ item }) => item,
    ),
  );
}

/** What a fixing is tightened to, and what asks for that little; a screw in wood goes by hand. */
function torqueText({ torqueNm, torqueBy }: Fixing): Written {
  if (torqueNm === null) return { text: 'by hand', beside: 'until it seats' };
  const by = { bolt: 'by its bolt', insert: 'by its insert', board: 'by what the board bears' };
  return { text: printed('torque', torqueNm), ...(torqueBy && { beside: by[torqueBy] }) };
}

/** Fixings of one part over one spacer together, each with the point that it goes into. */
function fixingsTable(board: PlanBoard, partOf: TitleOf, write: Writer): Table | null {
  if (board.fixings.length === 0) return null;
  const spacerOf = ({ spacerM }: Fixing): Written => (spacerM === 0 ? none : write.length('made', spacerM));
  const alike = groupsBy(
    board.fixings,
    (fixing) => `${fixing.part} ${spacerOf(fixing).text} ${torqueText(fixing).text}`,
  );
  return dense(
    tableOf(
      `Fixings of ${board.title}: their places stand in the drill table`,
      alike.flatMap(({ things }) => (things[0] ? [{ first: things[0], things }] : [])),
      [
        { title: 'Fixing', kind: 'words', cell: ({ first }) => strong(partOf(first.part)) },
        { title: 'Spacer', kind: 'figure', cell: ({ first }) => spacerOf(first) },
        { title: 'Torque', kind: 'figure', leads: true, cell: ({ first }) => torqueText(first) },
        {
          title: 'Tight, each in its point',
          kind: 'words',
          cell: ({ things }) =>
            ticks(things.map(({ id, point }) => ({ text: id, strong: true, beside: point, subject: id }))),
        },
      ],
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
function raisedText(
  { items, traces }: Pick<BuildPlan, 'items' | 'traces'>,
  board: PlanBoard,
  write: Writer,
): string {
  const titleOf = (id: string): string => items.find((item) => item.id === id)?.title ?? id;
  const raised = board.placements.flatMap(({ item, raisedM }) => {
    const trace = traces[`boards.${board.id}.placements.${item}.raisedM`];
    const beneath = trace?.inputs.find(({ name }) => name === 'beneath')?.value;
    if (beneath === undefined) return [];
    const over = String(beneath).split(', ').map(titleOf).join(', ');
    const why = beneath === '' ? 'clear of the ends beside it' : `over ${over}`;
    return [`${titleOf(item)} stands ${write.length('made', raisedM).text} over the board, ${why}`];
  });
  return raised.length === 0 ? '' : ` Side by side there is no room: ${raised.join('; ')}.`;
}

/** `Depth: 109 mm of 120 mm`, what is taken up and what the space has down; and what it is the sum of. */
function depthText({ depth, thicknessM, spaceDepthM }: PlanBoard, titleOf: TitleOf, write: Writer): string {
  if (!depth) return '';
  const { of, spacerM, raisedM, heightM, roomM, totalM } = depth;
  const one = (what: string, lengthM: number, name: LengthName = 'made'): string[] =>
    lengthM === 0 ? [] : [`${what} ${bothForms(write.short(name, lengthM))}`];
  const sum = [
    ...one('spacer', spacerM),
    ...one('board', thicknessM),
    ...one('raised by', raisedM),
    ...(of === null ? [] : one(titleOf(of), heightM, 'size')),
    ...one('room for air over it', roomM, 'room-asked'),
  ];
  const [taken, has] = [write.short('size', totalM), write.short('room-free', spaceDepthM)];
  return `Depth: ${bothForms(taken)} of ${bothForms(has)}: ${sum.join(' + ')}.`;
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
      depth: depthText(board, (item) => titles.get(item) ?? item, write),
      parts: partsTable(board, (item) => titles.get(item) ?? item, write),
      clear: clearTable(board, (item) => titles.get(item) ?? item, write),
      pictures: layoutFigures(plan, board),
      layouts: layoutsTable(board, write),
      scores: scoresTable(board),
      fixings: fixingsTable(board, namesOf(plan).part, write),
    })),
    elsewhere,
  };
}

export const placement = builderSheet('placement', 'Placement', placementModel, { cautions: ['restraints'] });
