import { turnOnSum } from '../../../lib/audio/turn-on.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { buildCircuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { remarkFaults } from '../../../lib/plan/power/network-remarks.ts';
import { converterElements } from '../../../lib/power/network/converters.ts';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import type { Network, NetworkElement } from '../../../lib/power/network/network-types.ts';
import { jobOf } from '../../plan/plan-small-shop.ts';
import { planned } from '../../plan/planned.ts';
import { inParts, inShop, inVehicle } from '../../plan/shop-changes.ts';
import { inJob } from '../../read/problem-case.ts';
import { smallShop } from '../../read/small-shop.ts';
import { asItStands, fires, inSmallShop, quiet, type RemarkCases, refused } from '../remark-case.ts';

const battery = {
  id: 'battery:emf',
  from: 'battery.POS',
  to: 'battery.NEG',
  kind: 'source',
  model: 'emf',
  emfV: 12.6,
  ohm: 0.005,
} as const;
const feed = {
  id: 'feed',
  from: 'battery.POS',
  to: 'amp.B+',
  kind: 'conductor',
  model: 'resistance',
  ohm: 0.01,
} as const;
const load = {
  id: 'amp:load',
  from: 'amp.B+',
  to: 'battery.NEG',
  kind: 'load',
  model: 'power',
  powerW: 100,
} as const;

/** What the solver refuses of a battery, its feed and one load, as it comes into the book of the small shop's job. */
const network = (elements: readonly NetworkElement[], nodes?: readonly string[]) => () => {
  const job = jobOf(smallShop());
  const circuit = buildCircuit(job, new Map(job.devices.map((device) => [device.id, device])));
  const whole: Network = { elements, referenceNode: 'battery.NEG', ...(nodes && { nodes }) };
  const result = solveNetwork(whole);
  const book = new PlanBook();
  remarkFaults({ job, circuit }, [['rated-power', result.state === 'fault' ? result.faults : []]], book);
  return book.remarks().map(({ remark }) => remark);
};
const sound = quiet('a battery, its feed and one load', network([battery, feed, load]));

const sideBySide = (ohm: number) => network([battery, { ...feed, ohm }, { ...feed, id: 'tail', ohm }, load]);
const twoBatteries = (ohm: number) =>
  network([{ ...battery, ohm }, { ...battery, id: 'battery:other', ohm }, feed, load]);

/** A charger from the battery to where the device stands: it stands for the device, so that the job has it. */
const charger = (efficiency: number) =>
  converterElements({
    id: 'amp',
    of: 'amp',
    input: { from: 'battery.POS', to: 'battery.NEG' },
    output: { from: 'amp.B+', to: 'battery.NEG' },
    outputV: 14,
    limitA: 10,
    efficiency,
  });

/** What makes a network impossible to compute: Kirchhoff's and Ohm's laws. */
const networkCases = {
  'network-short-circuit': {
    fires: [
      fires(
        'a link of no resistance over a source of none',
        'stop',
        'feed',
        network([
          { ...battery, ohm: 0 },
          { ...feed, to: 'battery.NEG', ohm: 0 },
        ]),
      ),
    ],
    quiet: [sound],
  },
  'network-floating': {
    fires: [
      fires(
        'a device with no ground',
        'stop',
        'amp',
        inSmallShop(inJob('  ground: { from: amp.GND, to: body.cargo, length: 12 in }\n', '')),
      ),
    ],
    quiet: [asItStands],
  },
  'network-zero-resistance-loop': {
    fires: [fires('two feeds of no resistance side by side', 'stop', 'tail', sideBySide(0))],
    quiet: [quiet('of 10 milliohm', sideBySide(0.01))],
  },
  'network-stiff-sources-in-parallel': {
    fires: [fires('two batteries of no resistance', 'stop', 'battery', twoBatteries(0))],
    quiet: [quiet('of 5 milliohm', twoBatteries(0.005))],
  },
  'network-converter-impossible': {
    fires: [
      fires('an efficiency above 100 %', 'stop', 'amp', network([battery, feed, load, ...charger(1.01)])),
      fires('nothing that it feeds', 'stop', 'amp', network([battery, feed, load, ...charger(0.9).slice(1)])),
    ],
    quiet: [quiet('of 100 %', network([battery, feed, load, ...charger(1)]))],
  },
  'network-joined-to-itself': {
    fires: [
      fires(
        'a feed back to its own post',
        'stop',
        'feed',
        network([battery, load, feed, { ...feed, id: 'feed', to: 'battery.POS' }]),
      ),
    ],
    quiet: [sound],
  },
  'network-unknown-node': {
    fires: [
      fires(
        'an end that is no terminal',
        'stop',
        'feed',
        network([battery, feed, load], ['battery.POS', 'battery.NEG']),
      ),
    ],
    quiet: [sound],
  },
  'network-duplicate-id': {
    fires: [fires('two feeds of one name', 'stop', 'feed', network([battery, feed, feed, load]))],
    quiet: [sound],
  },
  'network-not-a-number': {
    fires: [
      fires(
        'a feed of no known resistance',
        'stop',
        'feed',
        network([battery, { ...feed, ohm: Number.NaN }, load]),
      ),
    ],
    quiet: [sound],
  },
  'network-negative-value': {
    fires: [
      fires('a load that gives power', 'stop', 'amp', network([battery, feed, { ...load, powerW: -1 }])),
    ],
    quiet: [sound],
  },
} satisfies RemarkCases;

