import { type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanChannel } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { type SidedOutput, sidedOutputs } from '../../plan/audio/carried-sides.ts';
import { feedOf } from '../../plan/audio/signal-feed.ts';
import { channelInputs } from '../../plan/audio/signal-path.ts';
import { devicesById } from '../../plan/wiring/conductor-role.ts';
import { deviceOf, deviceSpot, wireSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** A channel of a subwoofer with the outputs of the source that it plays. */
interface Bass {
  readonly channel: PlanChannel;
  readonly outputs: readonly SidedOutput[] | null;
}

function bassChannels({ job, plan }: Case): readonly Bass[] {
  const devices = devicesById(job);
  return plan.audio.channels
    .filter(({ speakers }) =>
      speakers.some((id) => {
        const spec = deviceOf(job, id)?.spec;
        return spec?.kind === 'speaker' && spec.band === 'subwoofer';
      }),
    )
    .map((channel) => ({ channel, outputs: sidedOutputs(job, devices, channel) }));
}

const opposite = { left: 'right', right: 'left' } as const;

const oneSide: Rule = {
  id: 'bass-from-one-side',
  judge(about) {
    const bass = bassChannels(about);
    const all = bass.flatMap(({ outputs }) => outputs ?? []);
    const [first] = all;
    // Where one channel may play what another does not, nothing is known to be lost.
    if (!first || bass.some(({ outputs }) => outputs === null) || all.some(({ side }) => side !== first.side))
      return [];
    const { side } = first;
    const channels = bass.filter(({ outputs }) => (outputs ?? []).length > 0).map(({ channel }) => channel);
    const names = [
      ...new Set(all.map(({ output: { device, terminal } }) => `${device}.${stemName(terminal)}`)),
    ];
    const speakers = channels.flatMap((channel) => channel.speakers);
    return [
      {
        level: 'caution',
        of: [...channels.map(({ id }) => id), ...speakers, ...names],
        message: `${listed(speakers)} ${speakers.length === 1 ? 'plays' : 'play'} the bass of ${listed(names)} alone, the ${side} side of the source: bass that is recorded on the ${opposite[side]} alone is lost`,
        remedy: `feed ${listed(channels.map(({ id }) => id))} from both sides: a second link to an input that the amplifier adds (summed: of its channel), or a processor with mix: of both; two outputs are never joined at one input. Where ${listed(names)} carries both sides, write side: middle at it`,
        ...spotOf(about, channels[0]),
      } satisfies Verdict<'bass-from-one-side'>,
    ];
  },
};

/** The link at the input of a channel. */
function spotOf(about: Case, channel: PlanChannel | undefined): Spot {
  if (!channel) return { path: '' };
  const isAt = (end: LinkEnd) => (wire: { readonly from: string; readonly to: string }) =>
    [wire.from, wire.to].includes(terminalId(end));
  const [feeding] = channelInputs(about.job, channel).flatMap((input) => feedOf(about.job, input) ?? []);
  const wire = feeding && about.plan.wires.find(isAt(feeding));
  return wire ? wireSpot(about, wire.id) : deviceSpot(about.job, channel.amplifier);
}

export const bassSideRules: readonly Rule[] = [oneSide];
