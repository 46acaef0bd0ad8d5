import { leastBassAwg } from '../../audio/load/bass-lead.ts';
import { type SpeakerRun, speakerWireLoss } from '../../audio/load/speaker-wire-loss.ts';
import type { Job, Link } from '../../model/content/resolved-job.ts';
import { terminalId } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { suppliedInsideM } from '../../model/kinds/enclosure.ts';
import { awgAreaMm2 } from '../../model/tables/awg-sizes.ts';
import { ohmPerM } from '../../power/conductor/resistance.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import type { LeastSizes } from '../power/sizing/least-sizes.ts';
import { entersPorts } from '../power/sizing/ports-fit.ts';
import { candidatesFor } from '../wiring/cable-candidates.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import type { WireLengths } from '../wiring/wire-lengths.ts';
import { boxLeads, madeBoxLead } from './box-leads.ts';
import { isSubwoofer } from './is-subwoofer.ts';
import type { LoadedChannel } from './load/output-loads.ts';

/** The speaker links of a channel, and which of them lead on from a passive crossover, or from the posts of a box into it. */
export interface ChannelWires {
  readonly channel: LoadedChannel;
  readonly links: readonly Link[];
  readonly behind: readonly Link[];
  readonly inside: readonly Link[];
  /** The longest lead that came inside a box of its speakers (m, one way); 0 where none is told. */
  readonly suppliedM: number;
}

/** The speaker links that belong to each channel: those that touch its outputs or its coils. */
export function channelWires(
  job: Job,
  channels: readonly LoadedChannel[],
  roles: ReadonlyMap<string, string>,
): ChannelWires[] {
  const speakerLinks = job.links.filter(({ id }) => roles.get(id) === 'speaker');
  const crossovers = job.devices.flatMap(({ id, spec }) =>
    spec?.kind === 'crossover' ? [{ id, spec }] : [],
  );
  const leadsOn = ({ from, to }: Link) =>
    crossovers.some(({ id, spec }) =>
      [from, to].some(
        (end) => end.device === id && spec.terminals[end.terminal]?.role.startsWith('speaker-out'),
      ),
    );
  return channels.map((channel) => {
    const { positive, negative, speakers } = channel.channel;
    const own = (link: Link) =>
      [link.from, link.to].some(
        (end) => [positive, negative].includes(terminalId(end)) || speakers.includes(end.device),
      );
    const links = speakerLinks.filter(own);
    const inside = links.filter((link) => madeBoxLead(job, link) !== null);
    return { channel, links, behind: links.filter(leadsOn), inside, suppliedM: suppliedM(job, speakers) };
  });
}

/** The longest of the leads that makers put inside the boxes of some speakers, as far as they tell it (m). */
function suppliedM(job: Job, speakers: readonly string[]): number {
  const boxes = boxLeads(job).flatMap(({ box, speaker }) => (speakers.includes(speaker) ? [box] : []));
  const told = job.devices.flatMap(({ id, spec }) =>
    spec?.kind === 'enclosure' && boxes.includes(id) ? (suppliedInsideM(spec) ?? []) : [],
  );
  return Math.max(0, ...told);
}

/**
 * Raises the least size of every speaker conductor so that its channel keeps the loss that the house allows, and a bass
 * lead the size of its load. Both are cautions of the rules: they ask for no more than the catalogue has and the ports take.
 */
export function sizeSpeakerWires(
  job: Job,
  devices: DevicesById,
  wires: readonly ChannelWires[],
  lengths: WireLengths,
  least: LeastSizes,
): void {
  for (const own of wires) {
    const { channel, links } = own;
    const { loadOhm, id, speakers } = channel.channel;
    if (loadOhm === null) continue;
    const isBass = speakers.some((speaker) => isSubwoofer(job, speaker));
    const bassAwg = isBass ? leastBassAwg(loadOhm) : null;
    for (const link of links) {
      const areas = areasThatFit(job, devices, link);
      const thickest = Math.max(0, ...areas);
      if (bassAwg !== null)
        least.raise(link.id, Math.min(awgAreaMm2(bassAwg), thickest), 'bass lead by its load');
      const area = areaForLoss(job, areas, { id, loadOhm, wayM: wayM(own, lengths) });
      if (area) least.raise(link.id, area, `its loss stays within ${job.rules['speaker-loss'].value} dB`);
    }
  }
}

/**
 * The longest way out and back with every jumper counted, and the longest from a crossover on added to the longest up to
 * it, and the longest inside a box, of the job or of its maker: on the safe side where legs part. Metres, one way.
 */
export function wayM(
  { links, behind, inside, suppliedM }: Pick<ChannelWires, 'links' | 'behind' | 'inside' | 'suppliedM'>,
  lengths: WireLengths,
): number {
  const jumpers = links.filter(({ from, to }) => from.device === to.device);
  const longestM = (legs: readonly Link[]) => Math.max(0, ...legs.map(({ id }) => lengths(id).lengthM));
  const upTo = links.filter((link) => ![...jumpers, ...behind, ...inside].includes(link));
  return (
    longestM(upTo) +
    longestM(behind) +
    Math.max(longestM(inside), suppliedM) +
    jumpers.reduce((sum, { id }) => sum + lengths(id).lengthM, 0) / 2
  );
}

/** Areas of the cables of the catalogue that go into both ports of a link, thin to thick (mm2); of all where none goes in. */
function areasThatFit(job: Job, devices: DevicesById, link: Link): readonly number[] {
  const areas = candidatesFor(job, link, 'speaker')
    .map(({ size }) => size.areaMm2)
    .toSorted((a, b) => a - b);
  const fitting = areas.filter((areaMm2) => entersPorts(job, devices, link, areaMm2));
  return fitting.length > 0 ? fitting : areas;
}

function areaForLoss(
  job: Job,
  areas: readonly number[],
  run: { id: string; loadOhm: number; wayM: number },
): number | null {
  const limit = job.rules['speaker-loss'].value;
  const within = areas.find((areaMm2) => {
    const loss = lossOf(job, run, areaMm2, 'copper', undefined);
    return loss !== null && loss.lossDb.value <= limit;
  });
  return within ?? areas.at(-1) ?? null;
}

/** Loss of a channel in its wires (dB) and damping at its speakers, all of one cable; null where it can't be told. */
export function lossOf(
  job: Job,
  run: Pick<SpeakerRun, 'amplifierDamping' | 'bridged'> & {
    readonly id: string;
    readonly loadOhm: number;
    readonly wayM: number;
  },
  areaMm2: number,
  material: SizedConductor['cable']['material'],
  measuredOhmPerM: number | undefined,
) {
  const rules = powerRules(job.rules);
  const perM = ohmPerM(
    { areaMm2, material, ...(measuredOhmPerM === undefined ? {} : { measuredOhmPerM }) },
    rules.conductorC,
    rules,
  );
  if (isFault(perM)) return null;
  const loss = speakerWireLoss({
    channel: run.id,
    loadOhm: run.loadOhm,
    legs: [{ lengthM: run.wayM, ohmPerM: perM.value }],
    ...(run.amplifierDamping ? { amplifierDamping: run.amplifierDamping } : {}),
    ...(run.bridged === undefined ? {} : { bridged: run.bridged }),
  });
  return isFault(loss) ? null : loss;
}
