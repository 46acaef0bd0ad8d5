import type { PlanFilter } from '../../../../lib/model/plan/index.ts';
import { processorKnob } from '../../audio/low-pass-knob.ts';
import { about, aboutContent, aboutPlan, partIn } from '../../case.ts';
import { channel, control, filter } from '../../changes.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A channel behind a filter of the processor and one of the amplifier itself. */
const both = (processor: PlanFilter, amplifier: PlanFilter) => () =>
  aboutPlan((plan) => {
    channel(plan, 'amp.1').filters = [processor, { ...amplifier, where: 'amp.CH1' }];
  });

/** The amplifier gets a switch and a knob for a high-pass of second order, on channel 1 or on both. */
export function withHighPass(
  content: Written,
  asked: { order: number; corner: string },
  channels: readonly string[] = ['1'],
): void {
  const { controls } = partIn(content, 'two-channel', 'amplifier');
  if (!controls) throw new Error('The amplifier has controls.');
  const own = { panel: 'left' as const, channels: [...channels], why: 'small cones are kept from bass' };
  controls.XOVER = {
    ...own,
    what: 'crossover-mode',
    form: 'switch',
    positions: ['FULL', 'HPF'],
    safe: 'HPF',
    filter: { type: 'butterworth', order: 2, passes: { HPF: 'high-pass' } },
  };
  controls.FREQ = {
    ...own,
    what: 'crossover',
    form: 'knob',
    safe: '80 Hz',
    filter: { range: { from: '50 Hz', to: '500 Hz' } },
  };
  const { amp } = content.job.devices;
  if (!amp) throw new Error('The job has the amplifier.');
  amp.filters = { 'CH1+': [{ pass: 'high-pass', type: 'butterworth', ...asked }] };
}

const highPass = { pass: 'high-pass', type: 'butterworth', order: 2, corner: '80 Hz' } as const;

type AskedFilters = NonNullable<Written['job']['devices'][string]['filters']>;

function askedOfAmp({ job }: Written, filters: AskedFilters): void {
  Object.assign(job.devices.amp ?? {}, { filters });
}

function askedOfDsp({ job }: Written, filters: AskedFilters): void {
  Object.assign(job.devices.dsp ?? {}, { filters });
}

/** The processor is asked for a high-pass at 80 Hz, and its menu is as said. */
function inMenu(
  content: Written,
  {
    range,
    types,
  }: { readonly range?: [string, string]; readonly types?: ('butterworth' | 'linkwitz-riley')[] },
): void {
  const dsp = partIn(content, 'dsp', 'processor');
  if (range) dsp['filter-range'] = { from: range[0], to: range[1] };
  if (types) dsp['filter-types'] = types;
  askedOfDsp(content, { OUT1: [highPass] });
}

/** The amplifier gets a boost, which is to stand as said after commissioning. */
function withBoost(
  content: Written,
  state: string | null,
  boost?: { centre: string; range: { from: string; to: string } },
): void {
  const { controls } = partIn(content, 'two-channel', 'amplifier');
  const { amp } = content.job.devices;
  if (!controls || !amp) throw new Error('The job has an amplifier with controls.');
  controls.BOOST = {
    what: 'boost',
    form: 'knob',
    panel: 'left',
    safe: 'fully down',
    why: 'it adds to the gain',
    ...(boost && { boost }),
  };
  if (state !== null) amp['after-commissioning'] = { BOOST: state };
}

