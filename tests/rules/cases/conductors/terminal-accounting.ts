import { about, aboutContent, aboutPlan, one } from '../../case.ts';
import { sized } from '../../plan.ts';
import type { RuleCases } from '../../rule-case.ts';

export const terminalAccountingCases = {
  // A job that builds nothing in can't be released.
  'job-without-devices': {
    fires: [
      {
        name: 'nothing but the vehicle',
        about: () => {
          const whole = about();
          const fitted = whole.job.devices.filter(({ origin }) => origin === 'vehicle');
          return { ...whole, job: { ...whole.job, devices: fitted } };
        },
        level: 'stop',
        subject: 'demo',
        path: '/devices',
      },
    ],
    quiet: [{ name: 'devices of the job', about: () => about() }],
  },
  // Every terminal is connected, or left open with a reason.
  'terminal-unaccounted': {
    fires: [
      {
        name: 'a terminal that nothing is said of',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['signal-2'];
          }),
        level: 'stop',
        subject: 'amp.IN2',
      },
      {
        name: 'left open without a reason',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(
              one(plan.terminals, ({ item, terminal }) => item === 'amp' && terminal === 'IN2'),
              {
                state: 'open',
                wires: [],
              },
            );
          }),
        level: 'stop',
        subject: 'amp.IN2',
      },
      {
        name: 'a terminal that the plan does not list',
        about: () =>
          aboutPlan((plan) => {
            plan.terminals = plan.terminals.filter(({ terminal }) => terminal !== 'REM-IN');
          }),
        level: 'stop',
        subject: 'dsp.REM-IN',
        path: '/devices/dsp',
      },
    ],
    quiet: [
      {
        name: 'left open with a reason',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['signal-2'];
            job['left-open'] = { 'amp.IN2': 'not used', 'dsp.OUT2': 'not used' };
          }),
      },
    ],
  },
  // Every terminal is accounted for.
  'device-without-supply': {
    fires: [
      {
        name: 'a processor that nothing feeds',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['dsp-feed'];
          }),
        level: 'stop',
        subject: 'dsp',
      },
    ],
    quiet: [{ name: 'every device fed', about: () => about() }],
  },
  // Common practice, no source.
  'cable-conductor-spare': {
    fires: [
      {
        name: 'one of three conductors carries nothing',
        about: () =>
          aboutPlan((plan) => {
            plan.cables = [
              {
                id: 'trunk',
                part: 'nine-wire',
                lengthM: 3,
                conductors: [
                  { name: 'white', colour: 'WH', size: sized('18'), wire: 'speaker-1.+' },
                  { name: 'blue', colour: 'BU', size: sized('18'), wire: null },
                ],
              },
            ];
          }),
        level: 'note',
        subject: 'trunk',
        says: /blue$/,
      },
      {
        name: 'a turn-on wire of its own lies beside the spare conductor, in one run',
        about: () =>
          aboutPlan((plan) => {
            const signal = one(plan.wires, ({ role, origin }) => role === 'signal' && origin === 'job');
            Object.assign(signal, { cable: 'trunk', run: 'front' });
            const turnOn = one(plan.wires, ({ role, origin }) => role === 'turn-on' && origin === 'job');
            Object.assign(turnOn, { run: 'front' });
            delete turnOn.cable;
            plan.cables = [
              {
                id: 'trunk',
                part: 'nine-wire',
                lengthM: 3,
                conductors: [
                  { name: 'white', colour: 'WH', size: sized('18'), wire: signal.id },
                  { name: 'blue', colour: 'BU', size: sized('18'), wire: null },
                ],
              },
            ];
          }),
        level: 'note',
        subject: 'trunk',
        says: /blue, while .* laid beside it/,
      },
    ],
    quiet: [
      {
        name: 'every conductor carries a wire',
        about: () =>
          aboutPlan((plan) => {
            plan.cables = [
              {
                id: 'trunk',
                part: 'nine-wire',
                lengthM: 3,
                conductors: [{ name: 'white', colour: 'WH', size: sized('18'), wire: 'speaker-1.+' }],
              },
            ];
          }),
      },
    ],
  },
} satisfies RuleCases;
