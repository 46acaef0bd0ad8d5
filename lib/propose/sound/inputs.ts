import { listed } from '../../model/printed/listed.ts';
import type { Carried, SignalPair, VehicleSide } from '../../model/vocabulary.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, pairOf, terminalAt } from '../draft/draft-device.ts';
import { yLeadsAt } from '../laying/leads.ts';
import { askForForm, askForOpenOutput, askForPair } from './asked-signal.ts';
import { rowOf, speakerPart } from './bands.ts';

import type { DrivenGroup, SignalChain } from './signal-chain.ts';
import {
  formOfInput,
  isNameFree,
  joinableOutputs,
  type SignalForm,
  type SourceOutput,
  sourceOutputs,
} from './source-outputs.ts';
import { type UsedOutput, usedOutputs } from './used-outputs.ts';

/** The group that the speakers of an output are of. */
export function groupOf(chain: SignalChain, { speakers }: UsedOutput): DrivenGroup | null {
  return chain.groups.find((group) => group.speakers.some(({ id }) => speakers.includes(id))) ?? null;
}

export const sideOf = (side: VehicleSide): 'left' | 'right' => (side === 'right' ? 'right' : 'left');

/** Links the inputs of every amplifier that the source unit drives itself, and of those that others pass a signal on to. */
export function linkAmplifierInputs(draft: Draft, chain: SignalChain): void {
  const { source, feederOf } = chain;
  const own = chain.amplifiers.filter(({ id }) => !chain.processorOf.has(id) && !feederOf.has(id));
  if (source) linkInputsFrom(draft, chain, source, own);
  for (const feeder of new Set(feederOf.values()))
    linkInputsFrom(
      draft,
      chain,
      feeder,
      chain.amplifiers.filter(({ id }) => feederOf.get(id) === feeder),
    );
}

function linkInputsFrom(
  draft: Draft,
  chain: SignalChain,
  source: DraftDevice,
  amplifiers: readonly DraftDevice[],
): void {
  const used = amplifiers.flatMap((amplifier) => usedOutputs(draft, amplifier));
  const needy = used.filter(({ amplifier, output }) => isNameFree(draft, amplifier, output.spec.input));
  const pairs = pairsFor(draft, chain, source, needy);
  for (const one of needy) {
    const group = groupOf(chain, one);
    const pair = group && pairs.get(group.id);
    if (group && pair) linkInputs(draft, source, one, group, passedWhy(draft, source, pair));
  }
}

/** From an amplifier it is not what the source has that decides: the reason names what is passed on. */
function passedWhy(draft: Draft, source: DraftDevice, { pair, why }: PlayedPair): PlayedPair {
  if (source.spec.kind !== 'amplifier') return { pair, why };
  const outputs = joinableOutputs(draft, source, 'line').map(({ name }) => name);
  const reason = `${source.id} passes its signal on by ${listed(outputs)}`;
  return { pair, why: { rule: 'inputs', reason, cp: true } };
}

/** The pair of the source that each group plays, and why. */
export interface PlayedPair {
  readonly pair: SignalPair;
  readonly why: Why;
}

function pairsFor(
  draft: Draft,
  chain: SignalChain,
  source: DraftDevice,
  used: readonly UsedOutput[],
): ReadonlyMap<string, PlayedPair> {
  const pairs = new Map<string, PlayedPair>();
  const forms = new Map<string, SignalForm>();
  for (const one of used) {
    const group = groupOf(chain, one);
    if (group && !forms.has(group.id)) forms.set(group.id, formOfInput(one.amplifier, one.output.spec.input));
  }
  const isBass = (group: DrivenGroup) => speakerPart(group)?.band === 'subwoofer';
  const pairsOf = ({ id }: DrivenGroup) => {
    const form = forms.get(id) ?? 'line';
    const has = hasPairs(joinableOutputs(draft, source, form));
    return { has, made: hasPairs(sourceOutputs(draft, source, form)) };
  };
  const groups = chain.groups.filter(({ id }) => forms.has(id));
  for (const group of groups.filter((one) => !isBass(one))) {
    const pair = pairOfTop(draft, group, pairsOf(group));
    if (pair) pairs.set(group.id, pair);
  }
  const taken = [...pairs.values()].map(({ pair }) => pair);
  for (const group of groups.filter(isBass)) {
    const pair = pairOfBass(group, pairsOf(group), taken);
    if (pair) pairs.set(group.id, pair);
  }
  return pairs;
}

