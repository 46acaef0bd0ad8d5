import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clippedLine, interrupted } from '../../lib/draw/board/clip.ts';
import { at, boxAt, type PaperPoint } from '../../lib/draw/paper.ts';

const box = boxAt(10, 10, 20, 10);
const lengthOf = (lines: readonly (readonly PaperPoint[])[]): number =>
  lines.reduce(
    (sum, line) =>
      sum +
      line.slice(1).reduce((own, to, index) => {
        const from = line[index] ?? to;
        return own + Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
      }, 0),
    0,
  );

const point = fc.record({
  xMm: fc.double({ min: 0, max: 40, noNaN: true }),
  yMm: fc.double({ min: 0, max: 30, noNaN: true }),
});

describe('clippedLine', () => {
  it('keeps what lies in the box', () => {
    expect(clippedLine([at(0, 15), at(40, 15)], box)).toEqual([[at(10, 15), at(30, 15)]]);
    expect(clippedLine([at(0, 5), at(40, 5)], box)).toEqual([]);
    expect(clippedLine([at(20, 0), at(20, 15), at(40, 15)], box)).toEqual([
      [at(20, 10), at(20, 15), at(30, 15)],
    ]);
  });

  it('and what is interrupted at the box make the whole line', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 6 }), (line) => {
        const inside = lengthOf(clippedLine(line, box));
        const outside = lengthOf(interrupted(line, [box]));
        expect(inside + outside).toBeCloseTo(lengthOf([line]), 6);
      }),
    );
  });
});
