import { type Device, terminalId } from '../../model/content/resolved-job.ts';
import { isRelay, type Part } from '../../model/kinds/index.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import { type SystemVoltage, systemOf, systemVoltageOf, usualSystemV } from '../../model/system-voltage.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import { houseRule, type Source } from '../house-rule-of.ts';
import { type LiveSide, liveSide, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, deviceSpot, fuseSpot, hasRole, partOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { volts } from '../words.ts';

/** What a terminal is fed with, as far as its voltage goes. */
interface Supplied {
  readonly system: SystemVoltage;
  /** The lowest and the highest that it sees in service (V). */
  readonly leastV: number;
  readonly mostV: number;
}

/** The batteries, alternators and chargers that reach a terminal. */
function feeding({ job }: Case, side: LiveSide, terminal: string): readonly Part[] {
  const net = reached(side.edges, [terminal], () => true);
  return side.sources
    .filter((source) => net.has(source))
    .flatMap((source) => deviceOf(job, deviceIdOf(source))?.spec ?? []);
}

/**
 * The supply at a terminal: by a battery that reaches it, else by the charger, else the vehicle's. The highest is what
 * an alternator or charger is set to; where neither says, what rated power is stated at.
 */
function suppliedAt(about: Case, side: LiveSide, terminal: string): Supplied {
  const { job } = about;
  const parts = feeding(about, side, terminal);
  const chargersV = parts.flatMap((part) => (part.kind === 'charger' ? [part.output.voltage] : []));
  const [charged] = chargersV;
  const batteries = parts.flatMap((part) => (part.kind === 'battery' ? [systemVoltageOf(part.voltage)] : []));
  const vehicleV = systemVoltageOf(job.vehicle['system-voltage']);
  const system = charged === undefined ? vehicleV : (batteries[0] ?? systemOf(charged));
  const inIt = (name: 'voltage-engine-off' | 'voltage-rated') =>
    (houseRule(job, name).value * system) / vehicleV;
  const setV = parts.flatMap((part) =>
    part.kind === 'alternator' && part['set-point'] !== undefined ? [part['set-point']] : [],
  );
  // What is set for another system is told at its own line.
  const regulated = [...chargersV, ...setV].filter((voltageV) => systemOf(voltageV) === system);
  return {
    system,
    leastV: inIt('voltage-engine-off'),
    mostV: regulated.length > 0 ? Math.max(...regulated) : inIt('voltage-rated'),
  };
}

/** What a part stands, and whether its maker says so. */
interface Range {
  readonly from: number;
  readonly to: number;
  readonly told: boolean;
}

/** The supply range of a part; null for one that is not held against the supply. */
function rangeOf(about: Case, part: Part | null): Range | null {
  if (part?.kind === 'capacitor-bank') return { from: 0, to: part['rated-voltage'], told: true };
  const told = ((): { readonly from: number; readonly to: number } | null | undefined => {
    if (part?.kind === 'amplifier' || part?.kind === 'processor' || part?.kind === 'source-unit')
      return part.supply.range;
    if (part?.kind === 'charger') return part.input.range;
    if (part?.kind === 'fan') return part.range;
    return isRelay(part) ? part['coil-range'] : null;
  })();
  if (told === null) return null;
  if (told) return { ...told, told: true };
  const { job } = about;
  // The rule is stated for the usual system, and so is a part without a word of it.
  const to = houseRule(job, 'part-range-most').value;
  return { from: 0, to, told: false };
}

/** Terminals at which a part of a kind meets the supply, by role: the first that it has. */
const feedRoles: Readonly<Partial<Record<Part['kind'], readonly TerminalRole[]>>> = {
  'capacitor-bank': ['source-positive'],
  fan: ['turn-on-in'],
  'isolating-relay': ['relay-coil', 'relay-contact'],
  relay: ['relay-coil'],
};

/** The terminal at which a part meets the supply; none where it is not wired. */
function feedTerminal({ id, spec, facts }: Device): string | null {
  const roles = (spec && feedRoles[spec.kind]) ?? ['supply-positive'];
  const names = roles.flatMap((role) => terminalsOf(facts.terminals, role));
  const [name] = names;
  return name === undefined ? null : terminalId({ device: id, terminal: name });
}

const throughConverter = (system: SystemVoltage) =>
  system === usualSystemV
    ? `take a part for ${volts(system)}, or one whose range covers it`
    : `feed it through a charger or converter from ${volts(system)} to what it is made for, or take a part for ${volts(system)}; where its maker allows it, write the range in its part`;

function judgePart(about: Case, side: LiveSide, device: Device): Verdict<'part-not-for-system'>[] {
  const range = rangeOf(about, device.spec);
  const terminal = feedTerminal(device);
  if (!range || terminal === null) return [];
  const { system, leastV, mostV } = suppliedAt(about, side, terminal);
  if (!range.told && system === usualSystemV) return [];
  const over = mostV > range.to + 1e-9;
  if (!over && leastV >= range.from - 1e-9) return [];
  const { id } = device;
  const made = range.told
    ? `is made for ${volts(range.from)} to ${volts(range.to)}`
    : `does not say what it stands, and counts as made for ${volts(usualSystemV)}, up to ${volts(range.to)}`;
  return [
    {
      level: 'stop',
      of: [id, terminal],
      message: `${id} hangs on a ${volts(system)} system, which gives ${volts(leastV)} to ${volts(mostV)}, and ${made}`,
      value: over ? mostV : leastV,
      limit: over ? range.to : range.from,
      unit: 'V',
      remedy: throughConverter(system),
      ...(range.told ? {} : houseRule(about.job, 'part-range-most').from),
      ...deviceSpot(about.job, id),
    },
  ];
}

/** A battery, alternator or charger whose voltage is another than that of the system that it is joined to. */
function judgeSource(about: Case, side: LiveSide, device: Device): Verdict<'part-not-for-system'>[] {
  const { id, spec, facts } = device;
  const post = Object.keys(facts.terminals).find((name) => facts.terminals[name]?.role === 'source-positive');
  const own = ownSystem(spec);
  if (post === undefined || own === null) return [];
  const terminal = terminalId({ device: id, terminal: post });
  const others = feeding(about, side, terminal).filter((part) => part !== spec);
  const charged = others.some(({ kind }) => kind === 'charger');
  const vehicleV = systemVoltageOf(about.job.vehicle['system-voltage']);
  const joined = new Set(others.flatMap((part) => ownSystem(part) ?? []));
  const joinsVehicle = device.origin === 'vehicle' && !charged;
  const system = joinsVehicle ? vehicleV : [...joined].find((one) => one !== own);
  if (system === undefined || system === own || seriesAt(about, id)) return [];
  return [
    {
      level: 'stop',
      of: [id, terminal],
      message: `${id} is made for ${volts(own)}, and ${joinsVehicle ? `${about.job.vehicle.id} is` : 'what it is joined to is'} a ${volts(system)} system`,
      value: own,
      limit: system,
      unit: 'V',
      remedy: joinsVehicle
        ? 'correct voltage: of the battery or set-point: of the alternator in its part, or system-voltage: of the vehicle; two batteries in series are written as one, with the voltage of both'
        : 'join systems of different voltage through a charger or converter alone',
      ...deviceSpot(about.job, id),
    },
  ];
}

function ownSystem(part: Part | null): SystemVoltage | null {
  if (part?.kind === 'battery') return systemVoltageOf(part.voltage);
  if (part?.kind === 'charger') return systemOf(part.output.voltage);
  if (part?.kind !== 'alternator' || part['set-point'] === undefined) return null;
  return systemOf(part['set-point']);
}

const notForSystem: Rule = {
  id: 'part-not-for-system',
  judge(about) {
    const side = liveSide(about);
    return about.job.devices.flatMap((device) => [
      ...judgePart(about, side, device),
      ...judgeSource(about, side, device),
    ]);
  },
};

/** What a fuse is made for: by its part, else by the house rule. */
function fuseVoltage(
  about: Case,
  part: string | null,
): { readonly ratedV: number; readonly from: Partial<Source> } {
  const own = partOf(about.job, part);
  if (own?.kind === 'fuse' && own.voltage !== undefined) return { ratedV: own.voltage, from: {} };
  const { value, from } = houseRule(about.job, 'fuse-voltage');
  return { ratedV: value, from };
}

const fuseUnderSystem: Rule = {
  id: 'fuse-under-system-voltage',
  judge(about) {
    const side = liveSide(about);
    return about.plan.power.fuses.flatMap((fuse): Verdict<'fuse-under-system-voltage'>[] => {
      const { ratedV, from } = fuseVoltage(about, fuse.part);
      const { mostV, system } = suppliedAt(about, side, fuse.from);
      if (mostV <= ratedV + 1e-9 || deviceOf(about.job, fuse.item)?.origin !== 'job') return [];
      return [
        {
          level: 'stop',
          of: [fuse.id],
          message: `the fuse ${fuse.id} is made for ${volts(ratedV)}, and its ${volts(system)} system gives up to ${volts(mostV)}: it may not put out its own arc`,
          value: mostV,
          limit: ratedV,
          unit: 'V',
          remedy: `take a fuse whose rated voltage is at least ${volts(mostV)}, or write voltage: in its part as its maker prints it`,
          ...from,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

/** True for a wire from the negative post of one battery to the positive post of another. */
export function isSeriesStrap({ job }: Case, ends: readonly [string, string]): boolean {
  const batteries = ends.every((end) => deviceOf(job, deviceIdOf(end))?.spec?.kind === 'battery');
  const [one, other] = ends;
  return (
    batteries &&
    deviceIdOf(one) !== deviceIdOf(other) &&
    [one, other].some((end) => hasRole(job, end, 'source-negative')) &&
    [one, other].some((end) => hasRole(job, end, 'source-positive'))
  );
}

/** True for a battery that stands in series with another. */
function seriesAt(about: Case, battery: string): boolean {
  return about.plan.wires.some(
    ({ from, to }) =>
      isSeriesStrap(about, [from, to]) && [from, to].some((end) => deviceIdOf(end) === battery),
  );
}

const inSeries: Rule = {
  id: 'batteries-in-series',
  judge(about) {
    return about.plan.wires.flatMap((wire): Verdict<'batteries-in-series'>[] => {
      if (!isSeriesStrap(about, [wire.from, wire.to])) return [];
      const names = [wire.from, wire.to].map(deviceIdOf);
      return [
        {
          level: 'stop',
          of: [wire.id, ...names],
          message: `${wire.id} puts ${names.join(' and ')} in series, and batteries in series are not computed one by one: what is printed of the supply does not hold`,
          remedy: `write both as one battery: a part with voltage: ${volts(2 * usualSystemV)}, the capacity and cold cranking of one and the resistance of both, the strap between them with it; nothing is tapped at their middle`,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

export const systemVoltageRules: readonly Rule[] = [notForSystem, fuseUnderSystem, inSeries];
