import { describe, expect, it } from 'vitest';
import type { PlanInput } from '../../../lib/model/plan/index.ts';
import { planControls } from '../../../lib/plan/work/controls.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { jobOf, partIn } from '../../rules/case.ts';
import { type Written, written } from '../../rules/content.ts';
import { planned } from '../planned.ts';

/** The amplifier of the small job with the knobs and switches that amplifiers of the trade have. */
function withFilters({ amp, dsp = [], final = {}, before }: Filters): (content: Written) => void {
  return (content) => {
    const { controls } = partIn(content, 'two-channel', 'amplifier');
    if (!controls) throw new Error('The amplifier has controls.');
    const own = { panel: 'left' as const, why: 'small cones are kept from bass' };
    controls.XOVER = {
      ...own,
      what: 'crossover-mode',
      form: 'switch',
      positions: ['FULL', 'HPF'],
      channels: ['1'],
      safe: 'HPF',
      filter: { type: 'butterworth', order: 2, passes: { HPF: 'high-pass' } },
    };
    controls.FREQ = {
      ...own,
      what: 'crossover',
      form: 'knob',
      channels: ['1'],
      safe: '80 Hz',
      filter: { range: { from: '50 Hz', to: '500 Hz' } },
    };
    controls['LOW-PASS'] = {
      ...own,
      what: 'crossover',
      form: 'knob',
      channels: ['2'],
      safe: '80 Hz',
      filter: {
        type: 'butterworth',
        order: 4,
        pass: 'low-pass',
        range: { from: '40 Hz', to: '250 Hz' },
      },
    };
    controls.GAIN = { ...controls.GAIN, ...own, what: 'gain', form: 'knob', safe: 'fully down' };
    const { devices } = content.job;
    Object.assign(devices.amp ?? {}, { filters: amp, 'after-commissioning': final });
    if (before) Object.assign(devices.amp ?? {}, { settings: before });
    Object.assign(devices.dsp ?? {}, { filters: { OUT1: dsp } });
  };
}

interface Filters {
  readonly amp: Readonly<Record<string, readonly Written80[]>>;
  readonly dsp?: readonly Written80[];
  readonly final?: Readonly<Record<string, string>>;
  readonly before?: Readonly<Record<string, string>>;
}
type Written80 = { pass: 'high-pass' | 'low-pass'; type: 'butterworth'; order: number; corner: string };

const highPass = (corner: string): Written80 => ({
  pass: 'high-pass',
  type: 'butterworth',
  order: 2,
  corner,
});
const finalsOf = (filters: Filters) => {
  const { plan } = planned(withFilters(filters));
  const of = (name: string) =>
    plan.controls.find(({ item, control }) => item === 'amp' && control === name)?.final;
  const path = (id: string) =>
    plan.audio.channels
      .find((channel) => channel.id === id)
      ?.filters.map(({ where, pass, cornerHz }) => `${where} ${pass} ${cornerHz}`);
  return { plan, of, path };
};

describe('the reason for a preset', () => {
  const whyOf = (before: Readonly<Record<string, string>>) =>
    finalsOf({ amp: {}, before }).plan.controls.find(({ control }) => control === 'XOVER')?.why;

  it('is that of its part for the safe state, and never for another that the job asks for', () => {
    expect(whyOf({ XOVER: 'HPF' })).toBe('small cones are kept from bass');
    expect(whyOf({ XOVER: 'FULL' })).toBe('as the job says');
  });
});

