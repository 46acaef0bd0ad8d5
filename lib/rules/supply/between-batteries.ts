import { type Device, terminalId } from '../../model/content/resolved-job.ts';
import type { ActingLevel } from '../../model/finding.ts';
import type { PlanFuse } from '../../model/plan/index.ts';
import { carriesForS } from '../../power/time-current.ts';
import { isDriven, netOf } from '../audio/driven.ts';
import { batteriesAmong, liveSide, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, deviceSpot, fuseSpot, hasRole, partOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, figure, listed } from '../words.ts';

const isolator = 'fit an isolating relay that is open while the starter turns';

type Cranking = NonNullable<Case['plan']['power']['cranking']>;

/** Where the starter's current comes from, for a message. */
function starterText({ currentA, seconds, measured }: Cranking): string {
  const how = measured ? 'as measured' : 'by the house rule, not measured here';
  return `while the starter draws ${ampsDrawn(currentA)} for ${figure(seconds)} s (${how})`;
}

/** Why a fuse may open while the starter turns; nothing where it carries its share. */
function fuseMiss(about: Case, fuse: PlanFuse, shareA: number, seconds: number): string | null {
  if (fuse.ratingA === null || !(fuse.ratingA > 0)) return null;
  const multiple = shareA / fuse.ratingA;
  const part = partOf(about.job, fuse.part);
  const points = part?.kind === 'fuse' ? part['time-current'] : undefined;
  const carriesS = carriesForS(points ?? [], multiple);
  if (carriesS !== null && carriesS >= seconds - 1e-9) return null;
  const times = `${figure(multiple)} times its rating`;
  if (carriesS !== null) return `at ${times} it opens after ${figure(carriesS)} s`;
  return points === undefined
    ? `at ${times}; its part has no time-current data that would tell how long it carries that`
    : `at ${times}, which is past its maker's time-current data`;
}

/** The batteries and banks on the far side of a fuse from the one that starts the engine; none where it can't be told. */
function givingThrough(about: Case, { id }: PlanFuse): readonly string[] {
  const side = liveSide(about);
  const own = side.edges.find((edge) => edge.kind === 'fuse' && edge.id === id);
  const sides = (own?.ends ?? []).map((end) =>
    batteriesAmong(
      about.job,
      side,
      reached(side.edges, [end], (edge) => edge !== own),
    ).map(deviceIdOf),
  );
  const starts = (device: string) => deviceOf(about.job, device)?.origin === 'vehicle';
  const far = sides.filter((devices) => devices.length > 0 && !devices.some(starts));
  return far.length === 1 ? (far[0] ?? []) : [];
}

/** What keeps the starter's current out of a fuse: a relay between batteries, but a bank is charged through it. */
function keepOut(about: Case, giving: readonly string[]): string {
  const banks = giving.filter((id) => deviceOf(about.job, id)?.spec?.kind === 'capacitor-bank');
  return banks.length > 0 && banks.length === giving.length
    ? `join ${listed(banks)} where no fuse of a single device lies between it and the battery`
    : isolator;
}

