import type { PlanStep } from '../../../model/plan/index.ts';
import {
  adds,
  benchOf,
  hasSound,
  minutesFor,
  ownWires,
  readingsOf,
  type Step,
  step,
  type Work,
} from '../work.ts';
import { reachedText } from './board-in.ts';
import { fanProofs } from './fan-proofs.ts';
import { fuseSteps } from './fuse-steps.ts';
import { settingSteps } from './steps-setting-up.ts';
import { trimOnSteps } from './trim-steps.ts';

type Dependency = PlanStep['waitsFor'][number];
const vehicle = { place: 'vehicle', by: 'vehicle' } as const;

/**
 * From the last connection to the hand-over: test without power, fuses, first power, gains, readings. `late` are the
 * wires that were laid on a board in the vehicle.
 */
export function commissioningSteps(
  work: Work,
  before: readonly Dependency[],
  late: ReadonlySet<string>,
): Step[] {
  const steps = [testStep(work, before, late), batteryOn(work), ...fuseSteps(work)];
  const live = steps.at(-1)?.id ?? 'battery-on';
  const settings = settingSteps(work, 'first-power');
  const fans = fanProofs(work, settings.at(-1)?.id ?? 'first-power');
  const tested = [...settings, ...fans].at(-1)?.id ?? 'first-power';
  const trim = trimOnSteps(work, tested);
  return [
    ...steps,
    firstPower(work, live),
    ...settings,
    ...fans,
    ...trim,
    handOver(work, [
      { step: tested, why: 'nobody drives off with it before it is set and read' },
      ...trim.map(({ id }) => ({ step: id, why: 'the functions are checked with all trim on' })),
    ]),
  ];
}

function testStep(work: Work, before: readonly Dependency[], late: ReadonlySet<string>): Step {
  // What was laid on the bench was tested there from end to end.
  const tested = ownWires(work).filter((wire) => benchOf(work, wire) === null || late.has(wire.id));
  const readings = readingsOf(work, 'before-power');
  const sound = hasSound(work);
  return step('test-without-power', before, {
    layer: 'test',
    ...vehicle,
    text: `With every fuse out and the battery off: each wire end to end, ${sound ? 'polarity of each speaker, ' : ''}positive to ground open${sound ? ', resistance at each speaker plug. Then take every speaker plug off its amplifier: they stay off until filters and gains are set' : ''}`,
    tools: sound ? ['meter', 'polarity tester'] : ['meter'],
    minutes: minutesFor(work, 'test-wire', tested.length) + minutesFor(work, 'take-reading', readings.length),
    acts: [
      ...tested.map(({ id }) => `test:${id}`),
      ...(sound ? ['test:polarity'] : []),
      ...readings.map((id) => `measure:${id}`),
      ...(sound ? ['speakers-off'] : []),
    ],
    proof: `Positive to ground reads open${sound ? '; each speaker plug reads within its limits and, once off, touches no metal' : ''}`,
  });
}

function batteryOn(work: Work): Step {
  return step(
    'battery-on',
    [{ step: 'test-without-power', why: 'a short is found by the meter, not by the battery' }],
    {
      layer: 'power',
      ...vehicle,
      text: 'Connect the battery, its negative lead last, every fuse of the job still out',
      tools: ['10 mm spanner'],
      minutes: minutesFor(work, 'connect-wire'),
      acts: ['battery-on'],
      proof: 'No spark and no warning lamp; clock and windows as the vehicle maker says',
    },
  );
}

function firstPower(work: Work, live: string): Step {
  const power = readingsOf(work, 'power');
  return step('first-power', [{ step: live, why: 'supply before turn-on' }], {
    layer: 'test',
    ...vehicle,
    text: `First power in the vehicle${hasSound(work) ? ', speaker plugs still off, source at its lowest level' : ''}: ${powerOrder(work)}; take the readings of supply and ground`,
    tools: ['meter'],
    minutes: minutesFor(work, 'test-wire', 5) + minutesFor(work, 'take-reading', power.length),
    acts: ['first-power', ...power.map((id) => `measure:${id}`)],
    proof: 'Every device shows ready; each reading lies within its limits or is explained',
  });
}

/** What comes up first: a processor is on before what it feeds. */
function powerOrder(work: Work): string {
  const amplifiers = work.plan.items.filter(({ kind, origin }) => kind === 'amplifier' && origin === 'job');
  const then =
    amplifiers.length > 1
      ? 'one amplifier after the other'
      : amplifiers.length === 1
        ? 'the amplifier'
        : 'one device after the other';
  return adds(work, 'processor') ? `processor first, then ${then}` : then;
}

function handOver(work: Work, before: readonly Dependency[]): Step {
  const shown = [
    ...(work.plan.power.fuses.some(({ source }) => source !== null) ? ['main fuse'] : []),
    ...(hasSound(work) ? ['level'] : []),
  ];
  const reached = reachedText(work, ...work.reachable.map(({ board }) => board));
  return step('hand-over', before, {
    layer: 'hand-over',
    ...vehicle,
    text: `${hasSound(work) ? 'Play one channel at a time from the lowest level up, check' : 'Check'} the functions of the check-in again${reached === '' ? '' : `, ${reached} once more`}${shown.length > 0 ? `, show the customer ${shown.join(' and ')}` : ''}`,
    tools: ['check-in sheet'],
    minutes: minutesFor(work, 'check-in'),
    acts: ['hand-over'],
    proof: 'Every function works as at check-in; the record is signed',
  });
}
