import { describe, expect, it } from 'vitest';
import { byId, entry, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { planned } from '../planned.ts';

/** The bass channel of the small job behind a low-pass, with what a test puts beside it. */
function bass(more: (content: Written) => void = () => {}) {
  const { plan } = planned((content) => {
    const corner = { type: 'linkwitz-riley', order: 4 } as const;
    entry(content.job.devices, 'dsp').filters = {
      OUT1: [{ pass: 'high-pass', ...corner, corner: '3500 Hz' }],
      OUT2: [{ pass: 'low-pass', ...corner, corner: '70 Hz' }],
    };
    more(content);
  });
  const channel = byId(plan.audio.channels, 'amp.2');
  const step = (id: string) => byId(plan.steps, id);
  return { plan, channel, step };
}

const withBoost = (state: string, q?: number) => (content: Written) => {
  const { controls } = partIn(content, 'two-channel', 'amplifier');
  if (!controls) throw new Error('The amplifier has controls.');
  controls.BOOST = {
    what: 'boost',
    form: 'knob',
    panel: 'left',
    channels: ['2'],
    safe: 'fully down',
    why: 'it adds to the gain',
    boost: { centre: '45 Hz', range: { from: '0 dB', to: '12 dB' }, ...(q !== undefined && { q }) },
  };
  entry(content.job.devices, 'amp')['after-commissioning'] = { BOOST: state };
};

describe('the gain voltage in a plan', () => {
  // By hand: 20 log10(1 + (50 / 70)^4) = 2.0092 dB.
  it('is that of a tone through the filters, and the record asks for the same', () => {
    const { plan, channel } = bass();
    expect(channel.gain?.pathDb).toBeCloseTo(-2.0092, 3);
    const through = (channel.gain?.targetV ?? 0) * 10 ** (-2.0092 / 20);
    expect(channel.gainVoltageV).toBeCloseTo(Math.floor(through * 10) / 10, 9);
    expect(byId(plan.measurements, 'amp.2.gain')).toMatchObject({
      predicted: channel.gainVoltageV,
      greatest: channel.gainVoltageV,
    });
    expect(byId(plan.audio.channels, 'amp.1').toneHz).toBe(8000);
  });

  it('never asks for more than the target at any frequency of the drawn response', () => {
    const { channel } = bass();
    const atTone = channel.gainVoltageV ?? Number.POSITIVE_INFINITY;
    for (const db of channel.levelsDb) {
      const volts = atTone * 10 ** ((db - (channel.gain?.pathDb ?? 0)) / 20);
      expect(volts).toBeLessThanOrEqual((channel.gain?.targetV ?? 0) * 1.0012);
    }
  });

  it('has a working with each part of the path at the tone', () => {
    const { plan } = bass(withBoost('6 dB', 1));
    const trace = plan.traces['audio.channels.amp.2.gain.pathDb'];
    expect(trace?.inputs.map(({ name }) => name)).toEqual([
      'f',
      'low-pass at 70 Hz',
      '6 dB at 45 Hz',
      'Lmax',
    ]);
    const reading = plan.traces['audio.channels.amp.2.gainVoltageV'];
    expect(reading?.inputs.find(({ name }) => name === 'L')?.value).toBe(trace?.value);
  });
});

describe('a boost', () => {
  it('of known shape stands in the path while the gain is set', () => {
    const { plan, channel, step } = bass(withBoost('6 dB', 1));
    expect(channel.peaks).toEqual([{ where: 'amp.CH2', centreHz: 45, gainDb: 6, q: 1 }]);
    expect(channel.gain?.state).toBe('as-loaded');
    const boost = plan.controls.find(({ control }) => control === 'BOOST');
    expect(boost?.final).toMatchObject({ state: '6 dB', during: 'filters' });
    expect(step('filters').text).toContain('amp BOOST to 6 dB');
    expect(step('gains').text).not.toContain('BOOST');
  });

  // Of 6 dB the whole may lie beside the tone: 2.0092 dB of the low-pass and 6 dB are 8.0092 dB.
  it.each([
    ['6 dB', 6],
    ['half-way', 12],
  ])('of unknown shape, %s, is turned up after the gain, whose reading allows for %d dB', (state, gainDb) => {
    const { plan, channel, step } = bass(withBoost(state));
    expect(channel.gain?.state).toBe('equalising-flat');
    expect(channel.gain?.pathDb).toBeCloseTo(-2.0092 - gainDb, 3);
    const boost = plan.controls.find(({ control }) => control === 'BOOST');
    expect(boost?.final).toMatchObject({ state, during: 'delays' });
    expect(step('filters').text).toContain('leave equalising and boost of amp.2 flat');
    expect(step('speakers-on').text).toContain(`amp BOOST to ${state}`);
    expect(byId(plan.measurements, 'amp.2.gain').what).toContain('equalising and boost flat');
  });

  it('at its safe stop is nothing', () => {
    const { channel } = bass(withBoost('fully down'));
    expect(channel.peaks).toEqual([]);
  });
});

describe('equalising of an output', () => {
  const equal = (q?: number) => (content: Written) => {
    entry(content.job.devices, 'dsp').equalising = {
      OUT2: [{ centre: '40 Hz', gain: '4 dB', ...(q !== undefined && { q }) }],
    };
  };

  it('is in the path, in the response, and loaded with the filters', () => {
    const { channel, step } = bass(equal(1));
    expect(channel.peaks).toEqual([{ where: 'dsp.OUT2', centreHz: 40, gainDb: 4, q: 1 }]);
    expect(Math.max(...channel.levelsDb)).toBeGreaterThan(3);
    expect(channel.gain?.state).toBe('as-loaded');
    expect(step('filters').text).toContain('Load the filters and equalising into dsp');
    expect(step('speakers-on').text).not.toContain('equalising');
  });

  it('of unknown shape is loaded after the gain', () => {
    const { step } = bass(equal());
    expect(step('filters').text).toContain('leave equalising and boost of amp.2 flat');
    expect(step('speakers-on').text).toContain('Load the equalising of dsp.OUT2');
  });
});

describe('a source that gives a part of the band', () => {
  it('is asked for no tone that it does not give', () => {
    const { plan } = bass((content) => {
      partIn(content, 'radio', 'source-unit').outputs = {
        OUT: { bandwidth: { from: '20 Hz', to: '5 kHz' } },
      };
    });
    expect(byId(plan.audio.channels, 'amp.1').toneHz).toBeLessThanOrEqual(5000);
  });
});
