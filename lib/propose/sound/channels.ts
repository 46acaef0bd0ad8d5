import { filteredNames, lowPassAlways, offersFilter } from '../../audio/filter/filter-offers.ts';
import { isAtLeast } from '../../audio/load/amplifier-load.ts';
import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { carriedByName } from '../../model/ports/carried-by-name.ts';
import { watts } from '../../model/printed/told.ts';
import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { type Band, speakerPart } from './bands.ts';
import { bassOutputs, type DrivenOutputs } from './bass-channels.ts';
import { joinsFor, type WiredOutput, wiredOutput } from './coil-wiring.ts';
import { joinText, wiredBest } from './driven-way.ts';
import { sideOf } from './inputs.ts';
import { namedFor, playedBy } from './named-for.ts';
import { type AmplifierOutput, freeChannels, outputsOf, strengthW } from './outputs.ts';
import type { DrivenGroup, InLineGroup, SignalChain } from './signal-chain.ts';
import { orBySource } from './source-speakers.ts';
import { takenText, toldOutputs } from './written-outputs.ts';

/** What the channels of one amplifier are dealt from. */
interface Deal {
  readonly draft: Draft;
  readonly amplifier: DraftDevice;
  readonly groups: readonly DrivenGroup[];
  readonly inLine: readonly InLineGroup[];
  readonly bands: ReadonlyMap<string, Band>;
  /** The processor before it, which makes the bands as far as it can. */
  readonly processor: DraftDevice | null;
}

/** The outputs that drive each group, amplifier by amplifier, in the order of the file. */
export function dealChannels(
  draft: Draft,
  chain: SignalChain,
  bands: ReadonlyMap<string, Band>,
): readonly DrivenOutputs[] {
  return chain.amplifiers.flatMap((amplifier) =>
    dealAmplifier({
      draft,
      amplifier,
      groups: chain.groups.filter(({ driver, needy }) => driver?.id === amplifier.id && needy.length > 0),
      inLine: chain.inLine,
      bands,
      processor: chain.processorOf.get(amplifier.id) ?? null,
    }),
  );
}

function dealAmplifier(deal: Deal): readonly DrivenOutputs[] {
  const { draft, amplifier } = deal;
  const { dealt: told, left: groups } = toldOutputs(draft, amplifier, deal.groups, deal.inLine);
  const named = groups.filter(({ given }) => given.channels);
  const others = groups.filter(({ given }) => !given.channels);
  const dealt = [...told, ...named.flatMap((group) => namedOutputs(draft, amplifier, group) ?? [])];
  const taken = () => dealt.flatMap(({ outputs }) => outputs.flatMap(({ output }) => output.channels));
  const free = () => freeChannels(draft, amplifier).filter((name) => !taken().includes(name));
  const isBass = (group: DrivenGroup) => speakerPart(group)?.band === 'subwoofer';
  const tops = others.filter((group) => !isBass(group));
  for (const group of others.filter(isBass)) {
    const bass = bassOutputs(draft, {
      amplifier,
      group,
      free: free(),
      reserved: tops.reduce((sum, { needy }) => sum + needy.length, 0),
      canFilter: (channels) => canMake(deal, group, channels),
    });
    if (bass) dealt.push(bass);
  }
  return [...dealt, ...topOutputs(deal, tops, free())];
}

/**
 * True where the band of a group can be made on these channels: by the processor, or by the amplifier itself. Where none
 * of its channels can, none is better than another.
 */
function canMake(
  { amplifier, processor, bands }: Deal,
  group: DrivenGroup,
  channels: readonly string[],
): boolean {
  if (bands.get(group.id)?.toHz === undefined) return true;
  const isMadeBefore =
    processor !== null &&
    filteredNames(processor).some((name) => offersFilter(processor, [name], 'low-pass'));
  const canHere = (names: readonly string[]) => offersFilter(amplifier, names, 'low-pass');
  return isMadeBefore || canHere(channels) || !filteredNames(amplifier).some((name) => canHere([name]));
}