describe('the state of a control after commissioning', () => {
  it('of a filter before the amplifier is full at the amplifier, so that no path is filtered twice', () => {
    const { of, path } = finalsOf({ amp: {}, dsp: [highPass('3 kHz')] });
    expect(of('XOVER')).toMatchObject({ state: 'FULL', during: 'filters', chosen: 'computed' });
    expect(of('FREQ')).toMatchObject({ state: '80 Hz', during: 'presets' });
    expect(path('amp.1')).toEqual(['dsp.OUT1 high-pass 3000']);
  });

  it('of a filter in the amplifier is its switch and its corner', () => {
    const { of, path } = finalsOf({ amp: { 'CH1+': [highPass('120 Hz')] } });
    expect(of('XOVER')).toMatchObject({ state: 'HPF', during: 'presets' });
    expect(of('FREQ')).toMatchObject({ state: '120 Hz', during: 'filters' });
    expect(path('amp.1')).toEqual(['amp.CH1+ high-pass 120']);
  });

  it('of a knob without an off position is its far stop, and its filter is in the path all the same', () => {
    const { of, path } = finalsOf({ amp: {} });
    expect(of('LOW-PASS')).toMatchObject({ state: '250 Hz', during: 'filters' });
    expect(path('amp.2')).toEqual(['amp.CH2 low-pass 250']);
  });

  it('is what the job says, and what that leaves in is in the path', () => {
    const { of, path } = finalsOf({ amp: {}, dsp: [highPass('80 Hz')], final: { XOVER: 'HPF' } });
    expect(of('XOVER')).toMatchObject({ state: 'HPF', chosen: 'given' });
    expect(path('amp.1')).toEqual(['dsp.OUT1 high-pass 80', 'amp.CH1 high-pass 80']);
  });

  it('of a gain is the lesser voltage first where its channels differ', () => {
    const { of, plan } = finalsOf({ amp: {}, dsp: [highPass('3 kHz')] });
    for (const { id, gainVoltageV } of plan.audio.channels)
      expect(of('GAIN')?.state).toContain(`${gainVoltageV} V at ${id.slice('amp.'.length)}`);
    expect(of('GAIN')?.during).toBe('gains');
  });

  it('is set once: where it stays by the step of the presets, else by one step of setting up', () => {
    const { plan } = finalsOf({ amp: {}, dsp: [highPass('3 kHz')] });
    for (const { item, control, final } of plan.controls) {
      const act = `${final.during === 'presets' ? 'set' : 'finish'}:${item}.${control}`;
      expect(
        plan.steps.filter(({ acts }) => acts.includes(act)),
        act,
      ).toHaveLength(1);
    }
  });
});

/** The small job with a switch for a subsonic on one channel of its amplifier; its part calls ON the safe state. */
const subsonicOf = (own: { before?: string; final?: string; asked?: boolean }) => {
  const { plan } = planned((content) => {
    const { controls } = partIn(content, 'two-channel', 'amplifier');
    if (!controls) throw new Error('The amplifier has controls.');
    controls.SUBSONIC = {
      ...{ what: 'subsonic', form: 'switch', panel: 'left', channels: ['1'], positions: ['OFF', 'ON'] },
      ...{ safe: 'ON', why: 'travel below the box is wasted' },
      filter: { type: 'butterworth', order: 4, passes: { ON: 'subsonic' }, corner: '20 Hz' },
    };
    const filter = { pass: 'subsonic', type: 'butterworth', order: 4, corner: '20 Hz' } as const;
    Object.assign(content.job.devices.amp ?? {}, {
      ...(own.asked && { filters: { CH1: [filter] } }),
      ...(own.before !== undefined && { settings: { SUBSONIC: own.before } }),
      ...(own.final !== undefined && { 'after-commissioning': { SUBSONIC: own.final } }),
    });
  });
  const control = plan.controls.find((one) => one.control === 'SUBSONIC');
  return {
    stands: [control?.preset, control?.final.state],
    why: control?.why,
    isSetLater: plan.steps.some(({ acts }) => acts.includes('finish:amp.SUBSONIC')),
    isUnsafe: control?.safe === false,
  };
};

// Common practice, no source: no speaker is on before the filters are set, so that nothing is guarded by it until then.
describe('a switch for a subsonic', () => {
  it('that nothing asks for is left off from the first, and no step turns it on and off', () => {
    const quiet = { stands: ['OFF', 'OFF'], isSetLater: false, isUnsafe: false };
    expect(subsonicOf({})).toMatchObject(quiet);
    expect(subsonicOf({}).why).toMatch(/no speaker is on before filters and gains are set/);
    expect(subsonicOf({ before: 'off' })).toMatchObject({ stands: ['off', 'OFF'], isUnsafe: false });
    expect(subsonicOf({ final: 'OFF', asked: true })).toMatchObject(quiet);
  });

  it('that the job asks for is on from the first and stays', () => {
    const on = { stands: ['ON', 'ON'], why: 'travel below the box is wasted', isSetLater: false };
    expect(subsonicOf({ asked: true })).toMatchObject(on);
    expect(subsonicOf({ final: 'ON' })).toMatchObject(on);
  });

  it('stands before first power as the job writes it, and off is told as not safe where it is to cut', () => {
    expect(subsonicOf({ before: 'ON' })).toMatchObject({ stands: ['ON', 'OFF'], isSetLater: true });
    expect(subsonicOf({ before: 'OFF', asked: true })).toMatchObject({ isSetLater: true, isUnsafe: true });
  });
});

