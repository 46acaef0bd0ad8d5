import { linkEndOf } from '../../model/content/resolved-job.ts';
import { isInLineFilter, type PartOf } from '../../model/kinds/index.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import type { SpeakerGroup } from '../draft/open-groups.ts';
import { postsOf } from './box-posts.ts';

/** What drives what: speakers, amplifiers and processors by the device that their signal comes from. */
export interface SignalChain {
  readonly source: DraftDevice | null;
  readonly amplifiers: readonly DraftDevice[];
  readonly processors: readonly DraftDevice[];
  /** Groups of speakers that nothing written drives in full. */
  readonly groups: readonly DrivenGroup[];
  /** Filters in the leads of speakers, which hang beside the speakers that `beside` names. */
  readonly inLine: readonly InLineGroup[];
  /** Of an amplifier: the processor before it; null where the source unit drives it. */
  readonly processorOf: ReadonlyMap<string, DraftDevice>;
  /** Of an amplifier that plays from the line outputs of another one: that one. */
  readonly feederOf: ReadonlyMap<string, DraftDevice>;
}

/** A group of speakers with those of them that no written link drives. */
export interface DrivenGroup {
  readonly id: string;
  readonly given: SpeakerGroup['written'];
  /** All of its speakers; of a set its passive crossovers, which an amplifier sees in their place. */
  readonly speakers: readonly DraftDevice[];
  /** Of a set: the groups that play behind its crossovers, the lowest first. */
  readonly behind?: readonly SpeakersBehind[];
  /** Those that a rule must drive. */
  readonly needy: readonly DraftDevice[];
  /** The amplifier, or the source unit; null where nobody can say. */
  readonly driver: DraftDevice | null;
}

/** A group of filters in leads, beside the speakers that are driven in the whole band. */
export interface InLineGroup extends Pick<DrivenGroup, 'id' | 'speakers' | 'behind'> {
  readonly beside: readonly DraftDevice[];
}

/** Speakers that a passive crossover drives, as a job writes it by `driven-by:`. */
export interface SpeakersBehind {
  readonly id: string;
  readonly part: PartOf<'speaker'>;
  readonly speakers: readonly DraftDevice[];
}

/** Works out what drives what. Where two could, that is asked. */
export function signalChain(draft: Draft, groups: readonly SpeakerGroup[]): SignalChain {
  const kind = (name: DraftDevice['spec']['kind']) => draft.devices.filter(({ spec }) => spec.kind === name);
  const source = soleSource(draft, kind('source-unit'));
  const amplifiers = kind('amplifier');
  const processors = kind('processor');
  const membersOf = (group: SpeakerGroup) => group.members.flatMap((id) => draft.device(id) ?? []);
  const isAll = (group: SpeakerGroup, wanted: 'speaker' | 'crossover') => {
    const own = membersOf(group);
    return own.length > 0 && own.every(({ spec }) => spec.kind === wanted);
  };
  const sets = groups.filter((group) => isAll(group, 'crossover'));
  const setOf = ({ written }: SpeakerGroup) => sets.find(({ id }) => id === written['driven-by']);
  const behindOf = (group: SpeakerGroup) =>
    groups
      .flatMap((other): SpeakersBehind[] => {
        const [first] = membersOf(other);
        if (setOf(other) !== group || first?.spec.kind !== 'speaker') return [];
        return [{ id: other.id, part: first.spec, speakers: membersOf(other) }];
      })
      .toSorted((a, b) => pitchOf(a.part) - pitchOf(b.part));
  const besideOf = ({ written }: SpeakerGroup) =>
    groups.find((other) => other.id === written['driven-by'] && isAll(other, 'speaker'));
  const inLine = sets.flatMap((group): InLineGroup[] => {
    const other = besideOf(group);
    if (!other) return [];
    return [{ id: group.id, speakers: membersOf(group), behind: behindOf(group), beside: membersOf(other) }];
  });
  const speakers = groups.flatMap((group): DrivenGroup[] => {
    const isSet = sets.includes(group);
    if (isSet ? besideOf(group) : !isAll(group, 'speaker') || setOf(group)) return [];
    const own = membersOf(group);
    const needy = own.filter((speaker) => !isWired(draft, speaker));
    const driver = needy.length === 0 ? null : driverOf(draft, group, amplifiers, source);
    return [
      {
        ...{ id: group.id, given: group.written, speakers: own, needy, driver },
        ...(isSet && { behind: behindOf(group) }),
      },
    ];
  });
  const processorOf = new Map<string, DraftDevice>();
  const feederOf = new Map<string, DraftDevice>();
  for (const amplifier of amplifiers) {
    const before = beforeAmplifier(draft, amplifier, processors);
    if (before) (before.spec.kind === 'amplifier' ? feederOf : processorOf).set(amplifier.id, before);
  }
  return { source, amplifiers, processors, groups: speakers, inLine, processorOf, feederOf };
}