/** The outputs that `channels:` names; fewer of them than speakers: those of a side lie in parallel. */
function namedOutputs(draft: Draft, amplifier: DraftDevice, group: DrivenGroup): DrivenOutputs | null {
  const names = group.given.channels ?? [];
  const known = outputsOf(amplifier);
  const outputs = names.flatMap((name) => known.find((one) => one.name === name) ?? []);
  const path = ['devices', group.id, 'channels'];
  if (outputs.length < names.length) {
    draft.ask(
      path,
      `${amplifier.id} has no channel ${names.filter((name) => !known.some((one) => one.name === name)).join(', ')}`,
      `its outputs are ${known.map(({ name }) => name).join(', ')}`,
    );
    return null;
  }
  const shared = shareOut(outputs, group.needy);
  const wired = shared.flatMap(({ output, speakers }) => wiredBest(amplifier, output, speakers) ?? []);
  if (wired.length === shared.length)
    return {
      group,
      outputs: wired.flatMap((one) => one.outputs),
      reason: `as channels: says${joinText(wired[0])}`,
    };
  draft.ask(
    path,
    `${group.needy.map(({ id }) => id).join(', ')} can't be driven by ${names.join(', ')} of ${amplifier.id}: the load is under its least`,
    'name more channels, or leave channels: out',
  );
  return null;
}

/** Speakers over outputs in the order of both: with fewer outputs than speakers those of one side come together. */
function shareOut(outputs: readonly AmplifierOutput[], speakers: readonly DraftDevice[]) {
  const each = Math.ceil(speakers.length / Math.max(1, outputs.length));
  return outputs
    .map((output, at) => ({ output, speakers: speakers.slice(at * each, (at + 1) * each) }))
    .filter((one) => one.speakers.length > 0);
}

/** One channel a speaker, the left one first; what remains bridges a group where its speakers take it. */
function topOutputs(deal: Deal, groups: readonly DrivenGroup[], free: readonly string[]): DrivenOutputs[] {
  const { draft, amplifier } = deal;
  const usable = free.filter((name) => !lowPassAlways(amplifier, name));
  const asked = groups.reduce((sum, { needy }) => sum + needy.length, 0);
  if (asked > usable.length) {
    const names = groups.map(({ id }) => id);
    const listed = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names.join('');
    draft.ask(
      ['devices', groups.at(-1)?.id ?? amplifier.id],
      `${amplifier.id} has ${usable.length} channels${usable.length < outputsOf(amplifier).filter(({ channels }) => channels.length === 1).length ? ' left' : ''}${takenText(draft, amplifier)}, and ${listed} are ${asked} speakers`,
      `${crossoverLine(deal, groups)}drive a group by another amplifier, or write channels: to put two on one${orBySource(draft, groups)}`,
    );
    return [];
  }
  const bridged: DrivenGroup[] = [];
  for (const group of groups)
    if (mayBridge(amplifier, group) && dealOut(deal, groups, [...bridged, group], usable))
      bridged.push(group);
  return [...(dealOut(deal, groups, bridged, usable) ?? [])];
}

/**
 * The line that puts speakers behind a passive crossover, where one stands in the job or lies in the catalogue: it takes
 * one channel for all that play behind it. Empty where no speaker of a part of a band is among them.
 */
function crossoverLine({ draft }: Deal, groups: readonly DrivenGroup[]): string {
  const ways = groups.filter((group) => wayBands.includes(speakerPart(group)?.band ?? 'subwoofer'));
  const names = ways.map(({ id }) => id);
  if (names.length < 2) return '';
  const set = groups.find(({ behind }) => behind !== undefined);
  const line = (id: string) => `write driven-by: ${id} at ${names.join(' and ')}`;
  if (set) return `${line(set.id)}: the passive crossover parts them from one channel; or `;
  const [part] = partsOfKind(draft.around.parts, 'crossover')[0] ?? [];
  if (part === undefined) return '';
  return `where they came with a passive crossover, write it as a device, xover: { part: ${part}, in: [the places of ${names[0]}] }, and ${line('xover')}; or `;
}

/** Kinds of speakers that a passive crossover parts a channel between. */
const wayBands: readonly PartOf<'speaker'>['band'][] = ['midbass', 'midrange', 'tweeter'];

/** True where every speaker of a group takes what a bridge gives, and the bridge its load. */
function mayBridge(amplifier: DraftDevice, { needy }: DrivenGroup): boolean {
  const bridge = outputsOf(amplifier).find(({ channels }) => channels.length > 1);
  return (
    bridge !== undefined &&
    needy.every((speaker) => {
      const [wired] = wiredBest(amplifier, bridge, [speaker])?.outputs ?? [];
      if (!wired || wired.powerW === null) return false;
      return isAtLeast(wired.loadOhm, bridge.spec.minimum) && wired.powerW <= wired.takenW;
    })
  );
}

