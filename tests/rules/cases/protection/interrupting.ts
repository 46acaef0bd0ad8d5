import type { PlanFuse } from '../../../../lib/model/plan/index.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutPlan, partIn } from '../../case.ts';
import { fuse } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The main fuse at the battery, with what the plan says of the short behind it. */
const atBattery = (more: Partial<PlanFuse>): Case =>
  aboutPlan((plan) => {
    Object.assign(fuse(plan, 'main-fuse'), more);
  });

/** The battery is lithium, with the maker's short-circuit current or without. */
const atLithium = (shortCircuit: string | null, more: Partial<PlanFuse>): Case =>
  about({
    content: (content) => {
      const battery = partIn(content, 'agm', 'battery');
      battery.chemistry = 'lithium';
      if (shortCircuit !== null) battery['short-circuit'] = shortCircuit;
    },
    plan: (plan) => {
      Object.assign(fuse(plan, 'main-fuse'), more);
    },
  });

const maker = { interruptBasis: 'maker' } as const;

export const interruptingCases = {
  // Ohm's law for what a short drives, IEC 60269 for what counts; ABYC E-11, from memory, for the table by cranking.
  'fuse-interrupting': {
    fires: [
      {
        name: "3,001 A by the battery's maker through a fuse of 3 kA by its own",
        about: () =>
          atBattery({
            ...maker,
            interruptA: 3000,
            needsInterruptA: 3400,
            faultA: 3400,
            faultByMakersA: 3001,
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /main-fuse interrupts 3000 A; a dead short drives about 3400 A/,
      },
      {
        name: "3,000 A by the battery's maker, and past that only what is assumed",
        about: () =>
          atBattery({
            ...maker,
            interruptA: 3000,
            needsInterruptA: 3400,
            faultA: 3400,
            faultByMakersA: 3000,
          }),
        level: 'caution',
        subject: 'main-fuse',
      },
      {
        name: "3,001 A by the battery's maker through a fuse whose own maker is silent",
        about: () =>
          atBattery({
            interruptBasis: 'assumed',
            interruptA: 1000,
            needsInterruptA: 3400,
            faultA: 3400,
            faultByMakersA: 3001,
          }),
        level: 'caution',
        subject: 'main-fuse',
        says: /as a fuse of its form whose maker is silent/,
      },
      {
        name: 'an assumed resistance that lets 3,001 A through a fuse of 3 kA, each source told',
        about: () =>
          atBattery({
            ...maker,
            interruptA: 3000,
            needsInterruptA: 3001,
            faultA: 3001,
            faultFrom: [
              { source: 'battery', currentA: 2700, basis: 'assumed' },
              { source: 'generator', currentA: 301, basis: 'assumed' },
            ],
          }),
        level: 'caution',
        subject: 'main-fuse',
        says: /2700 A from battery \(assumed\) and 301 A from generator \(assumed\)/,
      },
      {
        name: 'less than the table asks for by cranking current',
        about: () => atBattery({ interruptA: 1000, needsInterruptA: 1500, faultA: 900 }),
        level: 'caution',
        subject: 'main-fuse',
        says: /1500 A is asked for behind battery with 600 A of cold cranking/,
      },
      {
        name: 'a rating that is not known',
        about: () => atBattery({ interruptA: null, needsInterruptA: 1500, faultA: 1500 }),
        level: 'caution',
        subject: 'main-fuse',
        says: /not known/,
      },
      {
        name: 'lithium whose maker is silent, before a fuse of 20 kA',
        about: () => atLithium(null, { ...maker, interruptA: 20000, needsInterruptA: null, faultA: null }),
        level: 'stop',
        subject: 'main-fuse',
        says: /no maker's figure states the short-circuit current of battery$/,
      },
      {
        name: 'lithium with its figure, before a fuse whose maker is silent',
        about: () =>
          atLithium('6 kA', {
            interruptBasis: 'assumed',
            interruptA: 20000,
            needsInterruptA: 5000,
            faultA: 5000,
            faultByMakersA: 5000,
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /no maker's figure states what the large bolt-in fuse main-fuse interrupts$/,
      },
      {
        name: 'lithium with its figure, above that of the fuse',
        about: () =>
          atLithium('8 kA', {
            ...maker,
            interruptA: 6000,
            needsInterruptA: 6500,
            faultA: 6500,
            faultByMakersA: 6400,
          }),
        level: 'stop',
        subject: 'main-fuse',
      },
    ],
    quiet: [
      {
        name: "3 kA by the battery's maker, 3 kA by the fuse's",
        about: () =>
          atBattery({
            ...maker,
            interruptA: 3000,
            needsInterruptA: 3000,
            faultA: 3000,
            faultByMakersA: 3000,
          }),
      },
      {
        name: 'what the table asks for, to the ampere',
        about: () => atBattery({ interruptA: 1500, needsInterruptA: 1500, faultA: 900 }),
      },
      {
        name: 'lithium and its fuse with both figures, the fuse above',
        about: () =>
          atLithium('6 kA', {
            ...maker,
            interruptA: 20000,
            needsInterruptA: 5000,
            faultA: 5000,
            faultByMakersA: 5000,
          }),
      },
      {
        name: 'a blade of 1 kA behind the main fuse: it is not the first',
        about: () => aboutPlan((plan) => Object.assign(fuse(plan, 'block.OUT2'), { interruptA: 1000 })),
      },
    ],
  },
} satisfies RuleCases;
