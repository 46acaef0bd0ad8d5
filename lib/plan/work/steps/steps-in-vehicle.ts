import type { PlanStep } from '../../../model/plan/index.ts';
import { ohmsBelow } from '../../../model/printed/told.ts';
import type { ConductorRole } from '../../../model/vocabulary.ts';
import {
  endsInVehicle,
  labelsOf,
  minutesFor,
  ownWires,
  pieces,
  type Step,
  step,
  type Work,
} from '../work.ts';
import { boardIn, safe } from './board-in.ts';
import { boxText, insideBoxesText } from './box-text.ts';
import { commissioningSteps } from './commissioning-steps.ts';
import { mountInDoorText } from './door-words.ts';
import { dryFerrulesText } from './ferrule-words.ts';
import { looseText } from './held-words.ts';
import { letInText } from './let-in-words.ts';
import { beforeMount, openingSteps } from './opening-steps.ts';
import { groundPointSteps, pointSteps } from './point-steps.ts';
import { layRun, wayHoleSteps } from './run-steps.ts';
import { inOrder } from './sort-steps.ts';
import { jointActs, jointsText } from './splice-words.ts';
import { isLoose, lateWork } from './steps-late-on-board.ts';
import type { BoardWork } from './steps-on-board.ts';
import { groundTorques } from './torque-words.ts';
import { trimOffSteps } from './trim-steps.ts';

type Dependency = PlanStep['waitsFor'][number];
const vehicle = { place: 'vehicle', by: 'vehicle' } as const;

/** The work in the vehicle: check in, runs, parts, boards and what stands over the runs, connections, test, power. */
export function vehicleWork(work: Work, onBench: readonly BoardWork[]): Step[] {
  const runs = work.plan.runs.map(({ id }) => layRun(work, id));
  const holes = wayHoleSteps(work);
  const openings = openingSteps(work);
  const mounts = mountSteps(work);
  const runIds = runs.map(({ id }) => id);
  const points = pointSteps(work);
  const grounds = groundPointSteps(work);
  const boards = onBench.map(({ board, tested }) =>
    boardIn(work, board, tested, { runs: runIds, points: points.map(({ id }) => id) }),
  );
  const late = lateWork(
    work,
    onBench,
    boards.map(({ id }) => id),
  );
  const ready = readyOf([
    ...boards,
    ...late.steps,
    ...(boards.length === 0 ? runs : []),
    ...mounts,
    ...grounds,
  ]);
  const connects = connectSteps(work, ready, late.laid);
  const caps = capSteps(work, [
    ...onBench.flatMap(({ steps }) => steps),
    ...runs,
    ...late.steps,
    ...connects,
  ]);
  const made = [...connects.slice(-1), ...caps].map(({ id }): Dependency => {
    return { step: id, why: 'every end is made before it is tested' };
  });
  // Without a connection to make, what must be in place before one is waited for itself.
  const before = connects.length > 0 ? made : [...ready, ...made];
  return [
    ...beginning(work),
    ...trimOffSteps(work),
    ...holes,
    ...runs,
    ...openings,
    ...mounts,
    ...points,
    ...grounds,
    ...boards,
    ...late.steps,
    ...connects,
    ...caps,
    ...commissioningSteps(
      work,
      before.length > 0 ? before : [{ step: 'battery-off', why: 'nothing else' }],
      late.laid,
    ),
  ];
}

/** What must be in place before anything is connected in the vehicle. */
function readyOf(steps: readonly Step[]): Dependency[] {
  return steps.map(({ id }) => ({
    step: id,
    why: id.startsWith('board-in') ? 'a loop is left at the fixed board' : 'both ends must be in place',
  }));
}

function beginning(work: Work): Step[] {
  const survey = work.plan.measurements.filter(({ when }) => when === 'survey');
  return [
    step('check-in', [], {
      layer: 'prepare',
      ...vehicle,
      text: 'Check the vehicle in on the survey sheet: warning lamps, damage, functions; take the readings of the survey',
      tools: ['meter', 'survey sheet'],
      minutes: minutesFor(work, 'check-in') + minutesFor(work, 'take-reading', survey.length),
      acts: ['check-in', ...survey.map(({ id }) => `measure:${id}`)],
      proof: 'Every line is ticked and the customer has signed it',
    }),
    step('battery-off', [{ step: 'check-in', why: 'the readings need the battery on' }], {
      layer: 'prepare',
      ...vehicle,
      text: `Key out; take ${negativeLeads(work)} off as the vehicle's maker says, and wait for the restraint system`,
      tools: ['10 mm spanner', 'insulating cap'],
      minutes: minutesFor(work, 'battery-off'),
      acts: ['battery-off'],
      proof: `${batteries(work).length > 1 ? 'Each negative lead' : 'The negative lead'} is off, capped, and can not spring back`,
    }),
  ];
}

/** Batteries that were there before work began. */
function batteries({ plan }: Work): readonly string[] {
  return plan.items.flatMap(({ id, kind, origin }) =>
    kind === 'battery' && origin === 'vehicle' ? [id] : [],
  );
}

function negativeLeads(work: Work): string {
  const fitted = batteries(work);
  return fitted.length > 1 ? `the negative leads of ${fitted.join(' and ')}` : "the battery's negative lead";
}

