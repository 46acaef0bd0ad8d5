import type { Edge } from '../../model/vocabulary.ts';
import { lines } from '../line-styles.ts';
import { at } from '../paper.ts';
import type { Sketch } from './sketch.ts';

/** A board with its datum, its edges and corners, and where a part on it is measured. */
export function boardWays(sketch: Sketch): void {
  const [left, right, top, bottom] = [16, 104, 10, 64];
  sketch.box(at(left, top), at(right, bottom));
  sketch.word('upper-left', at(left + 2, top + 4));
  sketch.word('upper-right', at(right - 2, top + 4), 'end');
  sketch.word('lower-right', at(right - 2, bottom - 4), 'end');
  sketch.word('top', at((left + right) / 2, top + 4), 'middle');
  sketch.word('bottom', at(62, bottom - 4), 'middle');
  sketch.word('left', at(left + 2, 36));
  sketch.word('right', at(right - 2, 36), 'end');
  sketch.box(at(50, 24), at(84, 44), lines.part);
  sketch.word('a part', at(67, 34), 'middle');
  sketch.measure(at(left, 44), at(50, 44));
  sketch.word('at: x', at(32, 48.5), 'middle');
  sketch.measure(at(50, bottom), at(50, 44));
  sketch.word('at: y', at(52, 51));
  sketch.measure(at(left, bottom), at(left + 26, bottom + 8));
  sketch.datum(at(left, bottom));
  sketch.word('datum: x and y are 0 here', at(left + 28, bottom + 9));
  sketch.measure(at(8, bottom), at(8, 40));
  sketch.word('y', at(6, 36), 'end');
  sketch.measure(at(left, 80), at(left + 24, 80));
  sketch.word('x', at(left + 27, 80));
}

/** The measures of each cut in a board. */
export function cutWays(sketch: Sketch): void {
  const [left, right, top, bottom] = [8, 104, 8, 86];
  sketch.shape(
    [
      at(left, top),
      at(38, top),
      at(38, 20),
      at(58, 20),
      at(58, top),
      at(84, top),
      at(right, 22),
      at(right, bottom),
      at(left, bottom),
    ],
    lines.seen,
  );
  sketch.measure(at(left, 14), at(38, 14));
  sketch.word('offset', at(23, 18), 'middle');
  sketch.span(at(38, 23), at(58, 23));
  sketch.word('width', at(48, 27), 'middle');
  sketch.span(at(61, top), at(61, 20));
  sketch.word('depth', at(63, 15));
  sketch.stroke([at(84, top), at(right, top), at(right, 22)], lines.hidden);
  sketch.span(at(84, 4), at(right, 4));
  sketch.word('dx', at(82, 4), 'end');
  sketch.span(at(107, top), at(107, 22));
  sketch.word('dy', at(right - 2, 27), 'end');
  holeAndWindow(sketch, left, bottom);
  sketch.datum(at(left, bottom));
}

function holeAndWindow(sketch: Sketch, left: number, bottom: number): void {
  sketch.circle(at(32, 50), 6);
  sketch.word('hole', at(40, 46));
  sketch.measure(at(left, 50), at(32, 50));
  sketch.word('x', at(18, 46), 'middle');
  sketch.measure(at(32, bottom), at(32, 50));
  sketch.word('y', at(34, 66));
  sketch.box(at(62, 44), at(94, 60));
  sketch.word('window', at(78, 52), 'middle');
  sketch.span(at(62, 40), at(94, 40));
  sketch.word('width', at(78, 36), 'middle');
  sketch.span(at(97, 44), at(97, 60));
  sketch.word('height', at(102, 64), 'end');
  sketch.measure(at(left, 72), at(62, 72));
  sketch.word('x', at(52, 76), 'middle');
  sketch.measure(at(66, bottom), at(66, 60));
  sketch.word('y', at(68, 70));
}

/** A rib parallel to a side of a board, and how far it stands out. */
export function ribWays(sketch: Sketch): void {
  const [left, right, top, bottom] = [10, 104, 8, 54];
  sketch.box(at(left, top), at(right, bottom));
  sketch.box(at(26, 26), at(86, 32), lines.seen);
  sketch.stroke([at(22, 29), at(90, 29)], lines.centre);
  sketch.word('rib', at(56, 22), 'middle');
  sketch.measure(at(34, bottom), at(34, 29));
  sketch.word('distance', at(36, 48));
  sketch.measure(at(left, 37), at(26, 37));
  sketch.word('start', at(18, 42), 'middle');
  sketch.span(at(26, 37), at(86, 37));
  sketch.word('length', at(64, 41.5), 'middle');
  sketch.word('edge: bottom', at(right - 2, bottom - 4), 'end');
  sketch.box(at(left, 72), at(right, 76));
  sketch.box(at(26, 76), at(86, 86), lines.part);
  sketch.span(at(92, 76), at(92, 86));
  sketch.word('height', at(94, 82));
  sketch.word('board, from below', at(left, 67));
}

/** Turns of a part on its board. */
export function turnWays(sketch: Sketch): void {
  const turns = [
    { turn: '0', x: 4, wide: 30, deep: 18, end: 'right' },
    { turn: '90', x: 42, wide: 18, deep: 30, end: 'top' },
    { turn: '180', x: 66, wide: 30, deep: 18, end: 'left' },
    { turn: '270', x: 102, wide: 18, deep: 30, end: 'bottom' },
  ] as const;
  for (const { turn, x, wide, deep, end } of turns) {
    const [left, base] = [x * 0.9, 46];
    const [width, depth] = [wide * 0.9, deep];
    sketch.box(at(left, base - depth), at(left + width, base));
    powerEnd(sketch, { left, base, width, depth }, end);
    sketch.datum(at(left, base));
    sketch.word(turn, at(left + width / 2, base + 6), 'middle');
  }
  sketch.word('turn: counter-clockwise, in degrees', at(2, 6));
  sketch.word('ring: the corner that at: is measured to', at(2, 62));
}

interface Print {
  readonly left: number;
  readonly base: number;
  readonly width: number;
  readonly depth: number;
}

/** A thick bar along one edge of a part: its right edge before any turn. */
function powerEnd(sketch: Sketch, { left, base, width, depth }: Print, end: Edge): void {
  const thick = 3;
  const right = left + width;
  const top = base - depth;
  const bars = {
    right: [at(right - thick, top), at(right, base)],
    left: [at(left, top), at(left + thick, base)],
    top: [at(left, top), at(right, top + thick)],
    bottom: [at(left, base - thick), at(right, base)],
  } as const;
  const [from, to] = bars[end];
  sketch.box(from, to, lines.part, 'line');
}
