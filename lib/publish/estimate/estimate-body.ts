import type { Estimate, EstimatePart } from '../../model/estimate/estimate.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { frozen } from '../frozen.ts';
import { type ColumnOf, groupedTable, groupsBy, strong, type Table, tableOf } from '../sheets/table.ts';
import { hoursText } from '../words/hours-text.ts';
import { inputText, type TraceTexts, traceTexts } from '../words/trace-texts.ts';
import { counted, spelled } from '../words/words.ts';
import {
  amountText,
  differenceText,
  freeLines,
  lacksOf,
  layerName,
  lineFrom,
  lineName,
  quantityWriter,
  standingNotes,
  totalText,
  workedText,
} from './estimate-words.ts';

/** The estimate as its page prints it: one page on paper, and on screen each part and each working below. */
export interface EstimateBody {
  readonly job: string;
  readonly vehicle: string;
  readonly total: string;
  readonly lacks: readonly string[];
  readonly notes: readonly string[];
  readonly sum: Table | null;
  /** Each device, and all else by its kind. */
  readonly parts: Table | null;
  /** Parts of these without a price, each with its quantity. */
  readonly unpriced: readonly string[];
  readonly free: readonly string[];
  readonly hours: Table | null;
  readonly worked: string;
  /** One by one what is told by its kind above. */
  readonly goods: Table | null;
  readonly workings: readonly (TraceTexts & { readonly id: string })[];
}

type QuantityText = (part: Pick<EstimatePart, 'quantity' | 'unit'>) => string;

export function estimateBody(
  estimate: Estimate,
  { job, vehicle, shop }: Pick<BuildPlan, 'job' | 'vehicle' | 'shop'>,
): EstimateBody {
  const quantityText = quantityWriter(shop);
  return frozen({
    job: `${job.title}. ${job.id}, revision ${job.revision}`,
    vehicle: vehicle.title,
    total: totalText(estimate),
    lacks: lacksOf(estimate),
    notes: standingNotes(estimate),
    sum: sumTable(estimate),
    parts: partsTable(estimate, quantityText),
    unpriced: estimate.parts
      .filter((one) => one.costMinor === null && !standsSingly(estimate, one))
      .map((one) => `${one.title}: ${quantityText(one)}`),
    free: freeLines(estimate),
    hours: hoursTable(estimate),
    worked: workedText(estimate),
    goods: goodsTable(estimate, quantityText),
    workings: Object.entries(estimate.traces).map(([id, trace]) => ({
      id,
      ...traceTexts(trace),
      inputs: trace.inputs.map(inputText),
    })),
  });
}

interface Line {
  readonly name: string;
  readonly from: string;
  readonly amount: string;
  readonly isTotal?: true;
}

function sumTable(estimate: Estimate): Table | null {
  const { sum, totalMinor, currency, isAtLeast } = estimate;
  if (currency === null) return null;
  const lines: Line[] = sum.map(({ of, minor }) => ({
    name: lineName(of),
    from: lineFrom(estimate, of),
    amount: amountText(estimate, minor),
  }));
  const total: Line = {
    name: isAtLeast ? 'Total, at least' : 'Total',
    from: '',
    amount: amountText(estimate, totalMinor),
    isTotal: true,
  };
  return tableOf(
    'What it comes to',
    [...lines, total],
    [
      { title: 'Of', cell: ({ name }) => strong(name) },
      { title: 'Reckoned from', kind: 'words', cell: ({ from }) => from },
      { title: currency, kind: 'figure', cell: ({ amount, isTotal }) => (isTotal ? strong(amount) : amount) },
    ],
  );
}

/** More devices than this go by kind on paper, as goods do: the sheet is one page. */
const mostSingly = 20;

/** A device, or all parts of a kind. */
interface PartLine {
  readonly name: string;
  readonly quantity: string;
  readonly price: string;
  readonly cost: string;
}

