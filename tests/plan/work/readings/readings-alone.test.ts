import { describe, expect, test } from 'vitest';
import type { PlanInput, PlanOutput, SourceReading } from '../../../../lib/model/plan/index.ts';
import { predictions } from '../../../../lib/plan/work/readings/predictions.ts';
import { sourceLines } from '../../../../lib/plan/work/readings/source-lines.ts';
import { surveyLines } from '../../../../lib/plan/work/readings/survey-lines.ts';
import { around, isWithin } from '../../../../lib/plan/work/readings/tolerance.ts';
import { samplePlan } from '../../../publish/sample/sample-plan.ts';
import { byId, jobOf, partIn } from '../../../rules/case.ts';
import { written } from '../../../rules/content.ts';

const job = () => jobOf(written());
const { audio, power, items, boards } = samplePlan();

describe('the limits of a reading', () => {
  test('are as far on either side of what is predicted, and none where nothing is', () => {
    expect(around(12, 0.5)).toEqual({ least: 11.5, greatest: 12.5 });
    expect(around(-0.1, 0.5)).toEqual({ least: -0.6, greatest: 0.4 });
    expect(around(null, 0.5)).toEqual({ least: null, greatest: null });
  });

  test('do not ask what is above zero to be below it', () => {
    expect(around(0.1, 0.5)).toEqual({ least: 0, greatest: 0.6 });
    expect(around(0, 0.5)).toEqual({ least: 0, greatest: 0.5 });
  });

  test('are kept on both sides, the very limit with them', () => {
    const limits = { least: 1, greatest: 2 };
    expect([0.999, 1, 1.5, 2, 2.001].map((reading) => isWithin(limits, reading))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect(isWithin({ least: 1, greatest: null }, 1000)).toBe(true);
    expect(isWithin({ least: null, greatest: 2 }, -1000)).toBe(true);
    expect(isWithin({ least: null, greatest: null }, 1)).toBeNull();
  });
});

describe('what is read before the plan stands', () => {
  const lines = (outputs: readonly PlanOutput[] = [], own = job()) =>
    surveyLines(own, { ...audio, outputs: [...outputs], inputs: [] });
  const known: PlanOutput = {
    ...{ id: 'radio.OUT', item: 'radio', feeds: ['dsp.IN'], missing: [] },
    ...{ form: 'analogue', fromHz: 30, toHz: 18000, polarity: 'normal', cleanVoltageV: 2, offsetV: 0 },
    ...{ equalising: 'none', loadSensing: false, noiseCancelling: false, chimes: false },
  };

  test('is the battery, with the figures that its limits are', () => {
    const { rules } = job();
    const [rest, charging, ripple] = lines();
    expect(rest).toMatchObject({
      ...{ id: 'battery-rest', predicted: rules['voltage-rested'].value, when: 'survey' },
      greatest: rules['check-in-rested-most'].value,
    });
    expect(charging?.figures).toEqual([
      ['X', rules['voltage-rated'].value, 'V'],
      ['least', rules['check-in-charging-least'].value, 'V'],
      ['greatest', rules['check-in-charging-most'].value, 'V'],
    ]);
    expect(ripple).toMatchObject({ predicted: null, least: null, greatest: rules['check-in-ripple'].value });
  });

  test('has no greatest for lithium, which rests higher than lead', () => {
    const content = written();
    partIn(content, 'agm', 'battery').chemistry = 'lithium';
    expect(lines([], jobOf(content))[0]?.greatest).toBeNull();
  });

  test('is what is missing of an output that feeds the job, and nothing of one that is known or feeds nothing', () => {
    const of = (output: PlanOutput) =>
      lines([output])
        .map(({ id }) => id)
        .slice(3);
    expect(of(known)).toEqual([]);
    expect(of({ ...known, missing: ['bandwidth'] })).toEqual(['radio.OUT.lowest', 'radio.OUT.highest']);
    expect(of({ ...known, missing: ['direct-current offset'] })).toEqual(['radio.OUT.offset']);
    expect(of({ ...known, cleanVoltageV: null })).toEqual(['radio.OUT.clean-voltage']);
    expect(of({ ...known, cleanVoltageV: null, feeds: [] })).toEqual([]);
  });

  test('is the clean voltage within a quarter of what its part says', () => {
    const input: PlanInput = {
      ...{ input: 'dsp.IN', output: 'radio.OUT', wire: 'signal', level: 'low', sourceV: 4 },
      ...{ leastV: null, greatestV: null, headroomDb: null, reserveDb: null, verdict: 'unknown' },
    };
    const inputs = [{ ...input, output: 'radio.REAR', sourceV: 9 }, input];
    const found = surveyLines(job(), { ...audio, outputs: [{ ...known, cleanVoltageV: null }], inputs });
    expect(byId(found, 'radio.OUT.clean-voltage')).toMatchObject({
      ...{ kind: 'source', predicted: 4, unit: 'V', least: 3, greatest: 5 },
      figures: [['X', 4, 'V']],
    });
  });
});

describe('what is predicted of a plan', () => {
  const [channel] = audio.channels;
  if (!channel) throw new Error('The sample plan has a channel.');
  const plugOf = (own: Partial<typeof channel>) =>
    predictions(job(), {
      power,
      items,
      boards,
      audio: { ...audio, channels: [{ ...channel, ...own }] },
    }).find(({ id }) => id === `${channel.id}.dc-resistance`);

  test('a plug reads half-way between the least and the most of its coils', () => {
    expect(plugOf({ loadOhm: 4, dcResistanceOhm: { fromOhm: 3, toOhm: 3.4 } })).toMatchObject({
      ...{ predicted: 3.2, least: 2.9, greatest: 3.5, unit: 'ohm' },
      figures: [
        ['from', 3, 'ohm', expect.any(String)],
        ['to', 3.4, 'ohm', expect.any(String)],
      ],
    });
  });

  // An ohmmeter of tenths shows 0.85 ohm as 0.8 or 0.9, and 0.95 as 0.9 or 1.0.
  test('a plug is right at every tenth that a meter may show for its coils', () => {
    const [narrow, one] = [
      [0.85, 0.95],
      [0.9, 0.9],
    ].map(([fromOhm = 0, toOhm = 0]) => plugOf({ loadOhm: 1, dcResistanceOhm: { fromOhm, toOhm } }));
    expect(narrow).toMatchObject({ least: 0.8, greatest: 1 });
    expect(one).toMatchObject({ least: 0.8, greatest: 1 });
  });

  test('a plug whose coils are not known is read all the same, against nothing; without a load there is none', () => {
    expect(plugOf({ loadOhm: 4, dcResistanceOhm: null })).toMatchObject({
      ...{ predicted: null, least: null, greatest: null, figures: [] },
    });
    expect(plugOf({ loadOhm: null, dcResistanceOhm: null })).toBeUndefined();
  });

  test('a board at first power draws what its devices idle at: from 0.4 of it, and its plus is open to ground', () => {
    const firstPower = [{ board: 'main', idleA: 2, limitA: 5, oneByOne: false }];
    const found = predictions(job(), { power: { ...power, firstPower }, items, boards, audio });
    expect(byId(found, 'main.idle-current')).toMatchObject({
      ...{ predicted: 2, unit: 'A', least: 0.8, when: 'bench' },
      figures: [['X, the idle currents of its devices', 2, 'A']],
    });
    expect(byId(found, 'main.positive-to-ground')).toMatchObject({ least: 1000, greatest: null });
    const beside = (idleA: number) => {
      const late = [{ board: 'main', idleA, limitA: 3, oneByOne: false, late: ['amp'] }];
      return predictions(job(), { power: { ...power, firstPower: late }, items, boards, audio });
    };
    expect(byId(beside(0.4), 'main.idle-current').what).toMatch(/all turned on, without amp, no signal$/);
    // Nothing that draws is on the board: there is no current to read.
    expect(beside(0).map(({ id }) => id)).not.toContain('main.idle-current');
    expect(beside(0).map(({ id }) => id)).toContain('main.positive-to-ground');
  });

  const musicDrops = (feedDropV: number | null) => {
    const [drop] = power.drops;
    const [point] = power.points;
    if (!drop || !point) throw new Error('The sample plan has drops.');
    const music = { ...point, name: 'music' as const, title: 'Music', reach: 'engine at idle' };
    const drops = [
      { ...drop, item: 'amp', point: 'music' as const, voltageV: 13, feedDropV, groundDropV: 0.02 },
    ];
    return predictions(job(), { power: { ...power, points: [music], drops }, items, boards, audio }).filter(
      ({ id }) => id.startsWith('amp.') && id.endsWith('.music'),
    );
  };

  test('while it plays the drop of feed and ground is read beside the voltage, where it is known', () => {
    expect(musicDrops(0.1).map(({ id }) => id)).toEqual([
      'amp.voltage.music',
      'amp.feed-drop.music',
      'amp.ground-drop.music',
    ]);
    expect(musicDrops(null).map(({ id }) => id)).toEqual(['amp.voltage.music', 'amp.ground-drop.music']);
  });
});

describe('the limits of what is predicted', () => {
  const { rules } = job();
  const [drop] = power.drops;
  const [point] = power.points;
  if (!drop || !point) throw new Error('The sample plan has drops.');
  const voltage = (voltageV: number) => {
    const music = { ...point, name: 'music' as const, title: 'Music', reach: 'engine at idle' };
    const drops = [{ ...drop, item: 'amp', point: 'music' as const, voltageV, bands: undefined }];
    const found = predictions(job(), { power: { ...power, points: [music], drops }, items, boards, audio });
    return byId(found, 'amp.voltage.music');
  };
  const meterV = rules['reading-tolerance'].value;

  test('are what the meter may add on either side, and never below zero of what is above it', () => {
    expect(voltage(13)).toMatchObject({ least: 13 - meterV, greatest: 13 + meterV });
    expect(voltage(meterV / 2)).toMatchObject({ least: 0, greatest: expect.closeTo(1.5 * meterV, 9) });
    expect(voltage(0)).toMatchObject({ least: 0, greatest: meterV });
    // A lead that is the wrong way round reads below zero, and may.
    expect(voltage(-meterV / 2)).toMatchObject({
      least: expect.closeTo(-1.5 * meterV, 9),
      greatest: expect.closeTo(meterV / 2, 9),
    });
  });

  test('of a delay are the house tolerance; one that no output holds is not read', () => {
    const [speaker] = audio.speakers;
    if (!speaker) throw new Error('The sample plan has a speaker.');
    const delays = (...own: readonly Partial<typeof speaker>[]) =>
      predictions(job(), {
        ...{ power, items, boards },
        audio: {
          ...audio,
          speakers: own.map((one) => ({ ...speaker, ...one })),
          sharedDelays: [
            {
              ...{ outputs: ['dsp.OUT1', 'dsp.OUT2'], delayMs: 2, delaySamples: 96 },
              off: [{ speaker: 'left', askedMs: 2.1, offMs: -0.1, offM: -0.034 }],
            },
          ],
        },
      }).filter(({ kind }) => kind === 'delay');
    const toleranceMs = 1000 * rules['delay-tolerance'].value;
    const [left, right] = delays(
      { id: 'left', delayMs: 2, delaySamples: 96 },
      { id: 'right', delayMs: 3, delaySamples: 144 },
    );
    expect(left).toMatchObject({
      ...{ id: 'left.delay', predicted: 2, unit: 'ms', when: 'delays' },
      least: expect.closeTo(2 - toleranceMs, 9),
      greatest: expect.closeTo(2 + toleranceMs, 9),
      what: 'left: delay as set, 96 samples, shared at dsp.OUT1 and dsp.OUT2',
    });
    expect(right?.what).toBe('right: delay as set, 144 samples');
    expect(delays({ delayMs: null, delaySamples: 96 })).toEqual([]);
    expect(delays({ delayMs: 2, delaySamples: null })).toEqual([]);
  });

  // Common practice, no source: neither side of a bridged output may be grounded, nor an input for it be shorted.
  test('of noise is read with inputs for speaker level left open, and with line inputs shorted', () => {
    const { amplifier = '' } = audio.channels[0] ?? {};
    const at = (level: PlanInput['level']) => {
      const input: PlanInput = {
        ...{ input: `${amplifier}.IN1`, output: 'radio.OUT', wire: 'signal', level, sourceV: 4 },
        ...{ leastV: null, greatestV: null, headroomDb: null, reserveDb: null, verdict: 'unknown' },
      };
      const found = predictions(job(), { power, items, boards, audio: { ...audio, inputs: [input] } });
      return byId(found, `${amplifier}.noise-shorted`).what;
    };
    expect(at('high')).toMatch(/left open, none shorted or grounded, radio off/);
    expect(at('high')).not.toMatch(/shorting plugs/);
    expect(at('low')).toMatch(/shorting plugs/);
  });

  test('of noise are those of the house, read in millivolts', () => {
    const found = predictions(job(), { power, items, boards, audio }).filter(({ kind }) => kind === 'noise');
    expect(found.length).toBeGreaterThan(0);
    for (const { id, unit, greatest, figures } of found) {
      const limit = rules[id.endsWith('.noise-running') ? 'noise-running' : 'noise-quiet'].value * 1000;
      expect({ unit, greatest, figures }).toEqual({
        ...{ unit: 'mV', greatest: limit },
        figures: [['greatest', limit, 'mV']],
      });
    }
  });

  test('of charging go by what was read in the vehicle, then by what its alternator is set to, then by the house', () => {
    const charging = (setPoint?: string, readV?: string, variable = false) => {
      const content = written();
      const alternator = Object.values(content.parts).find(({ kind }) => kind === 'alternator');
      if (alternator?.kind !== 'alternator') throw new Error('There is an alternator.');
      if (setPoint !== undefined) alternator['set-point'] = setPoint;
      if (variable) alternator['variable-voltage'] = true;
      if (readV !== undefined) content.vehicle['charging-voltage'] = readV;
      const [, line] = surveyLines(jobOf(content), { ...audio, outputs: [], inputs: [] });
      return line?.predicted;
    };
    expect(charging()).toBe(rules['voltage-rated'].value);
    expect(charging('14.7 V')).toBe(14.7);
    expect(charging('14.7 V', '14.1 V')).toBe(14.1);
    expect(charging('14.7 V', '14.1 V', true)).toBeNull();
  });
});

describe('what is read at a source', () => {
  test('has for figures what the meter and one joint may add, in volts; in amperes what the clamp may', () => {
    const { rules } = job();
    const reading = (own: Partial<SourceReading>): SourceReading => ({
      ...{ item: 'relay', what: 'contact-drop', point: 'cruise', at: ['relay.IN', 'relay.OUT'] },
      ...{ value: 0.1, band: null, unit: 'V' },
      ...own,
    });
    const figures = (own: Partial<SourceReading>) =>
      sourceLines({ rules }, { items, power: { ...power, sourceReadings: [reading(own)] } })[0]?.figures;
    expect(figures({})).toEqual(
      expect.arrayContaining([
        ['X', 0.1, 'V'],
        ['what one joint may lose', rules['joint-drop-limit'].value, 'V'],
      ]),
    );
  });
});
