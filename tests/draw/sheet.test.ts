import { describe, expect, it } from 'vitest';
import { boxesMeet, boxHolds, type PaperBox } from '../../lib/draw/paper.ts';
import { frameBox, type SheetFormat, sheetMarginsMm, sheetSize } from '../../lib/draw/sheet/sheet-format.ts';
import { type Drawing, drawingText } from '../../lib/draw/surface.ts';
import { expectGolden } from '../golden.ts';
import { sampleSheet } from './sample/sample-sheet.ts';
import { xmlFault } from './well-formed.ts';

const reason = 'Findings stop this job: do not build from this sheet';
const cases: readonly (readonly [string, SheetFormat, string | null])[] = [
  ['letter-portrait', { name: 'Letter', orientation: 'portrait' }, null],
  ['letter-landscape', { name: 'Letter', orientation: 'landscape' }, reason],
  ['a4-portrait', { name: 'A4', orientation: 'portrait' }, reason],
  ['a4-landscape', { name: 'A4', orientation: 'landscape' }, null],
];

function overlaps({ texts }: Drawing): string[] {
  return texts.flatMap((a, nth) =>
    texts.slice(nth + 1).flatMap((b) => (boxesMeet(a.box, b.box) ? [`${a.text} | ${b.text}`] : [])),
  );
}

function sheetBox(format: SheetFormat): PaperBox {
  const { widthMm, heightMm } = sheetSize(format);
  return { leftMm: 4, topMm: 4, rightMm: widthMm - 4, bottomMm: heightMm - 4 };
}

describe.each(cases)('sample sheet, %s', (_, format, draft) => {
  const { drawing, frame } = sampleSheet(format, draft);
  const text = drawingText(drawing, { colours: 'resolved' });

  it('lets no text meet another, and none run off the sheet or across the frame', () => {
    expect(drawing.texts.length).toBeGreaterThan(40);
    expect(overlaps(drawing)).toEqual([]);
    const inner = frameBox(format);
    for (const each of drawing.texts) {
      expect(boxHolds(sheetBox(format), each.box), each.text).toBe(true);
      expect(!boxesMeet(inner, each.box) || boxHolds(inner, each.box), each.text).toBe(true);
    }
  });

  it('has room for every field and note', () => {
    expect(frame.tooLong).toEqual([]);
  });

  it('is drawn in type that holds every character', () => {
    for (const each of drawing.texts)
      expect(drawing.metrics.missing(each.text, { family: 'condensed', weight: 400, capMm: 2.5 })).toEqual(
        [],
      );
  });

  it('is well-formed, with no number finer than a micrometre and no id twice', () => {
    expect(xmlFault(text)).toBeNull();
    expect(text.replace(/>[^<]*</g, '><')).not.toMatch(/\d\.\d{4,}/);
    const ids = [...text.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of text.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);
    for (const id of ids) expect(id).toMatch(/^sample-job__sample__/);
  });

  it('says DRAFT where it is one', () => {
    expect(drawing.texts.some((each) => each.text === 'DRAFT')).toBe(draft !== null);
  });

  it('is the same bytes each time', () => {
    expect(drawingText(sampleSheet(format, draft).drawing, { colours: 'resolved' })).toBe(text);
  });
});

it('keeps its look', () => {
  const files = cases.map(([name, format, draft]) => [
    `${name}.svg`,
    drawingText(sampleSheet(format, draft).drawing, { colours: 'properties' }),
  ]);
  expectGolden(new URL('golden/sheet/', import.meta.url), Object.fromEntries(files));
});

describe('drawFrame', () => {
  const format: SheetFormat = { name: 'Letter', orientation: 'portrait' };

  it('names what is too long for its room, and wraps before that', () => {
    const wordy = 'A reason of many words that needs two lines or more in the band at the head of the sheet';
    expect(sampleSheet(format, wordy).frame.tooLong).toEqual([]);
    const { frame } = sampleSheet(format, `${wordy} and ${wordy} and ${wordy} and ${wordy}`);
    expect(frame.tooLong).toEqual(['Draft']);
  });

  it('leaves less room on a draft, since the band hides nothing', () => {
    const released = sampleSheet(format, null).frame.room;
    const drafted = sampleSheet(format, reason).frame.room;
    expect(drafted.topMm - released.topMm).toBe(13);
  });
});

describe('sheet formats', () => {
  // 8 1/2 in x 25.4 = 215.9; 11 in x 25.4 = 279.4.
  it('are Letter, 8 1/2 by 11 in, and A4 of ISO 216', () => {
    expect(sheetSize({ name: 'Letter', orientation: 'portrait' })).toEqual({
      widthMm: 215.9,
      heightMm: 279.4,
    });
    expect(sheetSize({ name: 'A4', orientation: 'landscape' })).toEqual({ widthMm: 297, heightMm: 210 });
  });

  // ISO 5457: 20 mm at the filing edge and 10 mm elsewhere; so A4 is 180 mm inside, the title block of ISO 7200 (from memory).
  it('have the margins of ISO 5457', () => {
    expect(sheetMarginsMm).toEqual({ filing: 20, other: 10 });
    const frame = frameBox({ name: 'A4', orientation: 'portrait' });
    expect(frame.rightMm - frame.leftMm).toBe(180);
  });
});
