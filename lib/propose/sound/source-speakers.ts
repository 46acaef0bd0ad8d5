import type { Draft, Why } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { speakerPart } from './bands.ts';
import { coilsOf } from './coil-wiring.ts';
import { hasPairs, type PlayedPair, pairOfTop, sideOf } from './inputs.ts';
import type { DrivenGroup, SignalChain } from './signal-chain.ts';
import { isNameFree, isNameLeftOpen, type SourceOutput, sourceOutputs } from './source-outputs.ts';
import { linkToOutput } from './speaker-links.ts';

/**
 * Links the speakers that a source unit drives itself: each of one coil to the output of its row and side, one speaker an
 * output. It filters nothing and gives little power: subwoofers, and what needs a band made for it, are asked for.
 */
export function linkSourceSpeakers(draft: Draft, { groups }: SignalChain): void {
  for (const group of groups)
    if (group.driver?.spec.kind === 'source-unit' && group.needy.length > 0)
      linkGroup(draft, group, group.driver);
}

function linkGroup(draft: Draft, group: DrivenGroup, source: DraftDevice): void {
  const path = ['devices', group.id];
  const refused = whyNot(group, source);
  if (refused !== null) {
    draft.ask(path, refused, 'drive it by an amplifier, or write its links');
    return;
  }
  const outputs = sourceOutputs(draft, source, 'speaker');
  if (outputs.length === 0) {
    draft.ask(path, `${source.id} has no speaker outputs for ${group.id}`, 'add an amplifier');
    return;
  }
  const pair = pairOfTop(draft, group, { has: hasPairs(outputs), made: hasPairs(outputs) });
  if (pair) for (const speaker of group.needy) linkOne(draft, group, { source, outputs, speaker }, pair);
}

/** What keeps a source unit from driving a group by itself; null where nothing does. */
function whyNot({ id, needy, given }: DrivenGroup, source: DraftDevice): string | null {
  const band = speakerPart({ speakers: needy })?.band;
  if (band === 'subwoofer' || needy.some((speaker) => coilsOf(speaker).length !== 1))
    return `${id} is more than the speaker outputs of ${source.id} drive`;
  if (given.plays || band === 'tweeter' || band === 'midrange')
    return `nothing before ${id} makes its band: ${source.id} does not filter`;
  return null;
}

/** How a source unit may be told to drive one of some groups that want an amplifier; empty where none may. */
export function orBySource(draft: Draft, groups: readonly DrivenGroup[]): string {
  for (const source of draft.devices) {
    if (source.spec.kind !== 'source-unit' || sourceOutputs(draft, source, 'speaker').length === 0) continue;
    const names = groups.flatMap((group) => (whyNot(group, source) === null ? [group.id] : []));
    if (names.length > 0)
      return `, or write driven-by: ${source.id} at ${names.join(' or ')}, which then plays from its own speaker outputs`;
  }
  return '';
}

interface FromSource {
  readonly source: DraftDevice;
  readonly outputs: readonly SourceOutput[];
  readonly speaker: DraftDevice;
}

function linkOne(
  draft: Draft,
  group: DrivenGroup,
  { source, outputs, speaker }: FromSource,
  { pair, why }: PlayedPair,
): void {
  const carries = `${pair}-${sideOf(speaker.side)}`;
  const output = outputs.find((one) => one.carries === carries);
  const isOpen =
    output &&
    (isNameLeftOpen(draft, source, output.name) ||
      source.leftOpen.some((name) => name.startsWith(output.name)));
  const isFree = output && !isOpen && isNameFree(draft, source, output.name);
  if (!output || !isFree) {
    draft.ask(
      ['devices', group.id],
      output
        ? `${speaker.id} would play ${carries} of ${source.id}, and ${output.name} is ${isOpen ? 'left open' : 'taken'}`
        : `${source.id} has no speaker output that carries ${carries} for ${speaker.id}`,
      'write signal: with another pair, or drive it by an amplifier',
    );
    return;
  }
  const reason: Why = {
    ...why,
    rule: 'channels',
    reason: `${source.id} drives it itself: ${why.reason}, one speaker an output`,
  };
  const ends = { positive: `${output.name}+`, negative: `${output.name}-` };
  linkToOutput(draft, speaker, { device: source, ...ends, coils: 'one' }, reason);
}
