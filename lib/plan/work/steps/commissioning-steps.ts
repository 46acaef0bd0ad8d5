import type { PlanStep } from '../../../model/plan/index.ts';

import { printed } from '../../../model/printed/index.ts';

import { bankFuses } from '../readings/bank-fuses.ts';
import {
  adds,
  benchOf,
  hasSound,
  itemOf,
  minutesFor,
  ownWires,
  readingsOf,
  type Step,
  step,
  type Work,
} from '../work.ts';

import { fanProofs } from './fan-steps.ts';
import { settingSteps } from './steps-setting-up.ts';

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
  const hasFuses = work.plan.power.fuses.length > 0;
  const steps = [testStep(work, before, late), batteryOn(work)];
  if (hasFuses) steps.push(fuseStep(work), ...bankSteps(work));
  const live = steps.at(-1)?.id ?? 'battery-on';
  const settings = settingSteps(work, 'first-power');
  const fans = fanProofs(work, settings.at(-1)?.id ?? 'first-power');
  return [
    ...steps,
    firstPower(work, live),
    ...settings,
    ...fans,
    handOver(work, [...settings, ...fans].at(-1)?.id ?? 'first-power'),
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

function fuseStep(work: Work): Step {
  const banks = bankFuses(work.plan).map(({ fuse }) => fuse);
  const fuses = work.plan.power.fuses.filter(({ id }) => !banks.includes(id));
  const behind = fuses.filter(({ source }) => source === null).map(({ id }) => id);
  const atSource = fuses.filter(({ source }) => source !== null).map(({ id }) => id);
  const order = [...behind, ...atSource];
  return step('fuses', [{ step: 'battery-on', why: 'the fuse closes the circuit, not the battery clamp' }], {
    layer: 'power',
    ...vehicle,
    text: `Fit the fuses${behind.length > 0 && atSource.length > 0 ? ', branches first and those at the source last' : ''}: ${order.join(', ')}`,
    tools: ['fuse puller', 'meter'],
    minutes: minutesFor(work, 'fit-fuse', order.length),
    acts: order.map((id) => `fit-fuse:${id}`),
    proof: `Each rating is that of the fuse list${hasSound(work) ? '; source at its lowest level, so that nothing plays yet' : ''}`,
  });
}

/** An empty bank is as good as a short: it is charged through a resistor before its fuse goes in. */
function bankSteps(work: Work): Step[] {
  return bankFuses(work.plan).map(({ fuse, bank }, index, all) => {
    const readings = readingsOf(work, 'banks').filter((id) => itemOf(id) === bank);
    return step(
      `charge-${bank}`,
      [
        {
          step: index === 0 ? 'fuses' : `charge-${all[index - 1]?.bank ?? ''}`,
          why: 'the bank is charged from the feed, and its own fuse goes in last',
        },
      ],
      {
        layer: 'power',
        ...vehicle,
        text: `Charge ${bank}: bridge the empty holder of ${fuse} with a resistor or a lamp for ${work.systemV} V until less than ${printed('voltage-at-most', work.bankWithinV)} stands across it, take the bridge off, read the bank and across the holder, then fit ${fuse}`,
        tools: ['meter', 'charging resistor', 'fuse puller'],
        minutes: minutesFor(work, 'fit-fuse') + minutesFor(work, 'take-reading', readings.length),
        acts: [...readings.map((id) => `measure:${id}`), `fit-fuse:${fuse}`],
        proof: `Less than ${printed('voltage-at-most', work.bankWithinV)} across the open holder before the fuse goes in; no spark as it does`,
      },
    );
  });
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

function handOver(work: Work, before: string): Step {
  const shown = [
    ...(work.plan.power.fuses.some(({ source }) => source !== null) ? ['main fuse'] : []),
    ...(hasSound(work) ? ['level'] : []),
  ];
  return step('hand-over', [{ step: before, why: 'nobody drives off with it before it is set and read' }], {
    layer: 'hand-over',
    ...vehicle,
    text: `${hasSound(work) ? 'Play one channel at a time from the lowest level up, check' : 'Check'} the functions of the check-in again${shown.length > 0 ? `, show the customer ${shown.join(' and ')}` : ''}`,
    tools: ['check-in sheet'],
    minutes: minutesFor(work, 'check-in'),
    acts: ['hand-over'],
    proof: 'Every function works as at check-in; the record is signed',
  });
}
