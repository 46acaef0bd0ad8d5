import type { BuiltJob } from '../model/content/built.ts';
import type { JobFile, WrittenJob } from '../model/content/job.ts';
import type { Proposal } from '../model/content/proposal.ts';
import { pointer } from '../model/place.ts';
import { holdBuilt } from './built/hold-built.ts';
import type { Around } from './draft/around.ts';
import { Draft } from './draft/draft.ts';
import { standsNowhere } from './draft/draft-device.ts';
import { type OpenedGroups, openGroups, type SpeakerGroup } from './draft/open-groups.ts';
import type { Undecided } from './draft/undecided.ts';
import { shapeBoards } from './laying/board-size.ts';
import { cableRuns } from './laying/cables.ts';
import { fixBoards } from './laying/fixings.ts';
import { joinOnWay } from './laying/joints-on-way.ts';
import { joinJumpers } from './laying/jumper-joints.ts';
import { chooseLeads } from './laying/leads.ts';
import { leaveOpen } from './laying/left-open.ts';
import { layRuns } from './laying/runs.ts';
import { cableSpeakers } from './laying/speaker-cables.ts';
import { bandsOf, speakerPart } from './sound/bands.ts';
import { dealChannels } from './sound/channels.ts';
import { linkCrossovers } from './sound/crossover-links.ts';
import { makeBands } from './sound/filters.ts';
import { useInputs } from './sound/input-use.ts';
import { linkAmplifierInputs } from './sound/inputs.ts';
import { linkLevels } from './sound/level-controls.ts';
import { playPassedOn } from './sound/passed-on.ts';
import { linkProcessors } from './sound/processor-links.ts';
import { signalChain } from './sound/signal-chain.ts';
import { linkSourceSpeakers } from './sound/source-speakers.ts';
import { linkSpeakers } from './sound/speaker-links.ts';
import { linkBatteries } from './supply/battery-link.ts';
import { linkGrounds } from './supply/ground.ts';
import { linkSupply } from './supply/supply.ts';
import { currentA, supplyNeeds } from './supply/supply-needs.ts';
import { linkTurnOn } from './supply/turn-on.ts';
import { tellUnused } from './supply/unused-parts.ts';

/** A job with everything that it left out proposed. */
export interface CompletedJob {
  readonly job: JobFile;
  readonly proposals: readonly Proposal[];
  readonly undecided: readonly Undecided[];
  /** Where what the job does not write itself is told, by JSON Pointer. */
  readonly spots: ReadonlyMap<string, string>;
}

/** Keys of a device by which a job asks for its links. */
const askingKeys = ['driven-by', 'channels', 'plays', 'signal', 'box', 'fed-by', 'ground'] as const;

/**
 * True for a job that asks for what it leaves out: it writes no `links:`, or uses a key that only speaks to the rules. A
 * job that writes its links and none of these is checked as it stands.
 */
export function asksForProposals({ devices, boards, links }: WrittenJob): boolean {
  return (
    links === undefined ||
    Object.values(devices).some(
      (device) => Array.isArray(device.in) || askingKeys.some((key) => device[key] !== undefined),
    ) ||
    Object.values(boards).some((board) => board['fed-by'] !== undefined || board.ground !== undefined)
  );
}

/**
 * Completes a job: each rule looks for a need that nothing written meets, and proposes what meets it.
 *
 *   lists and boxes opened out ─▶ what drives what ─▶ bands ─▶ channels ─▶ inputs, filters ─▶ turn-on
 *   ─▶ supply ─▶ ground ─▶ runs ─▶ cables, leads ─▶ size of boards ─▶ fixings ─▶ what stays open
 *
 * What a released revision before it proposed comes first, as if it were written: it is built. What is written is never
 * changed. What can't be decided is asked, and all else is proposed all the same.
 */
