import type { BuildPlan, PlanFilter } from '../../../lib/model/plan/index.ts';
import { about, aboutContent, aboutPlan, byId, entry, one, partIn } from '../case.ts';
import { sized } from '../plan.ts';
import type { RuleCases } from '../rule-case.ts';

const channel = (plan: BuildPlan, id: string) => byId(plan.audio.channels, id);
const speaker = (plan: BuildPlan, id: string) => byId(plan.audio.speakers, id);
const control = (plan: BuildPlan, name: string) => one(plan.controls, (each) => each.control === name);

const filter = (pass: PlanFilter['pass'], cornerHz: number, order = 4): PlanFilter => {
  return { where: 'dsp.OUT1', pass, type: 'butterworth', order, cornerHz };
};
const filtered = (id: string, ...filters: PlanFilter[]) =>
  aboutPlan((plan) => {
    channel(plan, id).filters = filters;
  });

export const soundCases: RuleCases = {
  // The maker's minimum load.
  'load-below-minimum': {
    fires: [
      {
        name: '1.9 ohm on 2 ohm',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1.9 })),
        level: 'stop',
        subject: 'amp.2',
        path: '/devices/amp',
      },
    ],
    quiet: [
      {
        name: '2 ohm on 2 ohm',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 2 })),
      },
    ],
  },
  // Ohm's law: without a load nothing can be said of the channel.
  'load-unknown': {
    fires: [
      {
        name: 'wired, load null',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: null })),
        level: 'stop',
        subject: 'amp.2',
      },
      {
        name: 'one terminal wired, no speaker reached',
        about: () =>
          aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: null, speakers: [] })),
        level: 'stop',
        subject: 'amp.2',
      },
      {
        name: 'a load of nothing',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 0 })),
        level: 'stop',
        subject: 'amp.2',
      },
    ],
    quiet: [
      {
        name: 'a channel that is left open',
        about: () =>
          about({
            content: ({ job }) => {
              delete job.links['speaker-2'];
            },
            plan: (plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: null, speakers: [] }),
          }),
      },
    ],
  },
  // Common practice, no source.
  'speaker-without-channel': {
    fires: [
      {
        name: 'a speaker that nothing drives',
        about: () =>
          aboutPlan((plan) => Object.assign(speaker(plan, 'sub'), { channel: null, polarity: 'unwired' })),
        level: 'stop',
        subject: 'sub',
      },
    ],
    quiet: [
      {
        name: 'a speaker whose coils are left open with a reason',
        about: () =>
          about({
            content: ({ job }) => {
              delete job.links['speaker-2'];
              job['left-open'] = { 'sub.C+': 'second stage', 'sub.C-': 'second stage' };
            },
            plan: (plan) => Object.assign(speaker(plan, 'sub'), { channel: null, polarity: 'unwired' }),
          }),
      },
    ],
  },
  // Common practice, no source.
  'polarity-reversed': {
    fires: [
      {
        name: 'reversed',
        about: () => aboutPlan((plan) => Object.assign(speaker(plan, 'sub'), { polarity: 'reversed' })),
        level: 'caution',
        subject: 'sub',
      },
    ],
    quiet: [{ name: 'normal', about: () => about() }],
  },
  // The maker's power.
  'power-over-speaker': {
    fires: [
      {
        name: '100 W on 80 W',
        about: () => aboutPlan((plan) => Object.assign(speaker(plan, 'tweeter'), { powerW: 100 })),
        level: 'note',
        subject: 'tweeter',
      },
    ],
    quiet: [
      {
        name: '80 W on 80 W',
        about: () => aboutPlan((plan) => Object.assign(speaker(plan, 'tweeter'), { powerW: 80 })),
      },
    ],
  },
  // Common practice, no source: at most 0.5 dB.
  'speaker-wire-loss': {
    fires: [
      {
        name: '0.6 dB',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { wireLossDb: 0.6 })),
        level: 'caution',
        subject: 'amp.2',
      },
    ],
    quiet: [
      {
        name: '0.5 dB',
        about: () => aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { wireLossDb: 0.5 })),
      },
    ],
  },
  // Common practice, no source: 12 AWG for 4 to 2 ohm, 10 AWG at 1 ohm.
  'bass-lead-thin': {
    fires: [
      {
        name: '14 AWG into 4 ohm',
        about: () =>
          aboutPlan((plan) => {
            byId(plan.wires, 'speaker-2.+').size = sized('14');
          }),
        level: 'caution',
        subject: 'speaker-2.+',
      },
      {
        name: '12 AWG into 1 ohm',
        about: () =>
          aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1, minimumOhm: 1 })),
        level: 'caution',
        subject: 'speaker-2.-',
        says: /10 AWG/,
      },
    ],
    quiet: [
      { name: '12 AWG into 4 ohm', about: () => about() },
      {
        name: '18 AWG to a tweeter, and to a subwoofer of 8 ohm',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(channel(plan, 'amp.2'), { loadOhm: 8 });
            for (const each of plan.wires) if (each.role === 'speaker') each.size = sized('18');
          }),
      },
    ],
  },
  // Common practice, no source: a small speaker without a high-pass stops.
  'small-speaker-without-high-pass': {
    fires: [
      {
        name: 'a tweeter without a filter',
        about: () => filtered('amp.1'),
        level: 'stop',
        subject: 'amp.1',
        says: /tweeter/,
      },
      {
        name: 'a low-pass and a subsonic filter are no high-pass',
        about: () => filtered('amp.1', filter('low-pass', 5000), filter('subsonic', 27)),
        level: 'stop',
        subject: 'amp.1',
      },
    ],
    quiet: [{ name: 'a subwoofer without one', about: () => about() }],
  },
  // The maker's lowest frequency.
  'high-pass-too-low': {
    fires: [
      {
        name: 'a tweeter from 80 Hz',
        about: () => filtered('amp.1', filter('high-pass', 80)),
        level: 'stop',
        subject: 'amp.1',
      },
      {
        name: 'a midrange below its range',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'tweeter', 'speaker').band = 'midrange';
            },
            plan: (plan) => {
              channel(plan, 'amp.1').filters = [filter('high-pass', 2000)];
            },
          }),
        level: 'caution',
        subject: 'amp.1',
      },
    ],
    quiet: [
      { name: 'just at its lowest frequency', about: () => filtered('amp.1', filter('high-pass', 2500)) },
      {
        name: 'the higher of two counts',
        about: () => filtered('amp.1', filter('high-pass', 80), filter('high-pass', 3000)),
      },
    ],
  },
  // Common practice, no source: a ported enclosure without a subsonic filter is a caution.
  'ported-without-subsonic': {
    fires: [
      {
        name: 'no subsonic filter',
        about: () => filtered('amp.2', filter('low-pass', 80)),
        level: 'caution',
        subject: 'amp.2',
        says: /ported/,
      },
    ],
    quiet: [
      { name: 'a subsonic filter', about: () => about() },
      {
        name: 'a sealed enclosure',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'vented', 'enclosure').loading = 'sealed';
            },
            plan: (plan) => {
              channel(plan, 'amp.2').filters = [];
            },
          }),
      },
    ],
  },
  // Common practice, no source: 0.7 to 0.8 of tuning, 24 dB per octave. 36 Hz: 25.2 to 28.8 Hz.
  'subsonic-off-tuning': {
    fires: [
      {
        name: '20 Hz at a tuning of 36 Hz',
        about: () => filtered('amp.2', filter('subsonic', 20)),
        level: 'note',
        subject: 'amp.2',
      },
      {
        name: '12 dB per octave',
        about: () => filtered('amp.2', filter('subsonic', 27, 2)),
        level: 'note',
        subject: 'amp.2',
        says: /12 dB/,
      },
    ],
    quiet: [
      { name: '25.2 Hz', about: () => filtered('amp.2', filter('subsonic', 25.2)) },
      { name: '28.8 Hz', about: () => filtered('amp.2', filter('subsonic', 28.8)) },
    ],
  },
  // Every control is accounted for; a wrong gain, boost or filter stops, others are a caution (common practice).
  'control-unlisted': {
    fires: [
      {
        name: 'a gain that is not in the plan',
        about: () =>
          aboutPlan((plan) => {
            plan.controls = plan.controls.filter(({ control: name }) => name !== 'GAIN');
          }),
        level: 'stop',
        subject: 'amp.GAIN',
      },
      {
        name: 'a phase switch that is not in the plan',
        about: () =>
          aboutPlan((plan) => {
            plan.controls = plan.controls.filter(({ control: name }) => name !== 'PHASE');
          }),
        level: 'caution',
        subject: 'amp.PHASE',
      },
    ],
    quiet: [{ name: 'all in the plan', about: () => about() }],
  },
  // Common practice, no source.
  'control-unsafe': {
    fires: [
      {
        name: 'gain half way up',
        about: () =>
          aboutPlan((plan) => Object.assign(control(plan, 'GAIN'), { preset: 'half', safe: false })),
        level: 'stop',
        subject: 'amp.GAIN',
        path: '/devices/amp/settings/GAIN',
        says: /fully down/,
      },
      {
        name: 'phase at 180',
        about: () =>
          aboutPlan((plan) => Object.assign(control(plan, 'PHASE'), { preset: '180', safe: false })),
        level: 'caution',
        subject: 'amp.PHASE',
      },
      {
        name: 'a control that its part does not know',
        about: () =>
          aboutPlan((plan) => {
            plan.controls.push({
              item: 'amp',
              control: 'X',
              preset: 'on',
              why: '',
              chosen: 'given',
              safe: false,
            });
          }),
        level: 'stop',
        subject: 'amp.X',
      },
    ],
    quiet: [{ name: 'all safe', about: () => about() }],
  },
  // Common practice, no source: a bridged negative to chassis or to a common negative stops.
  'speaker-negative-to-common': {
    fires: [
      {
        name: 'a speaker negative on the chassis',
        about: () =>
          aboutContent(({ job }) => {
            job.links['speaker-ground'] = { from: 'sub.C-', to: 'body.cargo' };
          }),
        level: 'stop',
        subject: 'amp.CH2-',
      },
      {
        name: 'two channels with a common negative',
        about: () =>
          aboutContent(({ job }) => {
            job.links['speaker-join'] = { from: 'sub.C-', to: 'tweeter.T-' };
          }),
        level: 'stop',
        subject: 'amp.CH1-',
      },
    ],
    quiet: [{ name: 'each negative on its own speaker', about: () => about() }],
  },
  // Common practice, no source.
  'factory-source-unmeasured': {
    fires: [
      {
        name: 'the radio came with the vehicle',
        about: () =>
          aboutContent(({ job, vehicle }) => {
            vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
            job.links['radio-signal'] = { from: 'head.OUT', to: 'dsp.IN' };
            job['left-open'] = { 'radio.OUT': 'not used' };
          }),
        level: 'note',
        subject: 'head',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      { name: 'the radio is part of the job', about: () => about() },
      {
        name: 'the radio gives the turn-on alone',
        about: () =>
          aboutContent(({ job, vehicle }) => {
            vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
            job.links['radio-rem'] = { from: 'head.REM', to: 'dsp.REM-IN' };
            job['left-open'] = { 'radio.REM': 'not used' };
          }),
      },
    ],
  },
  // The parts' data.
  'signal-below-sensitivity': {
    fires: [
      {
        name: '1 V into an input that needs 2 V',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'radio', 'source-unit').terminals, 'OUT').signal = '1 V';
          }),
        level: 'note',
        subject: 'radio-signal',
      },
    ],
    quiet: [
      {
        name: '2 V into an input that needs 2 V, and one that tells nothing',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'radio', 'source-unit').terminals, 'OUT').signal = '2 V';
            delete entry(partIn(content, 'two-channel', 'amplifier').terminals, 'IN2').signal;
          }),
      },
    ],
  },
  // Common practice, no source.
  'as-built-differs': {
    fires: [
      {
        name: 'a ground drop of three times the prediction',
        about: () =>
          aboutPlan((plan) => {
            plan.measurements = [
              {
                id: 'amp.ground-drop',
                what: 'ground drop of amp',
                predicted: 0.05,
                unit: 'V',
                asBuilt: 0.15,
                state: 'differs',
              },
            ];
          }),
        level: 'caution',
        subject: 'amp.ground-drop',
        path: '/as-built/amp.ground-drop',
      },
      {
        name: 'nothing predicted, nothing read',
        about: () =>
          aboutPlan((plan) => {
            plan.measurements = [{ id: 'x', what: 'x', predicted: null, unit: 'V', state: 'differs' }];
          }),
        level: 'caution',
        subject: 'x',
      },
    ],
    quiet: [
      {
        name: 'open, and in agreement',
        about: () =>
          aboutPlan((plan) => {
            plan.measurements = [
              { id: 'x', what: 'x', predicted: 0.05, unit: 'V', asBuilt: 0.05, state: 'agrees' },
              { id: 'y', what: 'y', predicted: 0.05, unit: 'V', state: 'open' },
            ];
          }),
      },
    ],
  },
};
