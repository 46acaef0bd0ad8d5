import { parseQuantity } from '../../model/quantity/quantity.ts';

/** A sheet of adhesive labels, millimetres of paper: how many, how large, and where the first one stands. */
export interface LabelStock {
  readonly columns: number;
  readonly rows: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** From the start of one label to the start of the next. */
  readonly pitchXMm: number;
  readonly pitchYMm: number;
  readonly leftMm: number;
  readonly topMm: number;
}

/** Small labels on Letter, four across and twenty down: 1 3/4 by 1/2 in, a size that many makers cut (cp). */
export const letterStock: LabelStock = {
  columns: 4,
  rows: 20,
  widthMm: 44.45,
  heightMm: 12.7,
  pitchXMm: 52.07,
  pitchYMm: 12.7,
  leftMm: 7.62,
  topMm: 12.7,
};

/** Small labels on A4, five across and thirteen down: 38.1 by 21.2 mm, a size that many makers cut (cp). */
export const a4Stock: LabelStock = {
  columns: 5,
  rows: 13,
  widthMm: 38.1,
  heightMm: 21.2,
  pitchXMm: 40.6,
  pitchYMm: 21.2,
  leftMm: 4.7,
  topMm: 10.9,
};

/** Words of the option, with the field that each sets. */
const lengthFields = {
  width: 'widthMm',
  height: 'heightMm',
  'pitch-x': 'pitchXMm',
  'pitch-y': 'pitchYMm',
  left: 'leftMm',
  top: 'topMm',
} as const satisfies Record<string, keyof LabelStock>;
const countFields = { columns: 'columns', rows: 'rows' } as const satisfies Record<string, keyof LabelStock>;

const example = 'columns=4, width=1 3/4 in';

/**
 * Label stock from words such as `columns=4, rows=20, width=1 3/4 in, height=1/2 in, left=0.3 in, top=1/2 in,
 * pitch-x=2.05 in, pitch-y=1/2 in`, each of them optional; what is left out comes from `stock`. What is wrong
 * with it is told as a text.
 */
export function readLabelStock(words: string, stock: LabelStock): LabelStock | string {
  let read = stock;
  for (const word of words.split(',').map((each) => each.trim())) {
    if (word === '') continue;
    const [name = '', value = ''] = word.split('=').map((each) => each.trim());
    const field = fieldOf(name, value);
    if (typeof field === 'string') return field;
    read = { ...read, ...field };
  }
  return read;
}

function fieldOf(name: string, value: string): Partial<LabelStock> | string {
  const length = Object.entries(lengthFields).find(([word]) => word === name)?.[1];
  if (length) {
    const metres = parseQuantity(value, 'length');
    const isOffset = length === 'leftMm' || length === 'topMm';
    if (typeof metres !== 'number') return `${name}: ${metres.unreadable}; write ${example}`;
    if (isOffset ? metres < 0 : metres <= 0) return `${name} must be above zero; write ${example}`;
    return { [length]: metres * 1000 };
  }
  const count = Object.entries(countFields).find(([word]) => word === name)?.[1];
  const names = [...Object.keys(countFields), ...Object.keys(lengthFields)].join(', ');
  if (!count) return `"${name}" is not a size of label stock; there are ${names}`;
  const whole = Number(value);
  if (!Number.isInteger(whole) || whole < 1 || whole > 100)
    return `${name} takes a whole number from 1 to 100`;
  return { [count]: whole };
}

/** What of the stock does not go onto the paper, as a text; null where all does. */
export function stockFault(
  stock: LabelStock,
  paper: { readonly widthMm: number; readonly heightMm: number },
): string | null {
  const rightMm = stock.leftMm + (stock.columns - 1) * stock.pitchXMm + stock.widthMm;
  const bottomMm = stock.topMm + (stock.rows - 1) * stock.pitchYMm + stock.heightMm;
  const overMm = Math.max(rightMm - paper.widthMm, bottomMm - paper.heightMm);
  if (overMm > 0.05) return `the labels reach ${overMm.toFixed(1)} mm past the paper`;
  if (stock.columns > 1 && stock.pitchXMm < stock.widthMm - 0.05)
    return 'the labels lie over each other across';
  if (stock.rows > 1 && stock.pitchYMm < stock.heightMm - 0.05) return 'the labels lie over each other down';
  return null;
}
