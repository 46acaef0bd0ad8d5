import { carriedByName } from '../../model/ports/carried-by-name.ts';
import type { SignalPair } from '../../model/vocabulary.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, pairOf } from '../draft/draft-device.ts';
import { askForForm, askForOpenOutput, askForPairAtProcessor } from './asked-signal.ts';
import { rowOf, speakerPart } from './bands.ts';
import { groupOf, hasPairs, sideOf } from './inputs.ts';
import { namedFor, playedBy } from './named-for.ts';
import type { DrivenGroup, SignalChain } from './signal-chain.ts';
import {
  formOfInput,
  inputsOf,
  isNameFree,
  isNameLeftOpen,
  joinableOutputs,
  lineOutputs,
  type SignalForm,
  sourceOutputs,
} from './source-outputs.ts';
import { type UsedOutput, usedOutputs } from './used-outputs.ts';

/** An output of a processor with what it feeds. */
export interface ProcessorOutput {
  readonly processor: DraftDevice;
  readonly output: string;
  readonly used: UsedOutput;
  readonly group: DrivenGroup;
  /** The side that it plays; null where it plays both. */
  readonly side: 'left' | 'right' | null;
}

/** Links every processor: the source to its inputs, its outputs to the amplifiers that play from it. */
export function linkProcessors(draft: Draft, chain: SignalChain): readonly ProcessorOutput[] {
  return chain.processors.flatMap((processor) => {
    linkSource(draft, chain, processor);
    const outputs = linkOutputs(draft, chain, processor);
    mixInputs(draft, chain, outputs, processor);
    return outputs;
  });
}

/** The pairs of the source into the inputs, front, rear, bass, while inputs last. */
function linkSource(draft: Draft, { source }: SignalChain, processor: DraftDevice): void {
  const forms: readonly SignalForm[] = ['line', 'speaker'];
  const isMet = forms.some((form) =>
    inputsOf(processor, form).some(
      (name) => !isNameFree(draft, processor, name) && isLinked(draft, processor, name),
    ),
  );
  if (isMet || !source) return;
  const form = forms.find(
    (one) => joinableOutputs(draft, source, one).length > 0 && inputsOf(processor, one).length > 0,
  );
  if (!form) {
    askForForm(draft, source, processor, null);
    return;
  }
  const outputs = joinableOutputs(draft, source, form);
  const inputs = inputsOf(processor, form).filter((name) => isNameFree(draft, processor, name));
  const why: Why = {
    rule: 'inputs',
    reason:
      form === 'line'
        ? 'line outputs to line inputs, pair by pair'
        : leavesOpen(draft, source, 'line') && inputsOf(processor, 'line').length > 0
          ? 'the line outputs are left open: speaker outputs to speaker-level inputs'
          : 'one of the two has no line level: speaker outputs to speaker-level inputs',
    cp: true,
  };
  const named = carriedByName(inputs);
  const arriving = outputs.map(({ carries }) => carries);
  const left = [...inputs];
  for (const pair of hasPairs(outputs)) {
    const own = outputs.filter(({ carries }) => carries.startsWith(pair));
    if (own.length > left.length) return;
    for (const { name, carries } of own) {
      const input = namedFor(carries, left, named, arriving);
      if (input === undefined) return;
      left.splice(left.indexOf(input), 1);
      const id = draft.freeName(`in-${carries}`, processor.id);
      draft.addLink(id, { from: `${source.id}.${name}`, to: `${processor.id}.${input}` }, why, processor.id);
      draft.inLead(id, { lead: `in-${pair}`, side: carries.endsWith('right') ? 'right' : 'left' });
    }
  }
}

function isLinked(draft: Draft, device: DraftDevice, name: string): boolean {
  return (pairOf(device, name) ?? [name]).some((terminal) => !draft.isFree(device.id, terminal));
}

/** One output for each input of the amplifiers, as they are written; then a second one where two are summed. */
function linkOutputs(draft: Draft, chain: SignalChain, processor: DraftDevice): readonly ProcessorOutput[] {
  const used = chain.amplifiers
    .filter(({ id }) => chain.processorOf.get(id) === processor)
    .flatMap((amplifier) => usedOutputs(draft, amplifier));
  const needy = used.filter(({ amplifier, output }) => isNameFree(draft, amplifier, output.spec.input));
  const free = lineOutputs(processor).filter((name) => isNameFree(draft, processor, name));
  if (free.length < needy.length) {
    draft.ask(
      ['devices', processor.id],
      `${processor.id} has ${free.length} outputs left, and the channels that play from it are ${needy.length}`,
      'use a processor with more outputs; or write the cable of a Y-lead and the links of two inputs that it joins to one output; or write driven-by: with the source unit at an amplifier',
    );
    return [];
  }
  const summed = needy
    .filter(({ amplifier, output: { spec } }) =>
      spec.summed.some((name) => isNameFree(draft, amplifier, name)),
    )
    .slice(0, free.length - needy.length);
  const why: Why = {
    rule: 'inputs',
    reason: 'the outputs in turn, amplifier by amplifier, channel by channel',
    cp: true,
  };
  const linked: ProcessorOutput[] = [];
  const left = [...free];
  const named = carriedByName(free);
  const reserved = needy.flatMap((one) => playedBy(groupOf(chain, one), sideAt(draft, one, false)) ?? []);
  const link = (one: UsedOutput, to: string, side: 'left' | 'right' | null) => {
    const group = groupOf(chain, one);
    const output = namedFor(playedBy(group, side), left, named, reserved);
    if (output === undefined || !group) return;
    left.splice(left.indexOf(output), 1);
    const isOne = one.speakers.length === 1 && !summed.includes(one);
    const name = isOne ? `sig-${one.speakers[0]}` : `sig-${group.id}${side === null ? '' : `-${side}`}`;
    const id = draft.freeName(name, one.amplifier.id);
    draft.addLink(
      id,
      { from: `${processor.id}.${output}`, to: `${one.amplifier.id}.${to}` },
      why,
      one.amplifier.id,
    );
    draft.inLead(id, { lead: group.id, side });
    linked.push({ processor, output, used: one, group, side });
  };
  for (const one of needy) link(one, one.output.spec.input, sideAt(draft, one, summed.includes(one)));
  for (const one of summed) {
    const second = one.output.spec.summed.find((name) => isNameFree(draft, one.amplifier, name));
    if (second !== undefined) link(one, second, 'right');
  }
  return linked;
}

