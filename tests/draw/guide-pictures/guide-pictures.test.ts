import { describe, expect, test } from 'vitest';
import { drawGuidePicture, guideDrawing } from '../../../lib/draw/guide-pictures/index.ts';
import { boxesMeet } from '../../../lib/draw/paper.ts';
import { type GuidePicture, guidePictures } from '../../../lib/model/writing/guide-pictures.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';

const isPicture = (name: string): name is GuidePicture => Object.hasOwn(guidePictures, name);
const names = Object.keys(guidePictures).filter(isPicture);

describe.each(names)('the picture %s', (name) => {
  const drawing = () => guideDrawing(name, shippedMetrics);

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
    const svg = drawGuidePicture(name, shippedMetrics);
    expect(svg).toContain(`>${guidePictures[name].replaceAll("'", '&apos;')}</title>`);
    expect(svg).toMatch(/<desc[^>]*>[^<]{40,}<\/desc>/);
    expect(drawGuidePicture(name, shippedMetrics)).toBe(svg);
  });
});
