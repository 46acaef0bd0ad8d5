import { describe, expect, test } from 'vitest';
import { boxesMeet } from '../../../lib/draw/paper.ts';
import { drawWays, wayDrawing } from '../../../lib/draw/ways/index.ts';
import { type WayPicture, wayPictures } from '../../../lib/model/writing/way-pictures.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';

const isPicture = (name: string): name is WayPicture => Object.hasOwn(wayPictures, name);
const names = Object.keys(wayPictures).filter(isPicture);

describe.each(names)('the picture %s', (name) => {
  const drawing = () => wayDrawing(name, shippedMetrics);

  test('has no word on another, and none beyond its rim', () => {
    const { texts, widthMm, heightMm } = drawing();
    const beyond = texts.filter(
      ({ box }) => box.leftMm < 0 || box.topMm < 0 || box.rightMm > widthMm || box.bottomMm > heightMm,
    );
    expect(beyond.map(({ text }) => text)).toEqual([]);
    const met = texts.flatMap((one, index) =>
      texts
        .slice(index + 1)
        .flatMap((other) => (boxesMeet(one.box, other.box) ? [[one.text, other.text]] : [])),
    );
    expect(met).toEqual([]);
  });

  test('is told in words, and drawn alike each time', () => {
    const svg = drawWays(name, shippedMetrics);
    expect(svg).toContain(`>${wayPictures[name].replaceAll("'", '&apos;')}</title>`);
    expect(svg).toMatch(/<desc[^>]*>[^<]{40,}<\/desc>/);
    expect(drawWays(name, shippedMetrics)).toBe(svg);
  });
});
