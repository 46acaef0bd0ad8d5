import { listed } from '../../model/printed/listed.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import type { SignalChain } from './signal-chain.ts';
import { formOfInput, isNameFree, joinableOutputs, lineOutputs } from './source-outputs.ts';
import { usedOutputs } from './used-outputs.ts';

/**
 * Which amplifiers play from the line outputs of another one where the job does not say: those that take line level alone,
 * of a source that has speaker outputs alone, where one other amplifier takes these and has line outputs. What is taken
 * behind its gain or its filters is not used unasked: its level and its band follow from how they are set.
 */
export function playPassedOn(draft: Draft, chain: SignalChain): SignalChain {
  const { source } = chain;
  if (!source || joinableOutputs(draft, source, 'line').length > 0) return chain;
  const feederOf = new Map(chain.feederOf);
  for (const amplifier of chain.amplifiers) {
    if (amplifier.origin !== 'job' || amplifier.given?.['driven-by'] !== undefined) continue;
    if (chain.processorOf.has(amplifier.id) || !waitsForLine(draft, amplifier)) continue;
    const feeders = chain.amplifiers.filter(
      (one) => one.id !== amplifier.id && takesFrom(draft, one, chain) && passesInputs(one),
    );
    const [only, second] = feeders;
    if (only && !second) feederOf.set(amplifier.id, only);
    else if (only)
      draft.ask(
        ['devices', amplifier.id],
        `${source.id} gives speaker outputs, and ${amplifier.id} could play from the line outputs of ${listed(
          feeders.map(({ id }) => id),
          'or',
        )}`,
        `write driven-by: with one of them at ${amplifier.id}`,
      );
  }
  return { ...chain, feederOf };
}

/** True for an amplifier with a free input of line level at a channel that drives something. */
function waitsForLine(draft: Draft, amplifier: DraftDevice): boolean {
  const inputs = usedOutputs(draft, amplifier).map(({ output }) => output.spec.input);
  return inputs.some((name) => formOfInput(amplifier, name) === 'line' && isNameFree(draft, amplifier, name));
}

/** True for an amplifier that the source drives by its speaker outputs, or a link that is written at its inputs. */
function takesFrom(draft: Draft, amplifier: DraftDevice, { processorOf, feederOf }: SignalChain): boolean {
  if (processorOf.has(amplifier.id) || feederOf.has(amplifier.id)) return false;
  if (!lineOutputs(amplifier).some((name) => isNameFree(draft, amplifier, name))) return false;
  return usedOutputs(draft, amplifier).some(
    ({ output: { spec } }) =>
      formOfInput(amplifier, spec.input) === 'speaker' || !isNameFree(draft, amplifier, spec.input),
  );
}

function passesInputs({ spec }: DraftDevice): boolean {
  return spec.kind === 'amplifier' && Object.values(spec.passes).every(({ tap }) => tap === 'inputs');
}

/** The lines to write where a device may play from the line outputs of another amplifier; empty where none has any. */
export function passedOnLines(draft: Draft, device: DraftDevice): string {
  const inputs = terminalsWith(device, 'signal-in').filter((name) => isNameFree(draft, device, name));
  const feeder = draft.own.find(
    (one) => one.id !== device.id && one.spec.kind === 'amplifier' && lineOutputs(one).length > 0,
  );
  if (!feeder || inputs.length === 0) return '';
  const outputs = lineOutputs(feeder);
  const lines = inputs.slice(0, outputs.length).map((input, at) => {
    const side = ['left', 'right'][at] ?? String(at + 1);
    return `line-${side}: { from: ${feeder.id}.${outputs[at]}, to: ${device.id}.${input} }`;
  });
  return `to play from the line outputs of ${feeder.id}, write links: { ${lines.join(', ')} }; else `;
}
