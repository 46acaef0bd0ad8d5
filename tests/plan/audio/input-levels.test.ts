import { describe, expect, test } from 'vitest';
import { byId, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedAudio } from './planned-audio.ts';

/** The source plays the processor from a speaker output of 18 W into 4 ohm, into an input that takes so much. */
const fromSpeakers = (mostV: number, more: (content: Written) => void = () => {}) =>
  plannedAudio((content) => {
    const radio = partIn(content, 'radio', 'source-unit');
    Object.assign(radio.terminals, {
      'SP+': { role: 'speaker-out-positive' },
      'SP-': { role: 'speaker-out-negative' },
    });
    radio.outputs = { SP: { powers: [{ load: '4 ohm', power: '18 W' }] } };
    Object.assign(partIn(content, 'dsp', 'processor').terminals, {
      'HL+': { role: 'speaker-in-positive', 'signal-range': { from: '1 V', to: `${mostV} V` } },
      'HL-': { role: 'speaker-in-negative' },
    });
    content.job.links['radio-signal'] = { from: 'radio.SP', to: 'dsp.HL' };
    more(content);
  });

const inputOf = ({ audio }: ReturnType<typeof plannedAudio>) =>
  audio.inputs.find(({ input }) => input === 'dsp.HL+');

describe('the level at an input', () => {
  // By hand: the root of 18 W times 4 ohm is 8.485 V.
  test('follows from the rated power of the output where nothing else tells it, and is traced', () => {
    const found = fromSpeakers(20);
    expect(inputOf(found)).toMatchObject({
      sourceRated: { powerW: 18, loadOhm: 4 },
      verdict: 'within',
    });
    expect(inputOf(found)?.sourceV).toBeCloseTo(8.48528, 5);
    expect(found.traces['audio.inputs.dsp.HL+.sourceV']).toMatchObject({
      origin: 'computed',
      rule: 'clean-voltage-of-power',
    });
  });

  test('is held against what the input takes, on both sides of it', () => {
    expect(inputOf(fromSpeakers(8.48))?.verdict).toBe('too-high');
    expect(inputOf(fromSpeakers(8.49))?.verdict).toBe('within');
  });

  test('is what was measured or stated, where that is written', () => {
    const stated = fromSpeakers(20, (content) => {
      Object.assign(partIn(content, 'radio', 'source-unit').terminals['SP+'] ?? {}, { signal: '9 V' });
    });
    expect(inputOf(stated)?.sourceV).toBe(9);
    expect(inputOf(stated)).not.toHaveProperty('sourceRated');
    const measured = fromSpeakers(20, (content) => {
      Object.assign(partIn(content, 'radio', 'source-unit').outputs?.SP ?? {}, { 'clean-voltage': '7 V' });
    });
    expect(inputOf(measured)?.sourceV).toBe(7);
  });
});

test('an amplifier that feeds an input of speaker level gives what its powers say', () => {
  const { audio } = plannedAudio((content) => {
    content.parts.second = structuredClone(partIn(content, 'dsp', 'processor'));
    Object.assign(partIn(content, 'second', 'processor').terminals, {
      'HL+': { role: 'speaker-in-positive' },
      'HL-': { role: 'speaker-in-negative' },
    });
    content.job.devices.second = { part: 'second', in: 'boot' };
    content.job.links['speaker-1'] = { from: 'amp.CH1', to: 'second.HL' };
  });
  // 75 W into 4 ohm: 17.32 V.
  const [input] = audio.inputs.filter((one) => one.input === 'second.HL+');
  expect(input?.sourceV).toBeCloseTo(17.3205, 4);
  expect(byId(audio.channels, 'amp.2').id).toBe('amp.2');
});