export const filtersInPathCases = {
  // Two Butterworth filters at one corner are 3.01 dB down each there, 6.02 dB together; their slopes add.
  'filtered-twice': {
    fires: [
      {
        name: 'processor and amplifier both at 80 Hz',
        about: both(filter('high-pass', 80, 4), filter('high-pass', 80, 2)),
        level: 'caution',
        subject: 'amp.1',
        says: /6 dB at 80 Hz, where one gives 3 dB, and to 36 dB per octave/,
      },
      {
        name: 'a low-pass half an octave above the other',
        about: both(filter('low-pass', 80, 4), filter('low-pass', 90, 2)),
        level: 'caution',
        subject: 'amp.1',
      },
      {
        name: 'a subsonic filter and a high-pass cut the same end',
        about: both(filter('high-pass', 30, 4), filter('subsonic', 28, 4)),
        level: 'caution',
        subject: 'amp.1',
      },
    ],
    quiet: [
      {
        name: 'the knob of the amplifier far out of the way',
        about: both(filter('low-pass', 80, 4), filter('low-pass', 250, 4)),
      },
      {
        name: 'a band-pass is one filter at each end',
        about: both(filter('high-pass', 80, 4), filter('low-pass', 80, 4)),
      },
    ],
  },
  'control-final-unknown': {
    fires: [
      {
        name: 'a control of which nothing tells',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(control(plan, 'GAIN').final, { state: null });
          }),
        level: 'caution',
        subject: 'amp.GAIN',
      },
    ],
    quiet: [{ name: 'every state known', about: () => about() }],
  },
  'filter-not-made': {
    fires: [
      {
        name: 'another order than the switch makes',
        about: () => aboutContent((content) => withHighPass(content, { order: 4, corner: '80 Hz' })),
        level: 'caution',
        subject: 'amp',
        says: /makes Butterworth of order 2/,
      },
      {
        name: 'a corner past the stop of the knob',
        about: () => aboutContent((content) => withHighPass(content, { order: 2, corner: '3 kHz' })),
        level: 'caution',
        subject: 'amp',
        says: /FREQ goes from 50 Hz to 500 Hz/,
      },
      {
        name: 'a switch that the job leaves at full',
        about: () =>
          aboutContent((content) => {
            withHighPass(content, { order: 2, corner: '80 Hz' });
            Object.assign(content.job.devices.amp ?? {}, { 'after-commissioning': { XOVER: 'FULL' } });
          }),
        level: 'stop',
        subject: 'amp',
        says: /amp makes no high-pass on channel 1: XOVER and FREQ stand where all is let through/,
        toDo: /take it out, or set the control of amp to make it/,
      },
      {
        name: 'an amplifier whose part has no control for a filter, behind a processor that makes one',
        about: () =>
          aboutContent((content) => {
            askedOfAmp(content, { 'CH1+': [highPass] });
          }),
        level: 'stop',
        subject: 'amp',
        path: '/devices/amp/filters/CH1+',
        says: /^amp.CH1\+ is to have a high-pass \(Butterworth, order 2\) at 80 Hz, but its part two-channel has no control and no menu for a filter$/,
        toDo: /take it out of amp and write it under filters: at dsp.OUT1, which can make it; where the leaflet of two-channel has a high-pass, write it into that part/,
      },
      {
        name: 'the same behind a processor that makes none, told once for two channels',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'dsp', 'processor')['filter-orders'];
            askedOfAmp(content, { 'CH1+': [highPass], 'CH2+': [highPass] });
          }),
        level: 'stop',
        subject: 'amp',
        says: /^amp.CH1\+ and amp.CH2\+ are to have a high-pass/,
        toDo: /put into its path a processor or an amplifier with a high-pass, or a line lead with one in it/,
      },
      {
        name: 'a pass that the control of the channel does not make',
        about: () =>
          aboutContent((content) => {
            withHighPass(content, { order: 2, corner: '80 Hz' });
            askedOfAmp(content, { 'CH1+': [{ ...highPass, pass: 'low-pass' }] });
          }),
        level: 'stop',
        subject: 'amp',
        says: /amp makes no low-pass on channel 1: XOVER and FREQ stand where all is let through/,
      },
      {
        name: 'a processor that makes none, such as a converter of the level',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'dsp', 'processor')['filter-orders'];
            askedOfDsp(content, { OUT1: [highPass] });
          }),
        level: 'stop',
        subject: 'dsp',
        path: '/devices/dsp/filters/OUT1',
        says: /its part dsp has no control and no menu for a filter/,
      },
      {
        name: 'an output that the menu of the processor does not reach',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'dsp', 'processor')['filter-outputs'] = ['OUT2'];
            askedOfDsp(content, { OUT1: [highPass] });
          }),
        level: 'stop',
        subject: 'dsp',
        says: /dsp makes no high-pass at OUT1$/,
      },
      {
        name: 'an input of the processor',
        about: () => aboutContent((content) => askedOfDsp(content, { IN: [highPass] })),
        level: 'stop',
        subject: 'dsp',
        says: /IN is no output of dsp/,
      },
      {
        name: 'a corner just past the menu of the processor',
        about: () => aboutContent((content) => inMenu(content, { range: ['81 Hz', '20 kHz'] })),
        level: 'caution',
        subject: 'dsp',
        says: /its corner goes from 81 Hz to 20000 Hz/,
      },
      {
        name: 'a shape that the menu does not have',
        about: () => aboutContent((content) => inMenu(content, { types: ['linkwitz-riley'] })),
        level: 'caution',
        subject: 'dsp',
        says: /dsp makes Linkwitz-Riley/,
      },
      {
        name: 'another corner than the other channel has, of one knob for both',
        about: () =>
          aboutContent((content) => {
            withHighPass(content, { order: 2, corner: '80 Hz' }, ['1', '2']);
            Object.assign(content.job.devices.amp?.filters ?? {}, {
              'CH2+': [{ pass: 'high-pass', type: 'butterworth', order: 2, corner: '160 Hz' }],
            });
          }),
        level: 'caution',
        subject: 'amp',
        path: '/devices/amp/filters/CH2+',
        says: /but XOVER and FREQ stand at 80 Hz for channel 1, and they set channels 1 and 2 together/,
      },
      {
        name: 'an order that the processor does not make',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'dsp', 'processor')['filter-orders'] = [2, 4];
            Object.assign(content.job.devices.dsp ?? {}, {
              filters: { OUT1: [{ pass: 'high-pass', type: 'butterworth', order: 3, corner: '3 kHz' }] },
            });
          }),
        level: 'caution',
        subject: 'dsp',
        says: /makes orders 2 and 4/,
      },
    ],
    quiet: [
      {
        name: 'a filter that the switch makes',
        about: () => aboutContent((content) => withHighPass(content, { order: 2, corner: '80 Hz' })),
      },
      {
        name: 'one corner for both channels of a knob',
        about: () =>
          aboutContent((content) => {
            withHighPass(content, { order: 2, corner: '80 Hz' }, ['1', '2']);
            const filters = content.job.devices.amp?.filters ?? {};
            Object.assign(filters, { 'CH2+': filters['CH1+'] });
          }),
      },
      { name: 'an amplifier without filters, of which none is asked', about: () => about() },
      {
        name: 'a corner at the end of the menu of the processor',
        about: () =>
          aboutContent((content) => inMenu(content, { range: ['80 Hz', '20 kHz'], types: ['butterworth'] })),
      },
      {
        name: 'an amplifier that makes it in its menu',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'two-channel', 'amplifier')['filter-orders'] = [2];
            partIn(content, 'two-channel', 'amplifier')['filter-outputs'] = ['CH1'];
            askedOfAmp(content, { 'CH1+': [highPass] });
          }),
      },
      {
        name: 'an active crossover whose knob is of that output',
        about: () =>
          aboutContent((content) => {
            const dsp = partIn(content, 'dsp', 'processor');
            delete dsp['filter-orders'];
            dsp.controls = { LOW: { ...processorKnob, channels: ['OUT2'] } };
            askedOfDsp(content, { OUT2: [{ ...highPass, pass: 'low-pass' }] });
          }),
      },
    ],
  },
  // The reading of a gain allows for a boost whose height is known.
  'boost-unknown': {
    fires: [
      {
        name: 'half-way, and the part tells nothing',
        about: () => aboutContent((content) => withBoost(content, 'half-way')),
        level: 'caution',
        subject: 'amp.BOOST',
        says: /BOOST on amp is to stand at "half-way"/,
        toDo: /boost: with centre and range/,
      },
    ],
    quiet: [
      { name: 'at its safe stop', about: () => aboutContent((content) => withBoost(content, null)) },
      { name: 'a level in dB', about: () => aboutContent((content) => withBoost(content, '6 dB')) },
      {
        name: 'half-way of a range that is known',
        about: () =>
          aboutContent((content) =>
            withBoost(content, 'half-way', { centre: '45 Hz', range: { from: '0 dB', to: '12 dB' } }),
          ),
      },
    ],
  },
} satisfies RuleCases;
