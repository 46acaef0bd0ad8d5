import type { AmplifierMode } from '../../audio/load/amplifier-load.ts';
import type { Coil, Wiring } from '../../audio/load/coil-wiring.ts';
import {
  listWirings,
  type RankedWiring,
  type WiringChoice,
  wiringChoice,
  wiringsForLoad,
} from '../../audio/load/wiring-choice.ts';
import type { RatedPowerFault } from '../../audio/rated-power.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanChannel, PlanWiring } from '../../model/plan/index.ts';
import { figure, ohms, watts } from '../../model/printed/told.ts';
import type { PlanBook } from '../plan-book.ts';
import type { Output } from './load/amplifier-output.ts';

/** More ways than this do not fit a sheet. */
const mostOnSheet = 12;

interface Wirable {
  readonly channel: string;
  readonly coils: readonly Coil[];
  readonly mode: AmplifierMode;
  /** As the job is linked. */
  readonly chosen: Wiring;
}

/**
 * Every way of wiring the coils of a channel, at most a dozen: those that the amplifier may drive first, most power
 * first. The way that is linked is always among them.
 */
export function planWirings({
  channel,
  coils,
  mode,
  chosen,
}: Wirable): Pick<PlanChannel, 'wirings' | 'wiringsInAll'> {
  const all = listWirings(channel, coils, mode);
  if (isFault(all)) return { wirings: [], wiringsInAll: null };
  const shape = shapeOf(chosen, coils);
  const isChosen = ({ wiring }: RankedWiring) => shapeOf(wiring, coils) === shape;
  const shown = all.slice(0, mostOnSheet);
  const own = all.find(isChosen);
  const kept = own && !shown.includes(own) ? [...shown.slice(0, -1), own] : shown;
  const planned = kept.map((way) => planWiring(wiringChoice(channel, way, coils, mode), isChosen(way)));
  return { wirings: planned, wiringsInAll: all.length };
}

function planWiring(
  { text, loadOhm, mayDrive, power, coils, unevenness }: WiringChoice,
  chosen: boolean,
): PlanWiring {
  return {
    text,
    loadOhm: loadOhm.value,
    mayDrive,
    powerW: isFault(power) ? null : power.powerW.value,
    coils: coils.map(({ coil, speaker, powerW, greatestPowerW }) => {
      return { coil, speaker, powerW: powerW.value, greatestPowerW: greatestPowerW.value };
    }),
    unevenness,
    chosen,
  };
}

/** A wiring without the names of its coils: equal for ways that differ only by which of equal coils stands where. */
function shapeOf(wiring: Wiring, coils: readonly Coil[]): string {
  if (wiring.kind === 'coil') {
    const coil = coils.find(({ id }) => id === wiring.coil);
    return coil ? `${coil.part ?? ''} ${coil.nominalOhm}` : wiring.coil;
  }
  const members = wiring.members.map((member) => shapeOf(member, coils)).toSorted();
  return `${wiring.kind}(${members.join(', ')})`;
}

/** The fault of a load that is too low, with the way of wiring that the amplifier may drive as the way out. */
export function wayOutOfLowLoad(fault: RatedPowerFault, wirings: readonly PlanWiring[]): RatedPowerFault {
  if (fault.fault !== 'load-below-minimum') return fault;
  const [best] = wirings.filter(({ mayDrive }) => mayDrive);
  if (!best)
    return {
      ...fault,
      remedy:
        'no way of wiring these coils reaches the minimum: use another channel, another amplifier or other coils',
    };
  const power = best.powerW === null ? '' : `, ${watts(best.powerW)}`;
  return {
    ...fault,
    remedy: `wire them as ${best.text}: ${ohms(best.loadOhm)}${power}`,
  };
}

/** Holds a channel against the load that the job asks for: what can't be had, or is wired otherwise, stops the job. */
export function askedLoad(
  wired: {
    readonly output: Output;
    readonly coils: readonly Coil[];
    readonly mode: AmplifierMode;
    readonly loadOhm: number;
  },
  book: PlanBook,
): void {
  const { output, coils, mode, loadOhm } = wired;
  const askedOhm = output.device.given?.loads[output.name];
  if (askedOhm === undefined) return;
  const path = `${output.device.path}/loads/${output.name}`;
  const ways = wiringsForLoad(output.id, coils, mode, askedOhm);
  if (isFault(ways)) {
    const { fault: rule, of, message, remedy } = ways;
    book.remark({ rule, level: 'stop', of, message, remedy }, { path });
    return;
  }
  if (Math.abs(loadOhm - askedOhm) <= 0.01 * askedOhm) return;
  book.remark(
    {
      rule: 'load-not-as-asked',
      level: 'stop',
      of: [output.id],
      message: `${output.id} is to see ${figure(askedOhm)} ohm, and is wired to ${figure(loadOhm)} ohm`,
      value: loadOhm,
      limit: askedOhm,
      unit: 'ohm',
      remedy: `wire its coils as ${ways[0]?.text ?? 'asked'}`,
    },
    { path },
  );
}
