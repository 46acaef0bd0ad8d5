import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawText } from '../../lib/draw/lettering/lettering.ts';
import { at } from '../../lib/draw/paper.ts';
import { drawLine } from '../../lib/draw/pen.ts';
import { roundedText, roundNumbers } from '../../lib/draw/rounded-text.ts';
import { lines, types } from '../../lib/draw/style.ts';
import { drawingId, drawingText, openDrawing, openSubject } from '../../lib/draw/surface.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';

function emptyDrawing(sheet = 'cut') {
  return openDrawing({
    job: 'job',
    sheet,
    widthMm: 100,
    heightMm: 50,
    title: 'A & B',
    description: 'Two <things>',
    metrics: shippedMetrics,
  });
}

describe('serialise', () => {
  it('rounds every number to a micrometre of paper, and writes no -0 and no exponent', () => {
    expect(roundNumbers('M0.1234567 -0.0001L1e-7 12.5Z')).toBe('M0.123 0L0 12.5Z');
    expect(roundNumbers('rotate(-90 1.00049 2)')).toBe('rotate(-90 1 2)');
    expect(() => roundedText(Number.NaN)).toThrow(RangeError);
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        expect(Math.abs(Number(roundedText(value)) - value)).toBeLessThanOrEqual(0.00051);
        expect(roundedText(value)).toMatch(/^-?\d+(\.\d{1,3})?$/);
      }),
    );
  });

  it('leaves digits in words and ids alone', () => {
    const drawing = emptyDrawing();
    drawText(drawing, openSubject(drawing, drawing.svg, 'wire-1.23456'), '1.23456 <in>', at(1, 2), {
      type: types.note,
    });
    const text = drawingText(drawing, { colours: 'resolved' });
    expect(text).toContain('data-subject="wire-1.23456"');
    expect(text).toContain('>1.23456 &lt;in&gt;</text>');
  });

  it('leaves colours to the page, or resolves them to black', () => {
    const drawing = emptyDrawing();
    drawLine(drawing.svg, [at(0, 0), at(1, 1)], lines.cut);
    expect(drawingText(drawing, { colours: 'properties' })).toContain('stroke="var(--draw-line, #000)"');
    const resolved = drawingText(drawing, { colours: 'resolved' });
    expect(resolved).toContain('stroke="#000"');
    expect(resolved).not.toMatch(/var\(|style=|class=/);
  });

  it('gives a drawing its size in millimetres, a name and a description', () => {
    const text = drawingText(emptyDrawing(), { colours: 'resolved' });
    expect(text).toMatch(/^<svg [^>]*role="img"[^>]* width="100mm" height="50mm" viewBox="0 0 100 50"/);
    expect(text).toContain('>A &amp; B</title>');
    expect(text).toContain('>Two &lt;things&gt;</desc>');
  });
});

describe('drawingId', () => {
  it('gives no two names the same id, and only characters that need no escape', () => {
    const name = fc.string({
      unit: fc.constantFrom('a', 'B', '3', '.', '-', '_', '+', ' ', 'é', '__'),
      maxLength: 6,
    });
    const names = fc.tuple(name, name, name);
    fc.assert(
      fc.property(names, names, (a, b) => {
        fc.pre(a.join('\n') !== b.join('\n'));
        expect(drawingId(...a)).not.toBe(drawingId(...b));
        expect(drawingId(...a)).toMatch(/^[A-Za-z0-9._-]*$/);
      }),
      { numRuns: 2000 },
    );
  });
});
