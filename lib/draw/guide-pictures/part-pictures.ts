import { lines } from '../line-styles.ts';
import { at } from '../paper.ts';
import type { Sketch } from './sketch.ts';

/** The footprint of a part: its size, its holes, the air at its edges. */
export function footprintWays(sketch: Sketch): void {
  const [left, right, top, bottom] = [26, 86, 16, 50];
  sketch.box(at(left - 10, top - 10), at(right + 10, bottom + 10), lines.clearLimit);
  sketch.box(at(left, top), at(right, bottom));
  for (const x of [left + 6, right - 6])
    for (const y of [top + 6, bottom - 6]) sketch.circle(at(x, y), 1.6, lines.part);
  sketch.measure(at(left, bottom - 6), at(left + 6, bottom - 6));
  sketch.measure(at(left + 6, bottom), at(left + 6, bottom - 6));
  sketch.word('x, y of a hole', at(left + 10, bottom - 6));
  sketch.span(at(left, 25), at(right, 25));
  sketch.word('width', at(56, 29), 'middle');
  sketch.span(at(76, top), at(76, bottom));
  sketch.word('depth', at(74, 36), 'end');
  sketch.word('air: top', at(56, top - 5), 'middle');
  sketch.word('air: bottom', at(56, bottom + 5), 'middle');
  sketch.word('left', at(left - 11, 33), 'end');
  sketch.word('right', at(right + 11, 33));
  sketch.box(at(left, 70), at(right, 82));
  sketch.stroke([at(left - 10, 82), at(right + 10, 82)], lines.part);
  sketch.span(at(right + 3, 70), at(right + 3, 82));
  sketch.word('height', at(right + 5, 76));
  sketch.word('from the side', at(56, 76), 'middle');
}

/** Where `at` is measured from on each panel. */
export function panelWays(sketch: Sketch): void {
  const [left, right, top, bottom] = [26, 86, 18, 58];
  sketch.box(at(left, top), at(right, bottom));
  for (const [y, edge, wordY] of [
    [top - 4, top, top - 9],
    [bottom + 4, bottom, bottom + 9],
  ] as const) {
    sketch.measure(at(left, y), at(60, y));
    sketch.circle(at(60, edge), 1.6, lines.part, 'paper');
    sketch.word('at', at(44, wordY), 'middle');
  }
  for (const [x, edge, wordX, align] of [
    [left - 4, left, left - 6, 'end'],
    [right + 4, right, right + 6, 'start'],
  ] as const) {
    sketch.measure(at(x, bottom), at(x, 32));
    sketch.circle(at(edge, 32), 1.6, lines.part, 'paper');
    sketch.word('at', at(wordX, 44), align);
  }
  sketch.word('panel: top', at(56, top + 5), 'middle');
  sketch.word('panel: bottom', at(56, bottom - 5), 'middle');
  sketch.word('left', at(left + 3, 38));
  sketch.word('right', at(right - 3, 38), 'end');
  sketch.word('face', at(56, 38), 'middle');
}

/** The terminals of two channels, and of the bridge that they make. */
export function channelWays(sketch: Sketch): void {
  const rows = [
    { name: 'CH1+', y: 14 },
    { name: 'CH1-', y: 24 },
    { name: 'CH2+', y: 36 },
    { name: 'CH2-', y: 46 },
  ];
  sketch.box(at(24, 6), at(52, 54));
  sketch.word('IN1', at(26, 19));
  sketch.word('IN2', at(26, 41));
  sketch.stroke([at(8, 19), at(24, 19)]);
  sketch.stroke([at(8, 41), at(24, 41)]);
  sketch.word('input', at(12, 13), 'middle');
  for (const { name, y } of rows) {
    sketch.circle(at(52, y), 1.4, lines.part, 'paper');
    sketch.word(name, at(50, y), 'end');
  }
  sketch.stroke([at(53.4, 14), at(70, 14)]);
  sketch.word("'1' positive", at(72, 14));
  sketch.stroke([at(53.4, 24), at(70, 24)]);
  sketch.word("'1' negative", at(72, 24));
  sketch.stroke([at(53.4, 46), at(60, 46), at(60, 60), at(70, 60)]);
  sketch.word("'1+2' negative", at(72, 60));
  sketch.stroke([at(60, 14), at(60, 34), at(70, 34)], lines.hidden);
  sketch.word("'1+2' positive", at(72, 34));
}
