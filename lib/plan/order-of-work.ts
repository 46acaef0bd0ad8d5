import type { BuildPlan, PlanStep, PlanWire } from '../model/plan/index.ts';
import type { ConductorRole } from '../model/vocabulary.ts';

/** What the order of work follows from. */
type Planned = Pick<BuildPlan, 'items' | 'wires' | 'boards' | 'power' | 'controls' | 'measurements'>;

/** Minutes of a piece of work in this trade; common practice, no source. The shop's own times will differ. */
const minutesOf = {
  cutBoard: 40,
  hole: 2,
  item: 10,
  preset: 1,
  wire: 8,
  runWire: 20,
  boardIn: 20,
  fuse: 3,
  reading: 3,
  check: 15,
};

/** Layers on the board, in the order in which they are laid: finish one before the next. */
const layers: readonly { readonly layer: ConductorRole; readonly text: string; readonly proof: string }[] = [
  { layer: 'signal', text: 'Lay the signal wires', proof: 'Each plug seats fully; a tug does not move it' },
  { layer: 'control', text: 'Lay the control wires', proof: 'Each plug seats fully; nothing crosses a knob' },
  {
    layer: 'turn-on',
    text: 'Lay the turn-on wires',
    proof: 'The meter shows under 1 ohm end to end, and open to ground',
  },
  {
    layer: 'speaker',
    text: 'Lay the speaker wires',
    proof: 'Plus to plus by label; the meter shows no path between pairs',
  },
  {
    layer: 'power',
    text: 'Lay the power wires, no fuse fitted',
    proof: 'Pull test on every end; open to ground',
  },
  {
    layer: 'ground',
    text: 'Lay the ground wires',
    proof: 'Pull test on every end; under 0.1 ohm to the ground bar',
  },
];

/**
 * The order of work as a partial order: each step with what it waits for, what it installs, which acts are done
 * in it, and how it is known to be right. Every item and every wire of the job is installed by one step.
 */
export function orderOfWork(plan: Planned): PlanStep[] {
  const bench = plan.boards.flatMap((board) => boardSteps(plan, board));
  const tested = bench.filter(({ id }) => id.startsWith('test-')).map(({ id }) => id);
  return [...bench, ...vehicleSteps(plan, tested)];
}

function step(
  id: string,
  after: readonly string[],
  own: Partial<PlanStep> & Pick<PlanStep, 'layer' | 'place' | 'text' | 'proof'>,
): PlanStep {
  return { id, after: [...after], tools: [], minutes: 0, installs: [], acts: [], ...own };
}

/** Wires with both ends on one board are laid on the bench; the others at the vehicle. */
function isOnBoard(plan: Planned, wire: PlanWire): boolean {
  const boards = wire.ends.map(
    ({ terminal }) => plan.items.find(({ id }) => id === itemOf(terminal))?.board ?? null,
  );
  return boards[0] !== null && boards[0] === boards[1];
}

function itemOf(terminal: string): string {
  return terminal.slice(0, terminal.indexOf('.'));
}

function boardSteps(plan: Planned, board: BuildPlan['boards'][number]): PlanStep[] {
  const items = plan.items.filter((item) => item.board === board.id);
  const own = new Set(items.map(({ id }) => id));
  const controls = plan.controls.filter(({ item }) => own.has(item));
  const wires = plan.wires.filter(
    (wire) => wire.origin === 'job' && wire.board === board.id && isOnBoard(plan, wire),
  );
  const place = `bench: ${board.id}`;
  const steps = [
    step(`cut-${board.id}`, [], {
      layer: 'board',
      place,
      text: `Cut ${board.id} to the cut drawing`,
      tools: ['saw', 'eye and ear protection'],
      minutes: minutesOf.cutBoard,
      acts: [`cut:${board.id}`],
      proof: 'Width and height agree with the drawing to 1/32 in; FRONT and UP are marked',
    }),
    step(`drill-${board.id}`, [`cut-${board.id}`], {
      layer: 'board',
      place,
      text: `Drill the ${board.holes.length} holes of the drill table`,
      tools: ['drill', 'depth stop'],
      minutes: board.holes.length * minutesOf.hole,
      acts: [`drill:${board.id}`],
      proof: 'Every number of the table is ticked; each part sits on its pilots',
    }),
    step(`place-${board.id}`, [`drill-${board.id}`], {
      layer: 'place',
      place,
      text: `Mount ${items.length} parts by the placement drawing`,
      tools: ['screwdriver'],
      minutes: items.length * minutesOf.item,
      installs: items.map(({ id }) => id),
      proof: 'Every knob and set screw can be reached; air gaps are free',
    }),
    step(`preset-${board.id}`, [`place-${board.id}`], {
      layer: 'place',
      place,
      text: 'Put every control in its preset',
      minutes: controls.length * minutesOf.preset,
      acts: controls.map(({ item, control }) => `set:${item}.${control}`),
      proof: 'The presets table is ticked line by line',
    }),
  ];
  let before = `preset-${board.id}`;
  for (const { layer, text, proof } of layers) {
    const laid = wires.filter(({ role }) => role === layer);
    if (laid.length === 0) continue;
    const id = `${layer}-${board.id}`;
    steps.push(
      step(id, [before], {
        layer,
        place,
        text: `${text}: ${laid.map(({ label }) => label).join(', ')}`,
        tools: ['cutter', 'crimp tool', 'label printer'],
        minutes: laid.length * minutesOf.wire,
        installs: laid.map((wire) => wire.id),
        acts: laid.map((wire) => `label:${wire.id}`),
        proof,
      }),
    );
    before = id;
  }
  return [
    ...steps,
    step(`dress-${board.id}`, [before], {
      layer: 'dress',
      place,
      text: 'Dress and tie the wires, signal away from power',
      minutes: minutesOf.check,
      acts: [`dress:${board.id}`],
      proof: 'A tie every 6 to 8 in; no wire over a control or a fin',
    }),
    step(`test-${board.id}`, [`dress-${board.id}`], {
      layer: 'test',
      place,
      text: 'Bench test with all main fuses out: continuity, polarity, positive to ground open, then first power through a 3 to 5 A limit',
      tools: ['meter', 'current-limited supply'],
      minutes: minutesOf.check,
      acts: [`test:${board.id}`],
      proof: 'Every device shows ready and no supply limit trips',
    }),
  ];
}

