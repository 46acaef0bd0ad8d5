import { describe, expect, test } from 'vitest';
import { byId, entry, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedAudio } from './planned-audio.ts';

type Change = (content: Written) => void;
const amp = (content: Written) => partIn(content, 'two-channel', 'amplifier');
const channel = (id: string, change: Change = () => {}) => {
  const found = plannedAudio(change);
  return { ...found, own: byId(found.audio.channels, id) };
};
/** A second speaker beside the subwoofer, of so much power. */
const beside =
  (power: `${number} W`, nominal: `${number} ohm` = '4 ohm'): Change =>
  (content) => {
    const woofer = partIn(content, 'woofer', 'speaker');
    content.parts.other = { ...woofer, power, coils: { C: { positive: 'C+', negative: 'C-', nominal } } };
    content.job.devices.other = { part: 'other', in: 'boot' };
    content.job.links['speaker-3'] = { from: 'amp.CH2', to: 'other.C' };
    amp(content).channels['2'] = {
      positive: 'CH2+',
      negative: 'CH2-',
      input: 'IN2',
      minimum: '1 ohm',
      powers: [{ load: '2 ohm', power: '400 W' }],
    };
  };

describe('the gain of a channel', () => {
  // By hand: 75 W into 4 ohm are sqrt(75 * 4) = 17.32 V, which the meter shows as 17.3 V at most.
  test('is set for what the amplifier has, where its speaker takes more', () => {
    const { own, traces } = channel('amp.2');
    expect(own.gain?.targetPowerW).toBeCloseTo(75, 9);
    expect(own.gain?.targetV).toBeCloseTo(17.3205, 4);
    expect(own.gain?.clipV).toBeCloseTo(17.3205, 4);
    expect(own.gainVoltageV).toBe(17.3);
    for (const [name, value] of Object.entries(own.gain ?? {}))
      if (name !== 'overlapDb' && name !== 'state')
        expect(traces[`audio.channels.amp.2.gain.${name}`]?.value, name).toBe(value);
    expect(traces['audio.channels.amp.2.gainVoltageV']?.value).toBe(17.3);
    expect(traces['audio.channels.amp.2.toneHz']?.value).toBe(own.toneHz);
  });

  /*
   * An unregulated amplifier gives less as its supply falls, about with the square of it (common practice, no source). At
   * 13.2 V of 14.4 V, 75 W become 63.0 W, and sqrt(63.0 * 4) is 15.88 V; measured at 13.2 V they stay 75 W.
   */
  test('is set for the supply that the vehicle charges at, by the voltage that its powers were measured at', () => {
    const charged = (more: Change = () => {}) =>
      channel('amp.2', (content) => {
        amp(content).supply.type = 'unregulated';
        content.vehicle['charging-voltage'] = '13.2 V';
        more(content);
      }).own;
    expect(charged().gain?.targetPowerW).toBeCloseTo(63.0208, 4);
    expect(charged().gainVoltageV).toBe(15.8);
    const rated = charged((content) => {
      amp(content).supply['rated-at'] = '13.2 V';
    });
    expect(rated.gain?.targetPowerW).toBeCloseTo(75, 9);
  });

  test('is set for what its speaker takes, where that is less', () => {
    const { own } = channel('amp.2', (content) => {
      partIn(content, 'woofer', 'speaker').power = '50 W';
    });
    // sqrt(50 * 4) = 14.14 V, and 20 log10(17.32 / 14.14) = 1.76 dB below clipping.
    expect(own.gain?.targetV).toBeCloseTo(14.1421, 4);
    expect(own.gain?.toneMarginDb).toBeCloseTo(1.7609, 4);
    expect(own.gain?.fullScaleMarginDb).toBeCloseTo(1.7609, 4);
  });

  test('of several speakers is set for the first that has all that it may take', () => {
    // Alike coils share the power alike: 200 W beside 100 W are full at 200 W together.
    expect(channel('amp.2', beside('100 W')).own.gain?.targetPowerW).toBeCloseTo(200, 6);
    expect(channel('amp.2', beside('150 W')).own.gain?.targetPowerW).toBeCloseTo(300, 6);
    expect(channel('amp.2', beside('300 W')).own.gain?.targetPowerW).toBeCloseTo(400, 6);
    // One of 2 ohm beside one of 4 ohm takes two thirds.
    const thirds = channel('amp.2', (content) => {
      beside('100 W', '2 ohm')(content);
      entry(amp(content).channels, '2').powers = [{ load: '1.3333 ohm', power: '400 W' }];
    });
    expect(thirds.own.gain?.targetPowerW).toBeCloseTo(150, 1);
  });

  test('counts both coils of one speaker as one', () => {
    const { own } = channel('amp.2', (content) => {
      const woofer = partIn(content, 'woofer', 'speaker');
      woofer.coils = {
        C: { positive: 'C+', negative: 'C-', nominal: '4 ohm' },
        D: { positive: 'D+', negative: 'D-', nominal: '4 ohm' },
      };
      Object.assign(woofer.terminals, { 'D+': { role: 'coil-positive' }, 'D-': { role: 'coil-negative' } });
      content.job.links.second = { from: 'amp.CH2', to: 'sub.D' };
      entry(amp(content).channels, '2').powers = [{ load: '2 ohm', power: '400 W' }];
    });
    expect(own.gain?.targetPowerW).toBeCloseTo(200, 6);
  });

  test('of a supply that is not regulated is set for what it has at the voltage for sizing', () => {
    const { own } = channel('amp.2', (content) => {
      amp(content).supply = { type: 'unregulated', fuse: '60 A', 'turn-on-draw': '20 mA' };
    });
    // 75 W at 14.4 V are 75 (13.8 / 14.4)^2 = 68.88 W at 13.8 V.
    expect(own.gain?.targetPowerW).toBeCloseTo(68.88, 2);
  });

  test('allows for the overlap that the shop sets, in tone and margin', () => {
    const { own } = channel('amp.2', (content) => {
      content.shop.rules = { 'gain-overlap': '10 dB' };
    });
    expect(own.gain?.overlapDb).toBe(10);
    expect((own.gain?.toneMarginDb ?? 0) - (own.gain?.fullScaleMarginDb ?? 0)).toBeCloseTo(10, 9);
  });
});

