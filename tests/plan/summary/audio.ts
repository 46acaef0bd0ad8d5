import type { BuildPlan, PlanChannel, PlanControl } from '../../../lib/model/plan/index.ts';
import { figure, listed, type Section } from './words.ts';

/** Channels with load and gain, speakers, inputs, and how every control stands. */
export function audioSections({ audio, controls }: BuildPlan): Section[] {
  return [
    { heading: 'Channels', lines: audio.channels.map(channelLine) },
    {
      heading: 'Speakers',
      lines: audio.speakers.map((speaker) => {
        const { id, channel, powerW, delayMs, delaySamples, polarity, mounted } = speaker;
        const turned = mounted === 'reversed' && 'turned round';
        const delay = `delay ${figure(delayMs, 2)} ms or ${figure(delaySamples, 0)} samples`;
        return `${id}: ${listed(`from ${channel ?? 'nothing'}`, `${figure(powerW, 1)} W`, delay, polarity, turned)}`;
      }),
    },
    {
      heading: 'Inputs',
      lines: audio.inputs.map(
        ({ input, output, level, sourceV, leastV, greatestV, verdict }) =>
          `${output} to ${input}: ${level} level, ${figure(sourceV, 2)} V into ${figure(leastV, 2)} to ${figure(greatestV, 2)} V, ${verdict}`,
      ),
    },
    {
      heading: 'Handovers',
      lines: audio.curves.sums.flatMap(({ id, handovers }) =>
        handovers.map(
          ({ upper, lower, frequencyHz, sumDb }) =>
            `sum of ${id}: ${upper} to ${lower} at ${figure(frequencyHz, 0)} Hz, ${figure(sumDb, 1)} dB`,
        ),
      ),
    },
    { heading: 'Settings', lines: controls.map(settingLine) },
  ];
}

function channelLine(channel: PlanChannel): string {
  const { id, loadOhm, mayDrive, minimumOhm, powerW, gain, gainVoltageV, filters } = channel;
  const verdict = mayDrive === null ? 'not known' : mayDrive ? 'may drive' : 'must not drive';
  const made = filters.map(
    ({ where, pass, type, order, cornerHz }) =>
      `${pass} ${type} ${order} at ${figure(cornerHz, 1)} Hz before ${where}`,
  );
  const set = gain
    ? `gain ${figure(gainVoltageV, 1)} V at ${figure(channel.toneHz, 0)} Hz for ${figure(gain.targetPowerW, 1)} W, clips at ${figure(gain.clipV, 1)} V, margin ${figure(gain.toneMarginDb, 1)} dB`
    : `gain ${figure(gainVoltageV, 1)} V`;
  return `${id}: ${listed(`${figure(loadOhm, 2)} of at least ${figure(minimumOhm, 2)} ohm`, verdict, `${figure(powerW, 1)} W`, set, ...made, channel.wiring)}`;
}

function settingLine({ item, control, preset, final, safe }: PlanControl): string {
  const at = `handed over at ${final.state ?? 'nothing known'} (${final.during})`;
  return `${item}.${control}: ${listed(preset, !safe && 'not safe')}; ${at}`;
}