describe('the state of a gain', () => {
  const [sample] = samplePlan().audio.channels;
  if (!sample) throw new Error('The sample plan has a channel.');
  const input: PlanInput = {
    ...{ input: '', output: 'radio.OUT', wire: 'signal', level: 'low', sourceV: null },
    ...{ leastV: null, greatestV: null, headroomDb: null, reserveDb: null, verdict: 'unknown' },
  };
  const channel = (name: string, own: Partial<typeof sample>) => ({
    ...sample,
    ...{ id: `amp.${name}`, amplifier: 'amp', loadOhm: 4, toneHz: 1000 },
    ...own,
  });
  const gain = { what: 'gain', form: 'knob', panel: 'left', why: 'no signal passes' } as const;
  const heard = (...channels: readonly ReturnType<typeof channel>[]) => {
    const content = written();
    partIn(content, 'two-channel', 'amplifier').controls = { GAIN: { ...gain, safe: 'fully down' } };
    partIn(content, 'dsp', 'processor').controls = { IN: { ...gain, safe: ' Fully Down ' } };
    const device = content.job.devices.dsp;
    if (device) device.settings = { IN: 'fully down' };
    return (sourceV: readonly (number | null)[]) => {
      const arriving = sourceV.map((value, k) => ({ ...input, input: `dsp.IN${k}`, sourceV: value }));
      const elsewhere = { ...input, input: 'amp.IN1', sourceV: 99 };
      return planControls(jobOf(content), { channels: [...channels], inputs: [...arriving, elsewhere] });
    };
  };
  const of = (controls: ReturnType<ReturnType<typeof heard>>, item: string) =>
    controls.find((one) => one.item === item);
  const amp = (...channels: readonly ReturnType<typeof channel>[]) =>
    of(heard(...channels)([]), 'amp')?.final;

  it('is one voltage for channels that are alike, and the first that is reached where they differ', () => {
    const both = { gainVoltageV: 17.3 };
    expect(amp(channel('1', both), channel('2', both))?.state).toBe('17.3 V at 1 and 2, 1000 Hz');
    expect(amp(channel('1', both), channel('2', { gainVoltageV: 12 }))).toMatchObject({
      state: '17.3 V at 1, 1000 Hz; 12 V at 2, 1000 Hz',
      why: 'by the meter: stop at the first reached',
    });
    const low = { ...both, toneHz: 50 };
    expect(amp(channel('1', both), channel('2', low))?.state).toBe(
      '17.3 V at 1, 1000 Hz; 17.3 V at 2, 50 Hz',
    );
  });

  it('is not known without a voltage, and stays where nothing is wired', () => {
    expect(amp(channel('1', { gainVoltageV: null }))).toMatchObject({
      ...{ state: null, why: 'no voltage is known for its channels' },
    });
    expect(amp(channel('1', { loadOhm: null }))?.state).toBe('stays fully down');
    expect(amp({ ...channel('1', { gainVoltageV: 5 }), id: 'other.1' })?.state).toBe('stays fully down');
  });

  it('before an amplifier takes the most that arrives at its own inputs', () => {
    const dsp = (...sourceV: readonly (number | null)[]) => of(heard()(sourceV), 'dsp')?.final.state;
    expect(dsp(2, 4, null)).toBe('just below clipping with 4 V at its inputs');
    expect(dsp(null)).toBe("just below clipping at the source's clean level");
  });

  it('that is written otherwise than its safe state, in capitals and spaces alone, is safe', () => {
    expect(of(heard()([]), 'dsp')).toMatchObject({ preset: 'fully down', safe: true });
  });
});
