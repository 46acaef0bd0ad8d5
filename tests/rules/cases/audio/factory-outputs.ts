import type { PlanInput, PlanOutput } from '../../../../lib/model/plan/index.ts';
import { about, aboutPlan, partIn } from '../../case.ts';
import type { QuietCase, RuleCases } from '../../rule-case.ts';

/** An output that feeds the processor, with nothing wrong about it. */
const output = (more: Partial<PlanOutput>): PlanOutput => ({
  id: 'radio.OUT',
  item: 'radio',
  feeds: ['dsp.IN'],
  form: 'analogue',
  fromHz: 20,
  toHz: 20_000,
  polarity: 'normal',
  cleanVoltageV: 4,
  offsetV: 0,
  equalising: 'none',
  loadSensing: false,
  noiseCancelling: false,
  chimes: false,
  missing: [],
  ...more,
});

const giving = (more: Partial<PlanOutput>) => () =>
  aboutPlan(({ audio }) => {
    audio.outputs = [output(more)];
  });

const input = (more: Partial<PlanInput>): PlanInput => ({
  input: 'dsp.IN',
  output: 'radio.OUT',
  wire: 'radio-signal',
  level: 'low',
  sourceV: 4,
  leastV: 0.5,
  greatestV: 4,
  headroomDb: 0,
  reserveDb: 18.06,
  verdict: 'within',
  ...more,
});

const arriving = (more: Partial<PlanInput>) => () =>
  aboutPlan(({ audio }) => {
    audio.inputs = [input(more)];
  });

const quiet: readonly QuietCase[] = [
  { name: 'a full-range analogue output with nothing to it', about: giving({}) },
  {
    name: 'an output that feeds nothing and that the job does not touch',
    about: giving({
      feeds: [],
      form: 'digital',
      polarity: 'reversed',
      equalising: 'moves-with-level',
      loadSensing: true,
      noiseCancelling: true,
      chimes: true,
    }),
  },
  {
    name: 'nothing known',
    about: giving({ form: null, fromHz: null, toHz: null, polarity: null, chimes: null }),
  },
];

