import type { BuildPlan } from '../../model/plan/index.ts';
import type { Visible } from '../site/visible-to.ts';
import { strong, type Table, tableOf } from './table.ts';

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
