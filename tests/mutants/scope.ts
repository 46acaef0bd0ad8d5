/** A part of the code, in order of gravity, with the tests that must tell that it was changed. */
export interface Area {
  readonly name: string;
  /** Files and folders of `lib/` that are changed. */
  readonly code: readonly string[];
  /** Globs of the tests that are run. */
  readonly heldBy: readonly string[];
}

const rulesTests = ['tests/rules/{every-rule,protection*,data-places,mounting,wet-zone}.test.ts'];
const planTests = ['tests/plan/plan-job.test.ts', 'tests/rules/every-remark.test.ts'];

/** Where a fault burns a cable or a coil: every change is tried. */
export const whole: readonly Area[] = [
  {
    name: 'fuse choice, interrupting, short circuit',
    code: [
      'lib/power/fuse-choice.ts',
      'lib/power/interrupting.ts',
      'lib/power/short-circuit.ts',
      'lib/power/time-current.ts',
    ],
    heldBy: ['tests/power/{fuse-choice,interrupting,short-circuit,time-current}*.test.ts'],
  },
  {
    name: 'gain',
    code: ['lib/audio/gain.ts', 'lib/audio/test-tone.ts'],
    heldBy: ['tests/audio/{gain,test-tone}*.test.ts'],
  },
  {
    name: 'conductor choice',
    code: ['lib/power/conductor/conductor-choice.ts', 'lib/power/conductor/ampacity.ts'],
    heldBy: ['tests/power/conductor/{conductor-choice,ampacity}*.test.ts'],
  },
  {
    name: 'sizing',
    code: ['lib/plan/power/sizing', 'lib/plan/power/short'],
    heldBy: ['tests/plan/power/**/*.test.ts', ...planTests],
  },
  { name: 'protection', code: ['lib/rules/protection'], heldBy: rulesTests },
];

/** Everywhere else a sample is drawn, the same on every run. */
export const sampled: readonly Area[] = [
  { name: 'power', code: ['lib/power'], heldBy: ['tests/power/**/*.test.ts'] },
  { name: 'audio', code: ['lib/audio'], heldBy: ['tests/audio/**/*.test.ts'] },
  { name: 'strength', code: ['lib/board/strength'], heldBy: ['tests/board/strength/**/*.test.ts'] },
  { name: 'rules', code: ['lib/rules'], heldBy: rulesTests },
  {
    name: 'power in the plan',
    code: ['lib/plan/power'],
    heldBy: ['tests/plan/power/**/*.test.ts', ...planTests],
  },
  {
    name: 'audio in the plan',
    code: ['lib/plan/audio'],
    heldBy: ['tests/plan/audio/**/*.test.ts', ...planTests],
  },
  {
    name: 'board in the plan',
    code: ['lib/plan/board'],
    heldBy: ['tests/plan/board/**/*.test.ts', ...planTests],
  },
  {
    name: 'wiring in the plan',
    code: ['lib/plan/wiring'],
    heldBy: ['tests/plan/wiring/**/*.test.ts', ...planTests],
  },
  {
    name: 'work in the plan',
    code: ['lib/plan/work'],
    heldBy: ['tests/plan/work/**/*.test.ts', ...planTests],
  },
  { name: 'the plan', code: ['lib/plan'], heldBy: planTests },
];

export const sampleSize = 1000;

/** The least share of changes that a test must tell, in each folder. */
export const leastShare = 0.85;

/** The area that a file belongs to: the first that names it, those where every change is tried going first. */
export function areaOf(file: string): Area | undefined {
  const holds = ({ code }: Area) => code.some((place) => file === place || file.startsWith(`${place}/`));
  return whole.find(holds) ?? sampled.find(holds);
}
