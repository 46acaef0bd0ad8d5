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

export const inputLevelsCases = {
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