function vehicleSteps(plan: Planned, tested: readonly string[]): PlanStep[] {
  const place = 'vehicle';
  const wires = plan.wires.filter((wire) => wire.origin === 'job' && !isOnBoard(plan, wire));
  const runs = [...new Set(wires.flatMap(({ run }) => run ?? []))];
  const loose = wires.filter(({ run }) => run === null);
  const items = plan.items.filter(({ origin, board }) => origin === 'job' && board === null);
  const runSteps = runs.map((run) => {
    const own = wires.filter((wire) => wire.run === run);
    return step(`run-${run}`, ['battery-off'], {
      layer: 'run',
      place,
      text: `Lay the run ${run}: ${own.map(({ label }) => label).join(', ')}`,
      tools: ['trim tools', 'grommets'],
      minutes: own.length * minutesOf.runWire,
      installs: own.map(({ id }) => id),
      acts: own.map(({ id }) => `label:${id}`),
      proof: 'Clear of airbags, seat rails and sharp edges; a grommet in every metal edge',
    });
  });
  const before = [...runSteps.map(({ id }) => id), 'mount-in-vehicle'];
  const boardsIn = plan.boards.map(({ id }) =>
    step(`board-in-${id}`, [...before, ...tested], {
      layer: 'board',
      place,
      text: `Fix ${id} on its sound points`,
      tools: ['torque wrench'],
      minutes: minutesOf.boardIn,
      acts: [`fix:${id}`],
      proof: 'Every fixing is torqued; the board does not move by hand',
    }),
  );
  const controls = plan.controls.filter(({ item }) => items.some(({ id }) => id === item));
  return [
    step('battery-off', [], {
      layer: 'prepare',
      place,
      text: 'Check the vehicle in, then take the battery off as its maker says and wait for the restraint system',
      tools: ['10 mm spanner'],
      minutes: minutesOf.check,
      acts: ['battery-off'],
      proof: 'The negative lead is off and insulated',
    }),
    ...runSteps,
    step('mount-in-vehicle', ['battery-off'], {
      layer: 'place',
      place,
      text: `Mount ${items.length} parts in the vehicle`,
      tools: ['screwdriver'],
      minutes: items.length * minutesOf.item,
      installs: items.map(({ id }) => id),
      acts: controls.map(({ item, control }) => `set:${item}.${control}`),
      proof: 'Nothing rattles; window glass and seats move freely',
    }),
    ...boardsIn,
    step('connect', boardsIn.length > 0 ? boardsIn.map(({ id }) => id) : before, {
      layer: 'ground',
      place,
      text: `Connect at the vehicle, ground first: ${loose.map(({ label }) => label).join(', ') || 'the ends of the runs'}`,
      tools: ['torque wrench', 'wire brush'],
      minutes: Math.max(1, loose.length) * minutesOf.wire,
      installs: loose.map(({ id }) => id),
      acts: loose.map(({ id }) => `label:${id}`),
      proof: 'Ground point bare, bolted and sealed; positive to ground open with all fuses out',
    }),
    step('fuses', ['connect'], {
      layer: 'power',
      place,
      text: 'Connect the battery, then fit the fuses: branches first, main fuse last',
      minutes: plan.power.fuses.length * minutesOf.fuse,
      acts: plan.power.fuses.map(({ id }) => `fit-fuse:${id}`),
      proof: 'No spark beyond the charging of the amplifiers; voltage at each device as predicted',
    }),
    step('measure', ['fuses'], {
      layer: 'test',
      place,
      text: 'Measure and write down every line of the commissioning record',
      tools: ['true-RMS meter'],
      minutes: plan.measurements.length * minutesOf.reading,
      acts: plan.measurements.map(({ id }) => `measure:${id}`),
      proof: 'Every blank is filled; what differs is explained',
    }),
  ];
}
