import type { ProposalRule } from '../../model/content/proposal.ts';
import type { BuildPlan, PlanProposal } from '../../model/plan/index.ts';
import type { Visible } from '../site/visible-to.ts';
import { joined } from '../words/words.ts';
import { groupedTable, groupsBy, strong, type Table, tableOf } from './table.ts';

/** What each family of rules proposes, as the heading of its rows. */
const families: Readonly<Record<ProposalRule, string>> = {
  channels: 'Speakers on their channels',
  inputs: 'Inputs and outputs',
  filters: 'Bands and filters',
  'turn-on': 'Turn-on and level',
  supply: 'Supply',
  ground: 'Ground',
  runs: 'Runs',
  cables: 'Cables and leads',
  'board-size': 'Size and place of boards',
  fixings: 'Fixings',
  'left-open': 'Left open',
};

type Shown = Pick<PlanProposal, 'id' | 'rule' | 'reason' | 'since'>;

const whyOf = ({ reason, since }: Shown): string =>
  since === undefined ? reason : `${reason}; built so in revision ${since}`;

/** What rules proposed, each with its reason, those of one reason in one row; null where the job writes all of it. */
export function proposalTable({ proposals }: Visible<BuildPlan>): Table | null {
  const shown = (proposals ?? []).flatMap(({ id, rule, reason, since }): Shown[] =>
    id === undefined || rule === undefined || reason === undefined ? [] : [{ id, rule, reason, since }],
  );
  if (shown.length === 0) return null;
  const groups = groupsBy(shown, ({ rule }) => rule).map(({ things }) => ({
    title: things[0] ? families[things[0].rule] : null,
    things: groupsBy(things, whyOf),
  }));
  return groupedTable('Proposed, with the reason', groups, [
    {
      title: 'Proposed',
      kind: 'words',
      leads: true,
      cell: ({ things }) => strong(joined(things.map(({ id }) => id))),
    },
    { title: 'Why', kind: 'words', cell: ({ things }) => (things[0] ? whyOf(things[0]) : '') },
  ]);
}

/** How many things are proposed, and how many of them stay open. */
export function proposalCount({ proposals }: Visible<BuildPlan>): {
  readonly all: number;
  readonly open: number;
} {
  const all = proposals ?? [];
  return { all: all.length, open: all.filter(({ rule }) => rule === 'left-open').length };
}

/** What a later revision has of the one that it is built on: what is otherwise, thing by thing, then all that stays. */
export function builtTable({ built }: Visible<BuildPlan>): Table | null {
  if (!built?.revision) return null;
  const { revision, changed = [], unchanged = [] } = built;
  const rows = [
    ...changed.map(({ id = '', was = '', is = '' }) => ({ id, was, is })),
    ...(unchanged.length > 0
      ? [{ id: unchanged.join(', '), was: `as built in revision ${revision}`, is: 'unchanged' }]
      : []),
  ];
  return tableOf(`Built on revision ${revision}`, rows, [
    { title: 'What', kind: 'words', leads: true, cell: ({ id }) => strong(id) },
    { title: `In revision ${revision}`, kind: 'words', cell: ({ was }) => was },
    { title: 'Now', kind: 'words', cell: ({ is }) => is },
  ]);
}