/** Every limit here: common practice, no source, or the parts' own data. */
export const factoryOutputsCases = {
  // Common practice, no source.
  'output-offset-unlikely': {
    fires: [
      {
        name: 'half the supply on a line output',
        about: giving({ offsetV: 6 }),
        level: 'caution',
        subject: 'radio.OUT',
        says: /line output of radio, and is written with a direct-current offset of 6 V/,
      },
      { name: '0.6 V', about: giving({ offsetV: 0.6 }), level: 'caution', subject: 'radio.OUT' },
    ],
    quiet: [
      { name: '0.4 V', about: giving({ offsetV: 0.4 }) },
      { name: 'one that is not known', about: giving({ offsetV: null }) },
    ],
  },
  'chime-lost': {
    fires: [
      {
        name: 'the job leaves the output open that the chimes sound through',
        about: () =>
          about({
            content: ({ job }) => {
              delete job.links['radio-signal'];
              if (job.runs) delete job.runs.right;
              job['left-open'] = { 'radio.OUT': 'not used', 'dsp.IN': 'not used' };
            },
            plan: ({ audio }) => {
              audio.outputs = [output({ feeds: [], chimes: true })];
            },
          }),
        level: 'stop',
        subject: 'radio.OUT',
      },
    ],
    quiet: [...quiet, { name: 'the chimes go on through the system', about: giving({ chimes: true }) }],
  },
  'digital-output-without-interface': {
    fires: [
      {
        name: 'digital into a line input',
        about: giving({ form: 'digital' }),
        level: 'stop',
        subject: 'radio.OUT',
      },
    ],
    quiet,
  },
  'noise-cancelling-on': {
    fires: [
      {
        name: 'cancelling plays through it',
        about: giving({ noiseCancelling: true }),
        level: 'caution',
        subject: 'radio.OUT',
      },
    ],
    quiet,
  },
  'band-limited-output': {
    fires: [
      {
        name: 'a tweeter output',
        about: giving({ fromHz: 3000 }),
        level: 'caution',
        subject: 'radio.OUT',
      },
      {
        name: 'a bass output',
        about: giving({ toHz: 120 }),
        level: 'caution',
        subject: 'radio.OUT',
        says: /120 Hz/,
      },
    ],
    quiet: [
      ...quiet,
      {
        name: 'into a processor that sums',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'dsp', 'processor').summing = true;
            },
            plan: ({ audio }) => {
              audio.outputs = [output({ fromHz: 3000 })];
            },
          }),
      },
    ],
  },
  'equalising-moves-with-level': {
    fires: [
      {
        name: 'bass falls with the level',
        about: giving({ equalising: 'moves-with-level' }),
        level: 'caution',
        subject: 'radio.OUT',
      },
      {
        name: 'of two outputs of one source, told together',
        about: () =>
          aboutPlan(({ audio }) => {
            const moving = { equalising: 'moves-with-level' } as const;
            audio.outputs = [output({ ...moving, id: 'radio.SP1' }), output({ ...moving, id: 'radio.SP2' })];
          }),
        level: 'caution',
        subject: 'radio.SP1',
        says: /the bass of radio\.SP1 and radio\.SP2 falls/,
      },
    ],
    quiet: [...quiet, { name: 'fixed equalising', about: giving({ equalising: 'fixed' }) }],
  },
  // Common practice, no source: the gain is read through whatever stands in the path.
  'gain-behind-equalising': {
    fires: [
      {
        name: 'fixed equalising',
        about: giving({ equalising: 'fixed' }),
        level: 'note',
        subject: 'radio',
        says: /radio\.OUT equalise, .* reads right only with a tone at a frequency that the source boosts most/,
      },
    ],
    quiet: [
      ...quiet,
      { name: 'not used', about: giving({ equalising: 'fixed', feeds: [] }) },
      { name: 'one that moves is told by its own', about: giving({ equalising: 'moves-with-level' }) },
    ],
  },
  'load-sensing-output': {
    fires: [
      {
        name: 'it feels for its speaker',
        about: giving({ loadSensing: true }),
        level: 'caution',
        subject: 'radio.OUT',
      },
    ],
    quiet,
  },
  'source-polarity-reversed': {
    fires: [
      {
        name: 'reversed',
        about: giving({ polarity: 'reversed' }),
        level: 'caution',
        subject: 'radio.OUT',
      },
    ],
    quiet,
  },
  'input-overdriven': {
    fires: [
      {
        name: '9 V into an input that takes 4 V',
        // A maker's limit that is passed stops.
        about: arriving({ sourceV: 9, verdict: 'too-high' }),
        level: 'stop',
        subject: 'dsp.IN',
        says: /9 V/,
        // The processor of these cases has no high-level input.
        toDo: /^put a level converter between them that takes 9 V and gives at most 4 V.*; or turn the output of radio down for good, .* write signal: 4 V at these terminals in the part of radio/,
      },
      {
        name: 'what a speaker output gives by its rated power',
        about: arriving({
          sourceV: 8.485,
          sourceRated: { powerW: 18, loadOhm: 4 },
          verdict: 'too-high',
        }),
        level: 'stop',
        subject: 'dsp.IN',
        says: /8.49 V clean \(by its 18 W into 4 ohm\), where it takes 4 V/,
      },
      {
        name: 'two inputs of one device, driven alike by two outputs: one finding',
        about: () =>
          aboutPlan(({ audio }) => {
            const over = { sourceV: 9, verdict: 'too-high' } as const;
            audio.inputs = [
              input(over),
              input({ ...over, input: 'dsp.IN2', output: 'radio.OUT2', wire: 'radio-signal-2' }),
            ];
          }),
        level: 'stop',
        subject: 'dsp.IN',
        says: /^radio\.OUT and radio\.OUT2 drive dsp\.IN and dsp\.IN2 past their limit: 9 V clean, where each takes 4 V, 125 % \(7\.1 dB\) too much; no gain/,
      },
      {
        name: 'past the limit of a device with a high-level input',
        about: () =>
          about({
            content: (content) => {
              Object.assign(partIn(content, 'dsp', 'processor').terminals, {
                'HL+': { role: 'speaker-in-positive' },
                'HL-': { role: 'speaker-in-negative' },
              });
              content.job['left-open'] = { 'dsp.HL+': 'not used', 'dsp.HL-': 'not used' };
            },
            plan: ({ audio }) => {
              audio.inputs = [input({ sourceV: 9, verdict: 'too-high' })];
            },
          }),
        level: 'stop',
        subject: 'dsp.IN',
        toDo: /^use the high-level input of dsp, put a level converter/,
      },
      {
        name: 'a speaker output into a line input whose range is not known',
        about: arriving({ level: 'high', leastV: null, greatestV: null, verdict: 'unknown' }),
        level: 'stop',
        subject: 'dsp.IN',
      },
    ],
    quiet: [{ name: 'as much as it takes', about: arriving({}) }],
  },
  'input-underdriven': {
    fires: [
      {
        // 20 log10(0.25 / 0.5) = -6.02 dB.
        name: '0.25 V into an input that asks for 0.5 V',
        about: arriving({ sourceV: 0.25, reserveDb: -6.02, verdict: 'too-low' }),
        level: 'note',
        subject: 'dsp.IN',
        says: /6\.1 dB/,
      },
    ],
    quiet: [
      { name: 'within its range', about: arriving({}) },
      { name: 'not known', about: arriving({ sourceV: null, verdict: 'unknown' }) },
    ],
  },
} satisfies RuleCases;
