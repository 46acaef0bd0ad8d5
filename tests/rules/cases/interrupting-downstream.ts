import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { about, aboutPlan } from '../case.ts';
import { fuse } from '../changes.ts';
import type { RuleCases } from '../rule-case.ts';

/** The fuse of the processor's way with a fault current and a rating, behind a main fuse with another rating. */
const fault = (faultA: number, interruptA: number, mainA: number) => (plan: BuildPlan) => {
  Object.assign(fuse(plan, 'block.OUT2'), {
    faultA,
    interruptA,
    needsInterruptA: null,
    loads: ['dsp'],
  });
  Object.assign(fuse(plan, 'main-fuse'), { interruptA: mainA, loads: ['amp', 'dsp'] });
};

export const interruptingDownstreamCases: RuleCases = {
  // Ohm's law for the fault current; ratings as each case gives them.
  'fuse-interrupting-downstream': {
    fires: [
      {
        name: '1.4 kA behind a blade that interrupts 1 kA, and no fuse before it that clears it',
        about: () => aboutPlan(fault(1400, 1000, 1200)),
        level: 'caution',
        subject: 'block.OUT2',
      },
      {
        name: 'the same, with a main fuse that clears it',
        about: () => aboutPlan(fault(1400, 1000, 6000)),
        level: 'note',
        subject: 'block.OUT2',
        says: /main-fuse before it clears that/,
      },
    ],
    quiet: [
      { name: 'a fault current within the rating', about: () => aboutPlan(fault(900, 1000, 6000)) },
      { name: 'no fault current in the plan', about: () => about() },
    ],
  },
};
