import { levelDifferences } from '../../audio/load/speaker-wire-loss.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanAudio, PlanChannel } from '../../model/plan/index.ts';
import { traced } from '../../model/trace.ts';
import type { PlanBook } from '../plan-book.ts';
import type { Settled } from '../settle-sizes.ts';
import type { LoadedChannel } from './load/output-loads.ts';
import { channelWires, lossOf, wayM } from './speaker-sizing.ts';

/**
 * The channels with the loss in their wires and the damping at their speakers, now that lengths and sizes are known,
 * and how far each is below the best of its band. The thinnest leg counts.
 */
export function withWireLoss(
  job: Job,
  audio: PlanAudio,
  channels: readonly LoadedChannel[],
  { sizing, all }: Settled,
  book: PlanBook,
): PlanAudio {
  const wires = channelWires(job, channels, sizing.circuit.roles);
  const lossy = audio.channels.map((channel) => {
    const own = wires.find((one) => one.channel.channel.id === channel.id);
    const cables = own?.links.flatMap(({ id }) => all.get(id)?.cable ?? []) ?? [];
    const [thinnest] = cables.toSorted((a, b) => a.size.areaMm2 - b.size.areaMm2);
    if (channel.loadOhm === null || !own || !thinnest) return channel;
    const spec = job.devices.find(({ id }) => id === channel.amplifier)?.spec;
    const damping = spec?.kind === 'amplifier' ? spec.damping : undefined;
    const run = {
      id: channel.id,
      loadOhm: channel.loadOhm,
      wayM: wayM(own, sizing.lengths),
      bridged: channel.bridgedWith !== undefined,
      ...(damping ? { amplifierDamping: { factor: damping.factor, atOhm: damping.at } } : {}),
    };
    const loss = lossOf(job, run, thinnest.size.areaMm2, thinnest.material, thinnest.measuredOhmPerM);
    if (!loss) return channel;
    const at = `audio.channels.${channel.id}`;
    return {
      ...channel,
      dcResistanceOhm: atAmplifier(channel, loss.wireOhm.value, book),
      wireLossDb: book.trace(`${at}.wireLossDb`, loss.lossDb),
      damping: loss.damping && book.trace(`${at}.damping`, loss.damping),
    };
  });
  return { ...audio, channels: withDifferences(job, lossy, book) };
}

/** What a meter reads at the plug of the amplifier: the coils as wired, and both conductors of the way to them. */
function atAmplifier({ id, dcResistanceOhm }: PlanChannel, wireOhm: number, book: PlanBook) {
  if (!dcResistanceOhm) return null;
  const withWire = (end: 'fromOhm' | 'toOhm') =>
    book.trace(
      `audio.channels.${id}.dcResistanceOhm.${end}`,
      traced(dcResistanceOhm[end] + wireOhm, 'ohm', {
        rule: 'plug-resistance-with-wire',
        formula: 'R = Rcoils + Rwire, Rcoils the coils as wired and Rwire both conductors of the way to them',
        citation: "Ohm's law; range of the coils by common practice, no source",
        mark: 'cp',
        inputs: [
          ['Rcoils', dcResistanceOhm[end], 'ohm'],
          ['Rwire', wireOhm, 'ohm'],
        ],
      }),
    );
  return { fromOhm: withWire('fromOhm'), toOhm: withWire('toOhm') };
}

/** Level differences among the channels of one band, such as the left and right doors. */
function withDifferences(job: Job, channels: readonly PlanChannel[], book: PlanBook): PlanChannel[] {
  const bandOf = ({ speakers }: PlanChannel) => {
    const spec = job.devices.find(({ id }) => id === speakers[0])?.spec;
    return spec?.kind === 'speaker' ? `${spec.band} ${spec.title}` : '';
  };
  const bands = new Map<string, PlanChannel[]>();
  for (const channel of channels) {
    if (channel.wireLossDb === null) continue;
    bands.set(bandOf(channel), [...(bands.get(bandOf(channel)) ?? []), channel]);
  }
  const below = new Map(
    [...bands.values()].flatMap((own) =>
      levelDifferences(own.map(({ id, wireLossDb }) => ({ path: id, lossDb: wireLossDb ?? 0 }))).map(
        ({ path, belowDb }) => [path, book.trace(`audio.channels.${path}.belowDb`, belowDb)] as const,
      ),
    ),
  );
  return channels.map((channel) => ({ ...channel, belowDb: below.get(channel.id) ?? null }));
}
