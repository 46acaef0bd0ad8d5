import type { BuildPlan } from '../../../../lib/model/plan/index.ts';
import { about, aboutContent, aboutPlan, entry, one, partIn } from '../../case.ts';
import { withRelay } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The switch of the amplifier before first power, and after commissioning. */
function stands(plan: BuildPlan, preset: string, after: string): void {
  const sense = one(plan.controls, ({ control }) => control === 'SENSE');
  sense.preset = preset;
  sense.final.state = after;
}

const withoutWire = (preset: string, after: string) =>
  about({
    content: ({ job }) => {
      delete job.links['amp-rem'];
    },
    plan: (plan) => stands(plan, preset, after),
  });

export const turnOnCases = {
  // Common practice, no source.
  'turn-on-missing': {
    fires: [
      {
        name: 'no lead to an amplifier, though its terminal is left open with a reason',
        about: () =>
          aboutContent((content) => {
            const { job } = content;
            delete job.links['amp-rem'];
            delete entry(partIn(content, 'two-channel', 'amplifier').controls, 'SENSE').automatic;
            job['left-open'] = { 'amp.REM': 'not used', 'dsp.REM-OUT': 'not used' };
          }),
        level: 'stop',
        subject: 'amp.REM',
      },
      {
        name: 'two inputs joined with nothing that drives them',
        about: () =>
          aboutContent(({ job }) => {
            job.links['amp-rem'] = { from: 'dsp.REM-IN', to: 'amp.REM' };
            delete job.links['radio-rem'];
          }),
        level: 'stop',
        subject: 'amp.REM',
      },
      {
        name: 'a strip that is fed from itself',
        about: () =>
          aboutContent(({ job }) => {
            job.links['amp-rem'] = { from: 'block.OUT1', to: 'amp.REM' };
            job.links.main = { from: 'block.OUT2', to: 'block.IN' };
          }),
        level: 'stop',
        subject: 'amp.REM',
        says: /never turns on/,
      },
      {
        name: 'by the contact of a relay whose coil nothing drives',
        about: () => withRelay('diode', (job) => delete job.links['coil-rem']),
        level: 'stop',
        subject: 'amp.REM',
      },
      {
        name: 'by a relay that is to pull itself in',
        about: () =>
          withRelay('diode', (job) => {
            job.links['coil-rem'] = { from: 'relay.87', to: 'relay.86' };
          }),
        level: 'stop',
        subject: 'amp.REM',
      },
      {
        name: 'a switch at a position in which nothing is said to turn itself on',
        about: () =>
          about({
            content: (content) => {
              delete content.job.links['amp-rem'];
              delete entry(partIn(content, 'two-channel', 'amplifier').controls, 'SENSE').automatic;
              entry(content.job.devices, 'amp').settings = { SENSE: 'AUTO' };
            },
            plan: (plan) => {
              one(plan.controls, ({ control }) => control === 'SENSE').preset = 'AUTO';
            },
          }),
        level: 'stop',
        subject: 'amp.REM',
        toDo: /a position of SENSE .* under automatic: in its part/,
      },
      {
        name: 'automatic turn-on without a wired fallback',
        about: () =>
          about({
            content: ({ job }) => {
              delete job.links['amp-rem'];
              entry(job.devices, 'amp').settings = { SENSE: 'AUTO' };
            },
            plan: (plan) => stands(plan, 'AUTO', 'AUTO'),
          }),
        level: 'caution',
        subject: 'amp.REM',
      },
    ],
    quiet: [
      { name: 'a lead to every device', about: () => about() },
      { name: 'by the contact of a relay', about: () => withRelay('diode') },
    ],
  },
  // The parts' data: in a position that is not automatic a device waits for its wire.
  'turn-on-switch': {
    fires: [
      {
        name: 'no wire, and the switch waits for one before first power',
        about: () => withoutWire('REMOTE', 'AUTO'),
        level: 'stop',
        subject: 'amp.SENSE',
        says: /at REMOTE before first power, and no wire reaches amp.REM: amp stays dead/,
        toDo: /write settings: \{ SENSE: AUTO \} at amp/,
      },
      {
        name: 'no wire, and the switch waits for one once the job is handed over',
        about: () => withoutWire('AUTO', 'REMOTE'),
        level: 'stop',
        subject: 'amp.SENSE',
        says: /at REMOTE after commissioning/,
      },
      {
        name: 'a wire that the switch does not heed once the job is handed over',
        about: () => aboutPlan((plan) => stands(plan, 'REMOTE', 'AUTO')),
        level: 'caution',
        subject: 'amp.SENSE',
        says: /its wire at amp.REM need not switch it/,
      },
    ],
    quiet: [
      { name: 'a wire, and the switch waits for it', about: () => about() },
      {
        name: 'no wire, and the switch is automatic from the first power on',
        about: () => withoutWire('AUTO', 'AUTO'),
      },
      {
        name: 'an automatic position with a wire before first power: it is judged as every control',
        about: () => aboutPlan((plan) => stands(plan, 'AUTO', 'AUTO')),
      },
    ],
  },
  // The parts' data.
  'turn-on-overload': {
    fires: [
      {
        name: 'an output of 10 mA that drives 20 mA',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'dsp', 'processor').terminals, 'REM-OUT').current = '10 mA';
          }),
        level: 'stop',
        subject: 'dsp.REM-OUT',
        says: /0.02 A/,
      },
      {
        name: 'an output whose limit is not known',
        about: () =>
          aboutContent((content) => {
            delete entry(partIn(content, 'dsp', 'processor').terminals, 'REM-OUT').current;
          }),
        level: 'note',
        subject: 'dsp.REM-OUT',
        file: 'parts.yaml',
      },
      {
        name: 'a load whose draw no leaflet tells, reckoned at 0.1 A by a house rule, on an output of 50 mA',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'two-channel', 'amplifier').supply['turn-on-draw'];
            entry(partIn(content, 'dsp', 'processor').terminals, 'REM-OUT').current = '50 mA';
          }),
        level: 'stop',
        subject: 'dsp.REM-OUT',
        says: /0.1 A/,
      },
    ],
    quiet: [
      {
        name: 'an output that gives just what it drives',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'dsp', 'processor').terminals, 'REM-OUT').current = '20 mA';
          }),
      },
      { name: 'an output that drives a relay: its coil is the only load', about: () => withRelay('diode') },
    ],
  },
  // Common practice, no source.
  'relay-without-suppression': {
    fires: [
      { name: 'nothing across the coil', about: () => withRelay('none'), level: 'caution', subject: 'relay' },
    ],
    quiet: [{ name: 'a diode across the coil', about: () => withRelay('diode') }],
  },
  // Common practice, no source: processor first on, last off.
  'turn-on-sequence': {
    fires: [
      {
        name: 'the amplifier on the lead of the radio',
        about: () =>
          aboutContent(({ job }) => {
            job.links['amp-rem'] = { from: 'radio.REM', to: 'amp.REM' };
            job['left-open'] = { 'dsp.REM-OUT': 'not used' };
          }),
        level: 'caution',
        subject: 'amp.REM',
        path: '/links/amp-rem',
      },
    ],
    quiet: [
      { name: 'the amplifier on the output of the processor', about: () => about() },
      { name: 'by a relay that the processor drives', about: () => withRelay('diode') },
    ],
  },
} satisfies RuleCases;