/** Deals outputs to groups in turn; null where they do not suffice. */
function dealOut(
  { amplifier, bands }: Deal,
  groups: readonly DrivenGroup[],
  bridged: readonly DrivenGroup[],
  usable: readonly string[],
): readonly DrivenOutputs[] | null {
  const taken = new Set<string>();
  const dealt: DrivenOutputs[] = [];
  const played = groups.flatMap((group) =>
    group.needy.flatMap((speaker) => playedBy(group, sideOf(speaker.side)) ?? []),
  );
  const named = carriedByName(usable);
  const isAlike = areAlike(amplifier, usable);
  const told = (isNamed: boolean) => (groups.length > 1 ? orderText(isNamed, isAlike) : '');
  for (const group of isAlike ? groups : lowestFirst(groups, bands)) {
    const isBridged = bridged.includes(group);
    const outputs: WiredOutput[] = [];
    let joined: string | undefined;
    let isNamed = true;
    for (const speaker of group.needy) {
      const carries = playedBy(group, sideOf(speaker.side));
      const left = (isAlike ? outputsOf(amplifier) : strongestFirst(amplifier)).filter(
        ({ channels }) =>
          channels.length > 1 === isBridged &&
          channels.every((name) => usable.includes(name) && !taken.has(name)),
      );
      const name = namedFor(
        carries,
        left.map((one) => one.name),
        named,
        played,
      );
      const output = left.find((one) => one.name === name);
      isNamed &&= carries !== null && name !== undefined && named.get(name) === carries;
      const way = output && wiredBest(amplifier, output, [speaker]);
      const [wired] = way?.outputs ?? firstJoin(output, speaker);
      if (!wired) return null;
      for (const name of wired.output.channels) taken.add(name);
      outputs.push(wired);
      joined ??= joinText(way);
    }
    dealt.push({ group, outputs, reason: `${reasonOf(outputs, isBridged)}${told(isNamed)}${joined ?? ''}` });
  }
  return groups.flatMap((group) => dealt.find((one) => one.group === group) ?? []);
}

/** A speaker that the output may not drive, however joined: it is linked all the same, and the load is told. */
function firstJoin(output: AmplifierOutput | undefined, speaker: DraftDevice): readonly WiredOutput[] {
  const [join] = joinsFor([speaker]);
  const wired = output && join && wiredOutput(output, [speaker], join);
  return wired ? [wired] : [];
}

/** Where channels are of unlike power: the lowest-playing group first, which takes the strongest. */
function lowestFirst(
  groups: readonly DrivenGroup[],
  bands: ReadonlyMap<string, Band>,
): readonly DrivenGroup[] {
  const fromHz = ({ id }: DrivenGroup) => bands.get(id)?.fromHz ?? 0;
  return groups.toSorted((a, b) => fromHz(a) - fromHz(b));
}

/** True where the channels that are left to deal give the same power: what is dealt already tells nothing of them. */
function areAlike(amplifier: DraftDevice, usable: readonly string[]): boolean {
  const single = outputsOf(amplifier).filter(
    ({ name, channels }) => channels.length === 1 && usable.includes(name),
  );
  return new Set(single.map(strengthW)).size < 2;
}

function strongestFirst(amplifier: DraftDevice): readonly AmplifierOutput[] {
  return outputsOf(amplifier).toSorted((a, b) => strengthW(b) - strengthW(a));
}

/** Why a group has these channels and no other has, and how the job says otherwise. */
function orderText(isNamed: boolean, isAlike: boolean): string {
  if (isNamed) return ', which is named for what it plays';
  const order = isAlike ? 'groups in the order of the job' : 'the strongest to the group that plays lowest';
  return `; ${order}: channels: at a group says otherwise`;
}

function reasonOf(outputs: readonly WiredOutput[], isBridged: boolean): string {
  const [first] = outputs;
  if (!isBridged || !first) return 'one channel a speaker, the left one on the lower number';
  return `channels remain: bridged they give ${watts(first.powerW ?? 0)}, which the speaker takes`;
}
