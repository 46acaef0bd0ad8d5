import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawText } from '../../lib/draw/lettering/lettering.ts';
import { lines, types } from '../../lib/draw/line-styles.ts';
import { at } from '../../lib/draw/paper.ts';
import { drawLine } from '../../lib/draw/pen.ts';
import { roundedText, roundNumbers } from '../../lib/draw/rounded-text.ts';
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

  // The reference is the rounding of the language itself (ECMAScript, Number.prototype.toFixed), which is exact.
  it('rounds as the exact decimals of a number say, close to the middle of two thousandths too', () => {
    const middles = fc
      .tuple(fc.integer({ min: -4e6, max: 4e6 }), fc.integer({ min: -3, max: 3 }))
      .map(([thousandths, off]) => (thousandths + 0.5) / 1000 + off * Number.EPSILON * 512);
    const any = fc.double({ min: -1e12, max: 1e12, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(middles, any), (value) => {
        const exact = value
          .toFixed(3)
          .replace(/\.?0+$/, '')
          .replace(/^-0$/, '0');
        expect(roundedText(value)).toBe(exact);
      }),
      { numRuns: 1000 },
    );
  });

  it('writes what was rounded once as it is, in whatever way it was written', () => {
    const texts = fc.tuple(
      fc.constantFrom('', '-'),
      fc.integer({ min: 0, max: 999 }),
      fc.string({ unit: fc.constantFrom('0', '1', '5', '9'), maxLength: 5 }),
    );
    fc.assert(
      fc.property(texts, ([sign, whole, decimals]) => {
        const written = `${sign}${whole}${decimals === '' ? '' : `.${decimals}`}`;
        expect(roundNumbers(written)).toBe(roundedText(Number(written)));
        expect(roundNumbers(roundNumbers(written))).toBe(roundNumbers(written));
      }),
    );
  });

  it('leaves digits in words and ids alone', () => {
    const drawing = emptyDrawing();
    drawText(drawing, openSubject(drawing, drawing.svg, 'wire-1.23456'), '1.23456 <in>', at(1, 2), {
      type: types.note,
    });
    const text = drawingText(drawing, { colours: 'resolved' });
    expect(text).toContain('data-of="wire-1.23456"');
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