/** True for a part that stands in a line of its own: a device, as long as all of them have room. */
function standsSingly({ parts }: Estimate, { isDevice }: EstimatePart): boolean {
  return isDevice && parts.filter((one) => one.isDevice).length <= mostSingly;
}

function partsTable(estimate: Estimate, quantityText: QuantityText): Table | null {
  const { parts, currency } = estimate;
  if (parts.length === 0) return null;
  const single = parts.filter((one) => standsSingly(estimate, one));
  const rest = parts.filter((one) => !standsSingly(estimate, one));
  const groups = [
    { title: 'Equipment', things: single.map((one) => partLine(one, estimate, quantityText)) },
    {
      title: 'By kind, each with its own price',
      things: groupsBy(rest, ({ kind }) => kind).map(({ title, things }) =>
        kindLine(title ?? '', things, estimate),
      ),
    },
  ];
  const columns: ColumnOf<PartLine>[] = [
    { title: 'Part', kind: 'words', cell: ({ name }) => strong(name) },
    { title: 'Quantity', kind: 'figure', cell: ({ quantity }) => quantity },
    ...(currency === null ? [] : moneyColumns(currency)),
  ];
  return groupedTable('Parts', groups, columns);
}

function moneyColumns(currency: string): ColumnOf<PartLine>[] {
  return [
    { title: 'Price', kind: 'figure', cell: ({ price }) => price },
    { title: currency, kind: 'figure', cell: ({ cost }) => cost },
  ];
}

function partLine(part: EstimatePart, estimate: Estimate, quantityText: QuantityText): PartLine {
  return {
    name: part.title,
    quantity: quantityText(part),
    price: part.price ?? 'none',
    cost: amountText(estimate, part.costMinor),
  };
}

/** Parts of one kind together. */
function kindLine(kind: string, parts: readonly EstimatePart[], estimate: Estimate): PartLine {
  const costs = parts.flatMap(({ costMinor }) => costMinor ?? []);
  const lacking = parts.length - costs.length;
  const sum = costs.reduce((all, one) => all + one, 0);
  return {
    name: spelled(kind),
    quantity: counted(parts.length, 'entry', 'entries'),
    price: lacking === 0 ? '' : `${lacking} without`,
    cost: costs.length === 0 ? amountText(estimate, null) : amountText(estimate, sum),
  };
}

function goodsTable(estimate: Estimate, quantityText: QuantityText): Table | null {
  const goods = estimate.parts.filter((one) => !standsSingly(estimate, one));
  if (goods.length === 0) return null;
  return groupedTable(
    'One by one',
    groupsBy(goods, ({ kind }) => spelled(kind)),
    [
      { title: 'Part', kind: 'words', cell: ({ title }) => strong(title) },
      { title: 'Quantity', kind: 'figure', cell: quantityText },
      { title: 'Price', kind: 'figure', cell: ({ price }) => price ?? 'none' },
      {
        title: estimate.currency ?? 'Cost',
        kind: 'figure',
        cell: ({ costMinor }) => amountText(estimate, costMinor),
      },
    ],
  );
}

function hoursTable({ hours, estimatedMinutes, workedMinutes }: Estimate): Table | null {
  if (hours.length === 0) return null;
  const total = { name: 'All', estimatedMinutes, workedMinutes };
  const rows = hours.map((one) => ({
    name: layerName(one.layer),
    estimatedMinutes: one.minutes,
    workedMinutes: one.workedMinutes,
  }));
  const worked = (minutes: number) => (minutes === 0 ? '' : hoursText(minutes));
  return tableOf(
    'Hours of one person, by layer of the order of work',
    [...rows, total],
    [
      { title: 'Layer', cell: ({ name }) => strong(name) },
      { title: 'Estimated', kind: 'figure', cell: (one) => hoursText(one.estimatedMinutes) },
      { title: 'Worked', kind: 'figure', cell: (one) => worked(one.workedMinutes) },
      {
        title: 'Difference',
        kind: 'figure',
        cell: (one) => differenceText(one.estimatedMinutes, one.workedMinutes),
      },
    ],
  );
}
