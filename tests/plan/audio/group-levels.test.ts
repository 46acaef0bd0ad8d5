import { describe, expect, test } from 'vitest';
import { byId, entry, one, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { stereo } from '../../rules/stereo.ts';

type Change = (content: Written) => void;

/** Without filters the tone passes whole. */
const quieter: Change = ({ job }) => {
  entry(job.devices, 'dsp').filters = {};
  for (const id of ['left', 'right']) entry(job.devices, id).level = '-3 dB';
};
const levelOfOutputs: Change = (content) => {
  delete partIn(content, 'two-channel', 'amplifier').controls?.GAIN;
  const dsp = partIn(content, 'dsp', 'processor');
  const level = { what: 'level', form: 'menu', panel: 'face', safe: '0 dB', why: 'all alike' } as const;
  dsp.controls = { ...dsp.controls, LEVEL: level };
};
const all =
  (...changes: readonly Change[]): Change =>
  (content) => {
    for (const change of changes) change(content);
  };
const planOf = (change: Change) => stereo(change).plan;
const controlOf = (change: Change, name: string) =>
  one(planOf(change).controls, ({ control }) => control === name).final;

describe('speakers that are to play 3 dB below the others', () => {
  // By hand: 75 W into 4 ohm is 17.32 V; 3 dB below it 17.32 * 10^(-3/20) = 12.26 V, read as 12.2 V.
  test('have the gain of their channels set for it, which the meter and the settings sheet show', () => {
    expect(byId(planOf(() => {}).audio.channels, 'amp.1').gain?.targetV).toBeCloseTo(17.32, 2);
    const channel = byId(planOf(quieter).audio.channels, 'amp.1');
    expect(channel.gain?.targetV).toBeCloseTo(12.26, 2);
    expect(channel.gainVoltageV).toBe(12.2);
    expect(channel.level).toEqual({ db: -3, by: ['amp.GAIN'] });
    expect(controlOf(quieter, 'GAIN').state).toMatch(/^12\.2 V at 1 and 2/);
  });

  test('have the level of their outputs set after the gains where the amplifier has none', () => {
    const change = all(quieter, levelOfOutputs);
    const channel = byId(planOf(change).audio.channels, 'amp.1');
    expect(channel.gain?.targetV).toBeCloseTo(17.32, 2);
    expect(channel.level).toEqual({ db: -3, by: ['dsp.LEVEL'] });
    expect(controlOf(change, 'LEVEL')).toMatchObject({
      state: '-3 dB',
      why: 'quieter: left, right',
      during: 'delays',
    });
  });

  test('leave a level that nobody asks for as it was preset', () => {
    expect(controlOf(levelOfOutputs, 'LEVEL')).toMatchObject({ state: '0 dB', during: 'presets' });
  });
});
