import type { Part } from '../../../model/kinds/index.ts';
import { flowText } from '../../../read/yaml/write-value.ts';
import type { Answers } from '../ask/question.ts';
import { jobRows } from './job-questions.ts';

type Parts = Readonly<Record<string, Part>>;

/** How the coils of a speaker with several may be joined otherwise than proposed: by the load that its channel is to see. */
export function coilsTold(answers: Answers, parts: Parts): readonly string[] {
  return jobRows(answers, 'speaker').flatMap(({ cells: { name, part, 'driven-by': driver } }) => {
    const spec = parts[String(part)];
    const loads = spec?.kind === 'speaker' ? Object.values(spec.coils).map(({ nominal }) => nominal) : [];
    if (loads.length < 2) return [];
    const series = loads.reduce<number>((sum, ohm) => sum + ohm, 0);
    const parallel = 1 / loads.reduce<number>((sum, ohm) => sum + 1 / ohm, 0);
    const [low, high] = [parallel, series].map((ohm) => `${Number(ohm.toPrecision(3))} ohm`);
    const line = `loads: ${flowText({ [lastChannel(answers, parts, driver)]: low ?? '' })}`;
    return [
      `how the ${loads.length} coils of ${name} are joined is proposed, by what its amplifier drives; for another way write at the amplifier the load that its channel is to see, such as ${line} for all in parallel, ${high} for all in series`,
    ];
  });
}

/** The last channel of the amplifier that drives a speaker, as that of a subwoofer mostly is; of the first amplifier where none is told. */
function lastChannel(answers: Answers, parts: Parts, driver: unknown): string {
  const amplifiers = jobRows(answers, 'device').flatMap(({ cells: { name, part } }) => {
    const spec = parts[String(part)];
    return spec?.kind === 'amplifier' ? [{ name, channels: Object.keys(spec.channels) }] : [];
  });
  const meant = amplifiers.find(({ name }) => name === driver) ?? amplifiers[0];
  return meant?.channels.at(-1) ?? '1';
}
