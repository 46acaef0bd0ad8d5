/** A part of the code, in order of gravity, with the tests that must tell that it was changed. */
export interface Area {
  readonly name: string;
  /** Files and folders of `lib/` that are changed. */
  readonly code: readonly string[];
  /** Globs of the tests that are run, one after another: those that tell most and soonest go first. */
  readonly heldBy: readonly string[];
}

const rulesTests = [
  'tests/rules/protection/*.test.ts',
  'tests/rules/every-rule.test.ts',
  'tests/rules/{data-places,mounting/{mounting,wet-zone}}.test.ts',
];
/** Figures, places and words of what a rule tells, which cost little. */
const toldTests = [
  'tests/rules/{audio,conductors,data,folding,mounting,supply}/*.test.ts',
  'tests/rules/{told-exactly,data-places,finding-order}.test.ts',
];
/** What is told of one cause, and what only follows from it. What judges all cases, or plans many jobs, is left out. */
const judgingTests = ['tests/rules/{judge,accepted}.test.ts', 'tests/rules/every-rule.test.ts'];

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
    name: 'gain in the plan',
    code: ['lib/plan/audio/channel-gain.ts'],
    heldBy: ['tests/plan/audio/channel-gain.test.ts', 'tests/plan/audio/gain-path.test.ts'],
  },
  {
    name: 'conductor choice',
    code: ['lib/power/conductor/conductor-choice.ts', 'lib/power/conductor/ampacity.ts'],
    heldBy: ['tests/power/conductor/{conductor-choice,ampacity}*.test.ts'],
  },
  {
    name: 'sizing',
    code: ['lib/plan/power/sizing'],
    heldBy: [
      'tests/plan/power/sizing/{size-[!f]*,bend-bounds,thinner-cables,speaker-wire-in-heat,least-sizes,link-ports,next-size,ports-fit}.test.ts',
      'tests/plan/power/{sizing/{fuse-*,conductor-[!s]*,conductor-sizing,continuous-current},protection}.test.ts',
      'tests/plan/power/sizing/{growth-*,size-for-drop}.test.ts',
      'tests/plan/power/{sizing/conductor-sizer,ground-under-feed,chosen-together,shared-power}.test.ts',
    ],
  },
  {
    name: 'a short in the plan',
    code: ['lib/plan/power/short'],
    heldBy: ['tests/plan/power/{short/*,fuse-inflow}.test.ts', 'tests/plan/power/fault-currents.test.ts'],
  },
  { name: 'protection', code: ['lib/rules/protection'], heldBy: rulesTests },
];

/** Everywhere else a sample is drawn, the same on every run. */
export const sampled: readonly Area[] = [
  {
    name: 'power',
    code: ['lib/power'],
    heldBy: [
      // What asks ngspice, draws many networks or many choices of a fuse lasts too long for each change.
      'tests/power/{network/network-faults,conductor/figures-on-bounds}.test.ts',
      'tests/power/network/{alternator,converters}.test.ts',
      'tests/power/{charging-balance,key-off,way-resistance,fuse-resistance,house-power-rules,conductor/{[!ac]*,conductor-t*},network/{load-current,name-table,network,sparse-ldl}}.test.ts',
      'tests/power/conductor/conductor-c*.test.ts',
    ],
  },
  {
    name: 'audio',
    code: ['lib/audio'],
    heldBy: [
      'tests/audio/{[!t]*,turn-on,load/[!c]*,filter/[!f]*}.test.ts',
      'tests/audio/{load/channel-wiring,filter/filter-response}.test.ts',
    ],
  },
  {
    name: 'strength',
    code: ['lib/board/strength'],
    heldBy: [
      // What bends a board in as many elements as a plan does takes too long for each change.
      'tests/board/strength/{plate-pieces,rib-check,fixing-joint,ribs,retention}.test.ts',
      'tests/board/strength/coarse-plate.test.ts',
    ],
  },
  {
    name: 'rules',
    code: ['lib/rules'],
    heldBy: [...toldTests, 'tests/rules/every-rule.test.ts', ...judgingTests],
  },
  {
    name: 'circuit in the plan',
    code: ['lib/plan/power/circuit'],
    heldBy: ['tests/plan/power/circuit/*.test.ts'],
  },
  {
    name: 'power in the plan',
    code: ['lib/plan/power'],
    heldBy: [
      'tests/plan/power/supply/{charging-balance,device-loads,drop-parts,network-told,space-heat,supply-groups,system-voltage}.test.ts',
      'tests/plan/power/{music-duty,supply/{planned,small}-*}.test.ts',
    ],
  },
  {
    name: 'audio in the plan',
    code: ['lib/plan/audio'],
    heldBy: ['tests/plan/audio/**/*.test.ts'],
  },
  {
    name: 'board in the plan',
    code: ['lib/plan/board'],
    heldBy: [
      // What plans whole jobs searches for places and ways each time.
      'tests/plan/board/{beneath-raised,board-items,board-wires,fixing-joints,mounting-screws,place-boards,remark-lengths}.test.ts',
      'tests/plan/board/ribs/{planned-ribs,rib-fastening,rib-proposals}.test.ts',
      'tests/plan/board/{sheets/sheet-pieces,edge-in-way,port-choice}.test.ts',
      'tests/plan/board/planned-board.test.ts',
    ],
  },
  {
    name: 'wiring in the plan',
    code: ['lib/plan/wiring'],
    heldBy: [
      // What states one meaning goes first, before the tries of a change are used up.
      'tests/plan/wiring/{wiring-pieces,small-wire-ends,wire-list,covered-runs,run-zones,ties,pair-colours,reducers}.test.ts',
      'tests/plan/wiring/{label-numbers,lengths-on-board,longest-conductor,names,runs-and-ends,wire-ends}.test.ts',
    ],
  },
  {
    name: 'work in the plan',
    code: ['lib/plan/work'],
    heldBy: [
      // What states one meaning goes before what runs through everything, which would use up the tries of a change.
      'tests/plan/work/{steps/{small-order,what-waits,sort-steps},readings/readings-alone,active-tweeters}.test.ts',
      'tests/plan/work/{final-states,pick-counts,shelf-takes}.test.ts',
      'tests/plan/work/{bench-supply-limit,pick-beside,order-of-work-waiting,readings/measurements}.test.ts',
    ],
  },
  {
    name: 'what was built, in the plan',
    code: ['lib/plan/built'],
    heldBy: ['tests/plan/built/built-pieces.test.ts'],
  },
  {
    name: 'what is kept of a plan',
    code: ['lib/plan/keeping'],
    heldBy: ['tests/plan/keeping/keep-pieces.test.ts'],
  },
  {
    name: 'the plan',
    code: ['lib/plan'],
    heldBy: [
      'tests/plan/{as-written,bolt-torque,computed-from,once-each,plan-book,title-block-heads,proposed-lengths}.test.ts',
      'tests/plan/{settle,work/pick-beside}.test.ts',
    ],
  },
];

export const sampleSize = 1000;

/** A change that so many tests ran through without telling it is given up: the share is told too low at most. */
export const mostTests = 40;

/** The least share of changes that a test must tell, in each folder. */
export const leastShare = 0.85;

/** The area that a file belongs to: the first that names it, those where every change is tried going first. */
export function areaOf(file: string): Area | undefined {
  const holds = ({ code }: Area) => code.some((place) => file === place || file.startsWith(`${place}/`));
  return whole.find(holds) ?? sampled.find(holds);
}
