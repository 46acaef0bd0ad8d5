import { describe, expect, test } from 'vitest';
import { finalFilters } from '../../../lib/plan/audio/final-filters.ts';
import { boostsOf } from '../../../lib/plan/audio/path/path-peaks.ts';
import { byId, entry, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedAudio } from './planned-audio.ts';

type Change = (content: Written) => void;
const amp = (content: Written) => partIn(content, 'two-channel', 'amplifier');

describe('a built-in filter', () => {
  const corner = { type: 'butterworth', order: 2 } as const;
  const controls =
    (own: object): Change =>
    (content) => {
      amp(content).controls = Object.fromEntries(
        Object.entries(own).map(([name, control]) => [
          name,
          { form: 'knob', panel: 'left', why: 'as it is', safe: '80 Hz', ...control },
        ]),
      );
    };
  const filtersOf = (own: object, more: Change = () => {}) => {
    const { job } = plannedAudio((content) => {
      controls(own)(content);
      more(content);
    });
    const [first, ...others] = finalFilters(byId(job.devices, 'amp'));
    return { first, others };
  };
  const mode = {
    what: 'crossover-mode',
    form: 'switch',
    positions: ['FULL', 'LPF', 'HPF'],
    safe: 'HPF',
    channels: ['1'],
    filter: { ...corner, corner: '100 Hz', passes: { HPF: 'high-pass', LPF: 'low-pass' } },
  };
  const freq = { what: 'crossover', channels: ['1'], filter: { range: { from: '50 Hz', to: '500 Hz' } } };
  const ask =
    (where: string, pass: 'high-pass' | 'low-pass'): Change =>
    ({ job }) => {
      entry(job.devices, 'amp').filters = { [where]: [{ pass, ...corner, corner: '120 Hz' }] };
    };

  test.each(['CH1', 'CH1+', 'CH1-'])('is switched as the job asks of its channel at %s', (where) => {
    const { first } = filtersOf({ MODE: mode, FREQ: freq }, ask(where, 'high-pass'));
    expect(first).toMatchObject({ pass: 'high-pass', cornerHz: 120, asked: true });
    expect(first?.states.get('MODE')).toEqual({ state: 'HPF', why: 'as filtered' });
    expect(first?.states.get('FREQ')).toEqual({ state: '120 Hz', why: 'as filtered' });
  });

  test('stands where all passes, where the job asks none; its knob is idle', () => {
    const { first } = filtersOf({ MODE: mode, FREQ: freq });
    expect(first).toMatchObject({ pass: null, cornerHz: null, asked: false });
    expect(first?.states.get('MODE')?.state).toBe('FULL');
    expect(first?.states.get('FREQ')).toEqual({ state: '80 Hz', why: 'idle unless MODE cuts' });
  });

  test.each(['lowest', 'highest'])(
    'of a knob that ends in OFF, the %s, stands there where nothing asks it',
    (off) => {
      const filter = { ...corner, pass: 'low-pass', range: { from: '40 Hz', to: '160 Hz' }, off };
      const knob = { what: 'crossover', channels: ['1'], filter };
      const { first: idle } = filtersOf({ LP: knob });
      expect(idle).toMatchObject({ pass: null, cornerHz: null, asked: false });
      expect(idle?.states.get('LP')).toEqual({ state: 'OFF', why: 'all passes' });
      const { first: asked } = filtersOf({ LP: knob }, ask('CH1', 'low-pass'));
      expect(asked).toMatchObject({ pass: 'low-pass', cornerHz: 120, asked: true });
      const { first: kept } = filtersOf({ LP: knob }, (content) => {
        ask('CH1', 'low-pass')(content);
        entry(content.job.devices, 'amp')['after-commissioning'] = { LP: 'off' };
      });
      expect(kept).toMatchObject({ pass: null, asked: false });
      const { first: always } = filtersOf({ LP: { ...knob, filter: { ...filter, off: undefined } } });
      expect(always).toMatchObject({ pass: 'low-pass', cornerHz: 160 });
    },
  );

  test('of a fixed corner cuts there where the job leaves it on; of what is asked, where it asks', () => {
    const on: Change = ({ job }) => {
      entry(job.devices, 'amp')['after-commissioning'] = { MODE: 'LPF' };
    };
    expect(filtersOf({ MODE: mode }, on).first).toMatchObject({
      pass: 'low-pass',
      cornerHz: 100,
      asked: false,
    });
    expect(filtersOf({ MODE: mode }, ask('CH1', 'low-pass')).first).toMatchObject({
      cornerHz: 120,
      asked: true,
    });
  });

  test('takes the knob of its own channels, and none that is a filter of its own', () => {
    const other = { ...freq, channels: ['2'] };
    expect([...(filtersOf({ MODE: mode, FREQ: other }).first?.states.keys() ?? [])]).toEqual(['MODE']);
    const own = { ...freq, filter: { ...freq.filter, ...corner, pass: 'low-pass' } };
    const { first, others } = filtersOf({ MODE: mode, LOW: own });
    expect([...(first?.states.keys() ?? [])]).toEqual(['MODE']);
    expect(others[0]?.states.get('LOW')).toEqual({ state: '500 Hz', why: 'out of the way' });
  });

  test('that is a knob of no known range stands as its part says', () => {
    const knob = {
      what: 'crossover',
      channels: ['1'],
      final: 'fully open',
      filter: { ...corner, pass: 'low-pass' },
    };
    expect(filtersOf({ LOW: knob }).first?.states.get('LOW')).toEqual({
      state: 'fully open',
      why: 'no filter is asked of it',
    });
    const { final: _, ...silent } = knob;
    expect(filtersOf({ LOW: silent }).first?.states.get('LOW')?.state).toBeNull();
  });
});

