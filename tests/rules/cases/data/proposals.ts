import type { Proposal } from '../../../../lib/model/content/proposal.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { about } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A sound case with something proposed. */
function proposing(...proposals: readonly Proposal[]): Case {
  const base = about();
  return { ...base, job: { ...base.job, proposals } };
}

const open = (doubt: boolean): Proposal => ({
  path: ['left-open', 'dsp.OUT'],
  rule: 'left-open',
  reason: 'this output feeds nothing',
  value: 'this output feeds nothing',
  ...(doubt && { doubt: 'plays-nothing' as const }),
});

const lead = (doubt?: Proposal['doubt']): Proposal => ({
  path: ['links', 'board-ground'],
  rule: 'ground',
  reason: 'the only ground point',
  value: { from: 'ground.G0', to: 'body.cargo', length: '16 in' },
  ...(doubt && { doubt }),
});

/** What proposals leave to be looked at. */
export const proposalCases = {
  // Common practice, no source.
  'open-only-by-proposal': {
    fires: [
      {
        name: 'an output that drives nothing',
        about: () => proposing(open(true)),
        level: 'caution',
        subject: 'dsp',
        says: /OUT of dsp drives nothing/,
      },
    ],
    quiet: [
      { name: 'a spare port', about: () => proposing(open(false)) },
      { name: 'nothing proposed', about: () => proposing() },
    ],
  },
  'fader-moves-bass': {
    fires: [
      {
        name: 'bass from the rear pair',
        about: () => proposing(lead('fader-moves-bass')),
        level: 'note',
        subject: 'board-ground',
        toDo: /signal: front/,
      },
    ],
    quiet: [{ name: 'bass from its own pair', about: () => proposing(lead()) }],
  },
  'bass-pair-chosen': {
    fires: [
      {
        name: 'bass from the front pair where the source has a rear one',
        about: () => proposing(lead('bass-pair-chosen')),
        level: 'note',
        subject: 'board-ground',
        toDo: /signal: rear/,
      },
    ],
    quiet: [{ name: 'bass from its own pair', about: () => proposing(lead()) }],
  },
  'length-not-measured': {
    fires: [
      {
        name: 'a ground lead without a route',
        about: () => proposing(lead('not-measured')),
        level: 'caution',
        subject: 'board-ground',
        says: /assumed: board-ground/,
      },
    ],
    quiet: [{ name: 'a lead that follows from a route', about: () => proposing(lead()) }],
  },
} satisfies RuleCases;
