import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexObstacles, type Obstacle } from '../../../lib/draw/lettering/obstacle-index.ts';
import { at, type PaperBox, type PaperSegment, segmentMeetsBox } from '../../../lib/draw/paper.ts';

// Whole millimetres, so that strokes along an edge, through a corner and without length come up.
const along = fc.integer({ min: -8, max: 34 });
const strokes = fc.tuple(along, along, along, along).map(([x1, y1, x2, y2]): PaperSegment => {
  return { from: at(x1, y1), to: at(x2, y2) };
});
const side = fc.integer({ min: 1, max: 18 });
const boxes = fc.tuple(along, along, side, side).map(([leftMm, topMm, wide, high]): PaperBox => {
  return { leftMm, topMm, rightMm: leftMm + wide, bottomMm: topMm + high };
});

const point = ({ xMm, yMm }: PaperSegment['from']) => new Flatten.Point(xMm, yMm);

/** Whether a stroke runs through the inside of a box, by the other library: it is cut at the edges, and each piece looked at. */
function runsThrough({ from, to }: PaperSegment, box: PaperBox): boolean {
  const polygon = new Flatten.Polygon(new Flatten.Box(box.leftMm, box.topMm, box.rightMm, box.bottomMm));
  const isInside = (each: Flatten.Point) =>
    polygon.contains(each) && [...polygon.edges].every((edge) => each.distanceTo(edge.shape)[0] > 1e-9);
  if (from.xMm === to.xMm && from.yMm === to.yMm) return isInside(point(from));
  const stroke = new Flatten.Segment(point(from), point(to));
  const cuts = [stroke.start, ...stroke.sortPoints(polygon.intersect(stroke)), stroke.end];
  return cuts.slice(1).some((cut, nth) => {
    const before = cuts[nth] ?? cut;
    return isInside(new Flatten.Point((before.x + cut.x) / 2, (before.y + cut.y) / 2));
  });
}

describe('segmentMeetsBox', () => {
  it('is true where @flatten-js/core finds a piece of the stroke inside', () => {
    fc.assert(
      fc.property(strokes, boxes, (stroke, box) => {
        expect(segmentMeetsBox(stroke, box)).toBe(runsThrough(stroke, box));
      }),
      { numRuns: 500 },
    );
  });
});

const name = fc.constantFrom('a', 'b', 'c');
const obstacles = fc.array(
  fc.oneof(
    fc.record({ id: name, box: boxes }),
    fc.record({ id: name, segment: strokes }),
  ) satisfies fc.Arbitrary<Obstacle>,
  { maxLength: 12 },
);

describe('an index of obstacles', () => {
  it('finds a box that the other library finds to be met, wherever its cells begin', () => {
    fc.assert(
      fc.property(obstacles, boxes, (all, box) => {
        const met = all.some((each) =>
          'box' in each ? shareArea(each.box, box) : runsThrough(each.segment, box),
        );
        expect(indexObstacles(all).meetsBox(box, [])).toBe(met);
      }),
    );
  });

  it('lets a box stand wholly in those that are named, and nowhere else', () => {
    const part = { id: 'part', box: { leftMm: 0, topMm: 0, rightMm: 30, bottomMm: 30 } };
    const index = indexObstacles([part]);
    const inside = { leftMm: 2, topMm: 2, rightMm: 12, bottomMm: 6 };
    expect(index.meetsBox(inside, ['part'])).toBe(false);
    expect(index.meetsBox(inside, ['other'])).toBe(true);
    expect(index.meetsBox({ ...inside, rightMm: 31 }, ['part'])).toBe(true);
  });

  it('counts each stroke once that a leader crosses, those of its own left out, however often it is asked', () => {
    fc.assert(
      fc.property(obstacles, strokes, (all, leader) => {
        const index = indexObstacles(all);
        const crossed = all.filter(
          (each) => 'segment' in each && each.id !== 'a' && cross(each.segment, leader),
        );
        expect(index.leaderCrossings(leader, ['a'])).toBe(crossed.length);
        expect(index.leaderCrossings(leader, ['a'])).toBe(crossed.length);
      }),
    );
  });

  it('is blocked by boxes alone, those of its own left out', () => {
    fc.assert(
      fc.property(obstacles, strokes, (all, leader) => {
        const blocked = all.some((each) => 'box' in each && each.id !== 'a' && runsThrough(leader, each.box));
        expect(indexObstacles(all).leaderBlocked(leader, ['a'])).toBe(blocked);
      }),
    );
  });
});

function shareArea(a: PaperBox, b: PaperBox): boolean {
  const boxOf = ({ leftMm, topMm, rightMm, bottomMm }: PaperBox) =>
    new Flatten.Polygon(new Flatten.Box(leftMm, topMm, rightMm, bottomMm));
  return Flatten.BooleanOperations.intersect(boxOf(a), boxOf(b)).area() > 1e-9;
}

/** True where two strokes meet, by the other library, at a point that is an end of neither. */
function cross(a: PaperSegment, b: PaperSegment): boolean {
  const isPoint = ({ from, to }: PaperSegment) => from.xMm === to.xMm && from.yMm === to.yMm;
  if (isPoint(a) || isPoint(b)) return false;
  const [one, other] = [a, b].map(({ from, to }) => new Flatten.Segment(point(from), point(to)));
  if (!one || !other) return false;
  const meets = one.intersect(other);
  const ends = [one.start, one.end, other.start, other.end];
  return meets.length === 1 && meets.every((each) => ends.every((end) => end.distanceTo(each)[0] > 1e-9));
}
