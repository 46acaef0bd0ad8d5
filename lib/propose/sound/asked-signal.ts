import { listed } from '../../model/printed/listed.ts';
import type { SignalPair } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { passedOnLines } from './passed-on.ts';
import type { DrivenGroup } from './signal-chain.ts';
import {
  formOfInput,
  inputsOf,
  isNameLeftOpen,
  joinableOutputs,
  type SignalForm,
  type SourceOutput,
  sourceOutputs,
} from './source-outputs.ts';
import type { UsedOutput } from './used-outputs.ts';

/** What a job leaves open between a source and a device in one form, by device and terminal or pair. */
interface LeftOpen {
  readonly outputs: readonly string[];
  readonly inputs: readonly string[];
}

/** What is left open of the outputs of a source, of one pair or of all, and of the inputs of a device. */
function leftOpenBetween(
  draft: Draft,
  source: DraftDevice,
  device: DraftDevice,
  form: SignalForm,
  pair?: SignalPair,
): LeftOpen {
  const isOpen = (one: DraftDevice) => (name: string) => isNameLeftOpen(draft, one, name);
  const named = (one: DraftDevice) => (name: string) => `${one.id}.${name}`;
  const outputs = sourceOutputs(draft, source, form)
    .filter(({ carries }) => pair === undefined || carries.startsWith(pair))
    .map(({ name }) => name);
  return {
    outputs: outputs.filter(isOpen(source)).map(named(source)),
    inputs: inputsOf(device, form).filter(isOpen(device)).map(named(device)),
  };
}

/** Asks for what a device plays where the outputs that it could play are left open. True where it was that. */
export function askForOpenOutputs(
  draft: Draft,
  source: DraftDevice,
  device: DraftDevice,
  forms: readonly SignalForm[],
): boolean {
  const open = forms.flatMap((form) =>
    joinableOutputs(draft, source, form).length > 0
      ? []
      : leftOpenBetween(draft, source, device, form).outputs,
  );
  if (open.length === 0) return false;
  draft.ask(
    ['devices', device.id],
    `${device.id} gets nothing of ${source.id}: ${openText(open)}`,
    'take those that it is to play off left-open:, or write the links of its inputs',
  );
  return true;
}

/** Asks for an output that a group would play by an input, or by the processor before it, where it is left open. */
export function askForOpenOutput(
  draft: Draft,
  group: string,
  source: DraftDevice,
  { name, carries }: SourceOutput,
  by: { readonly input: string } | { readonly processor: string },
): void {
  const output = `${source.id}.${name}`;
  draft.ask(
    ['devices', group],
    `${group} would play ${carries} of ${source.id} by ${'input' in by ? by.input : by.processor}, and ${openText([output])}`,
    `take ${output} off left-open:, write signal: with another pair at ${group}, or write ${'input' in by ? `left-open: at ${by.input} too` : `mix: at ${by.processor}`}`,
  );
}

/** Asks for the pair that a group is to play by its `signal:`, where the processor before it does not get it. */
export function askForPairAtProcessor(
  draft: Draft,
  source: DraftDevice,
  processor: DraftDevice,
  { group, pair, form }: { readonly group: string; readonly pair: SignalPair; readonly form: SignalForm },
): void {
  const { outputs, inputs } = leftOpenBetween(draft, source, processor, form, pair);
  const open = [...outputs, ...inputs];
  const own = sourceOutputs(draft, source, form)
    .filter(({ carries }) => carries.startsWith(pair))
    .map(({ name }) => `${source.id}.${name}`);
  const path = ['devices', group];
  if (draft.undecided.some((one) => one.path.join('.') === path.join('.'))) return;
  draft.ask(
    path,
    `${group} is to play the ${pair} pair of ${source.id}, by signal: ${pair}, and ${listed(own)} ${own.length === 1 ? 'reaches' : 'reach'} no input of ${processor.id}${open.length > 0 ? `: ${openText(open)}` : ''}`,
    `${open.length > 0 ? `take ${outputs.length > 0 ? listed(outputs) : `inputs of ${processor.id}`} off left-open:, or write` : 'write'} links: from ${listed(own)} to inputs of ${processor.id}; or write signal: at ${group} with a pair that arrives there`,
  );
}

function openText(names: readonly string[]): string {
  return `${listed(names)} ${names.length === 1 ? 'is' : 'are'} left open`;
}

/** Asks for a device between a source and an input of another form. */
export function askForForm(
  draft: Draft,
  source: DraftDevice,
  device: DraftDevice,
  input: string | null,
): void {
  const takesLine = input === null || formOfInput(device, input) === 'line';
  const path = ['devices', device.id];
  if (draft.undecided.some((one) => one.path.join('.') === path.join('.'))) return;
  const forms = input === null ? (['line', 'speaker'] as const) : [formOfInput(device, input)];
  const taken = forms.filter((form) => inputsOf(device, form).length > 0);
  if (askForOpenOutputs(draft, source, device, taken)) return;
  draft.ask(
    path,
    takesLine
      ? `${source.id} gives speaker outputs and ${device.id} takes line level only`
      : `${source.id} gives line outputs and ${device.id} takes speaker level only`,
    takesLine
      ? `${passedOnLines(draft, device)}add a processor or a converter with speaker-level inputs; where the leaflet of ${device.partId} says that its inputs take speaker level by its own leads, write speaker-level: { to: 12 V } with the voltage of the leaflet at them in that part`
      : 'use an amplifier with line inputs, or write its links',
  );
}

/** Asks for an output that holds one conductor and plays elsewhere already. */
export function askForPair(
  draft: Draft,
  source: DraftDevice,
  group: DrivenGroup,
  output: SourceOutput,
  { amplifier, output: { name: channel } }: UsedOutput,
): void {
  draft.ask(
    ['devices', group.id],
    `${group.id} would play ${output.carries} of ${source.id}, which another input takes already, and ${output.name} holds one conductor`,
    `write signal: with another pair, add a processor${formOfInput(source, output.name) === 'line' ? ', or add a Y-lead to the catalogue' : ''}; where the leaflet of ${amplifier.partId} says that its channel takes other inputs inside, write also-takes: with them (such as IN1..4) at the channel ${channel} in that part`,
  );
}