const pairNames: readonly SignalPair[] = ['front', 'rear', 'bass'];

/** The pairs that a source gives. */
export function hasPairs(outputs: readonly SourceOutput[]): readonly SignalPair[] {
  return pairNames.filter((pair) => outputs.some(({ carries }) => carries.startsWith(pair)));
}

/** The pairs of a source that may be joined, and those that it has with what is left open. */
export interface SourcePairs {
  readonly has: readonly SignalPair[];
  readonly made: readonly SignalPair[];
}

const noPair = (pair: SignalPair, { made }: SourcePairs): string =>
  `the source has no ${pair} pair${made.includes(pair) ? ' but one that is left open' : ''}`;

/** The pair that a group of the front or the rear plays; asks where nothing tells. */
export function pairOfTop(draft: Draft, group: DrivenGroup, pairs: SourcePairs): PlayedPair | null {
  const { has } = pairs;
  const told = group.given.signal ?? rowOf(group);
  const [only, second] = has;
  if (told !== null && has.includes(told))
    return { pair: told, why: { rule: 'inputs', reason: `${group.id} plays in the ${told} row`, cp: true } };
  if (only && (!second || told !== null)) {
    const isOpen = told !== null && pairs.made.includes(told);
    const reason =
      told !== null && (second || isOpen) ? noPair(told, pairs) : 'the only pair that the source has';
    return { pair: only, why: { rule: 'inputs', reason, cp: true } };
  }
  if (!only) return { pair: 'front', why: { rule: 'inputs', reason: '' } };
  askForRow(draft, group);
  return null;
}

/** Asks which row of seats a group plays to: at the places where it is heard, by the lines to write. */
function askForRow(draft: Draft, group: DrivenGroup): void {
  const { id, behind, speakers } = group;
  const path = ['devices', id];
  if (behind?.length === 0) {
    draft.ask(
      path,
      `${id}: nothing plays behind it, and so nothing tells which pair of the source it takes`,
      `write driven-by: ${id} at its woofers and its tweeters`,
    );
    return;
  }
  const { vehicle } = draft.around;
  const heard = behind ? behind.flatMap((one) => one.speakers) : speakers;
  const places = [...new Set(heard.flatMap(({ given }) => given?.in ?? []))];
  const lines = places.map((place) => `row: front at ${place}`).join(', ');
  draft.ask(
    path,
    `${id}: its places have no row, and there is no processor`,
    places.length === 0
      ? `write signal: front at ${id}, or signal: rear`
      : `write ${lines}, or row: rear, under places: in content/vehicles/${vehicle.id}.yaml; or signal: front at ${id}, or signal: rear`,
  );
}

function pairOfBass(group: DrivenGroup, pairs: SourcePairs, taken: readonly SignalPair[]): PlayedPair | null {
  const { has } = pairs;
  const { signal } = group.given;
  if (signal !== undefined)
    return { pair: signal, why: { rule: 'inputs', reason: `signal: ${signal}`, cp: true } };
  if (has.includes('bass'))
    return { pair: 'bass', why: { rule: 'inputs', reason: 'the bass pair of the source', cp: true } };
  const spare = (['rear', 'front'] as const).find((pair) => has.includes(pair) && !taken.includes(pair));
  const pair = spare ?? 'front';
  if (!has.includes(pair)) return { pair, why: { rule: 'inputs', reason: '' } };
  const reason = spare
    ? `${noPair('bass', pairs)}, and nothing plays its ${pair} pair: the fader moves the bass`
    : `${noPair('bass', pairs)}: bass is made from its ${pair} pair`;
  const why: Why = { rule: 'inputs', reason, cp: true };
  if (spare === 'rear') return { pair, why: { ...why, doubt: 'fader-moves-bass' } };
  return { pair, why: !spare && has.length > 1 ? { ...why, doubt: 'bass-pair-chosen' } : why };
}

