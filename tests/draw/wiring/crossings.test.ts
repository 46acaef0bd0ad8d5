import { describe, expect, it } from 'vitest';
import { at } from '../../../lib/draw/paper.ts';
import { zoneAt } from '../../../lib/draw/sheet/zones.ts';
import { referenceText } from '../../../lib/draw/wiring/cross-references.ts';
import { crossingsOf } from '../../../lib/draw/wiring/crossings.ts';

describe('crossings', () => {
  it('are where one line passes through another, with the way of the one above', () => {
    const found = crossingsOf([at(0, 5), at(20, 5)], [at(8, 0), at(8, 10), at(14, 10), at(14, 0)]);
    expect(found).toEqual([
      { point: at(8, 5), along: at(1, 0) },
      { point: at(14, 5), along: at(1, 0) },
    ]);
  });

  it('are none where lines only touch', () => {
    expect(crossingsOf([at(0, 5), at(8, 5)], [at(8, 0), at(8, 10)])).toEqual([]);
  });
});

describe('the zone of a point', () => {
  // ISO 5457 (mem): an even number of zones of about 50 mm. 240 x 180 mm make 4 of 60 mm and 4 of 45 mm.
  const frame = { leftMm: 20, topMm: 10, rightMm: 260, bottomMm: 190 };

  it('is told letter first, counted from the top left, and changes where the mark stands', () => {
    expect(zoneAt(frame, at(21, 11))).toBe('A1');
    expect(zoneAt(frame, at(79.9, 54.9))).toBe('A1');
    expect(zoneAt(frame, at(80.1, 55.1))).toBe('B2');
    expect(zoneAt(frame, at(259, 189))).toBe('D4');
  });

  it('stands in a reference beside the part', () => {
    expect(referenceText({ part: 'part 2', zone: 'B4', box: frame })).toBe('to part 2, B4');
  });
});
