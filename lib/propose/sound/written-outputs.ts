import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, pairOf } from '../draft/draft-device.ts';
import type { DrivenOutputs } from './bass-channels.ts';
import { coilsOf } from './coil-wiring.ts';
import { wiredBest } from './driven-way.ts';
import { type AmplifierOutput, outputsOf } from './outputs.ts';
import type { DrivenGroup, InLineGroup } from './signal-chain.ts';

/** Groups of speakers of which written links tell some channels, and what of them still needs one. */
export interface ToldOutputs {
  readonly dealt: readonly DrivenOutputs[];
  readonly left: readonly DrivenGroup[];
}

/**
 * What is written governs: a speaker beside which a filter hangs plays on the channel that a written link leads from to
 * that filter, for both are on one.
 */
export function toldOutputs(
  draft: Draft,
  amplifier: DraftDevice,
  groups: readonly DrivenGroup[],
  inLine: readonly InLineGroup[],
): ToldOutputs {
  const dealt: DrivenOutputs[] = [];
  const left = groups.flatMap((group): DrivenGroup[] => {
    const told = group.needy.flatMap((speaker) => {
      const found = outputBeside(draft, amplifier, speaker, inLine);
      const [wired] = (found && wiredBest(amplifier, found.output, [speaker])?.outputs) ?? [];
      return found && wired ? [{ speaker, wired, ...found }] : [];
    });
    if (told.length === 0) return [group];
    const needy = told.map(({ speaker }) => speaker);
    dealt.push({
      group: { ...group, needy },
      outputs: told.map(({ wired }) => wired),
      reason: told
        .map(
          ({ link, filter, output }) =>
            `${output.name} drives ${filter} by ${link}, which is written, and what it hangs beside`,
        )
        .join('; '),
    });
    const rest = group.needy.filter((speaker) => !needy.includes(speaker));
    return rest.length > 0 ? [{ ...group, needy: rest }] : [];
  });
  return { dealt, left };
}

/** The output of an amplifier that a link leads from to the filter beside a speaker. */
function outputBeside(
  draft: Draft,
  amplifier: DraftDevice,
  speaker: DraftDevice,
  inLine: readonly InLineGroup[],
) {
  for (const { speakers: filters, beside } of inLine) {
    const filter = filters[beside.indexOf(speaker)];
    const [input] = filter ? coilsOf(filter) : [];
    if (!filter || !input) continue;
    for (const link of draft.linksAt(filter.id, input.positive)) {
      const output = outputAt(draft, amplifier, link);
      if (output) return { output, link, filter: filter.id };
    }
  }
  return null;
}

function outputAt(draft: Draft, amplifier: DraftDevice, link: string): AmplifierOutput | null {
  const ends = draft.links[link];
  const names = [ends?.from, ends?.to].flatMap((end) => {
    const { device, terminal } = linkEndOf(end ?? '');
    return device === amplifier.id ? (pairOf(amplifier, terminal) ?? [terminal]) : [];
  });
  return outputsOf(amplifier).find(({ spec }) => names.includes(spec.positive)) ?? null;
}

/** Which channels written links have taken, each with its link: `1 by to-front-left`; empty where none has. */
export function takenText(draft: Draft, amplifier: DraftDevice): string {
  const taken = outputsOf(amplifier).flatMap(({ name, channels, spec }) => {
    const [link] = channels.length === 1 ? draft.linksAt(amplifier.id, spec.positive) : [];
    return link === undefined ? [] : [`${name} by ${link}`];
  });
  return taken.length > 0 ? ` (taken: ${taken.join(', ')})` : '';
}
