import type { BuildPlan } from '../../model/plan/index.ts';
import { type FindingGroup, type FindingModel, findingGroups, isWhole } from '../page/finding-model.ts';
import type { Visible } from '../site/visible-to.ts';
import { tradeCautions } from '../words/cautions.ts';
import { counted, statusWords } from '../words/words.ts';
import { none } from '../words/written.ts';
import { builtTable, proposalCount, proposalTable } from './proposals.ts';
import type { OpenSheet } from './sheet.ts';
import { type Fact, fact, groupsBy, strong, type Table, tableOf } from './table.ts';

/** The first sheet: what the job is, who answers for it, what must be read before work begins. */
export interface CoverSheet {
  /** Fields after ISO 7200. */
  readonly titleBlock: readonly Fact[];
  readonly findings: readonly CoverFindings[];
  /** False where the reader does not see findings at all. */
  readonly tellsFindings: boolean;
  readonly vehicleCautions: readonly string[];
  readonly tradeCautions: readonly string[];
  readonly equipment: readonly string[];
  /** How much of the job is proposed, and each with its reason; null where the job writes all of it. */
  readonly proposed: { readonly text: string; readonly table: Table } | null;
  /** What stays of the revision before, and what is otherwise; null of a first one. */
  readonly built: Table | null;
  readonly revisions: Table | null;
  readonly notes: readonly string[];
}

/** Findings of one level, those of one rule with one remedy, and accepted alike, together: it is told once. */
interface CoverFindings extends FindingGroup {
  readonly told: readonly {
    readonly messages: readonly string[];
    readonly accepted: string | null;
    readonly remedy: string;
    readonly rule: string;
    readonly follows: FindingModel['follows'];
  }[];
}

function coverFindings(group: FindingGroup): CoverFindings {
  const told = groupsBy(group.findings, ({ rule, remedy, accepted }) =>
    [rule, remedy, accepted].join('|'),
  ).map(({ things }) => ({
    messages: things.map(({ message }) => message),
    remedy: things[0]?.remedy ?? '',
    accepted: things[0]?.accepted ?? null,
    rule: things[0]?.rule ?? '',
    follows: things.flatMap(({ follows }) => follows),
  }));
  return { ...group, told };
}

function titleBlock({ job, shop, vehicle }: Visible<BuildPlan>): Fact[] {
  const fields: readonly (readonly [string, string | null | undefined])[] = [
    ['Shop', shop?.name],
    ['Address', shop?.address?.join(', ')],
    ['Job', job?.id],
    ['Title', job?.title],
    ['Vehicle', vehicle?.title],
    ['Kind of document', 'Build sheets'],
    ['Revision', job?.revision],
    ['Status', job?.status === undefined ? undefined : statusWords[job.status]],
    ['Issued on', job?.issuedOn],
    ['Drawn by', job?.drawnBy],
    ['Approved by', job?.approvedBy],
    ['Fabricator', job?.fabricator],
  ];
  return fields
    .filter(([, text]) => text !== undefined && text !== '')
    .map(([name, text]) => fact(name, text ?? none));
}

/** What the job puts into the vehicle: each title once, with how many there are. */
function equipment(items: Visible<BuildPlan['items']> | undefined): string[] {
  const counts = new Map<string, number>();
  for (const item of items ?? []) {
    if (item.origin === 'vehicle' || item.partTitle === undefined) continue;
    const name = item.partTitle;
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return [...counts].map(([name, count]) => (count === 1 ? name : `${name} (${counted(count, 'piece')})`));
}

/** What the cover says of proposals: that they were not written by anyone, and how many there are. */
function proposed(plan: Visible<BuildPlan>): CoverSheet['proposed'] {
  const table = proposalTable(plan);
  if (!table) return null;
  const { all, open } = proposalCount(plan);
  const stay =
    open === 0
      ? ''
      : `, ${counted(open, 'of these leaves a terminal open', 'of these leave terminals open')}`;
  const text = `${counted(all, 'line')} of this job ${all === 1 ? 'is' : 'are'} proposed and not written by anyone${stay}. What is written in the job goes before it.`;
  return { text, table };
}

function coverModel(plan: Visible<BuildPlan>): CoverSheet {
  const revisions = plan.job?.revisions ?? [];
  return {
    titleBlock: titleBlock(plan),
    findings: findingGroups((plan.findings ?? []).filter(isWhole)).map(coverFindings),
    tellsFindings: plan.traces !== undefined,
    vehicleCautions: (plan.vehicle?.cautions ?? []).filter((text) => text !== undefined),
    tradeCautions: [
      tradeCautions.authority,
      tradeCautions.battery,
      tradeCautions.restraints,
      tradeCautions.voltage,
      tradeCautions.hearing,
    ],
    equipment: equipment(plan.items),
    proposed: proposed(plan),
    built: builtTable(plan),
    revisions:
      revisions.length === 0
        ? null
        : tableOf('Revisions', revisions, [
            { title: 'Revision', cell: (one) => (one.revision === undefined ? none : strong(one.revision)) },
            { title: 'Date', kind: 'date', cell: (one) => one.date ?? none },
            { title: 'What changed', cell: (one) => one.what ?? none },
          ]),
    notes: (plan.job?.notes ?? []).filter((text) => text !== undefined),
  };
}

export const cover: OpenSheet<CoverSheet> = {
  id: 'cover',
  title: 'Cover',
  audiences: ['bench', 'customer', 'shop'],
  cautions: [],
  openTo: 'everyone',
  model: coverModel,
};
