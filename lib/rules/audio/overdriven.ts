import type { Job } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { PlanInput } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { Advice } from '../../model/remark.ts';
import { deviceIdOf, deviceOf, hasRole, partSpot, terminalNameOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { decibels, listed, ohms, volts, watts } from '../words.ts';

/** Inputs of one device that outputs of another drive alike: one fault, one finding. */
const drivenAlike = ({ input, output, level, sourceV, greatestV, verdict }: PlanInput): string =>
  JSON.stringify([deviceIdOf(input), deviceIdOf(output), level, sourceV, greatestV, verdict]);

/** What a clean voltage was reckoned from: ` (by its 18 W into 4 ohm)`. */
export function ratedText(rated: PlanInput['sourceRated']): string {
  return rated ? ` (by its ${watts(rated.powerW)} into ${ohms(rated.loadOhm)})` : '';
}

/** How far what arrives is above what an input takes: `25 % (1.94 dB) too much`. */
function tooMuch(sourceV: number, greatestV: number): string {
  const ratio = sourceV / greatestV;
  return `${Math.ceil((ratio - 1) * 100 - 1e-9)} % (${decibels(Math.ceil(2000 * Math.log10(ratio) - 1e-9) / 100)}) too much`;
}

/** Parts of the catalogue that take what arrives and give no more than an input takes. */
function converters(
  { parts }: Pick<Job, 'parts'>,
  level: PlanInput['level'],
  sourceV: number,
  greatestV: number,
): string[] {
  const into = level === 'high' ? 'speaker-in-positive' : 'signal-in';
  return Object.entries(parts).flatMap(([id, part]) => {
    const terminals = part.kind === 'processor' ? Object.values(part.terminals) : [];
    const takes = terminals.some((one) => one.role === into && (one['signal-range']?.to ?? 0) >= sourceV);
    const outs = terminals.filter(({ role }) => role === 'signal-out');
    const gives = outs.every(({ signal }) => signal !== undefined && signal <= greatestV);
    return takes && outs.length > 0 && gives ? [id] : [];
  });
}

/** Where what an output gives at most is written: as measured in the vehicle, else in its part. */
function outputLines(job: Job, group: readonly PlanInput[], greatestV: number): Advice {
  const outputs = [...new Set(group.map(({ output }) => output))];
  return outputs.map((output) => {
    const [id, name] = [deviceIdOf(output), stemName(terminalNameOf(output))];
    const isFitted = deviceOf(job, id)?.origin === 'vehicle';
    return isFitted
      ? {
          path: pointer(['fitted', id, 'outputs', name, 'clean-voltage']),
          file: 'vehicle',
          value: volts(greatestV),
        }
      : { ...partSpot(job, id, 'terminals', terminalNameOf(output), 'signal'), value: volts(greatestV) };
  });
}

/** What helps where an input is driven past its limit: its high-level input only where the device has one. */
function lessDrive(
  { job }: Case,
  group: readonly PlanInput[],
  first: PlanInput,
): Pick<Verdict<'input-overdriven'>, 'remedy' | 'advice'> {
  const { input, output, sourceV, greatestV, level } = first;
  const device = deviceIdOf(input);
  const terminals = Object.values(deviceOf(job, device)?.facts.terminals ?? {});
  const highLevel = terminals.some(({ role }) => role === 'speaker-in-positive');
  const other = highLevel ? `use the high-level input of ${device}, ` : '';
  if (sourceV === null || greatestV === null || (level === 'high' && hasRole(job, input, 'signal-in')))
    return { remedy: `${other}put a level converter between them` };
  const fitting = converters(job, level, sourceV, greatestV);
  const known = fitting.length > 0 ? ` (in the catalogue: ${listed(fitting, 'or')})` : '';
  const converter = `put a level converter between them that takes ${volts(sourceV)} and gives at most ${volts(greatestV)}${known}`;
  const source = deviceIdOf(output);
  const fitted = deviceOf(job, source)?.origin === 'vehicle';
  const field = fitted ? 'clean-voltage' : 'signal';
  const where = fitted
    ? `at these outputs of ${source} in the vehicle's file`
    : `at these terminals in the part of ${source}`;
  return {
    remedy: `${other}${converter}; or turn the output of ${source} down for good, measure that it gives ${volts(greatestV)} or less, and write ${field}: ${volts(greatestV)} ${where}`,
    advice: [outputLines(job, group, greatestV)],
  };
}

/** An input that more arrives at than it takes. */
export const inputOverdriven: Rule = {
  id: 'input-overdriven',
  judge(about) {
    const { inputs } = about.plan.audio;
    const over = inputs.filter(
      ({ input, level, verdict }) =>
        verdict === 'too-high' || (level === 'high' && hasRole(about.job, input, 'signal-in')),
    );
    return [...new Set(over.map(drivenAlike))].flatMap((key) =>
      overdrivenAlike(
        about,
        over.filter((one) => drivenAlike(one) === key),
      ),
    );
  },
};

function overdrivenAlike(about: Case, group: readonly PlanInput[]): Verdict<'input-overdriven'>[] {
  const [first] = group;
  if (!first) return [];
  const { sourceV, sourceRated, greatestV, level } = first;
  const intoLine = level === 'high' && hasRole(about.job, first.input, 'signal-in');
  const one = group.length === 1;
  const outputs = listed([...new Set(group.map(({ output }) => output))]);
  const inputs = listed([...new Set(group.map(({ input }) => input))]);
  const measures =
    sourceV === null || greatestV === null
      ? ''
      : `: ${volts(sourceV)} clean${ratedText(sourceRated)}, where ${one ? 'it takes' : 'each takes'} ${volts(greatestV)}, ${tooMuch(sourceV, greatestV)}`;
  return [
    {
      level: 'stop',
      of: [
        ...new Set([
          ...group.map(({ input }) => input),
          ...group.map(({ output }) => output),
          ...group.map(({ wire }) => wire),
        ]),
      ],
      message: intoLine
        ? `${outputs} ${one ? 'is a speaker output' : 'are speaker outputs'}, and ${inputs} ${one ? 'a line input' : 'line inputs'}${measures}`
        : `${outputs} ${one ? 'drives' : 'drive'} ${inputs} past ${one ? 'its' : 'their'} limit${measures}; no gain control mends that`,
      ...(sourceV !== null && { value: sourceV }),
      ...(greatestV !== null && { limit: greatestV }),
      unit: 'V',
      ...lessDrive(about, group, first),
      ...wireSpot(about, first.wire),
    },
  ];
}
