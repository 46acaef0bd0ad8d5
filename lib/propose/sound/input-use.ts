import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, pairOf, terminalAt } from '../draft/draft-device.ts';
import { rowOf, speakerPart } from './bands.ts';
import { groupOf, hasPairs } from './inputs.ts';
import type { DrivenGroup, SignalChain } from './signal-chain.ts';
import { isNameFree, joinableOutputs } from './source-outputs.ts';
import { type UsedOutput, usedOutputs } from './used-outputs.ts';

/**
 * How the inputs of the amplifiers are used that the source unit drives itself: by the maker's leads where the source has
 * speaker outputs alone, and inside where no output of the source is left for a subwoofer. The chain with the amplifiers
 * as they are used then.
 */
export function useInputs(draft: Draft, chain: SignalChain): SignalChain {
  const { source } = chain;
  if (!source) return chain;
  for (const { id, origin } of chain.amplifiers) {
    if (origin !== 'job' || chain.processorOf.has(id) || chain.feederOf.has(id)) continue;
    const amplifier = draft.device(id);
    if (amplifier) sumInside(draft, chain, source, amplifier);
    const summed = draft.device(id);
    if (summed) takeSpeakerLevel(draft, source, summed);
  }
  return { ...chain, amplifiers: chain.amplifiers.map((one) => draft.device(one.id) ?? one) };
}

/** The inputs of a used output, by terminal or pair. */
const inputsOf = ({ output: { spec } }: UsedOutput): readonly string[] => [spec.input, ...spec.summed];

function takeSpeakerLevel(draft: Draft, source: DraftDevice, amplifier: DraftDevice): void {
  if ((amplifier.given?.['speaker-level'] ?? []).length > 0) return;
  const can = [...new Set(usedOutputs(draft, amplifier).flatMap(inputsOf))].filter(
    (name) => terminalAt(amplifier, name)?.['speaker-level'] !== undefined,
  );
  const written = can.filter((name) =>
    draft.linksAt(amplifier.id, name).some((id) => comesFromPair(draft, id, amplifier)),
  );
  const hasLine = joinableOutputs(draft, source, 'line').length > 0;
  const needed =
    hasLine || joinableOutputs(draft, source, 'speaker').length === 0
      ? written
      : can.filter((name) => written.includes(name) || isNameFree(draft, amplifier, name));
  if (needed.length === 0) return;
  const why: Why = {
    rule: 'inputs',
    reason: `${source.id} gives speaker outputs, and ${needed.map((name) => `${amplifier.id}.${name}`).join(', ')} take${needed.length === 1 ? 's' : ''} them by the maker's own leads`,
    cp: true,
  };
  draft.useInputs(amplifier, 'speaker-level', needed, why);
}

/** True for a link that joins a pair of another device to an input. */
function comesFromPair(draft: Draft, id: string, { id: own }: DraftDevice): boolean {
  const link = draft.links[id];
  if (!link) return false;
  return [link.from, link.to].some((reference) => {
    const end = linkEndOf(reference);
    const device = end.device === own ? null : draft.device(end.device);
    return device !== null && pairOf(device, end.terminal) !== null;
  });
}

/** Subwoofer channels with nothing at their own input take what the others play, where the source has no pair left for them. */
function sumInside(draft: Draft, chain: SignalChain, source: DraftDevice, amplifier: DraftDevice): void {
  if ((amplifier.given?.['summed-inside'] ?? []).length > 0 || hasPairLeft(draft, chain, source)) return;
  const used = usedOutputs(draft, amplifier);
  const played = new Set(used.filter((one) => !isBass(groupOf(chain, one))).flatMap(inputsOf));
  const channels = used
    .filter((one) => isBass(groupOf(chain, one)) && groupOf(chain, one)?.given.signal === undefined)
    .filter(({ output }) => isNameFree(draft, amplifier, output.spec.input))
    .filter(({ output }) => takenInside(amplifier, output.name).some((name) => played.has(name)))
    .map(({ output }) => output.name);
  if (channels.length === 0) return;
  const why: Why = {
    rule: 'inputs',
    reason: `${source.id} has no pair left for the bass: channel ${channels.join(', ')} of ${amplifier.id} takes the inputs of the others inside`,
    cp: true,
  };
  draft.useInputs(amplifier, 'summed-inside', channels, why);
}

const isBass = (group: DrivenGroup | null): boolean =>
  group !== null && speakerPart(group)?.band === 'subwoofer';

/** The inputs of others that a channel may take inside, by its part. */
function takenInside({ spec }: DraftDevice, channel: string): readonly string[] {
  return spec.kind === 'amplifier' ? (spec.channels[channel]?.['also-takes'] ?? []) : [];
}

/** True where a source has a bass pair, or one that no group of the front or the rear plays. */
function hasPairLeft(draft: Draft, { groups }: SignalChain, source: DraftDevice): boolean {
  const line = joinableOutputs(draft, source, 'line');
  const pairs = hasPairs(line.length > 0 ? line : joinableOutputs(draft, source, 'speaker'));
  const [first] = pairs;
  const played = groups
    .filter((group) => !isBass(group))
    .map((group) => {
      const told = group.given.signal ?? rowOf(group);
      return told !== null && pairs.includes(told) ? told : first;
    });
  return pairs.some((pair) => pair === 'bass' || !played.includes(pair));
}
