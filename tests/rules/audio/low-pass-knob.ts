import { entry, partIn } from '../case.ts';
import type { Written } from '../content.ts';

/** The knob of an active crossover at an output of the processor, which has no off position. */
export const processorKnob = {
  what: 'crossover',
  form: 'knob',
  panel: 'left',
  safe: '80 Hz',
  why: 'as it is',
  channels: ['OUT2'],
  filter: { pass: 'low-pass', type: 'butterworth', order: 2, range: { from: '40 Hz', to: '250 Hz' } },
} as const;

/** The corners that are asked of the two channels of the amplifier, which has one knob for both. */
export function askOfKnob(content: Written, ...[first, second]: readonly [string, string]): void {
  const { controls } = partIn(content, 'two-channel', 'amplifier');
  if (!controls) throw new Error('The amplifier has controls.');
  const shape = { pass: 'low-pass', type: 'butterworth', order: 4 } as const;
  controls.LPF = {
    ...{ what: 'crossover', form: 'knob', panel: 'left', safe: '80 Hz', why: 'bass alone' },
    channels: ['1', '2'],
    filter: { ...shape, range: { from: '50 Hz', to: '250 Hz' } },
  };
  entry(content.job.devices, 'amp').filters = {
    'CH1+': [{ ...shape, corner: first }],
    'CH2+': [{ ...shape, corner: second }],
  };
}
