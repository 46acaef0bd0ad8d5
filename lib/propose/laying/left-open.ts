import { linkEndOf } from '../../model/content/resolved-job.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { isPortPattern, matchesPattern } from '../../model/ports/port-pattern.ts';
import type { Carried, TerminalRole } from '../../model/vocabulary.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, pairOf, terminalsWith } from '../draft/draft-device.ts';
import { outputsOf } from '../sound/outputs.ts';
import { formOfInput, inputsOf, type SignalForm, sourceOutputs } from '../sound/source-outputs.ts';
import { usedOutputs } from '../sound/used-outputs.ts';

/**
 * Leaves open what may be: spare ports, inputs of the form that is not used, the inner ends of bridges, outputs that
 * drive nothing, of an amplifier also those that pass its line inputs on. Supply, ground, turn-on and what the vehicle came with are never left open
 * here: that a device turns itself on is told with the turn-on.
 */
export function leaveOpen(draft: Draft): void {
  for (const device of draft.own) {
    openPorts(draft, device);
    for (const name of Object.keys(device.facts.terminals)) {
      if (!isLoose(draft, device, name)) continue;
      const why = reasonFor(draft, device, name);
      if (why) draft.leaveOpen(device.id, name, why);
    }
  }
  for (const source of draft.devices.filter(({ spec }) => spec.kind === 'source-unit'))
    openSource(draft, source);
}

function isLoose(draft: Draft, { id, leftOpen }: DraftDevice, name: string): boolean {
  return draft.isFree(id, name) && !draft.isLeftOpen(id, name) && !leftOpen.includes(name);
}

/** Ports that links name with others of their like: what the links leave of them is spare. */
function openPorts(draft: Draft, device: DraftDevice): void {
  const patterns = new Set(
    Object.values(draft.links)
      .flatMap(({ from, to }) => [linkEndOf(from), linkEndOf(to)])
      .filter((end) => end.device === device.id && isPortPattern(end.terminal))
      .map((end) => end.terminal),
  );
  for (const pattern of patterns) {
    const ports = Object.keys(device.facts.terminals).filter((name) => matchesPattern(pattern, name));
    if (ports.some((name) => isLoose(draft, device, name)))
      draft.leaveOpen(device.id, pattern, {
        rule: 'left-open',
        reason: 'spare: what the links leave of these',
      });
  }
}

const open = (reason: string, doubt?: Why['doubt']): Why => ({
  rule: 'left-open',
  reason,
  ...(doubt && { doubt }),
});

/** Why a terminal of a device of the job may stay open; null where it may not. */
function reasonFor(draft: Draft, device: DraftDevice, name: string): Why | null {
  const role = device.facts.terminals[name]?.role;
  const { kind } = device.spec;
  if (kind === 'distribution') {
    const isPort: readonly (TerminalRole | undefined)[] = ['feed-out', 'ground-bar'];
    return isPort.includes(role) ? open(role === 'feed-out' ? 'spare way' : 'spare port') : null;
  }
  if (role === 'control-line' && kind !== 'level-control') return open(levelReason(draft));
  if (role === 'turn-on-out') return open('nothing is turned on by it');
  if (device.spec.kind === 'charger' && role === 'turn-on-in')
    return device.spec['starts-by'] === 'charging-voltage'
      ? open('it starts by the charging voltage that it sees itself')
      : null;
  if (kind === 'amplifier')
    return role === 'signal-out'
      ? open('no other device takes what it passes on')
      : ofAmplifier(draft, device, name);
  return kind === 'processor' ? ofProcessor(draft, device, name) : null;
}

function levelReason(draft: Draft): string {
  const hasControl = draft.own.some(({ spec }) => spec.kind === 'level-control');
  return hasControl ? 'the level control works elsewhere' : 'no level control on this job';
}

