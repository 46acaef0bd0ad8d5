import type { PlanBoard, PlanFirstPower, PlanRib, PlanWire } from '../../../model/plan/index.ts';
import { printed } from '../../../model/printed/index.ts';
import { byLeadText } from '../turn-on-state.ts';
import {
  benchOf,
  itemOf,
  lengthText,
  minutesFor,
  ownWires,
  type Step,
  step,
  type Wait,
  type WithPlan,
  type Work,
} from '../work.ts';
import { itemPhases, type Phases, waitsOfRaisedItems, waitsOfStackedItems } from './item-phases.ts';
import { roundSteps } from './laying-and-crimping-rounds.ts';

export interface BoardWork {
  readonly board: string;
  readonly steps: readonly Step[];
  /** The step that ends the work on the bench. */
  readonly tested: string;
  readonly phases: Phases;
  /** What can't be put on before the wires from the vehicle lie on the board, and those wires. */
  readonly late: {
    readonly items: readonly string[];
    readonly wires: readonly PlanWire[];
    readonly over: readonly Wait[];
  };
}

/** What the rounds of a board follow from. */
interface BoardPhases {
  readonly items: readonly string[];
  /** Its wires that are laid on the bench. */
  readonly wires: readonly PlanWire[];
  /** What stands over wires that come from elsewhere. */
  readonly over: readonly Wait[];
  readonly phases: Phases;
}

function boardPhases(
  work: WithPlan<'items' | 'wires'> & Pick<Work, 'declared'>,
  board: PlanBoard,
): BoardPhases {
  const items = work.plan.items
    .filter((item) => item.board === board.id && item.origin === 'job')
    .map(({ id }) => id);
  const wires = ownWires(work).filter((wire) => benchOf(work, wire) === board.id);
  const others = ownWires(work).filter((wire) => benchOf(work, wire) !== board.id);
  const over = waitsOfRaisedItems(board, others);
  const waits = [...waitsOfRaisedItems(board, wires), ...waitsOfStackedItems(board), ...work.declared];
  return { items, wires, over, phases: itemPhases(items, wires, waits, over) };
}

/** The items of all boards that are not on them yet when a board is tested on the bench. */
export function itemsSetLate(
  work: WithPlan<'items' | 'wires' | 'boards'> & Pick<Work, 'declared'>,
): ReadonlySet<string> {
  return new Set(work.plan.boards.flatMap((board) => [...boardPhases(work, board).phases.late]));
}

/**
 * The work on one board, on the bench: cut, drill, then in rounds mount, preset and wire; dress, test. What stands over
 * a wire that comes from the vehicle is left for there.
 */
export function boardWork(work: Work, board: PlanBoard): BoardWork {
  const place = `bench: ${board.id}`;
  const { items, wires, over, phases } = boardPhases(work, board);
  const isLate = ({ ends }: PlanWire) => ends.some(({ terminal }) => phases.late.has(itemOf(terminal)));
  const steps = cutAndDrill(work, board, place);
  const own = wires.filter((wire) => !isLate(wire));
  steps.push(
    ...roundSteps(work, {
      ...{ name: board.id, place, by: 'board', phases },
      items: items.filter((id) => !phases.late.has(id)),
      wires: own,
      before: steps.at(-1)?.id ?? '',
      why: 'a part needs its holes',
    }),
  );
  const before = steps.at(-1)?.id ?? '';
  steps.push(...dressAndTest(work, board, place, own, { before, late: phases.late }));
  const late = { items: items.filter((id) => phases.late.has(id)), wires: wires.filter(isLate), over };
  return { board: board.id, steps, tested: `test-${board.id}`, phases, late };
}

/** The finest step of the shop's tape. */
function tapeStep({ tape }: Work): string {
  return tape.system === 'inch' ? `1/${tape.fraction} in` : '1 mm';
}

function cutAndDrill(work: Work, board: PlanBoard, place: string): Step[] {
  return [
    step(`cut-${board.id}`, [], {
      layer: 'board',
      place,
      by: 'board',
      text: `Cut ${board.id} to the cut drawing`,
      tools: ['saw', 'router', 'eye, ear and dust protection'],
      minutes: minutesFor(work, 'cut-board'),
      acts: [`cut:${board.id}`],
      proof: `Width and height agree with the drawing to ${tapeStep(work)}; ${board.right.toUpperCase()} and ${board.upward.toUpperCase()} are marked as it shows them`,
    }),
    step(
      `drill-${board.id}`,
      [{ step: `cut-${board.id}`, why: 'holes are measured from the cut datum corner' }],
      {
        layer: 'board',
        place,
        by: 'board',
        text: `Drill the holes of the drill table: ${board.holes.length}`,
        tools: ['drill', 'depth stop', 'eye protection'],
        minutes: minutesFor(work, 'drill-hole', board.holes.length),
        acts: [`drill:${board.id}`],
        proof: `Every number of the table is ticked${board.holes.some(({ pilotFor }) => pilotFor !== null) ? '; each part sits on its pilots' : ''}`,
      },
    ),
    ...fixRibs(work, board, place),
  ];
}