describe('what raises the level of a channel', () => {
  const boost = (state: string | undefined, own: object = {}) => {
    const { job } = plannedAudio((content) => {
      amp(content).controls = {
        GAIN: { what: 'gain', form: 'knob', panel: 'left', safe: 'fully down', why: 'no signal passes' },
        BOOST: {
          what: 'boost',
          form: 'knob',
          panel: 'left',
          safe: 'Fully down',
          why: 'it adds to the gain',
          boost: { centre: '45 Hz', range: { from: '0 dB', to: '12 dB' }, q: 1 },
          ...own,
        },
      };
      if (state !== undefined) entry(content.job.devices, 'amp')['after-commissioning'] = { BOOST: state };
    });
    return boostsOf(byId(job.devices, 'amp'));
  };

  test('is a boost as it stands, at its stop nothing, and anywhere else its whole range', () => {
    expect(boost('6 dB')).toEqual([
      { control: 'BOOST', channels: ['1', '2'], state: '6 dB', peaks: [{ centreHz: 45, gainDb: 6, q: 1 }] },
    ]);
    expect(boost(undefined)[0]).toMatchObject({ state: 'Fully down', peaks: [] });
    expect(boost(' fully DOWN ')[0]?.peaks).toEqual([]);
    expect(boost('half-way')[0]?.peaks).toEqual([{ centreHz: 45, gainDb: 12, q: null }]);
    expect(boost('half-way', { boost: undefined })[0]?.peaks).toBeNull();
  });

  test('is the equalising of the output that feeds it, where a band is moved at all', () => {
    const { audio } = plannedAudio(({ job }) => {
      entry(job.devices, 'dsp').equalising = {
        OUT2: [
          { centre: '40 Hz', gain: '4 dB', q: 1.4 },
          { centre: '63 Hz', gain: '0 dB', q: 1 },
          { centre: '80 Hz', gain: '-3 dB' },
        ],
      };
    });
    expect(byId(audio.channels, 'amp.2').peaks).toEqual([
      { where: 'dsp.OUT2', centreHz: 40, gainDb: 4, q: 1.4 },
      { where: 'dsp.OUT2', centreHz: 80, gainDb: -3, q: null },
    ]);
    expect(byId(audio.channels, 'amp.1').peaks).toEqual([]);
  });
});

describe('the filters in the path of a channel', () => {
  const filter = (corner: `${number} Hz`) =>
    ({ pass: 'high-pass', type: 'butterworth', order: 2, corner }) as const;

  test('are those of the output that feeds it, then those asked of the amplifier at any name of its outputs', () => {
    const { audio } = plannedAudio((content) => {
      const { job } = content;
      amp(content)['filter-orders'] = [2];
      entry(job.devices, 'dsp').filters = { OUT1: [filter('3000 Hz')] };
      entry(job.devices, 'amp').filters = {
        CH1: [filter('100 Hz')],
        'CH1+': [filter('200 Hz')],
        'CH1-': [filter('300 Hz')],
        CH2: [filter('20 Hz')],
      };
    });
    const path = (id: string) =>
      byId(audio.channels, id).filters.map((one) => `${one.where} ${one.cornerHz}`);
    expect(path('amp.1')).toEqual(['dsp.OUT1 3000', 'amp.CH1+ 200', 'amp.CH1 100', 'amp.CH1- 300']);
    expect(path('amp.2')).toEqual(['amp.CH2 20']);
  });
});

describe('ways that hand over to each other', () => {
  const handed = (change: Change = () => {}) =>
    plannedAudio((content) => {
      const own = { type: 'linkwitz-riley', order: 4, corner: '2500 Hz' } as const;
      entry(content.job.devices, 'dsp').filters = {
        OUT1: [{ pass: 'high-pass', ...own }],
        OUT2: [{ pass: 'low-pass', ...own }],
      };
      change(content);
    }).audio.curves.sums;

  // Each is 6.02 dB down at its corner, and in phase with the other: together they are flat (Linkwitz, Riley, 1976).
  test('add up to what either was alone twice over', () => {
    const [sum] = handed();
    expect(sum?.channels).toEqual(['amp.1', 'amp.2']);
    expect(sum?.handovers).toEqual([
      { upper: 'amp.1', lower: 'amp.2', frequencyHz: 2500, sumDb: 0, louderDb: -6.02 },
    ]);
    for (const level of sum?.levelsDb ?? []) expect(level).toBeCloseTo(0, 2);
  });

  test('do not from one side of the vehicle to the other', () => {
    const onSides = (left: 'left' | 'right', right: 'left' | 'right') =>
      handed(({ vehicle, job }) => {
        Object.assign(vehicle.places ?? {}, { one: { title: 'One', zone: 'cabin', side: left } });
        Object.assign(vehicle.places ?? {}, { two: { title: 'Two', zone: 'cabin', side: right } });
        entry(job.devices, 'tweeter').in = 'one';
        entry(job.devices, 'sub').in = 'two';
      });
    expect(onSides('left', 'left')).toHaveLength(1);
    expect(
      handed(({ parts, vehicle, job }) => {
        const woofer = parts.woofer;
        if (woofer?.kind === 'speaker') woofer.band = 'midbass';
        Object.assign(vehicle.places ?? {}, { two: { title: 'Two', zone: 'cabin', side: 'right' } });
        entry(job.devices, 'sub').in = 'two';
      }),
    ).toEqual([]);
  });
});
