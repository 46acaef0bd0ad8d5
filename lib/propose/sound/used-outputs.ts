import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { speakerAt } from './box-posts.ts';
import { type AmplifierOutput, outputsOf } from './outputs.ts';

/** An output of an amplifier at which speakers hang, by what is written and what is proposed. */
export interface UsedOutput {
  readonly amplifier: DraftDevice;
  readonly output: AmplifierOutput;
  /** Ids of the speakers that are linked to it. */
  readonly speakers: readonly string[];
}

/** The outputs of an amplifier that drive something, in the order of its channels: a bridge where the coil hangs between two. */
export function usedOutputs(draft: Draft, amplifier: DraftDevice): readonly UsedOutput[] {
  const all = outputsOf(amplifier);
  const ends = ({ spec: { positive, negative } }: AmplifierOutput) =>
    [positive, negative].map((terminal) => draft.linksAt(amplifier.id, terminal));
  const bridged = all.filter(
    (output) =>
      output.channels.length > 1 &&
      ends(output).every((links) => links.length > 0) &&
      output.channels.every((name) => !isWhole(draft, amplifier, all, name)),
  );
  const inBridge = bridged.flatMap(({ channels }) => channels);
  const single = all.filter(
    ({ channels, name }) =>
      channels.length === 1 && !inBridge.includes(name) && isWhole(draft, amplifier, all, name),
  );
  const first = ({ channels }: AmplifierOutput) => all.findIndex(({ name }) => name === channels[0]);
  return [...single, ...bridged]
    .toSorted((a, b) => first(a) - first(b))
    .map((output) => ({ amplifier, output, speakers: speakersAt(draft, amplifier, ends(output).flat()) }));
}

/** True for a channel with links at both of its own terminals. */
function isWhole(
  draft: Draft,
  amplifier: DraftDevice,
  all: readonly AmplifierOutput[],
  name: string,
): boolean {
  const spec = all.find((one) => one.name === name && one.channels.length === 1)?.spec;
  return (
    spec !== undefined &&
    [spec.positive, spec.negative].every((terminal) => !draft.isFree(amplifier.id, terminal))
  );
}

function speakersAt(draft: Draft, amplifier: DraftDevice, links: readonly string[]): readonly string[] {
  const ends = links.flatMap((id) => {
    const link = draft.links[id];
    return link ? [link.from, link.to].map((end) => speakerAt(draft, linkEndOf(end).device)) : [];
  });
  return [...new Set(ends)].filter((id) => id !== amplifier.id);
}
