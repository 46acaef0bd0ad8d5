import type { BuildPlan } from '../../../../lib/model/plan/index.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutPlan } from '../../case.ts';
import { fuse, secondBattery } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

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

/** The same fed from a second battery as well, behind a fuse that interrupts so much. */
const fedTwice = (mainA: number, secondA: number): Case =>
  secondBattery(true, (plan) => {
    fault(1400, 1000, mainA)(plan);
    plan.power.fuses.push({
      ...fuse(plan, 'main-fuse'),
      id: 'second-fuse',
      item: 'second-fuse',
      interruptA: secondA,
      source: 'second',
      protects: ['second-tail', 'link'],
    });
  });

export const interruptingDownstreamCases = {
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
        name: '1,001 A behind a blade of 1 kA',
        about: () => aboutPlan(fault(1001, 1000, 999)),
        level: 'caution',
        subject: 'block.OUT2',
        says: /drives up to 1010 A through it; no fuse before it clears that$/,
      },
      {
        name: 'two blades of a block alike: told once',
        about: () =>
          aboutPlan((plan) => {
            fault(1400, 1000, 6000)(plan);
            Object.assign(fuse(plan, 'block.OUT3'), { faultA: 1500, interruptA: 1000 });
          }),
        level: 'note',
        subject: 'block.OUT3',
        says: /fuses block\.OUT3 and block\.OUT2 interrupt 1000 A/,
      },
      {
        name: 'a main fuse that clears all but the last ampere',
        about: () => aboutPlan(fault(1400, 1000, 1399)),
        level: 'caution',
        subject: 'block.OUT2',
      },
      {
        name: 'the same, with a main fuse that clears it',
        about: () => aboutPlan(fault(1400, 1000, 6000)),
        level: 'note',
        subject: 'block.OUT2',
        says: /main-fuse before it clears that$/,
      },
      {
        name: 'a main fuse that clears it, and a second battery behind one that does not',
        about: () => fedTwice(6000, 1200),
        level: 'caution',
        subject: 'block.OUT2',
        says: /main-fuse before it clears that, but not what comes from second\.POS/,
      },
      {
        name: 'a weak main fuse, and a second battery behind a strong one',
        about: () => fedTwice(1200, 6000),
        level: 'caution',
        subject: 'block.OUT2',
        says: /second-fuse before it clears that, but not what comes from battery\.POS/,
      },
      {
        name: 'two batteries, each behind a fuse that clears it',
        about: () => fedTwice(6000, 6000),
        level: 'note',
        subject: 'block.OUT2',
        says: /main-fuse and second-fuse before it clear that/,
      },
    ],
    quiet: [
      {
        name: 'a fault current within the rating, to the ampere',
        about: () => aboutPlan(fault(1000, 1000, 6000)),
      },
      { name: 'no fault current in the plan', about: () => about() },
    ],
  },
} satisfies RuleCases;
