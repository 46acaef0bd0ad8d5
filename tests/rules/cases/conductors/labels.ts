import type { BuildPlan } from '../../../../lib/model/plan/index.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutPlan } from '../../case.ts';
import { wire } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

const labelled = (labels: Readonly<Record<string, string>>) => (plan: BuildPlan) => {
  for (const [id, label] of Object.entries(labels)) wire(plan, id).label = label;
};

/** A job whose released revision fixed these labels. */
function released(labels: Readonly<Record<string, string>>): Case {
  const { job, plan } = aboutPlan(labelled(labels));
  return { job: { ...job, releasedLabels: labels }, plan };
}

/** Common practice, no source. */
export const labelCases = {
  'label-twice': {
    fires: [
      {
        name: 'two wires with one label',
        about: () => aboutPlan(labelled({ main: 'X1', 'amp-feed': 'X1' })),
        level: 'stop',
        subject: 'main',
        says: /one label, X1/,
      },
      {
        name: 'alike but for capitals',
        about: () => aboutPlan(labelled({ main: 'x1', 'amp-feed': 'X1' })),
        level: 'stop',
        subject: 'main',
      },
      {
        name: 'both as a released revision labelled them',
        about: () => released({ main: 'X1', 'amp-feed': 'X1' }),
        level: 'caution',
        subject: 'main',
        toDo: /next revision/,
      },
    ],
    quiet: [
      { name: 'each with its own', about: () => about() },
      {
        name: 'plus and minus of a pair',
        about: () => aboutPlan(labelled({ 'speaker-1.+': 'X1+', 'speaker-1.-': 'X1-' })),
      },
    ],
  },
  'label-is-terminal': {
    fires: [
      {
        name: 'the name of a bar',
        about: () => aboutPlan(labelled({ 'board-ground': 'G1' })),
        level: 'caution',
        subject: 'board-ground',
        says: /also the name of ground\.G1/,
      },
      {
        name: 'the name of an output, in small letters',
        about: () => aboutPlan(labelled({ 'amp-feed': 'out1' })),
        level: 'caution',
        subject: 'amp-feed',
      },
      {
        name: 'as a released revision labelled it',
        about: () => released({ 'board-ground': 'G1' }),
        level: 'note',
        subject: 'board-ground',
      },
    ],
    quiet: [
      { name: 'none is', about: () => about() },
      { name: 'one that only begins so', about: () => aboutPlan(labelled({ 'board-ground': 'G1a' })) },
    ],
  },
} satisfies RuleCases;
