import { mergeOutputFacts } from '../../model/content/output-facts.ts';
import { carriedBy } from '../../model/ports/carried-by-name.ts';
import type { Carried } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, pairOf, terminalsWith } from '../draft/draft-device.ts';

/** How a signal goes from one device to another: at line level, or at the level of speakers. */
export type SignalForm = 'line' | 'speaker';

/** An output of a source, by its terminal or pair, with what it carries. */
export interface SourceOutput {
  readonly name: string;
  readonly carries: Carried;
}

/** The outputs of a source in one form: what each carries as its part or the vehicle says, else by its name, else by its number. */
export function sourceOutputs(draft: Draft, source: DraftDevice, form: SignalForm): readonly SourceOutput[] {
  const fitted = source.origin === 'vehicle' ? draft.around.vehicle.fitted[source.id]?.outputs : undefined;
  const made = source.spec.kind === 'source-unit' ? source.spec.outputs : undefined;
  const names = namesOf(source, form, 'out');
  const carried = carriedBy(names, (name) => mergeOutputFacts(made?.[name], fitted?.[name]).carries);
  return names.flatMap((name): SourceOutput[] => {
    const carries = carried.get(name);
    return carries === undefined ? [] : [{ name, carries }];
  });
}

/** The outputs of a source in one form that a rule may join something to: what the job leaves open stays open. */
export function joinableOutputs(
  draft: Draft,
  source: DraftDevice,
  form: SignalForm,
): readonly SourceOutput[] {
  return sourceOutputs(draft, source, form).filter(({ name }) => !isNameLeftOpen(draft, source, name));
}

/** The inputs of a device in one form, by terminal or pair, in the order of its part. */
export function inputsOf(device: DraftDevice, form: SignalForm): readonly string[] {
  return namesOf(device, form, 'in');
}

/** The outputs of a processor, in the order of its part. */
export function lineOutputs(device: DraftDevice): readonly string[] {
  return namesOf(device, 'line', 'out');
}

/** The form of an input by its name: a terminal takes line level, a pair what drives speakers. */
export function formOfInput(device: DraftDevice, name: string): SignalForm {
  return pairOf(device, name) ? 'speaker' : 'line';
}

/** True where an input or an output is written as left open, or one terminal of its pair. */
export function isNameLeftOpen(draft: Draft, device: DraftDevice, name: string): boolean {
  return (pairOf(device, name) ?? [name]).some((terminal) => draft.isLeftOpen(device.id, terminal));
}

/** True where nothing is linked to an input or an output, and it is not written as left open. */
export function isNameFree(draft: Draft, device: DraftDevice, name: string): boolean {
  return (pairOf(device, name) ?? [name]).every(
    (terminal) => draft.isFree(device.id, terminal) && !draft.isLeftOpen(device.id, terminal),
  );
}

function namesOf(device: DraftDevice, form: SignalForm, way: 'in' | 'out'): readonly string[] {
  if (form === 'line') return terminalsWith(device, `signal-${way}`);
  return terminalsWith(device, `speaker-${way}-positive`).flatMap((name) => {
    const stem = name.replace(/\+$/, '');
    return pairOf(device, stem) ? [stem] : [];
  });
}
