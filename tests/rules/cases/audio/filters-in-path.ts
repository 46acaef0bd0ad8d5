import type { PlanFilter } from '../../../../lib/model/plan/index.ts';
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
        level: 'caution',
        subject: 'amp',
        says: /amp makes no high-pass on channel 1: XOVER and FREQ stand where all is let through/,
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
      { name: 'an amplifier whose filters are not known', about: () => about() },
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
