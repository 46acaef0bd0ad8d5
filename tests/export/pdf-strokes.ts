import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A straight stroke on a page, millimetres from its lower left corner. */
export interface Stroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

type Matrix = readonly [number, number, number, number, number, number];

/** A point of PDF is 1/72 in (ISO 32000-1). */
const pointMm = 25.4 / 72;

/** Opens a PDF by pdf.js. */
export async function openPdf(bytes: Uint8Array) {
  return getDocument({ data: new Uint8Array(bytes), verbosity: 0, isEvalSupported: false }).promise;
}

/** The straight strokes of a page in millimetres, from the drawing operators as pdf.js reads them. */
export async function strokesOf(bytes: Uint8Array, pageNumber: number): Promise<Stroke[]> {
  const page = await (await openPdf(bytes)).getPage(pageNumber);
  const { fnArray, argsArray } = await page.getOperatorList();
  const strokes: Stroke[] = [];
  const saved: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  for (const [index, operator] of fnArray.entries()) {
    const args: unknown = argsArray[index];
    if (operator === OPS.save) saved.push(matrix);
    else if (operator === OPS.restore) matrix = saved.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = joined(matrix, numbersOf(args));
    else if (operator === OPS.constructPath) strokes.push(...pathStrokes(args, matrix));
  }
  return strokes;
}

function joined(m: Matrix, n: readonly number[]): Matrix {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = n;
  return [
    m[0] * a + m[2] * b,
    m[1] * a + m[3] * b,
    m[0] * c + m[2] * d,
    m[1] * c + m[3] * d,
    m[0] * e + m[2] * f + m[4],
    m[1] * e + m[3] * f + m[5],
  ];
}

function numbersOf(value: unknown): number[] {
  if (ArrayBuffer.isView(value) && value instanceof Float32Array) return [...value];
  return Array.isArray(value) ? value.filter((one): one is number => typeof one === 'number') : [];
}

/** pdf.js packs a path as one list: 0 move x y, 1 line x y, 2 curve and six, 3 curve and four, 4 close. */
const lengths = [2, 2, 6, 4, 0];

function pathStrokes(args: unknown, matrix: Matrix): Stroke[] {
  const [, packed]: unknown[] = Array.isArray(args) ? args : [];
  const [list]: unknown[] = Array.isArray(packed) ? packed : [];
  const numbers = numbersOf(list);
  const strokes: Stroke[] = [];
  let at: readonly [number, number] = [0, 0];
  for (let index = 0; index < numbers.length; ) {
    const kind = numbers[index] ?? 4;
    const count = lengths[kind] ?? 0;
    const to = placed(matrix, numbers[index + count - 1] ?? 0, numbers[index + count] ?? 0);
    if (kind === 1) strokes.push({ x1: at[0], y1: at[1], x2: to[0], y2: to[1] });
    if (count > 0) at = to;
    index += count + 1;
  }
  return strokes;
}

function placed(m: Matrix, x: number, y: number): readonly [number, number] {
  return [(m[0] * x + m[2] * y + m[4]) * pointMm, (m[1] * x + m[3] * y + m[5]) * pointMm];
}