/** Kinds of speakers by how low they play, the lowest first. */
const byPitch: readonly PartOf<'speaker'>['band'][] = [
  'subwoofer',
  'midbass',
  'full-range',
  'coaxial',
  'midrange',
  'tweeter',
];

/** The rank of a speaker by how low its kind plays. */
export function pitchOf({ band }: Pick<PartOf<'speaker'>, 'band'>): number {
  return byPitch.indexOf(band);
}

/** True for a speaker of which a coil is linked, to more than a filter beside it: what is written of it governs. */
function isWired(draft: Draft, speaker: DraftDevice): boolean {
  const posts = postsOf(draft, speaker);
  return (
    (posts !== null && [posts.plus, posts.minus].some((post) => !draft.isFree(posts.box.id, post))) ||
    terminalsWith(speaker, 'coil-positive', 'coil-negative').some((name) =>
      draft.linksAt(speaker.id, name).some((link) => !leadsToFilter(draft, speaker.id, link)),
    )
  );
}

/** True for a link from a speaker on to the input of a filter in the lead of another. */
function leadsToFilter(draft: Draft, speaker: string, link: string): boolean {
  const ends = draft.links[link];
  return [ends?.from, ends?.to]
    .flatMap((end) => (end ? [linkEndOf(end)] : []))
    .some((end) => {
      const device = end.device === speaker ? null : draft.device(end.device);
      return isInLineFilter(device?.spec);
    });
}

/** The source unit of the job, else that of the vehicle. */
function soleSource(draft: Draft, sources: readonly DraftDevice[]): DraftDevice | null {
  const own = sources.filter(({ origin }) => origin === 'job');
  const [first, second] = own.length > 0 ? own : sources;
  if (first && second)
    draft.ask(
      ['devices'],
      `the signal could come from ${first.id} or ${second.id}`,
      'write driven-by: with one of them at the amplifiers or the processor',
    );
  return first ?? null;
}

function driverOf(
  draft: Draft,
  { id, written }: SpeakerGroup,
  amplifiers: readonly DraftDevice[],
  source: DraftDevice | null,
): DraftDevice | null {
  const named = written['driven-by'];
  if (named !== undefined) return namedDriver(draft, named, ['amplifier', 'source-unit']);
  const [only, second] = amplifiers;
  if (only && !second) return only;
  if (!only) return source;
  draft.ask(
    ['devices', id],
    `${id} could be driven by ${amplifiers.map((one) => one.id).join(' or ')}`,
    'write driven-by: with one of them',
  );
  return null;
}

/** The device that `driven-by:` names, if it can drive what names it: the reader tells where it can't. */
function namedDriver(
  draft: Draft,
  named: string,
  kinds: readonly DraftDevice['spec']['kind'][],
): DraftDevice | null {
  const device = draft.device(named);
  return device && kinds.includes(device.spec.kind) ? device : null;
}

/** What is before an amplifier: a processor, or an amplifier by its line outputs; null for the source unit. */
function beforeAmplifier(
  draft: Draft,
  amplifier: DraftDevice,
  processors: readonly DraftDevice[],
): DraftDevice | null {
  const named = amplifier.given?.['driven-by'];
  if (named !== undefined) {
    const before = namedDriver(draft, named, ['processor', 'source-unit', 'amplifier']);
    return before?.spec.kind === 'source-unit' ? null : before;
  }
  const [only, second] = processors;
  if (!second) return only ?? null;
  draft.ask(
    ['devices', amplifier.id],
    `${amplifier.id} could be driven by ${processors.map((one) => one.id).join(' or ')}`,
    'write driven-by: with one of them',
  );
  return null;
}
