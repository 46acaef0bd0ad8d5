import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import type { SpeakerGroup } from '../draft/open-groups.ts';

/** What drives what: speakers, amplifiers and processors by the device that their signal comes from. */
export interface SignalChain {
  readonly source: DraftDevice | null;
  readonly amplifiers: readonly DraftDevice[];
  readonly processors: readonly DraftDevice[];
  /** Groups of speakers that nothing written drives in full. */
  readonly groups: readonly DrivenGroup[];
  /** Of an amplifier: the processor before it; null where the source unit drives it. */
  readonly processorOf: ReadonlyMap<string, DraftDevice>;
}

/** A group of speakers with those of them that no written link drives. */
export interface DrivenGroup {
  readonly id: string;
  readonly given: SpeakerGroup['written'];
  /** All of its speakers. */
  readonly speakers: readonly DraftDevice[];
  /** Those that a rule must drive. */
  readonly needy: readonly DraftDevice[];
  /** The amplifier, or the source unit; null where nobody can say. */
  readonly driver: DraftDevice | null;
}

/** Works out what drives what. Where two could, that is asked. */
export function signalChain(draft: Draft, groups: readonly SpeakerGroup[]): SignalChain {
  const kind = (name: DraftDevice['spec']['kind']) => draft.devices.filter(({ spec }) => spec.kind === name);
  const source = soleSource(draft, kind('source-unit'));
  const amplifiers = kind('amplifier');
  const processors = kind('processor');
  const speakers = groups.flatMap((group): DrivenGroup[] => {
    const own = group.members.flatMap((id) => draft.device(id) ?? []);
    if (own.length === 0 || own.some(({ spec }) => spec.kind !== 'speaker')) return [];
    const needy = own.filter((speaker) => !isWired(draft, speaker));
    const driver = needy.length === 0 ? null : driverOf(draft, group, amplifiers, source);
    return [{ id: group.id, given: group.written, speakers: own, needy, driver }];
  });
  const processorOf = new Map<string, DraftDevice>();
  for (const amplifier of amplifiers) {
    const before = beforeAmplifier(draft, amplifier, processors);
    if (before) processorOf.set(amplifier.id, before);
  }
  return { source, amplifiers, processors, groups: speakers, processorOf };
}

/** True for a speaker of which a coil is linked: what is written of it governs. */
function isWired(draft: Draft, speaker: DraftDevice): boolean {
  return terminalsWith(speaker, 'coil-positive', 'coil-negative').some(
    (name) => !draft.isFree(speaker.id, name),
  );
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

function beforeAmplifier(
  draft: Draft,
  amplifier: DraftDevice,
  processors: readonly DraftDevice[],
): DraftDevice | null {
  const named = amplifier.given?.['driven-by'];
  if (named !== undefined) {
    const before = namedDriver(draft, named, ['processor', 'source-unit']);
    return before?.spec.kind === 'processor' ? before : null;
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
