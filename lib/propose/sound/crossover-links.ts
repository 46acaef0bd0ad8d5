import type { Draft, Why } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { coilsOf, joinsFor } from './coil-wiring.ts';
import type { DrivenGroup, InLineGroup, SignalChain, SpeakersBehind } from './signal-chain.ts';
import { linkToOutput } from './speaker-links.ts';

/**
 * Links the ways of passive crossovers to the speakers behind them, the lowest way to those that play lowest: common
 * practice, no source. Where their numbers differ nobody can say which way drives what, and that is asked.
 */
export function linkCrossovers(draft: Draft, { groups, inLine }: SignalChain): void {
  for (const group of inLine) linkBeside(draft, group);
  for (const group of [...groups, ...inLine])
    if (group.behind?.some(({ speakers }) => speakers.some((one) => isOpen(draft, one))))
      linkSet(draft, group, group.behind);
}

/** Links filters in leads to the terminals of the speakers beside which they hang, one each. */
function linkBeside(draft: Draft, { id, speakers: filters, beside }: InLineGroup): void {
  if (filters.length !== beside.length) {
    draft.ask(
      ['devices', id],
      `${counted(filters.length, 'filter')} ${id} and ${counted(beside.length, 'speaker')} beside which they would hang`,
      `write as many places in ${id} as it has speakers beside it`,
    );
    return;
  }
  for (const [at, filter] of filters.entries()) {
    const speaker = beside[at];
    const [coil] = speaker ? coilsOf(speaker) : [];
    const [input] = coilsOf(filter);
    if (!speaker || !coil || !input || !draft.isFree(filter.id, input.positive)) continue;
    const why: Why = {
      rule: 'channels',
      reason: `${filter.id} stands in the lead of what it drives, beside ${speaker.id} on its channel`,
      cp: true,
    };
    const ends = { device: speaker, positive: coil.positive, negative: coil.negative };
    linkToOutput(draft, filter, { ...ends, coils: 'one' }, why);
  }
}

function linkSet(
  draft: Draft,
  { id, speakers: crossovers }: Pick<DrivenGroup, 'id' | 'speakers'>,
  behind: readonly SpeakersBehind[],
): void {
  for (const [at, crossover] of crossovers.entries()) {
    const ways = waysOf(crossover);
    const driven = behind.flatMap((group) => partner(group, at, crossovers.length) ?? []);
    if (ways.length !== driven.length) {
      draft.ask(
        ['devices', id],
        `${crossover.id} has ${counted(ways.length, 'way')}, and ${counted(driven.length, 'speaker')} ${driven.length === 1 ? 'is' : 'are'} driven by it: ${driven.map((one) => one.id).join(', ') || 'none'}`,
        `write driven-by: ${id} at each speaker of the set, as many places in each as ${id} has`,
      );
      return;
    }
    for (const [way, name] of ways.entries()) {
      const speaker = driven[way];
      if (speaker && isOpen(draft, speaker)) linkWay(draft, crossover, name, speaker);
    }
  }
}

function linkWay(draft: Draft, crossover: DraftDevice, way: string, speaker: DraftDevice): void {
  const [positive, negative] = [`${way}+`, `${way}-`];
  if (!draft.isFree(crossover.id, positive) || !draft.isFree(crossover.id, negative)) return;
  const coils = joinsFor([speaker])[0]?.coils ?? 'one';
  const why: Why = {
    rule: 'channels',
    reason: `${way} of ${crossover.id} is the way for what ${speaker.id} plays`,
    cp: true,
  };
  linkToOutput(draft, speaker, { device: crossover, positive, negative, coils }, why);
}

/** The speaker of a group at one of several crossovers: each has the one of its own turn, a single one has all. */
function partner(
  { speakers }: SpeakersBehind,
  at: number,
  crossovers: number,
): readonly DraftDevice[] | null {
  if (crossovers === 1) return speakers;
  const own = speakers.length === crossovers ? speakers[at] : undefined;
  return own ? [own] : null;
}

/** The ways of a crossover, the lowest first. */
function waysOf({ spec }: DraftDevice): readonly string[] {
  if (spec.kind !== 'crossover') return [];
  return Object.entries(spec.ways)
    .toSorted(([, a], [, b]) => (a.fromHz ?? 0) - (b.fromHz ?? 0))
    .map(([name]) => name);
}

function isOpen(draft: Draft, { id, facts }: DraftDevice): boolean {
  return Object.entries(facts.terminals).every(
    ([name, { role }]) => !role.startsWith('coil') || draft.isFree(id, name),
  );
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
