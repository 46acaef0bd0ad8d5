import type { PlanBoard, PlanWire } from '../model/plan/index.ts';
import type { ConductorRole } from '../model/vocabulary.ts';
import { itemPhases, type WaitingRing, waitsOfRaisedItems } from './item-phases.ts';
import {
  benchOf,
  endsInVehicle,
  itemOf,
  labelsOf,
  minutesFor,
  ownWires,
  pieces,
  type Step,
  step,
  type Work,
} from './work.ts';

interface Layer {
  readonly layer: ConductorRole;
  readonly text: string;
  readonly tools: readonly string[];
  readonly proof: string;
}

/** Layers on the board, thin before thick, in the order in which they are laid: finish one before the next. */
const layers: readonly Layer[] = [
  {
    layer: 'signal',
    text: 'Lay the signal leads',
    tools: ['label printer'],
    proof: 'Each plug seats fully and a tug does not move it',
  },
  {
    layer: 'control',
    text: 'Lay the control leads',
    tools: ['label printer'],
    proof: 'Each plug seats fully; nothing crosses a knob',
  },
  {
    layer: 'turn-on',
    text: 'Lay the turn-on wires',
    tools: ['cutter', 'crimp tool', 'label printer'],
    proof: 'The meter shows under 1 ohm end to end',
  },
  {
    layer: 'speaker',
    text: 'Lay the speaker wires',
    tools: ['cutter', 'crimp tool', 'label printer'],
    proof: 'Plus to plus by label; a tug does not move an end',
  },
  {
    layer: 'power',
    text: 'Lay the power wires, no fuse fitted',
    tools: ['cutter', 'crimp tool', 'torque driver', 'label printer'],
    proof: 'Every end holds its pull test and is torqued',
  },
  {
    layer: 'ground',
    text: 'Lay the ground wires',
    tools: ['cutter', 'crimp tool', 'torque driver', 'label printer'],
    proof: 'Every end holds its pull test and is torqued; under 0.1 ohm to the ground bar',
  },
];

export interface BoardWork {
  readonly steps: readonly Step[];
  /** The step that ends the work on the bench. */
  readonly tested: string;
  readonly rings: readonly WaitingRing[];
}

/** The work on one board, on the bench: cut, drill, then in rounds mount, preset and wire; dress, test. */
export function boardWork(work: Work, board: PlanBoard): BoardWork {
  const place = `bench: ${board.id}`;
  const items = work.plan.items.filter((item) => item.board === board.id && item.origin === 'job');
  const wires = ownWires(work).filter((wire) => benchOf(work, wire) === board.id);
  const phases = itemPhases(
    items.map(({ id }) => id),
    wires,
    [...waitsOfRaisedItems(board, wires), ...work.declared],
  );
  const phaseOf = (id: string) => phases.ofItem.get(id) ?? 0;
  const last = Math.max(0, ...phases.ofItem.values());
  const steps = cutAndDrill(work, board, place);
  for (let phase = 0; phase <= last; phase += 1) {
    const round = phase === 0 ? board.id : `${board.id}-${phase + 1}`;
    const mounted = items.filter(({ id }) => phaseOf(id) === phase).map(({ id }) => id);
    const reasons = phases.waits.filter(({ item }) => mounted.includes(item)).map(({ why }) => why);
    const why = phase === 0 ? 'a part needs its pilot holes' : [...new Set(reasons)].join('; ');
    steps.push(...mountAndPreset(work, { round, place, mounted, why, before: steps.at(-1)?.id ?? '' }));
    const laid = wires.filter(({ ends }) => {
      const own = ends.map(({ terminal }) => itemOf(terminal)).filter((id) => phases.ofItem.has(id));
      return Math.max(0, ...own.map(phaseOf)) === phase;
    });
    steps.push(...layerSteps(work, { round, place, laid, before: steps.at(-1)?.id ?? '' }));
  }
  steps.push(...dressAndTest(work, board, place, wires, steps.at(-1)?.id ?? ''));
  return { steps, tested: `test-${board.id}`, rings: phases.rings };
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
      proof: 'Width and height agree with the drawing to 1/32 in; FRONT and UP are marked',
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
        proof: 'Every number of the table is ticked; each part sits on its pilots',
      },
    ),
  ];
}

interface Mounting {
  readonly round: string;
  readonly place: string;
  readonly mounted: readonly string[];
  readonly why: string;
  readonly before: string;
}