const red = (awg: 4 | 8, insulation: string, use = 'power') =>
  inParts(
    `size: ${awg} AWG, insulation: 105 C, colour: RD, for: [power]`,
    `size: ${awg} AWG, insulation: ${insulation}, colour: RD, for: [${use}]`,
  );

/** 33 CFR 183.425, Table 5: 18 AWG of 105 C carries 17 A at 50 C; the smallest maxi blade is 20 A. */
const fusedTurnOn = (how: string) =>
  inSmallShop(
    inJob('  sub: {', '  block: { part: block-a, in: boot }\n  sub: {'),
    inJob('  speaker: {', '  block-feed: { from: main-fuse.OUT, to: block.IN, length: 2 m }\n  speaker: {'),
    inJob(
      '  turn-on: { from: radio.REM, to: amp.REM }',
      `  turn-on: { from: block.OUT1, to: amp.REM, ${how} }`,
    ),
  );

const conductorCases = {
  'conductor-no-reel': {
    fires: [
      fires(
        'no reel is for power',
        'stop',
        'tail',
        inSmallShop(red(4, '105 C', 'speaker'), red(8, '105 C', 'speaker')),
      ),
    ],
    quiet: [asItStands],
  },
  'conductor-none-fits': {
    fires: [
      fires(
        'insulation for 60 C alone in the engine bay',
        'stop',
        'feed',
        inSmallShop(red(4, '60 C'), red(8, '60 C')),
      ),
    ],
    quiet: [asItStands],
  },
  'conductor-not-on-shelf': {
    fires: [
      fires(
        'reels of 8 ft for a feed of 11 ft',
        'caution',
        'feed',
        inSmallShop(
          inShop('red-8: { reels: [30 ft] }', 'red-8: { reels: [8 ft, 8 ft] }'),
          inShop('red-4: { reels: [30 ft] }', 'red-4: { reels: [8 ft] }'),
        ),
      ),
    ],
    quiet: [asItStands],
  },
  'turn-on-wire-under-fuse': {
    fires: [fires('18 AWG behind 20 A', 'stop', 'turn-on', fusedTurnOn('wire: blue-18'))],
    quiet: [quiet('8 AWG behind it', fusedTurnOn('wire: red-8'))],
  },
  'charging-unknown': {
    fires: [
      fires(
        'no alternator among what is fitted',
        'caution',
        'wagon',
        inSmallShop(
          inVehicle('  alternator: { part: generator-a, zone: engine-bay }\n', ''),
          inVehicle('  charge: { from: alternator.B+, to: battery.POS, size: 4 AWG, length: 1 m }\n', ''),
          inVehicle('  case: { from: alternator.CASE, to: body.engine, size: 4 AWG, length: 300 mm }\n', ''),
        ),
      ),
    ],
    quiet: [asItStands],
  },
} satisfies RemarkCases;

const radio = { source: 'radio.REM', limitA: 0.3 };
const driven = (limitA: number | null, ...loads: readonly (number | null)[]) =>
  refused(() =>
    turnOnSum(
      { ...radio, limitA },
      loads.map((currentA) => ({ item: 'amp', currentA })),
    ),
  );
const waiting = (from: string) => () =>
  planned(({ job }) => {
    job.links['radio-rem'] = { from, to: 'dsp.REM-IN' };
  }).remarks.map(({ remark }) => remark);

const turnOnCases = {
  'turn-on-ring': {
    fires: [fires('a processor that wakes itself', 'stop', 'dsp', waiting('dsp.REM-OUT'))],
    quiet: [quiet('one that the radio wakes', waiting('radio.REM'))],
  },
  'turn-on-drives-nothing': {
    fires: [fires('nothing behind it', 'stop', 'radio.REM', driven(0.3))],
    quiet: [quiet('an amplifier behind it', driven(0.3, 0.1))],
  },
  'turn-on-limit-unknown': {
    fires: [
      fires('a limit that no maker tells', 'stop', 'radio.REM', driven(null, 0.1)),
      fires(
        'the same in a vehicle',
        'stop',
        'radio.REM',
        inSmallShop(inParts('REM: { role: turn-on-out, current: 300 mA }', 'REM: { role: turn-on-out }')),
      ),
    ],
    quiet: [asItStands],
  },
  'turn-on-load-unknown': {
    fires: [fires('a draw that neither maker nor house rules tell', 'stop', 'amp', driven(0.3, null))],
    quiet: [asItStands],
  },
  'turn-on-draw-assumed': {
    fires: [
      fires('a draw that no maker tells', 'note', 'amp', inSmallShop(inParts(', turn-on-draw: 20 mA', ''))),
    ],
    quiet: [asItStands],
  },
} satisfies RemarkCases;

export const powerRemarks = { ...networkCases, ...conductorCases, ...turnOnCases } satisfies RemarkCases;