function ofAmplifier(draft: Draft, device: DraftDevice, name: string): Why | null {
  const used = usedOutputs(draft, device);
  const bridged = used
    .filter(({ output }) => output.channels.length > 1)
    .flatMap(({ output }) => output.channels);
  const single = outputsOf(device).filter(({ channels }) => channels.length === 1);
  const own = single.find(({ spec }) => [spec.positive, spec.negative].includes(name));
  if (own)
    return bridged.includes(own.name)
      ? open('bridged: the coil hangs between the outer two')
      : open('this channel drives nothing', 'plays-nothing');
  const input = single.find(
    ({ spec }) => isOf(device, name, spec.input) || spec.summed.some((one) => isOf(device, name, one)),
  );
  if (isOwnOfSummed(draft, device, name)) return open('its channel takes the inputs of the others inside');
  if (!input) return isInput(device, name) ? open('inputs of the other form are used') : null;
  if (bridged.includes(input.name)) return open('bridged: the other input of the pair drives it');
  const isUsed = used.some(({ output }) => output.name === input.name);
  if (!isUsed) return open('its channel drives nothing');
  return input.spec.summed.some((one) => isOf(device, name, one))
    ? open('the other input alone drives it')
    : null;
}

/** True for the own input of a channel that takes its signal inside. */
function isOwnOfSummed(draft: Draft, { given, partId }: DraftDevice, name: string): boolean {
  const part = draft.around.parts[partId];
  return (
    part?.kind === 'amplifier' &&
    (given?.['summed-inside'] ?? []).some((channel) => part.channels[channel]?.input === stemName(name))
  );
}

const isOf = (device: DraftDevice, terminal: string, name: string) =>
  terminal === name || (pairOf(device, name)?.includes(terminal) ?? false);

const isInput = ({ facts }: DraftDevice, name: string) =>
  ['signal-in', 'speaker-in-positive', 'speaker-in-negative'].includes(facts.terminals[name]?.role ?? '');

function ofProcessor(draft: Draft, device: DraftDevice, name: string): Why | null {
  if (terminalsWith(device, 'signal-out').includes(name))
    return open('this output feeds nothing', 'plays-nothing');
  if (!isInput(device, name)) return null;
  const forms = ['line', 'speaker'] as const;
  const input = forms.flatMap((form) => inputsOf(device, form)).find((one) => isOf(device, name, one));
  if (input === undefined) return null;
  const form = formOfInput(device, input);
  const usedForms = forms.filter((one) =>
    inputsOf(device, one).some((each) =>
      (pairOf(device, each) ?? [each]).some((terminal) => !draft.isFree(device.id, terminal)),
    ),
  );
  if (usedForms.length === 0) return null;
  return open(
    usedForms.includes(form) ? 'the source has no more outputs' : `the ${usedForms[0]} inputs are used`,
  );
}

/** Outputs of the source: the form that is not used stays as the vehicle has it; a pair that nobody plays is told. */
function openSource(draft: Draft, source: DraftDevice): void {
  const outputs = (['line', 'speaker'] as const).flatMap((form) =>
    sourceOutputs(draft, source, form).map(({ name, carries }) => {
      const terminals = pairOf(source, name) ?? [name];
      return { form, carries, terminals, isUsed: terminals.some((one) => !draft.isFree(source.id, one)) };
    }),
  );
  const used = outputs.filter(({ isUsed }) => isUsed);
  if (used.length === 0) return;
  for (const { form, carries, terminals, isUsed } of outputs) {
    if (isUsed) continue;
    const why = whyIdle(form, carries, used);
    for (const terminal of terminals)
      if (isLoose(draft, source, terminal)) draft.leaveOpen(source.id, terminal, why);
  }
}

/** Why an output of the source feeds nothing, beside those that are used. */
function whyIdle(
  form: SignalForm,
  carries: Carried,
  used: readonly { readonly form: SignalForm; readonly carries: Carried }[],
): Why {
  if (used.every((one) => one.form !== form))
    return open(
      form === 'line' ? 'the speaker outputs are used' : "the source's own output stage is not used",
    );
  if (used.some((one) => one.carries === carries)) return open(`another output plays ${carries}`);
  return open(`nothing plays ${carries}`, 'plays-nothing');
}
