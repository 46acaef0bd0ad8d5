import { describe, expect, test } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { about, aboutContent, entry, partIn } from '../case.ts';
import { channel, filter, filtered } from '../changes.ts';
import type { Written } from '../content.ts';
import { found } from '../found.ts';
import { askOfKnob } from './low-pass-knob.ts';

type Input = BuildPlan['audio']['inputs'][number];

describe('an input that is driven past its limit', () => {
  /** 9 V at an input that takes 4 V. */
  const driven = (more: Partial<Input> = {}, content: (content: Written) => void = () => {}) => {
    const [told] = found(
      'input-overdriven',
      about({
        content,
        plan: ({ audio }) => {
          audio.inputs = [
            {
              ...{ input: 'dsp.IN', output: 'radio.OUT', wire: 'radio-signal', level: 'low', sourceV: 9 },
              ...{ leastV: 0.5, greatestV: 4, headroomDb: -7.04, reserveDb: 0, verdict: 'too-high' },
              ...more,
            },
          ];
        },
      }),
    );
    return told;
  };

  // 9 / 4 is 125 % more, 20 log10(2.25) = 7.04 dB, told rounded up.
  test('is told with what arrives, what it takes and by how much', () => {
    expect(driven()).toMatchObject({ value: 9, limit: 4, unit: 'V' });
    expect(driven()?.message).toMatch(/9 V clean, where it takes 4 V, 125 % \(7\.1 dB\) too much/);
    const unknown = driven({ sourceV: null, greatestV: null, level: 'high' });
    expect(unknown).not.toHaveProperty('value');
    expect(unknown).not.toHaveProperty('limit');
  });

  test('says where its source is written, once that is turned down', () => {
    expect(driven()?.advice).toEqual([
      [{ path: '/parts/radio/terminals/OUT/signal', file: 'part', value: '4 V' }],
    ]);
  });

  test('of a vehicle is turned down where its outputs were measured', () => {
    const [told] = found(
      'input-overdriven',
      about({
        content: ({ job, vehicle }) => {
          vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
          job.links['radio-signal'] = { from: 'head.OUT', to: 'dsp.IN' };
          job['left-open'] = { 'radio.OUT': 'not used' };
        },
        plan: ({ audio }) => {
          audio.inputs = [
            {
              ...{ input: 'dsp.IN', output: 'head.OUT', wire: 'radio-signal', level: 'low', sourceV: 9 },
              ...{ leastV: 0.5, greatestV: 4, headroomDb: -7.04, reserveDb: 0, verdict: 'too-high' },
            },
          ];
        },
      }),
    );
    expect(told?.of).toEqual(['dsp.IN', 'head.OUT', 'radio-signal']);
    expect(told?.advice).toEqual([
      [{ path: '/fitted/head/outputs/OUT/clean-voltage', file: 'vehicle', value: '4 V' }],
    ]);
  });

  test('is a line input with a speaker output on it, or a high-level input past its limit', () => {
    const line = driven({ level: 'high', sourceV: null, greatestV: null, verdict: 'unknown' });
    expect(line?.message).toBe('radio.OUT is a speaker output, and dsp.IN a line input');
    const highLevel = driven({ level: 'high', input: 'dsp.HL+' }, (content) => {
      Object.assign(partIn(content, 'dsp', 'processor').terminals, {
        'HL+': { role: 'speaker-in-positive' },
        'HL-': { role: 'speaker-in-negative' },
      });
      content.job['left-open'] = { 'dsp.HL-': 'not used', 'dsp.HL+': 'not used' };
    });
    expect(highLevel?.message).toMatch(/^radio\.OUT drives dsp\.HL\+ past its limit: 9 V clean/);
  });

  describe('is offered a converter of the catalogue', () => {
    const offered = (to: string, ...outputs: readonly (string | null)[]) =>
      /in the catalogue: (\w+)\)/.exec(
        driven({}, ({ parts }) => {
          const dsp = entry(parts, 'dsp');
          if (dsp.kind !== 'processor') throw new Error('The part is a processor.');
          parts.halver = {
            ...dsp,
            terminals: {
              IN: { role: 'signal-in', joint: 'phono', 'signal-range': { from: '1 V', to } },
              ...Object.fromEntries(
                outputs.map((signal, k) => [
                  `OUT${k}`,
                  {
                    role: 'signal-out' as const,
                    joint: 'phono' as const,
                    ...(signal !== null && { signal }),
                  },
                ]),
              ),
            },
          };
        })?.remedy ?? '',
      )?.[1];

    test('that takes what arrives, and gives no more at any output than the input takes', () => {
      expect(offered('9 V', '4 V')).toBe('halver');
      expect(offered('8.9 V', '4 V')).toBeUndefined();
      expect(offered('9 V', '4.1 V')).toBeUndefined();
      expect(offered('9 V', '4 V', '5 V')).toBeUndefined();
    });

    test('whose outputs are told, and that has one', () => {
      expect(offered('9 V', null)).toBeUndefined();
      expect(offered('9 V')).toBeUndefined();
    });
  });
});

describe('a small speaker', () => {
  test('without a high-pass is told as that, and of no corner that is too low', () => {
    const bare = filtered('amp.1');
    expect(found('high-pass-too-low', bare)).toEqual([]);
    expect(found('small-speaker-without-high-pass', bare).map(({ message }) => message)).toEqual([
      'amp.1 drives tweeter (tweeter) without a high-pass',
    ]);
  });
});

describe('a vented box', () => {
  const message = (...filters: Parameters<typeof filtered>[1][]) =>
    found('ported-without-subsonic', filtered('amp.2', ...filters)).map((told) => told.message);

  // 36 Hz: what stands below 18 Hz guards nothing.
  test('is told with the filter that cuts highest of those that guard nothing', () => {
    expect(message(filter('subsonic', 12), filter('high-pass', 17))).toEqual([
      expect.stringMatching(/ with a high-pass at 17 Hz, too low to guard it/),
    ]);
    expect(message(filter('subsonic', 17), filter('high-pass', 12))).toEqual([
      expect.stringMatching(/ with a subsonic filter at 17 Hz, too low to guard it/),
    ]);
    expect(message()).toEqual([expect.stringMatching(/ without a subsonic filter: /)]);
  });

  test('whose tuning nobody knows is to be guarded at a share of it', () => {
    const told = found(
      'ported-without-subsonic',
      about({
        content: (content) => {
          delete partIn(content, 'vented', 'enclosure').tuning;
        },
        plan: (plan) => {
          channel(plan, 'amp.2').filters = [];
        },
      }),
    );
    expect(told.map(({ remedy }) => remedy)).toEqual([
      expect.stringMatching(/at 70 % to 80 % of the tuning of the box, 24 dB per octave/),
    ]);
  });
});

describe('a filter that a knob makes', () => {
  const asked = (corner: string) =>
    found(
      'filter-not-made',
      aboutContent((content) => askOfKnob(content, corner, corner)),
    ).length;

  test('is made up to either of its stops', () => {
    expect(asked('50 Hz')).toBe(0);
    expect(asked('250 Hz')).toBe(0);
    expect(asked('49.9 Hz')).toBeGreaterThan(0);
    expect(asked('250.1 Hz')).toBeGreaterThan(0);
  });
});
