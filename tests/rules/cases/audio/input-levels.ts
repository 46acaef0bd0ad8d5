import type { PlanInput } from '../../../../lib/model/plan/index.ts';
import { about, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

/** An input of the plan with something of it not known. */
const unknown = (change: Partial<PlanInput>, content: (content: Written) => void = () => {}) =>
  about({
    content,
    plan: ({ audio }) => {
      audio.inputs = [
        {
          ...{ input: 'dsp.IN', output: 'radio.OUT', wire: 'radio-signal', level: 'low' as const },
          ...{ sourceV: 4, leastV: 0.5, greatestV: 4, headroomDb: 0, reserveDb: 18.06 },
          verdict: 'unknown',
          ...change,
        },
      ];
    },
  });

const withSpeakers = (content: Written) => {
  Object.assign(partIn(content, 'radio', 'source-unit').terminals, {
    'SP+': { role: 'speaker-out-positive' },
    'SP-': { role: 'speaker-out-negative' },
  });
};

type Passes = NonNullable<ReturnType<typeof amplifierIn>['passes']>;
const amplifierIn = (content: Written) => partIn(content, 'two-channel', 'amplifier');

const withLineOutput = (passes?: Passes) => (content: Written) => {
  const amplifier = amplifierIn(content);
  Object.assign(amplifier.terminals, { OUT: { role: 'signal-out', signal: '5 V' } });
  if (passes) amplifier.passes = passes;
};

/** The amplifier with inputs of speaker level beside its line inputs, which are linked, and a switch for them. */
const withSwitch = (state: string, change: (content: Written) => void = () => {}) =>
  about({
    content: (content) => {
      const amplifier = amplifierIn(content);
      Object.assign(amplifier.terminals, {
        'HIGH+': { role: 'speaker-in-positive' },
        'HIGH-': { role: 'speaker-in-negative' },
      });
      amplifier.controls = {
        ...amplifier.controls,
        INPUT: {
          ...{ what: 'input-mode', panel: 'left', form: 'switch', positions: ['LINE', 'HIGH'] },
          ...{ safe: 'LINE', why: 'as delivered' },
        },
      };
      change(content);
    },
    plan: ({ controls }) => {
      for (const one of controls.filter(({ control }) => control === 'INPUT'))
        Object.assign(one.final, { state });
    },
  });

const hears = (positions: Readonly<Record<string, string[]>>) => (content: Written) => {
  Object.assign(amplifierIn(content).controls?.INPUT ?? {}, { hears: positions });
};

export const inputLevelsCases = {
  // The parts' data; what LINE and HIGH stand for is common practice, no source.
  'input-switch': {
    fires: [
      {
        name: 'a switch at the speaker-level inputs, of which none is linked',
        about: () => withSwitch('HIGH'),
        level: 'stop',
        subject: 'amp.INPUT',
        says: /^INPUT on amp is to stand at HIGH, in which amp.IN1 and amp.IN2 are not heard$/,
        toDo: /write settings: \{ INPUT: LINE \} at amp/,
      },
      {
        name: 'a position that hears one of two inputs by its part',
        about: () => withSwitch('HIGH', hears({ LINE: ['IN1', 'IN2'], HIGH: ['IN2', 'HIGH'] })),
        level: 'caution',
        subject: 'amp.INPUT',
        says: /amp.IN1 is not heard$/,
      },
      {
        name: 'a switch of which no position hears all that is linked',
        about: () => withSwitch('LINE', hears({ LINE: ['IN1'], HIGH: ['IN2'] })),
        level: 'caution',
        subject: 'amp.INPUT',
        toDo: /^no position of INPUT hears all that is linked/,
      },
    ],
    quiet: [
      { name: 'a switch at the inputs that are linked', about: () => withSwitch('LINE') },
      {
        name: 'words that may be a sensitivity, of an amplifier that takes line level alone',
        about: () =>
          withSwitch('HIGH', (content) => {
            delete amplifierIn(content).terminals['HIGH+'];
            delete amplifierIn(content).terminals['HIGH-'];
          }),
      },
      {
        name: 'positions that both hear what is linked by the part',
        about: () => withSwitch('HIGH', hears({ LINE: ['IN1', 'IN2'], HIGH: ['IN1', 'IN2'] })),
      },
    ],
  },
  'input-level-unknown': {
    fires: [
      {
        name: 'an output of the job of which nothing tells what it gives',
        about: () => unknown({ sourceV: null }),
        level: 'note',
        subject: 'radio',
        path: '/parts/radio',
        file: 'parts.yaml',
        says: /^what radio.OUT gives clean is not known: nothing tells whether dsp.IN is driven too far, or too little$/,
        toDo: /^write into the part radio signal: of its terminals/,
      },
      {
        name: 'a speaker output, whose power tells it',
        about: () => unknown({ sourceV: null, input: 'dsp.HL+', output: 'radio.SP+' }, withSpeakers),
        level: 'note',
        subject: 'radio',
        file: 'parts.yaml',
        toDo: /powers: of its outputs \(such as 4 ohm: 18 W\), from which the clean voltage follows/,
      },
      {
        name: 'a line output of an amplifier, whose greatest voltage is no level',
        about: () => unknown({ sourceV: null, output: 'amp.OUT' }, withLineOutput()),
        level: 'note',
        subject: 'amp',
        file: 'parts.yaml',
        toDo: /write into the part two-channel passes: \{ OUT: \{ of: \{ IN1: 1 \}, tap: inputs \} \}/,
      },
      {
        name: 'a line output that is taken behind the gain',
        about: () =>
          unknown(
            { sourceV: null, output: 'amp.OUT' },
            withLineOutput({ OUT: { of: { IN1: 1 }, tap: 'gain' } }),
          ),
        level: 'note',
        subject: 'amp',
        file: 'parts.yaml',
        toDo: /tap: inputs at OUT under passes:.*measure it before the gain behind it is set$/,
      },
      {
        name: 'an input that does not say what it takes',
        about: () => unknown({ leastV: null, greatestV: null, input: 'dsp.AUX' }),
        level: 'note',
        subject: 'dsp',
        file: 'parts.yaml',
        says: /^what dsp.AUX takes is not known/,
        toDo: /signal-range: of its terminals/,
      },
    ],
    quiet: [
      { name: 'all that is known', about: () => about() },
      {
        name: 'a line output of which only what arrives at its amplifier is not known',
        about: () =>
          unknown(
            { sourceV: null, output: 'amp.OUT' },
            withLineOutput({ OUT: { of: { IN1: 1 }, tap: 'inputs' } }),
          ),
      },
      {
        name: 'an input that says at which voltage it gives all',
        about: () => unknown({ leastV: null, greatestV: null }),
      },
    ],
  },
} satisfies RuleCases;
