import type { BuildPlan, ConductorLimit } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { namesOf } from '../words/plan-names.ts';
import { levelWords, markWords, spelled } from '../words/words.ts';
import { none, plainNumber } from '../words/written.ts';

/** Why each conductor has its size. */
export function conductorReasons(plan: BuildPlan): Table {
  const { wire } = namesOf(plan);
  return tableOf(
    'Why the conductors have these sizes',
    plan.power.conductors,
    [
      { title: 'Wire', cell: (one) => strong(wire(one.id), one.id) },
      {
        title: 'Size',
        leads: true,
        cell: (one) => ({ text: one.size.label, beside: `${plainNumber(one.size.areaMm2)} mm²` }),
      },
      {
        title: 'Material',
        cell: (one) => ({
          text: spelled(one.material),
          beside: `insulation ${printed('temperature-stood', one.insulationC)}`,
        }),
      },
      { title: 'How', cell: (one) => spelled(one.chosen) },
      { title: 'Why', cell: (one) => one.reason },
    ],
    (one) => one.id,
  );
}

interface Limit extends ConductorLimit {
  readonly wire: string;
}

/** Every limit that each conductor was held against. */
export function conductorLimits(plan: BuildPlan): Table {
  const { wire } = namesOf(plan);
  const limits: Limit[] = plan.power.conductors.flatMap((one) =>
    one.limits.map((limit) => ({ ...limit, wire: one.id })),
  );
  return tableOf(
    'Limits that the conductors were held against',
    limits,
    [
      { title: 'Wire', cell: (limit) => strong(wire(limit.wire)) },
      { title: 'What', cell: (limit) => spelled(limit.what) },
      { title: 'Zone', cell: (limit) => (limit.zone === undefined ? none : spelled(limit.zone)) },
      {
        title: 'Value',
        kind: 'figure',
        leads: true,
        cell: (limit) => `${plainNumber(limit.value)} ${limit.unit}`,
      },
      { title: 'Limit', kind: 'figure', cell: (limit) => `${plainNumber(limit.limit)} ${limit.unit}` },
      { title: 'Past it', cell: (limit) => levelWords[limit.level] },
      {
        title: 'Source',
        cell: ({ citation, mark }) =>
          mark === undefined ? citation : { text: citation, beside: `${mark}: ${markWords[mark]}` },
      },
    ],
    (limit) => limit.wire,
  );
}
