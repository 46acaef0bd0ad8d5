import type { Device, Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { Supply } from '../../model/kinds/fields/supply.ts';
import type { Part } from '../../model/kinds/index.ts';
import type { PlanPower } from '../../model/plan/index.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';
import { amplifierEfficiency, idleCurrentA } from '../../power/network/amplifier-efficiency.ts';
import { chargerCurrents } from '../../power/network/charger-draw.ts';
import { amplifierCurrents, type DeviceCurrents } from '../../power/network/load-current.ts';
import { ratedSupplyV } from '../../power/network/rated-voltage.ts';
import { isSubwoofer } from '../audio/is-subwoofer.ts';
import type { LoadedChannel } from '../audio/load/output-loads.ts';
import type { PlanBook } from '../plan-book.ts';
import type { CircuitPaths } from './circuit/circuit-paths.ts';
import { fansThrough } from './fans.ts';
import { musicDuty, type PlayedChannel } from './music-duty.ts';
import { sizingVoltageAt, systemShare } from './sizing-voltage.ts';

/** What a device draws at the voltage for sizing, and how its supply answers a falling voltage. */
export type DeviceLoad = PlanPower['loads'][number];

/** The supply of a part; none for a part that draws no current from the supply side. */
export function supplyOf(part: Part | null): Supply | null {
  if (part?.kind === 'charger') {
    const { efficiency: _, ...input } = part.input;
    return { type: 'regulated', 'fuses-fitted': 0, ...input };
  }
  return part?.kind === 'amplifier' || part?.kind === 'processor' || part?.kind === 'source-unit'
    ? part.supply
    : null;
}

/** The current of every device that is fed: at full rating, at rated power, with music. */
export function deviceLoads(
  job: Job,
  paths: CircuitPaths,
  channels: readonly LoadedChannel[],
  book: PlanBook,
): DeviceLoad[] {
  return paths.fed.flatMap(({ device, from }): DeviceLoad[] => {
    const supply = supplyOf(device.spec);
    if (!supply) return [];
    const supplied = {
      voltageV: sizingVoltageAt(job, paths.islands, from),
      systemShare: systemShare(job, paths.islands, from),
    };
    const duty = device.spec?.kind === 'amplifier' ? dutyOf(job, device, supply, channels) : null;
    const currents = currentsOf(job, device, supply, { ...supplied, musicDuty: duty?.value ?? 1 }, channels);
    const at = `power.loads.${device.id}`;
    const fans = fansThrough(job, device.id);
    return [
      {
        item: device.id,
        fuseA: book.trace(`${at}.fuseA`, currents.fullRatingA),
        ratedA: book.trace(`${at}.ratedA`, withFans(currents.ratedPowerA, device, fans)),
        musicA: book.trace(`${at}.musicA`, withFans(currents.musicA, device, fans)),
        idleA: book.trace(`${at}.idleA`, withFans(idle(device, supply, job.rules), device, fans)),
        powerW: book.trace(`${at}.powerW`, ratedPower(device, channels)),
        ...(duty && { musicDuty: book.trace(`${at}.musicDuty`, duty) }),
        ...assumedOf(device, supply),
      },
    ];
  });
}

/** What a device draws with the fans that it turns on: their current comes through its output. */
function withFans(own: Traced<number>, { id }: Device, fans: ReturnType<typeof fansThrough>): Traced<number> {
  if (fans.length === 0) return own;
  const drawA = fans.reduce((sum, [, fanA]) => sum + fanA, own.value);
  return traced(drawA, 'A', {
    rule: 'current-with-fans',
    formula: 'I = I of the device + what fans draw through its turn-on outputs',
    citation: "Kirchhoff's current law; the parts' data",
    inputs: [[id, own.value, 'A'], ...fans.map(([fan, fanA]) => [fan, fanA, 'A'] as const)],
  });
}

/** What of a device's draw is assumed, since its maker does not tell it. */
function assumedOf({ spec }: Device, supply: Supply): Pick<DeviceLoad, 'assumed'> {
  const unknownClass = spec?.kind === 'amplifier' && supply['amplifier-class'] === undefined;
  const unknownDraw = spec?.kind !== 'amplifier' && spec?.kind !== 'charger' && supply.draw === undefined;
  const assumed = [
    ...(unknownClass && supply.efficiency === undefined ? ['an amplifier of class AB'] : []),
    ...(unknownDraw ? [`a draw of ${supply.fuse} A, its fuse`] : []),
  ];
  return assumed.length > 0 ? { assumed } : {};
}

/** What a device is fed with. */
interface Supplied {
  /** The voltage that sizes are chosen at there (V). */
  readonly voltageV: number;
  /** How many times the voltage of the vehicle's system that is. */
  readonly systemShare: number;
  /** Its average output with music, as a share of its rated output. */
  readonly musicDuty: number;
}

function currentsOf(
  job: Job,
  device: Device,
  supply: Supply,
  supplied: Supplied,
  channels: readonly LoadedChannel[],
): DeviceCurrents {
  const { spec } = device;
  if (spec?.kind === 'charger') return chargerCurrents(spec, supplied.voltageV);
  return spec?.kind === 'amplifier'
    ? amplifierLoad(job, device, supply, supplied, channels)
    : steadyLoad(supply);
}

/** What a device draws without a signal, with where that comes from. */
function idle(device: Device, supply: Supply, rules: HouseRules): Traced<number> {
  const amplifier = device.spec?.kind === 'amplifier';
  const told = supply.idle ?? (amplifier ? undefined : supply.draw);
  return traced(told ?? (amplifier ? idleCurrentA(supply, rules) : 0), 'A', {
    origin: told === undefined ? 'assumed' : 'given',
    rule: 'current-idle',
    citation: told === undefined ? commonPractice : "the part's data",
    ...(told === undefined && { mark: 'cp' as const }),
  });
}

/** An amplifier's average output with music: bass is what subwoofers play, and all that a bass amplifier does. */
function dutyOf(
  job: Job,
  device: Device,
  supply: Supply,
  channels: readonly LoadedChannel[],
): Traced<number> {
  const all = supply['amplifier-class'] === 'bass-class-d';
  const played = channelPowers(device, channels).map(([id, powerW]): PlayedChannel => {
    const speakers = channels.find(({ channel }) => channel.id === id)?.channel.speakers ?? [];
    return { id, powerW, bass: all || speakers.some((speaker) => isSubwoofer(job, speaker)) };
  });
  return musicDuty(played, job.rules);
}

/** Rated power of all channels as loaded; of a channel whose load is not known, the most that its maker publishes. */
function ratedPower(device: Device, channels: readonly LoadedChannel[]): Traced<number> {
  const shares = channelPowers(device, channels);
  return traced(
    shares.reduce((sum, [, powerW]) => sum + powerW, 0),
    'W',
    {
      rule: 'rated-power',
      formula: shares.length === 0 ? '0: it has no channels' : 'the sum of its channels, each into its load',
      citation: "the part's data",
      inputs: shares.map(([name, powerW]) => [name, powerW, 'W'] as const),
    },
  );
}

function channelPowers(device: Device, channels: readonly LoadedChannel[]): (readonly [string, number])[] {
  const part = device.spec;
  if (part?.kind !== 'amplifier') return [];
  return channels
    .filter(({ channel }) => channel.amplifier === device.id)
    .flatMap(({ channel, load }): (readonly [string, number])[] => {
      if (channel.powerW !== null) return [[channel.id, channel.powerW]];
      const name = channel.id.slice(device.id.length + 1);
      const spec = part.channels[name] ?? part.bridges[name];
      return load === null && channel.wiring === '' && channel.speakers.length === 0
        ? []
        : [[channel.id, Math.max(0, ...(spec?.powers.map(({ power }) => power) ?? []))]];
    });
}

function amplifierLoad(
  job: Job,
  device: Device,
  supply: Supply,
  { voltageV, systemShare: share, musicDuty: duty }: Supplied,
  channels: readonly LoadedChannel[],
): DeviceCurrents {
  const { rules } = job;
  const result = amplifierCurrents(
    {
      fusesA: [supply.fuse],
      ratedPowerW: ratedPower(device, channels).value,
      ratedV: ratedSupplyV(supply, rules, share),
      efficiency: amplifierEfficiency(supply, rules),
      supply: supply.type,
      musicDuty: duty,
    },
    voltageV,
  );
  // The fields were read as quantities, so only a share above 100 % can be refused here; the fuse then stands for all.
  return isFault(result) ? steadyLoad({ ...supply, draw: supply.fuse }) : result;
}

/** A device that draws the same whatever plays. Where its maker does not tell, its fuse counts. */
function steadyLoad(supply: Supply): DeviceCurrents {
  const told = supply.draw !== undefined;
  const draw = traced(supply.draw ?? supply.fuse, 'A', {
    origin: told ? 'given' : 'assumed',
    rule: 'device-draw',
    citation: told ? "the part's data" : 'its fuse, since its maker does not state a draw',
  });
  const fuse = traced(supply.fuse, 'A', {
    origin: 'given',
    rule: 'device-fuse',
    citation: "the part's data",
  });
  return { fullRatingA: fuse, ratedPowerA: draw, musicA: draw };
}
