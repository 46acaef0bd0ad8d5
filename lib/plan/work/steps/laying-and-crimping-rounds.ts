import type { PlanWire } from '../../../model/plan/index.ts';
import { ohmsBelow } from '../../../model/printed/told.ts';
import type { ConductorRole } from '../../../model/vocabulary.ts';
import {
  endsInVehicle,
  groundBars,
  itemOf,
  labelsOf,
  minutesFor,
  pieces,
  type Step,
  step,
  type Work,
} from '../work.ts';
import { dryFerrulesText } from './ferrule-words.ts';
import { heldText } from './held-words.ts';
import type { Phases } from './item-phases.ts';
import { jointActs, jointsText } from './splice-words.ts';

interface Layer {
  readonly layer: ConductorRole;
  readonly text: string;
  readonly tools: readonly string[];
  readonly proof: (bars: readonly string[], work: Work) => string;
}

const always = (proof: string) => () => proof;

/** Layers on the board, thin before thick, in the order in which they are laid: finish one before the next. */
const layers: readonly Layer[] = [
  {
    layer: 'signal',
    text: 'Lay the signal leads',
    tools: ['label printer'],
    proof: always('Each plug seats fully and a tug does not move it'),
  },
  {
    layer: 'control',
    text: 'Lay the control leads',
    tools: ['label printer'],
    proof: always('Each plug seats fully; nothing crosses a knob'),
  },
  {
    layer: 'turn-on',
    text: 'Lay the turn-on wires',
    tools: ['cutter', 'crimp tool', 'label printer'],
    proof: (_, { continuityOhm }) => `The meter shows under ${ohmsBelow(continuityOhm.wire)} end to end`,
  },
  {
    layer: 'speaker',
    text: 'Lay the speaker wires',
    tools: ['cutter', 'crimp tool', 'label printer'],
    proof: always('Plus to plus by label; a tug does not move an end'),
  },
  {
    layer: 'power',
    text: 'Lay the power wires, no fuse fitted',
    tools: ['cutter', 'crimp tool', 'torque driver', 'label printer'],
    proof: always('Every end holds its pull test and is torqued'),
  },
  {
    layer: 'ground',
    text: 'Lay the ground wires',
    tools: ['cutter', 'crimp tool', 'torque driver', 'label printer'],
    proof: (bars, { continuityOhm }) =>
      `Every end holds its pull test and is torqued; under ${ohmsBelow(continuityOhm.ground)} ${bars.length > 0 ? `to ${bars.join(' and ')}` : 'end to end'}`,
  },
];

/** What is mounted and laid on one board, at one place. */
export interface Rounds {
  /** Stands in the ids of the steps: the board, at the vehicle with a word behind it. */
  readonly name: string;
  readonly place: string;
  readonly by: Step['by'];
  readonly items: readonly string[];
  readonly wires: readonly PlanWire[];
  readonly phases: Phases;
  /** The step before the first one, and why it comes before. */
  readonly before: string;
  readonly why: string;
}

/** Round by round: mount what waits for nothing that is still to come, preset its controls, lay its wires layer by layer. */
export function roundSteps(work: Work, rounds: Rounds): Step[] {
  const { items, wires, phases, why: first } = rounds;
  const phaseOf = (id: string) => phases.ofItem.get(id) ?? 0;
  const last = Math.max(0, ...items.map(phaseOf));
  const steps: Step[] = [];
  const before = () => steps.at(-1)?.id ?? rounds.before;
  for (let phase = 0; phase <= last; phase += 1) {
    const round = { ...rounds, round: phase === 0 ? rounds.name : `${rounds.name}-${phase + 1}` };
    const mounted = items.filter((id) => phaseOf(id) === phase);
    const reasons = phases.waits.filter(({ item }) => mounted.includes(item)).map(({ why }) => why);
    const why = steps.length === 0 ? first : [...new Set(reasons)].join('; ');
    steps.push(...mountAndPreset(work, { ...round, mounted, why, before: before() }));
    const laid = wires.filter(({ ends }) => {
      const own = ends.map(({ terminal }) => itemOf(terminal)).filter((id) => phases.ofItem.has(id));
      return Math.max(0, ...own.map(phaseOf)) === phase;
    });
    steps.push(...layerSteps(work, { ...round, laid, before: before() }));
  }
  return steps;
}

/** Steps of one round: where they are done, by whom, and the step that they wait for. */
interface InRound {
  readonly round: string;
  readonly place: string;
  readonly by: Step['by'];
  readonly before: string;
}

interface Mounting extends InRound {
  readonly mounted: readonly string[];
  readonly why: string;
}

/** What is looked for behind a board: no point of a screw, or nothing that those would touch that do come out. */
function throughText({ screwsOut }: Work, mounted: readonly string[]): string {
  const items = mounted.filter((id) => screwsOut.includes(id));
  if (items.length === 0) return 'no screw stands through';
  return `the screws of ${items.join(', ')} come out behind the board, no others do, and nothing is led there`;
}

function mountAndPreset(work: Work, { round, place, by, mounted, why, before }: Mounting): Step[] {
  if (mounted.length === 0) return [];
  const controls = work.plan.controls.filter(({ item }) => mounted.includes(item));
  const mount = step(`place-${round}`, [{ step: before, why }], {
    layer: 'place',
    place,
    by,
    text: `Mount by the placement drawing: ${mounted.map((id) => heldText(work, id)).join(', ')}`,
    tools: ['screwdriver', 'depth stop'],
    minutes: minutesFor(work, 'mount-item', mounted.length),
    installs: [...mounted],
    proof: `Every knob and set screw can be reached; air gaps are free; ${throughText(work, mounted)}`,
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
        by,
        text: `Put every control in its preset: ${[...new Set(controls.map(({ item }) => item))].join(', ')}`,
        tools: ['small screwdriver'],
        minutes: minutesFor(work, 'set-control', controls.length),
        acts: controls.map(({ item, control }) => `set:${item}.${control}`),
        proof: 'The presets table is ticked line by line',
      },
    ),
  ];
}

interface Laying extends InRound {
  readonly laid: readonly PlanWire[];
}

function layerSteps(work: Work, { round, place, by, laid, before }: Laying): Step[] {
  const steps: Step[] = [];
  let last = before;
  for (const { layer, text, tools, proof } of layers) {
    const wires = laid.filter(({ role }) => role === layer);
    if (wires.length === 0) continue;
    const id = `${layer}-${round}`;
    const tails = wires.filter((wire) => endsInVehicle(work, wire));
    const inside = wires.filter((wire) => !tails.includes(wire));
    const coil = tails.length > 0 ? `. Coil and tie the tail of ${labelsOf(tails)}` : '';
    const why =
      last === before
        ? 'a wire is laid to parts that are in place'
        : 'finish one layer and tick it before the next covers it';
    steps.push(
      step(id, [{ step: last, why }], {
        layer,
        place,
        by,
        text: `${text}: ${labelsOf(wires)}${jointsText(work, inside)}${dryFerrulesText(work, wires, 'board')}${coil}`,
        tools: [...tools],
        minutes: minutesFor(work, 'lay-wire', pieces(wires)),
        installs: wires.map((wire) => wire.id),
        acts: [...wires.map((wire) => `label:${wire.id}`), ...jointActs(work, inside)],
        proof: proof(groundBars(work, wires), work),
      }),
    );
    last = id;
  }
  return steps;
}