/** Ribs go on once their screws have their holes, and before anything else is in the way of the clamps. */
function fixRibs(work: Work, { id, ribs }: PlanBoard, place: string): Step[] {
  if (ribs.length === 0) return [];
  const how = (rib: PlanRib): string => {
    const screws = rib.screw ? `${rib.screw.count} screws` : 'screws';
    return `${rib.id} to the ${rib.face === 'rear' ? 'rear' : 'mounting side'} by ${rib.joint === 'glued' ? 'glue and ' : ''}${screws}`;
  };
  const isGlued = ribs.some(({ joint }) => joint === 'glued');
  return [
    step(`ribs-${id}`, [{ step: `drill-${id}`, why: 'the screws of a rib pass through the board' }], {
      layer: 'board',
      place,
      by: 'board',
      text: `Fix the ribs of ${id}: ${ribs.map(how).join('; ')}. Drill into each rib through the board, sink the heads`,
      tools: ['drill', 'countersink', 'clamps', ...(isGlued ? ['glue'] : []), 'eye protection'],
      minutes: minutesFor(work, 'fix-rib', ribs.length),
      acts: ribs.map((rib) => `rib:${id}.${rib.id}`),
      proof: `Each rib lies on its marks without a gap; no point stands out of it and no head over the board${isGlued ? '; the glue has set before weight goes on' : ''}`,
    }),
  ];
}

/** Meter first, then power through a limit that idling devices stay below and a fault does not. */
function benchTest(
  { plan }: WithPlan<'power' | 'items'>,
  { id }: PlanBoard,
  late: ReadonlySet<string>,
): string {
  const own = plan.power.firstPower?.find(({ board }) => board === id);
  const limit = own ? `a limit of ${printed('current-allowed', own.limitA)}` : 'a limit';
  const onBoard = new Set(
    plan.items.filter((item) => item.board === id && !late.has(item.id)).map((item) => item.id),
  );
  const hasFuses = plan.power.fuses.some(({ item }) => onBoard.has(item));
  const turnOn = (own?.byLead ?? []).map((one) => `. ${byLeadText(one)}`).join('');
  const power = own?.oneByOne
    ? `Then give first power through ${limit} to one device after the other, its fuse alone fitted: idling together they may pass the limit. Take all fuses out again`
    : hasFuses
      ? `Then fit the fuses of the board, give first power through ${limit}, and take these fuses out again`
      : `Then give first power through ${limit}`;
  const waiting = own?.late ?? [];
  const later = `${waiting.join(', ')} ${waiting.length === 1 ? 'comes' : 'come'} onto ${id} in the vehicle, over wires from there, and ${waiting.length === 1 ? 'gets' : 'get'} first power there`;
  const test = 'Bench test with all fuses out: each wire end to end, plus to plus, positive to ground open';
  if (waiting.length === 0) return `${test}. ${power}${turnOn}`;
  return givesPower(own) ? `${test}. ${power}${turnOn}. ${later}` : `${test}. No power yet: ${later}`;
}

/** False for a board on which nothing stands on the bench that draws: there is nothing to give power to. */
const givesPower = (own: PlanFirstPower | undefined): boolean =>
  own === undefined || own.idleA > 0 || (own.late ?? []).length === 0;

function dressAndTest(
  work: Work,
  board: PlanBoard,
  place: string,
  wires: readonly PlanWire[],
  { before, late }: { readonly before: string; readonly late: ReadonlySet<string> },
): Step[] {
  const firstPower = work.plan.power.firstPower?.find((one) => one.board === board.id);
  const own = work.plan.measurements.filter(
    ({ when, id }) => when === 'bench' && id.startsWith(`${board.id}.`),
  );
  const mixed = wires.some(({ role }) => role === 'signal') && wires.some(({ role }) => role === 'power');
  return [
    step(`dress-${board.id}`, [{ step: before, why: 'ties go on once the last wire lies' }], {
      layer: 'dress',
      place,
      by: 'board',
      text: `Dress and tie the wires of ${board.id}${mixed ? ', signal away from power' : ''}`,
      tools: ['ties', 'flush cutter'],
      minutes: minutesFor(work, 'dress-board'),
      acts: [`dress:${board.id}`],
      proof: `A tie every ${lengthText(work, 'at-most', work.tiesM.board)}; no wire over a control or a fin; no tie end that cuts`,
    }),
    step(
      `test-${board.id}`,
      [{ step: `dress-${board.id}`, why: 'what is moved after the test is not tested' }],
      {
        layer: 'test',
        place,
        by: 'board',
        text: benchTest(work, board, late),
        tools: ['meter', 'supply with a current limit'],
        minutes: minutesFor(work, 'bench-test') + minutesFor(work, 'take-reading', own.length),
        acts: [
          ...wires.map(({ id }) => `test:${id}`),
          `test:${board.id}`,
          ...own.map(({ id }) => `measure:${id}`),
        ],
        proof: givesPower(firstPower)
          ? 'Every device shows ready, the limit does not trip, and nothing gets warm'
          : 'Each wire reads where it should, and positive to ground stays open',
      },
    ),
  ];
}