function sideAt(draft: Draft, { speakers }: UsedOutput, isSummed: boolean): 'left' | 'right' | null {
  if (isSummed) return 'left';
  const sides = new Set(speakers.flatMap((id) => draft.device(id)?.side ?? []));
  const [only] = sides;
  return sides.size === 1 && only && only !== 'middle' ? only : null;
}

/** True where the job leaves an output of a source open. */
function leavesOpen(draft: Draft, source: DraftDevice, form: SignalForm): boolean {
  return sourceOutputs(draft, source, form).some(({ name }) => isNameLeftOpen(draft, source, name));
}

/** What each output plays: the pair of its row, bass from the bass pair, else from the front. */
function mixInputs(
  draft: Draft,
  { source }: SignalChain,
  outputs: readonly ProcessorOutput[],
  processor: DraftDevice,
): void {
  const fed = fedInputs(draft, processor);
  const [first, second] = fed;
  if (!first) return;
  const form = formOfInput(processor, first.input);
  const isOpen = source !== null && leavesOpen(draft, source, form);
  // One input alone is what all of them play, where it is all that the source may give.
  if (!second && !isOpen) return;
  const has = (pair: SignalPair) => fed.some(({ carries }) => carries.startsWith(pair));
  const isMade = (pair: SignalPair) =>
    source !== null && hasPairs(sourceOutputs(draft, source, form)).includes(pair);
  for (const { output, group, side } of outputs) {
    const given = draft.device(processor.id)?.given?.mix ?? {};
    if (given[output]) continue;
    const wanted = wantedPair(group);
    const pair = has(wanted) ? wanted : 'front';
    const isMissed = pair !== wanted && isMade(wanted);
    if (isMissed && source && group.given.signal === wanted) {
      askForPairAtProcessor(draft, source, processor, { group: group.id, pair: wanted, form });
      continue;
    }
    const sides = side === null ? (['left', 'right'] as const) : [sideOf(side)];
    const mix = sides.flatMap((one) => fed.find(({ carries }) => carries === `${pair}-${one}`)?.input ?? []);
    if (mix.length === 0) {
      const open =
        source &&
        sourceOutputs(draft, source, form).find(
          ({ name, carries }) => carries === `${pair}-${side}` && isNameLeftOpen(draft, source, name),
        );
      if (open) askForOpenOutput(draft, group.id, source, open, { processor: processor.id });
      continue;
    }
    const plays = `${group.id} plays the ${pair} pair`;
    const reason = isMissed
      ? `${plays}: the ${wanted} pair of the source reaches no input of ${processor.id}`
      : plays;
    draft.addAtOutput(processor, output, { mix }, { rule: 'inputs', reason, cp: true });
  }
}

/** The pair that a group is to play: as written, else that of its row, bass for a subwoofer. */
function wantedPair(group: DrivenGroup): SignalPair {
  const isBass = speakerPart(group)?.band === 'subwoofer';
  return group.given.signal ?? (isBass ? 'bass' : (rowOf(group) ?? 'front'));
}

/** The inputs of a processor that a source is linked to, with what arrives there. */
function fedInputs(draft: Draft, processor: DraftDevice) {
  const sources = draft.devices.filter(({ spec }) => spec.kind === 'source-unit');
  return (['line', 'speaker'] as const).flatMap((form) =>
    inputsOf(processor, form).flatMap((input) => {
      const [terminal = input] = pairOf(processor, input) ?? [input];
      const ids = draft.linksAt(processor.id, terminal);
      return sources.flatMap((source) =>
        sourceOutputs(draft, source, form).flatMap(({ name, carries }) => {
          const [own = name] = pairOf(source, name) ?? [name];
          return draft.linksAt(source.id, own).some((id) => ids.includes(id)) ? [{ input, carries }] : [];
        }),
      );
    }),
  );
}