/** The parts of one place in one step: an enclosure before the speaker that goes into it, then as the job declares. */
function mountSteps(work: Work): Step[] {
  const items = work.plan.items.filter(({ origin, board }) => origin === 'job' && board === null);
  const rank = (kind: string) => (kind === 'enclosure' ? 0 : 1);
  return [...new Set(items.map(({ seat }) => seat))].map((seat) => {
    const own = declaredOrder(
      work,
      items
        .filter((item) => item.seat === seat)
        .toSorted((a, b) => rank(a.kind) - rank(b.kind))
        .map(({ id }) => id),
    );
    const controls = work.plan.controls.filter(({ item }) => own.includes(item));
    const preset = controls.length > 0 ? '; put its controls in their presets' : '';
    return step(`mount-${seat ?? 'loose'}`, beforeMount(work, seat), {
      layer: 'place',
      ...vehicle,
      text: `Mount at ${seat ?? 'its place'}: ${own.map((id) => looseText(work, id)).join(', ')}${preset}${letInText(work, own)}${mountInDoorText(work, own)}${boxText(work, seat)}`,
      tools: ['screwdriver', 'trim tools'],
      minutes: minutesFor(work, 'mount-item', own.length) + minutesFor(work, 'set-control', controls.length),
      installs: [...own],
      acts: controls.map(({ item, control }) => `set:${item}.${control}`),
      proof: 'Held by sound metal or its own bracket, not by trim; window glass, seats and doors move freely',
    });
  });
}

/** Items in an order that keeps to what the job declares among them; what goes round in a ring comes last. */
function declaredOrder({ declared }: Work, items: readonly string[]): readonly string[] {
  const { ordered, waitingForEachOther } = inOrder(
    items.map((id) => ({
      id,
      after: declared.filter(({ item }) => item === id).map(({ after }) => after),
      ...{ minutes: 0, by: 'vehicle' as const },
    })),
  );
  return [...ordered, ...waitingForEachOther].map(({ id }) => id);
}

/** Ground first and power last: nothing can be live while it is handled. */
const connecting: readonly {
  readonly layer: ConductorRole;
  readonly text: string;
  readonly proof: (work: Work) => string;
}[] = [
  {
    layer: 'ground',
    text: 'Connect the grounds on bare metal',
    proof: ({ continuityOhm }) =>
      `Bare metal, serrated washer, torqued, sealed; under ${ohmsBelow(continuityOhm.ground)} to the battery lead`,
  },
  { layer: 'signal', text: 'Plug in the signal', proof: () => 'Each plug seats fully and is tied beside it' },
  {
    layer: 'control',
    text: 'Plug in the control leads',
    proof: () => 'The plug clicks; the lead has no tight bend',
  },
  {
    layer: 'turn-on',
    text: 'Connect the turn-on',
    proof: ({ continuityOhm }) => `Under ${ohmsBelow(continuityOhm.wire)} end to end; open to ground`,
  },
  {
    layer: 'speaker',
    text: 'Connect the speakers',
    proof: () => 'Plus to plus by label; no strand outside its port',
  },
  {
    layer: 'power',
    text: 'Connect the power, every fuse out',
    proof: () => 'Torqued, capped at the battery end; a tug does not move it',
  },
];

function connectSteps(work: Work, ready: readonly Dependency[], late: ReadonlySet<string>): Step[] {
  const wires = ownWires(work).filter((wire) => endsInVehicle(work, wire));
  const steps: Step[] = [];
  for (const { layer, text, proof } of connecting) {
    const own = wires.filter(({ role }) => role === layer);
    if (own.length === 0) continue;
    const before = steps.at(-1);
    const waits = before
      ? [{ step: before.id, why: 'ground first, power last: nothing is live while it is handled' }]
      : ready.length > 0
        ? ready
        : [safe];
    const laid = own.filter((wire) => isLoose(work, wire) && !late.has(wire.id));
    steps.push(
      step(`connect-${layer}`, waits, {
        layer,
        ...vehicle,
        text: `${text}: ${labelsOf(own)}${layer === 'ground' ? groundTorques(work, own) : ''}${jointsText(work, own)}${dryFerrulesText(work, own, 'vehicle')}${layer === 'speaker' ? insideBoxesText(work, own) : ''}`,
        tools:
          layer === 'ground' ? ['wire brush', 'torque wrench', 'sealer'] : ['crimp tool', 'torque driver'],
        minutes:
          minutesFor(work, 'connect-wire', new Set(own.map(({ link }) => link)).size) +
          minutesFor(work, 'lay-wire', pieces(laid)),
        installs: laid.map(({ id }) => id),
        acts: [
          ...laid.map(({ id }) => `label:${id}`),
          ...jointActs(work, own),
          ...own.map(({ id }) => `connect:${id}`),
        ],
        proof: proof(work),
      }),
    );
  }
  return steps;
}

/** Spare conductors are capped, and say so: a bare end finds metal sooner or later. */
function capSteps(work: Work, laying: readonly Step[]): Step[] {
  return work.plan.cables.flatMap(({ id, conductors }) => {
    const spare = conductors.filter(({ wire }) => wire === null).map(({ name }) => name);
    if (spare.length === 0 || spare.length === conductors.length) return [];
    const carried = conductors.flatMap(({ wire }) => wire ?? []);
    const laid = laying.filter(({ installs }) => installs.some((wire) => carried.includes(wire)));
    const waits = laid.map((one): Dependency => ({ step: one.id, why: 'the cable is in place' }));
    return [
      step(`cap-${id}`, laid.some(({ place }) => place === 'vehicle') ? waits : [...waits, safe], {
        layer: 'dress',
        ...vehicle,
        text: `Cut back, cap and label as spare at both ends of ${id}: ${spare.join(', ')}`,
        tools: ['heat gun', 'label printer'],
        minutes: minutesFor(work, 'connect-wire', spare.length),
        acts: spare.map((name) => `cap:${id}.${name}`),
        proof: 'No bare strand shows; the label says spare at both ends',
      }),
    ];
  });
}