export function completeJob(
  written: WrittenJob,
  around: Around,
  built: BuiltJob | null = null,
): CompletedJob {
  const isAsked = asksForProposals(written);
  const opened = openGroups(written, around, isAsked);
  const draft = new Draft(opened.job, around);
  const fixed = new Set(Object.entries(written.boards).flatMap(([id, { fixings }]) => (fixings ? [id] : [])));
  const held = built ? holdBuilt(draft, written, built, isAsked) : [];
  const nowhere = new Set(draft.own.filter(standsNowhere).map(({ id }) => writtenAt(id, opened)));
  // What is to play in a place that there is not is not wired: half of it would be wired wrong.
  const groups = opened.groups.filter(({ id, members }) => members.length === 1 || !nowhere.has(id));
  if (isAsked) proposeLinks(draft, groups);
  shapeBoards(draft);
  fixBoards(draft, new Set([...fixed, ...held]));
  if (isAsked) leaveOpen(draft);
  const { job, spots } = draft.finish();
  return {
    job,
    proposals: draft.proposals,
    undecided: [
      ...opened.undecided,
      ...draft.undecided.filter((one) => !isAskedOf(nowhere, one, opened)),
    ].map((one) => ({
      ...one,
      ...(built && {
        remedy: `${one.remedy}; or name under anew: what of revision ${built.revision} may change`,
      }),
      path: writtenPath(one.path, opened),
    })),
    spots: allSpots(spots, opened),
  };
}

function proposeLinks(draft: Draft, groups: readonly SpeakerGroup[]): void {
  const whole = signalChain(draft, groups);
  const bands = bandsOf(draft, whole.groups);
  const driven = dealChannels(draft, whole, bands);
  linkSpeakers(draft, driven);
  linkCrossovers(draft, whole);
  linkSourceSpeakers(draft, whole);
  const chain = playPassedOn(draft, useInputs(draft, whole));
  const outputs = linkProcessors(draft, chain);
  linkAmplifierInputs(draft, chain);
  makeBands(draft, chain, bands, outputs);
  const contacts = linkTurnOn(draft, chain);
  const isBass = (id: string) =>
    chain.groups.some((group) => group.id === id && speakerPart(group)?.band === 'subwoofer');
  const bass = driven.filter(({ group }) => isBass(group.id)).flatMap(({ group }) => group.driver?.id ?? []);
  linkLevels(draft, chain, bass);
  const needs = supplyNeeds(draft, driven, contacts);
  linkSupply(draft, needs, (device) => currentA(draft, device, driven));
  linkBatteries(
    draft,
    needs.reduce((sum, need) => sum + need.currentA, 0),
  );
  linkGrounds(draft, (device) => currentA(draft, device, driven));
  tellUnused(draft, needs);
  joinOnWay(draft);
  layRuns(draft);
  cableRuns(draft);
  cableSpeakers(draft, driven);
  joinJumpers(draft, driven);
  chooseLeads(draft);
}

/** The device that one is written at. */
function writtenAt(id: string, opened: OpenedGroups): string {
  return opened.writtenAt.get(id) ?? id;
}

/** True for what is asked of a device that stands nowhere: it may follow from its place. */
function isAskedOf(
  nowhere: ReadonlySet<string>,
  { path: [first, id = ''] }: Undecided,
  opened: OpenedGroups,
): boolean {
  return first === 'devices' && nowhere.has(writtenAt(id, opened));
}

/** The path of something opened out, as it is written: `devices, front-left` is written at `devices, front`. */
function writtenPath(path: readonly string[], opened: OpenedGroups): readonly string[] {
  const [first, id = '', ...rest] = path;
  const at = first === 'devices' ? opened.writtenAt.get(id) : undefined;
  return at === undefined ? path : ['devices', at, ...rest];
}

function allSpots(
  spots: ReadonlyMap<string, string>,
  { writtenAt }: OpenedGroups,
): ReadonlyMap<string, string> {
  const opened = [...writtenAt].map(
    ([id, at]) => [pointer(['devices', id]), pointer(['devices', at])] as const,
  );
  const all = new Map([...spots, ...opened]);
  // What is proposed for one speaker of a group is told where the group is written.
  return new Map([...all].map(([path, spot]) => [path, all.get(spot) ?? spot]));
}
