/** A run of letters as single strokes, and how wide it is. */
export interface StrokeText {
  readonly strokes: readonly (readonly { readonly xM: number; readonly yM: number }[])[];
  readonly widthM: number;
}

/**
 * Letters of single strokes on a grid of 4 by 6, each stroke a run of points `xy`. Drawn for this project: an
 * engraving tool follows a line, not an outline, so the letters of a printing type are of no use to it.
 */
const letters: Readonly<Record<string, string>> = {
  A: '00 26 40|12 32',
  B: '00 06 36 45 44 33 03|33 42 41 30 00',
  C: '45 36 16 05 01 10 30 41',
  D: '00 06 26 44 42 20 00',
  E: '46 06 00 40|03 33',
  F: '46 06 00|03 33',
  G: '45 36 16 05 01 10 30 41 43 23',
  H: '00 06|40 46|03 43',
  I: '10 30|16 36|20 26',
  J: '01 10 30 41 46',
  K: '00 06|46 03 40',
  L: '06 00 40',
  M: '00 06 23 46 40',
  N: '00 06 40 46',
  O: '01 05 16 36 45 41 30 10 01',
  P: '00 06 36 45 44 33 03',
  Q: '01 05 16 36 45 41 30 10 01|22 40',
  R: '00 06 36 45 44 33 03|23 40',
  S: '01 10 30 41 42 33 13 04 05 16 36 45',
  T: '06 46|26 20',
  U: '06 01 10 30 41 46',
  V: '06 20 46',
  W: '06 10 24 30 46',
  X: '00 46|06 40',
  Y: '06 23 46|23 20',
  Z: '06 46 00 40',
  '0': '01 05 16 36 45 41 30 10 01|11 35',
  '1': '14 26 20|10 30',
  '2': '05 16 36 45 44 00 40',
  '3': '05 16 36 45 44 33 42 41 30 10 01|33 13',
  '4': '30 36 02 42',
  '5': '46 06 03 33 42 41 30 10 01',
  '6': '46 26 03 01 10 30 41 42 33 03',
  '7': '06 46 10',
  '8': '13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33',
  '9': '00 20 43 45 36 16 05 04 13 43',
  '-': '13 33',
  '+': '13 33|22 24',
  '.': '20 21',
  '/': '00 46',
};

const cellUnits = 6;
const heightUnits = 6;
const widthUnits = 4;

/** Writes a text from a baseline's left end; what has no letter here leaves a gap. Lower case is written as upper. */
export function strokeLetters(
  text: string,
  from: { readonly xM: number; readonly yM: number },
  heightM: number,
): StrokeText {
  const unitM = heightM / heightUnits;
  const strokes = [...text.toUpperCase()].flatMap((character, index) =>
    strokesOf(character).map((run) =>
      run.map(({ x, y }) => ({
        xM: from.xM + (index * cellUnits + x) * unitM,
        yM: from.yM + y * unitM,
      })),
    ),
  );
  const cells = [...text].length;
  const widthM = cells === 0 ? 0 : ((cells - 1) * cellUnits + widthUnits) * unitM;
  return { strokes, widthM };
}

function strokesOf(character: string): { x: number; y: number }[][] {
  return (letters[character] ?? '')
    .split('|')
    .filter((run) => run !== '')
    .map((run) => run.split(' ').map((point) => ({ x: Number(point[0]), y: Number(point[1]) })));
}
