import { lines } from '../line-styles.ts';
import { at } from '../paper.ts';
import type { Sketch } from './sketch.ts';

/** A space: its plane from the mounting side, and its depth from the side. */
export function spaceWays(sketch: Sketch): void {
  const [left, right, top, bottom] = [14, 104, 8, 58];
  sketch.box(at(left, top), at(right, bottom));
  sketch.word('top', at(48, top + 4), 'middle');
  sketch.word('bottom', at(80, bottom - 4), 'middle');
  sketch.word('left', at(left + 2, 44));
  sketch.word('right', at(right - 2, 40), 'end');
  sketch.circle(at(40, 30), 2, lines.part);
  sketch.stroke([at(37, 30), at(43, 30)], lines.centre);
  sketch.stroke([at(40, 27), at(40, 33)], lines.centre);
  sketch.word('sound point', at(40, 23), 'middle');
  sketch.measure(at(left, 30), at(38, 30));
  sketch.word('x', at(24, 34), 'middle');
  sketch.measure(at(40, bottom), at(40, 32));
  sketch.word('y', at(42, 46));
  sketch.box(at(64, 20), at(90, 32), lines.part);
  sketch.word('obstacle', at(77, 26), 'middle');
  sketch.span(at(64, 17), at(90, 17));
  sketch.word('width', at(77, 13), 'middle');
  sketch.measure(at(64, bottom), at(64, 32));
  sketch.word('y', at(66, 46));
  sketch.datum(at(left, bottom));
  sketch.measure(at(left, bottom), at(left + 24, 66));
  sketch.word('datum', at(left + 26, 67));
  sketch.box(at(left, 90), at(right, 94), lines.part, 'pale');
  sketch.box(at(64, 84), at(90, 90), lines.part);
  sketch.stroke([at(left, 78), at(right, 78)], lines.neighbour);
  sketch.span(at(30, 78), at(30, 90));
  sketch.word('depth', at(32, 84));
  sketch.span(at(93, 84), at(93, 90));
  sketch.word('stands-out', at(92, 98), 'end');
}

/** A route in stretches. */
export function routeWays(sketch: Sketch): void {
  sketch.circle(at(8, 22), 3);
  sketch.word('ends: [battery-side]', at(4, 14));
  sketch.stroke([at(11, 22), at(36, 22), at(36, 52), at(84, 52), at(84, 30)], lines.seen);
  for (const point of [at(36, 22), at(36, 52), at(84, 52)]) sketch.circle(point, 1.6, lines.part, 'paper');
  sketch.word('engine-bay', at(22, 27), 'middle');
  sketch.word('edge: true', at(39, 22));
  sketch.word('bulkhead', at(39, 38));
  sketch.word('sill', at(60, 57), 'middle');
  sketch.word('under-carpet', at(82, 44), 'end');
  sketch.box(at(64, 6), at(106, 30), lines.part);
  sketch.word('a space', at(85, 13), 'middle');
  sketch.word('reaches: an edge', at(85, 24), 'middle');
  sketch.word('passes: stretch by stretch from one end', at(4, 65));
}

/** The vehicle from above: its sides, its directions, the listener. */
export function vehicleWays(sketch: Sketch): void {
  sketch.box(at(32, 10), at(80, 92));
  sketch.stroke([at(34, 32), at(78, 32)], lines.part);
  sketch.circle(at(44, 50), 4, lines.part);
  sketch.word("listener's head", at(51, 53));
  sketch.circle(at(33, 40), 2, lines.part, 'paper');
  sketch.circle(at(79, 40), 2, lines.part, 'paper');
  sketch.measure(at(44, 50), at(35, 41.6));
  sketch.measure(at(44, 50), at(77, 40.6));
  sketch.word('distance', at(62, 39), 'middle');
  sketch.word('front', at(56, 6), 'middle');
  sketch.word('rear', at(56, 96), 'middle');
  sketch.word('left', at(28, 66), 'end');
  sketch.word('right', at(84, 66));
  sketch.word('middle', at(56, 78), 'middle');
  sketch.stroke([at(56, 62), at(56, 72)], lines.centre);
}