function mountAndPreset(work: Work, { round, place, mounted, why, before }: Mounting): Step[] {
  if (mounted.length === 0) return [];
  const controls = work.plan.controls.filter(({ item }) => mounted.includes(item));
  const mount = step(`place-${round}`, [{ step: before, why }], {
    layer: 'place',
    place,
    by: 'board',
    text: `Mount by the placement drawing: ${mounted.join(', ')}`,
    tools: ['screwdriver', 'depth stop'],
    minutes: minutesFor(work, 'mount-item', mounted.length),
    installs: [...mounted],
    proof: 'Every knob and set screw can be reached; air gaps are free; no screw stands through',
  });
  if (controls.length === 0) return [mount];
  return [
    mount,
    step(
      `preset-${round}`,
      [{ step: mount.id, why: 'knobs are set while no wire hides them, and before anything has power' }],
      {
        layer: 'place',
        place,
        by: 'board',
        text: `Put every control in its preset: ${[...new Set(controls.map(({ item }) => item))].join(', ')}`,
        tools: ['small screwdriver'],
        minutes: minutesFor(work, 'set-control', controls.length),
        acts: controls.map(({ item, control }) => `set:${item}.${control}`),
        proof: 'The presets table is ticked line by line',
      },
    ),
  ];
}

interface Laying {
  readonly round: string;
  readonly place: string;
  readonly laid: readonly PlanWire[];
  readonly before: string;
}

function layerSteps(work: Work, { round, place, laid, before }: Laying): Step[] {
  const steps: Step[] = [];
  let last = before;
  for (const { layer, text, tools, proof } of layers) {
    const wires = laid.filter(({ role }) => role === layer);
    if (wires.length === 0) continue;
    const id = `${layer}-${round}`;
    const tails = wires.filter((wire) => endsInVehicle(work, wire));
    const coil = tails.length > 0 ? `. Coil and tie the tail of ${labelsOf(tails)}` : '';
    const why =
      last === before
        ? 'a wire is laid to parts that are in place'
        : 'finish one layer and tick it before the next covers it';
    steps.push(
      step(id, [{ step: last, why }], {
        layer,
        place,
        by: 'board',
        text: `${text}: ${labelsOf(wires)}${coil}`,
        tools: [...tools],
        minutes: minutesFor(work, 'lay-wire', pieces(wires)),
        installs: wires.map((wire) => wire.id),
        acts: wires.map((wire) => `label:${wire.id}`),
        proof,
      }),
    );
    last = id;
  }
  return steps;
}

/** Meter first, then power through a limit that idling devices stay below and a fault does not. */
function benchTest({ plan }: Work, { id }: PlanBoard): string {
  const own = plan.power.firstPower?.find(({ board }) => board === id);
  const limit = own ? `a limit of ${own.limitA} A` : 'a limit';
  const power = own?.oneByOne
    ? `Then give first power through ${limit} to one device after the other, its fuse alone fitted: idling together they may pass the limit. Take all fuses out again`
    : `Then fit the fuses of the board, give first power through ${limit}, and take these fuses out again`;
  return `Bench test with all fuses out: each wire end to end, plus to plus, positive to ground open. ${power}`;
}

function dressAndTest(
  work: Work,
  board: PlanBoard,
  place: string,
  wires: readonly PlanWire[],
  before: string,
): Step[] {
  const own = work.plan.measurements.filter(
    ({ when, id }) => when === 'bench' && id.startsWith(`${board.id}.`),
  );
  return [
    step(`dress-${board.id}`, [{ step: before, why: 'ties go on once the last wire lies' }], {
      layer: 'dress',
      place,
      by: 'board',
      text: `Dress and tie the wires of ${board.id}, signal away from power`,
      tools: ['ties', 'flush cutter'],
      minutes: minutesFor(work, 'dress-board'),
      acts: [`dress:${board.id}`],
      proof: 'A tie every 6 to 8 in; no wire over a control or a fin; no tie end that cuts',
    }),
    step(
      `test-${board.id}`,
      [{ step: `dress-${board.id}`, why: 'what is moved after the test is not tested' }],
      {
        layer: 'test',
        place,
        by: 'board',
        text: benchTest(work, board),
        tools: ['meter', 'supply with a current limit'],
        minutes: minutesFor(work, 'bench-test') + minutesFor(work, 'take-reading', own.length),
        acts: [
          ...wires.map(({ id }) => `test:${id}`),
          `test:${board.id}`,
          ...own.map(({ id }) => `measure:${id}`),
        ],
        proof: 'Every device shows ready, the limit does not trip, and nothing gets warm',
      },
    ),
  ];
}
