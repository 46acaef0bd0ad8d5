import { about, aboutContent, entry, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

export const factoryIntegrationCases = {
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
} satisfies RuleCases;
