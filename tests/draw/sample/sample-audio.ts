import type { BuildPlan, PlanChannel, PlanSpeaker } from '../../../lib/model/plan/index.ts';
import { count, type SampleShape } from './sample-shape.ts';

/** Channels and speakers of a made-up job. */
export function sampleAudio(shape: SampleShape): BuildPlan['audio'] {
  const channels: PlanChannel[] = [];
  shape.amplifiers.forEach((own, index) => {
    for (const n of count(own)) {
      const nth = channels.length + 1;
      const amp = `amp-${index + 1}`;
      channels.push({
        id: `${amp}.${n}`,
        amplifier: amp,
        positive: `${amp}.CH${n}+`,
        negative: `${amp}.CH${n}-`,
        loadOhm: shape.unsolved ? null : 4,
        outputLoadOhm: null,
        minimumOhm: 2,
        mayDrive: true,
        dcResistanceOhm: { fromOhm: 3, toOhm: 3.4 },
        powerW: shape.unsolved ? null : 75,
        gainVoltageV: 17.3,
        gain: null,
        coils: [],
        wirings: [],
        wiringsInAll: null,
        damping: null,
        belowDb: null,
        levelsDb: [],
        toneHz: 1000,
        peaks: [],
        filters: shape.processor
          ? [
              { where: `dsp.OUT${nth}`, pass: 'high-pass', type: 'linkwitz-riley', order: 4, cornerHz: 80 },
              { where: `dsp.OUT${nth}`, pass: 'low-pass', type: 'butterworth', order: 2, cornerHz: 3500 },
            ]
          : [],
        speakers: [`speaker-${nth}`],
        wiring: `speaker-${nth}.C1`,
        wireLossDb: 0.2,
      });
    }
  });
  const speakers = channels.map(({ id, speakers: [speaker = ''] }, index): PlanSpeaker => {
    const polarity = index % 3 === 1 ? ('reversed' as const) : ('normal' as const);
    return {
      id: speaker,
      delayMs: 1,
      delaySamples: 96,
      polarity,
      mounted: 'normal',
      reversedWhy: null,
      distanceM: 1,
      channel: id,
      powerW: 75,
    };
  });
  return {
    channels,
    speakers,
    sharedDelays: [],
    inputs: [],
    outputs: [],
    curves: { frequenciesHz: [], sums: [] },
  };
}