const throughFuse: Rule = {
  id: 'cranking-through-fuse',
  judge(about) {
    const { cranking, fuses } = about.plan.power;
    if (!cranking) return [];
    return fuses.flatMap((fuse): Verdict<'cranking-through-fuse'>[] => {
      const shareA = cranking.shares.find(({ id }) => id === fuse.id)?.currentA ?? 0;
      const miss = fuseMiss(about, fuse, shareA, cranking.seconds);
      if (miss === null) return [];
      const giving = givingThrough(about, fuse);
      return [
        {
          level: 'caution',
          of: [fuse.id],
          message: `${starterText(cranking)}, ${ampsDrawn(shareA)} of it flow from ${giving.length > 0 ? listed(giving) : 'the other batteries'} through ${fuse.id}: ${miss}`,
          value: shareA,
          ...(fuse.ratingA !== null && { limit: fuse.ratingA }),
          unit: 'A',
          remedy: `${keepOut(about, giving)}; or write time-current: of the fuse's part as its maker prints it, or cranking: of the vehicle as measured`,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

/** An isolating relay, as far as its contact is concerned. */
function isolatorsOf({ job }: Case) {
  return job.devices.flatMap((device) =>
    device.spec?.kind === 'isolating-relay' && device.origin === 'job' ? [{ device, spec: device.spec }] : [],
  );
}

const throughRelay: Rule = {
  id: 'cranking-through-relay',
  judge(about) {
    const { cranking } = about.plan.power;
    if (!cranking) return [];
    return isolatorsOf(about).flatMap(({ device: { id }, spec }): Verdict<'cranking-through-relay'>[] => {
      const shareA = cranking.shares.find((one) => deviceIdOf(one.id) === id)?.currentA ?? 0;
      const longA = spec['continuous-current'];
      const short = spec['short-time'];
      if (shareA <= longA * (1 + 1e-9)) return [];
      const carries = short !== undefined && shareA <= short.current && cranking.seconds <= short.seconds;
      if (carries) return [];
      const limit = short?.current ?? longA;
      const made = short
        ? `${amps(short.current)} for ${figure(short.seconds)} s`
        : `${ampsDrawn(longA)} for long, and its part has no short-time rating`;
      return [
        {
          // A maker's limit against a measurement is sure; against a house rule it is not.
          level: short && cranking.measured ? 'stop' : 'caution',
          of: [id],
          message: `${starterText(cranking)}, ${ampsDrawn(shareA)} of it flow through the contact of ${id}, which is made for ${made}: it may weld`,
          value: shareA,
          limit,
          unit: 'A',
          remedy: `${isolator}, or one whose short-time rating covers it`,
          ...deviceSpot(about.job, id),
        },
      ];
    });
  },
};

/** What makes the coil of an isolating relay fail to follow the engine; nothing where all is well. */
function coilFault(
  about: Case,
  { id, facts }: Device,
): { readonly level: ActingLevel; readonly text: string; readonly remedy: string } | null {
  const { job } = about;
  const side = liveSide(about);
  const coils = Object.keys(facts.terminals)
    .filter((name) => facts.terminals[name]?.role === 'relay-coil')
    .map((terminal) => terminalId({ device: id, terminal }));
  const remedy =
    'feed its coil through a fuse from a line of the vehicle that is live while the engine runs alone';
  if (!isDriven(job, side.edges, coils, [id]))
    return {
      level: 'stop',
      text: `nothing feeds the coil of ${id}: it never closes, and the battery behind it is never charged`,
      remedy,
    };
  const net = netOf(job, side.edges, coils);
  const constant = net.filter((end) => hasRole(job, end, 'source-positive'));
  if (constant.length > 0)
    return {
      level: 'stop',
      text: `the coil of ${id} hangs on ${listed(constant)}, which is live with the engine off too: it never opens`,
      remedy,
    };
  const outputs = net.filter((end) => hasRole(job, end, 'turn-on-out'));
  if (outputs.length === 0) return null;
  return {
    level: 'caution',
    text: `the coil of ${id} follows the turn-on output ${listed(outputs)}: music with the engine off joins the batteries, and the starter's runs down with the rest`,
    remedy,
  };
}

const notDriven: Rule = {
  id: 'isolator-not-by-engine',
  judge(about) {
    return isolatorsOf(about).flatMap(({ device, spec }): Verdict<'isolator-not-by-engine'>[] => {
      const fault = spec['pulls-in'] === 'coil' ? coilFault(about, device) : null;
      if (!fault) return [];
      const { level, text, remedy } = fault;
      return [{ level, of: [device.id], message: text, remedy, ...deviceSpot(about.job, device.id) }];
    });
  },
};

/** What joins batteries: its share of cranking, and that the relay between them follows the engine. */
export const betweenBatteryRules: readonly Rule[] = [throughFuse, throughRelay, notDriven];
