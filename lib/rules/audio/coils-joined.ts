import type { Coil, Wiring } from '../../audio/load/coil-wiring.ts';
import { wiringLoad } from '../../audio/load/loads.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanChannel, PlanWiring } from '../../model/plan/index.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { figure, listed, ohms, watts } from '../words.ts';

type Joined = 'series' | 'parallel';

/** The speakers of a channel that have several coils, where the job leaves open how these are joined. */
function openlyJoined({ job, plan }: Case, { speakers }: PlanChannel): readonly string[] {
  const proposed = job.proposals.flatMap(({ path: [kind, id, ...below] }) =>
    kind === 'links' && id && below.length === 0 ? [id] : [],
  );
  return speakers.filter((id) => {
    const spec = deviceOf(job, id)?.spec;
    if (spec?.kind !== 'speaker' || Object.keys(spec.coils).length < 2) return false;
    const own = plan.wires.filter(({ from, to }) => [from, to].every((end) => end.startsWith(`${id}.`)));
    return own.length > 0 && own.every((wire) => proposed.includes(wire.link ?? wire.id));
  });
}

/** The load with the coils of each speaker joined one way, and the speakers in parallel (ohm); null where there is none. */
function loadJoined({ job }: Case, { id, speakers }: PlanChannel, how: Joined): number | null {
  const coils = speakers.flatMap((speaker): Coil[] => {
    const spec = deviceOf(job, speaker)?.spec;
    const own = spec?.kind === 'speaker' ? Object.entries(spec.coils) : [];
    return own.map(([name, { nominal }]) => ({ id: `${speaker}.${name}`, speaker, nominalOhm: nominal }));
  });
  const each = speakers.flatMap((speaker) => {
    const own = coils.filter((coil) => coil.speaker === speaker).map((coil) => leaf(coil.id));
    return own.length === 0 ? [] : [group(how, own)];
  });
  const load = each.length === 0 ? null : wiringLoad(id, group('parallel', each), coils);
  return load === null || isFault(load) ? null : load.loadOhm.value;
}

const isSameLoad = (one: number, other: number) => Math.abs(one - other) <= 1e-6 * other;

const leaf = (coil: string): Wiring => ({ kind: 'coil', coil });

function group(kind: Joined, members: readonly Wiring[]): Wiring {
  const [only, second] = members;
  return only && !second ? only : { kind, members };
}

/** The way of wiring a channel with the coils of each speaker joined so, of those that give all coils alike. */
function wayJoined(about: Case, channel: PlanChannel, how: Joined): PlanWiring | undefined {
  const loadOhm = loadJoined(about, channel, how);
  if (loadOhm === null) return undefined;
  return channel.wirings.find((way) => way.unevenness <= 1.01 && isSameLoad(way.loadOhm, loadOhm));
}

function verdictOf(
  about: Case,
  channel: PlanChannel,
  open: readonly string[],
): Verdict<'coils-joined-otherwise'>[] {
  const { job } = about;
  const { id, amplifier, loadOhm } = channel;
  const name = id.slice(amplifier.length + 1);
  if (loadOhm === null || deviceOf(job, amplifier)?.given?.loads[name] !== undefined) return [];
  const ways = (['series', 'parallel'] as const).flatMap((how) => {
    const way = wayJoined(about, channel, how);
    return way?.powerW && way.mayDrive ? [{ how, loadOhm: way.loadOhm, powerW: way.powerW }] : [];
  });
  const own = ways.find((way) => isSameLoad(way.loadOhm, loadOhm));
  const other = ways.find((way) => !isSameLoad(way.loadOhm, loadOhm));
  if (!own || !other) return [];
  const much = job.rules['other-joining'].value;
  if (other.powerW < much * own.powerW && own.powerW < much * other.powerW) return [];
  const takes = open.map((speaker) => {
    const spec = deviceOf(job, speaker)?.spec;
    return `${speaker} may take ${watts(spec?.kind === 'speaker' ? spec.power : 0)} for long`;
  });
  const asked = `${figure(other.loadOhm)} ohm`;
  return [
    {
      level: 'note',
      of: [id, ...open],
      message: `the coils of ${listed(open)} are proposed in ${own.how}: ${ohms(own.loadOhm)}, ${watts(own.powerW)} of ${id}; in ${other.how} they would be ${ohms(other.loadOhm)} and ${watts(other.powerW)}, which ${amplifier} may drive too; ${listed(takes)}`,
      value: other.powerW,
      limit: own.powerW,
      unit: 'W',
      remedy: `leave it, or write loads: { "${name}": ${asked} } at ${amplifier}`,
      advice: [[{ ...deviceSpot(job, amplifier, 'loads', name), value: asked }]],
      ...deviceSpot(job, amplifier),
    },
  ];
}

/** Where the job leaves the joining of coils open and the other one is lawful as well, at much more or less power. */
const coilsJoinedOtherwise: Rule = {
  id: 'coils-joined-otherwise',
  judge(about) {
    return about.plan.audio.channels.flatMap((channel) => {
      const open = openlyJoined(about, channel);
      return open.length === 0 ? [] : verdictOf(about, channel, open);
    });
  },
};

export const coilsJoinedRules: readonly Rule[] = [coilsJoinedOtherwise];