function linkInputs(
  draft: Draft,
  source: DraftDevice,
  used: UsedOutput,
  group: DrivenGroup,
  { pair, why }: PlayedPair,
): void {
  const { amplifier, output, speakers } = used;
  const { input, summed } = output.spec;
  const form = formOfInput(amplifier, input);
  const outputs = joinableOutputs(draft, source, form);
  if (outputs.length === 0) {
    askForForm(draft, source, amplifier, input);
    return;
  }
  const isBass = speakerPart(group)?.band === 'subwoofer';
  const [second] = summed;
  const own = draft.device(speakers[0] ?? '')?.side ?? 'middle';
  const asked: readonly (readonly [string, Carried])[] =
    isBass && second !== undefined
      ? [
          [input, `${pair}-left`],
          [second, `${pair}-right`],
        ]
      : [[input, `${pair}-${sideOf(own)}`]];
  for (const [name, carries] of asked) {
    const from = outputs.find((one) => one.carries === carries);
    if (!isNameFree(draft, amplifier, name)) continue;
    if (!from) {
      const open = sourceOutputs(draft, source, form).find((one) => one.carries === carries);
      if (open) askForOpenOutput(draft, group.id, source, open, { input: `${amplifier.id}.${name}` });
      continue;
    }
    const trunk = mayJoin(draft, source, from.name);
    if (!mayShare(draft, source, from.name) && trunk === null && !mayPart(draft, source, from.name)) {
      askForPair(draft, source, group, from, used);
      continue;
    }
    const side = carries.slice(pair.length + 1);
    const id = draft.freeName(
      isBass && asked.length < 2 ? `in-${group.id}` : `in-${group.id}-${side}`,
      amplifier.id,
    );
    draft.addLink(
      id,
      {
        from: `${source.id}.${from.name}`,
        to: `${amplifier.id}.${name}`,
        ...(trunk !== null && { joint: { with: trunk } }),
      },
      trunk === null ? why : joinedWhy(why, `${source.id}.${from.name}`, trunk),
      amplifier.id,
    );
    draft.inLead(id, { lead: `in-${group.id}`, side: sideOf(side === 'right' ? 'right' : 'left') });
  }
}

/** True where an output takes one more conductor. */
function mayShare(draft: Draft, source: DraftDevice, name: string): boolean {
  return (pairOf(source, name) ?? [name]).every(
    (terminal) => draft.linksAt(source.id, terminal).length < (terminalAt(source, terminal)?.conductors ?? 1),
  );
}

/**
 * The link to whose wire one input more is joined before a speaker output that is full, by a splice of the catalogue;
 * null where it may share the output. An input for speaker level loads the output next to nothing.
 */
function mayJoin(draft: Draft, source: DraftDevice, name: string): string | null {
  if (mayShare(draft, source, name) || !pairOf(source, name)) return null;
  const [first] = pairOf(source, name)?.flatMap((terminal) => draft.linksAt(source.id, terminal)) ?? [];
  const splices = Object.values(draft.around.parts).some(
    (part) => part.kind === 'terminal' && (part.form === 'solder-sleeve' || part.form === 'butt-splice'),
  );
  if (first === undefined || !splices || draft.links[first]?.from !== `${source.id}.${name}`) return null;
  return draft.links[first]?.joint?.with ?? first;
}

function joinedWhy(why: Why, output: string, trunk: string): Why {
  return {
    ...why,
    reason: `${why.reason}; ${output} holds one conductor, so it is joined to ${trunk} before it, which an input of high resistance hardly loads`,
  };
}

/** True where a Y-lead of the catalogue feeds one input more from an output: all that is at it is proposed, and lies in none yet. */
function mayPart(draft: Draft, source: DraftDevice, name: string): boolean {
  const links = draft.linksAt(source.id, name);
  return (
    links.every((id) => draft.isProposed('links', id) && draft.links[id]?.cable === undefined) &&
    yLeadsAt(draft, `${source.id}.${name}`).some(({ conductors }) => conductors.length > links.length)
  );
}
