import { everyFinding, type Finding } from '../../model/finding.ts';
import { acceptedText } from '../../model/finding-text.ts';
import { buildPlanSchema, type PlanHouseRule, type PlanPick } from '../../model/plan/index.ts';
import { figure } from '../../model/printed/told.ts';
import { textCell, wireCell } from '../cells.ts';
import { planTable } from '../table.ts';

const { findings, pick, rules } = buildPlanSchema.shape;
const finding = findings.element.shape;
const accepted = finding.accepted.unwrap().shape;
const picked = pick.element.shape;
const rule = rules.unwrap().element.shape;

/** Every finding, those that only follow from another too. */
export const findingsTable = planTable<Finding>({
  id: 'findings',
  title: 'Findings',
  rows: (plan) => everyFinding(plan.findings),
  key: ({ rule: id, related }) => [id, ...related.slice(0, 1)].join(' of '),
  keyLeaves: [finding.rule, finding.related.element],
  columns: [
    { id: 'level', title: 'Level', leaves: [finding.level], cell: ({ level }) => textCell(level) },
    { id: 'message', title: 'Message', leaves: [finding.message], cell: ({ message }) => textCell(message) },
    {
      id: 'accepted',
      title: 'Accepted',
      leaves: [accepted.by, accepted.reason, accepted.value, accepted.limit],
      cell: (one) => textCell(one.accepted && acceptedText(one.accepted)),
    },
  ],
});

/** What is taken from the shelf. */
export const pickTable = planTable<PlanPick>({
  id: 'pick',
  title: 'Taken from the shelf',
  rows: (plan) => plan.pick,
  key: ({ part, suppliedWith }) =>
    suppliedWith === undefined ? part : `${part} in the box of ${suppliedWith}`,
  keyLeaves: [picked.part, picked.suppliedWith],
  columns: [
    {
      id: 'quantity',
      title: 'Quantity',
      leaves: [picked.quantity, picked.unit],
      cell: ({ quantity, unit }, look) =>
        unit === 'm' ? wireCell(quantity, look) : { text: String(quantity), value: quantity },
    },
  ],
});

/** The house rules that a plan was made by. */
export const rulesTable = planTable<PlanHouseRule>({
  id: 'rules',
  title: 'House rules',
  rows: (plan) => plan.rules,
  key: ({ name }) => name,
  keyLeaves: [rule.name],
  columns: [
    {
      id: 'value',
      title: 'Value',
      leaves: [rule.value, rule.unit],
      cell: ({ value, unit }) => ({ text: `${figure(value)} ${unit}`.trimEnd(), value }),
    },
  ],
  isKept: (plan) => plan.rules.length > 0,
});
