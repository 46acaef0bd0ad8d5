import type { PlanAudio } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';
import type { PlannedChannel } from './audio-channels.ts';
import type { PlanBook } from './plan-book.ts';
import type { Settled } from './settle.ts';
import { channelWires, lossOf, wayM } from './speaker-sizing.ts';

/** The channels with the loss in their wires, now that lengths and sizes are known. The thinnest leg counts. */
export function withWireLoss(
  job: Job,
  audio: PlanAudio,
  channels: readonly PlannedChannel[],
  { sizing, all }: Settled,
  book: PlanBook,
): PlanAudio {
  const wires = channelWires(job, channels, sizing.circuit.roles);
  return {
    ...audio,
    channels: audio.channels.map((channel) => {
      const links = wires.find((own) => own.channel.channel.id === channel.id)?.links ?? [];
      const cables = links.flatMap(({ id }) => all.get(id)?.cable ?? []);
      const [thinnest] = cables.toSorted((a, b) => a.size.areaMm2 - b.size.areaMm2);
      if (channel.loadOhm === null || !thinnest) return channel;
      const run = { id: channel.id, loadOhm: channel.loadOhm, wayM: wayM(links, sizing.lengths) };
      const loss = lossOf(job, run, thinnest.size.areaMm2, thinnest.material, thinnest.measuredOhmPerM);
      return loss
        ? { ...channel, wireLossDb: book.trace(`audio.channels.${channel.id}.wireLossDb`, loss) }
        : channel;
    }),
  };
}