describe('the tone of a channel', () => {
  const corner = { type: 'linkwitz-riley', order: 4 } as const;

  test('is the usual one for bass where a subwoofer plays, and the usual one for all else', () => {
    const { audio } = plannedAudio();
    expect(byId(audio.channels, 'amp.2').toneHz).toBe(50);
    expect(byId(audio.channels, 'amp.1').toneHz).toBe(1000);
    const other = plannedAudio((content) => {
      content.shop.rules = { 'tone-bass': '40 Hz', 'tone-others': '2 kHz' };
    });
    expect(byId(other.audio.channels, 'amp.2').toneHz).toBe(40);
    expect(byId(other.audio.channels, 'amp.1').toneHz).toBe(2000);
  });

  test('is no tone that the source does not give', () => {
    const toneHz = (from: `${number} Hz`, to: `${number} Hz`) =>
      channel('amp.1', (content) => {
        partIn(content, 'radio', 'source-unit').outputs = { OUT: { bandwidth: { from, to } } };
      }).own.toneHz;
    expect(toneHz('20 Hz', '20000 Hz')).toBe(1000);
    expect(toneHz('20 Hz', '500 Hz')).toBeLessThanOrEqual(500);
    expect(toneHz('2000 Hz', '20000 Hz')).toBeGreaterThanOrEqual(2000);
  });

  test('goes by the whole range of several sources, and by none where one is not known', () => {
    const two =
      (second: { from: `${number} Hz`; to: `${number} Hz` } | null): Change =>
      (content) => {
        const radio = partIn(content, 'radio', 'source-unit');
        radio.terminals.OUT2 = { role: 'signal-out', joint: 'phono', signal: '4 V' };
        radio.outputs = {
          OUT: { bandwidth: { from: '20 Hz', to: '300 Hz' } },
          ...(second && { OUT2: { bandwidth: second } }),
        };
        Object.assign(partIn(content, 'dsp', 'processor').terminals, {
          IN2: { role: 'signal-in', joint: 'phono', signal: '2 V' },
        });
        content.job.links['radio-signal-2'] = { from: 'radio.OUT2', to: 'dsp.IN2' };
      };
    const low = channel('amp.1', two({ from: '100 Hz', to: '400 Hz' })).own.toneHz;
    expect(low).toBeLessThanOrEqual(400);
    expect(low).toBeGreaterThan(300);
    expect(channel('amp.1', two({ from: '100 Hz', to: '5000 Hz' })).own.toneHz).toBe(1000);
    expect(channel('amp.1', two(null)).own.toneHz).toBe(1000);
  });

  test('that no filter lets through is asked of nobody: the channel stops the job, and is told once', () => {
    const { own, remarks } = channel('amp.2', ({ job }) => {
      entry(job.devices, 'dsp').filters = {
        OUT2: [
          { pass: 'low-pass', ...corner, corner: '40 Hz' },
          { pass: 'high-pass', ...corner, corner: '8000 Hz' },
        ],
      };
    });
    expect(own).toMatchObject({ gain: null, gainVoltageV: null, toneHz: 50 });
    expect(remarks.filter(({ of }) => of.includes('amp.2')).map(({ level }) => level)).toEqual(['stop']);
  });

  test('through a filter that nobody makes is not known, and the filter is told where it is written', () => {
    const { own, remarks } = channel('amp.2', ({ job }) => {
      entry(job.devices, 'dsp').filters = {
        OUT2: [{ pass: 'low-pass', type: 'linkwitz-riley', order: 3, corner: '70 Hz' }],
      };
    });
    expect(own).toMatchObject({ gain: null, gainVoltageV: null, toneHz: 50 });
    expect(remarks.filter(({ of }) => of.includes('amp.2'))).toEqual([]);
    expect(remarks.map(({ rule }) => rule)).toContain('filter-order-not-made');
  });
});
