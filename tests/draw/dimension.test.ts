import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawOrdinates, type OrdinateRow, ordinateDepthMm } from '../../lib/draw/dimension.ts';
import { boxesMeet } from '../../lib/draw/paper.ts';
import { openDrawing } from '../../lib/draw/surface.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';

const sides = ['top', 'bottom', 'left', 'right'] as const;

function drawingFor(row: OrdinateRow) {
  const drawing = openDrawing({
    job: 'job',
    sheet: 'dimensions',
    widthMm: 200,
    heightMm: 200,
    title: 'Dimensions',
    description: 'One row',
    metrics: shippedMetrics,
  });
  return { drawing, drawn: drawOrdinates(drawing, drawing.svg, row) };
}

const rows = fc
  .record({
    side: fc.constantFrom(...sides),
    places: fc.uniqueArray(fc.integer({ min: 0, max: 120 }), { minLength: 1, maxLength: 24 }),
  })
  .map(
    ({ side, places }): OrdinateRow => ({
      side,
      lineMm: 100,
      datumMm: 40,
      marks: places.map((place) => ({
        alongMm: 40 + place,
        featureMm: side === 'top' || side === 'left' ? 108 : 92,
        text: `${place} (${place}.5)`,
      })),
      room: { fromMm: 36, toMm: 164 },
    }),
  );

describe('drawOrdinates', () => {
  it('writes every value, none upon another, in the order of the places', () => {
    fc.assert(
      fc.property(rows, (row) => {
        const { drawing, drawn } = drawingFor(row);
        expect(drawn.left).toEqual([]);
        const along = drawing.texts.map(({ box }) =>
          row.side === 'top' || row.side === 'bottom' ? box.leftMm : box.topMm,
        );
        expect(along).toEqual([...along].sort((a, b) => a - b));
        expect(drawing.texts.map(({ text }) => Number.parseInt(text, 10))).toEqual(
          row.marks.map(({ text }) => Number.parseInt(text, 10)).sort((a, b) => a - b),
        );
        drawing.texts.forEach(({ box }, nth) => {
          for (const other of drawing.texts.slice(nth + 1)) expect(boxesMeet(box, other.box)).toBe(false);
        });
      }),
    );
  });

  it('keeps texts on the far side of the dimension line, and within the depth it foretells', () => {
    fc.assert(
      fc.property(rows, (row) => {
        const { drawing } = drawingFor(row);
        const depth = ordinateDepthMm(
          drawing,
          row.marks.map(({ text }) => text),
        );
        for (const { box } of drawing.texts) {
          const reach = {
            top: [100 - box.bottomMm, 100 - box.topMm],
            bottom: [box.topMm - 100, box.bottomMm - 100],
            left: [100 - box.rightMm, 100 - box.leftMm],
            right: [box.leftMm - 100, box.rightMm - 100],
          }[row.side];
          expect(reach[0]).toBeGreaterThan(0);
          expect(reach[1]).toBeLessThanOrEqual(depth + 1e-9);
        }
      }),
    );
  });

  it('draws none and says so where there are more than the room holds', () => {
    const marks = Array.from({ length: 20 }, (_, n) => ({ alongMm: 10 + n, featureMm: 92, text: String(n) }));
    const row = { side: 'bottom', lineMm: 100, datumMm: 10, marks, room: { fromMm: 5, toMm: 35 } } as const;
    const { drawing, drawn } = drawingFor(row);
    expect(drawn).toEqual({ box: null, left: marks });
    expect(drawing.texts).toEqual([]);
  });

  it('writes a place once that two features share', () => {
    const mark = { alongMm: 60, featureMm: 92, text: '20' };
    const { drawing } = drawingFor({
      side: 'bottom',
      lineMm: 100,
      datumMm: 40,
      marks: [mark, { ...mark, featureMm: 80 }],
      room: { fromMm: 36, toMm: 164 },
    });
    expect(drawing.texts.map(({ text }) => text)).toEqual(['20']);
  });
});
