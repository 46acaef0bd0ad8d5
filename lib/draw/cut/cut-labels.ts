import type { OutlinePoint, PlanBoard } from '../../model/plan/index.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import { arcPoint, holeBox } from '../board/board-view.ts';
import { type RibView, ribLabels, ribSize } from '../board/ribs-on-board.ts';
import { anchorAt } from '../lettering/label-candidates.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { types } from '../line-styles.ts';
import { onPaper } from '../sheet/scale.ts';
import { type Drawing, openGroup } from '../surface.ts';
import { holeNames } from './hole-key.ts';
import type { OrdinateScene } from './ordinate-sheet.ts';

/** Which face of a board a view shows, and what is measured on it. */
export interface BoardViewKind {
  readonly id: string;
  readonly title: string;
  readonly mirrored: boolean;
  readonly measured: 'outline' | 'holes';
}

/** A view of a board that is cut or drilled, as it is put on paper. */
export interface BoardPainting extends OrdinateScene {
  readonly board: PlanBoard;
  readonly kind: BoardViewKind;
  readonly style: LengthStyle;
}

/** The ribs of a board as a view shows them. */
export function ribView({ board, kind, view }: BoardPainting): RibView {
  return { board, view, seenFrom: kind.mirrored ? 'rear' : 'mounting', clip: null };
}

/** The name of each rib with its section; on the rear view with the room that is left between it and the panel. */
function ribNames(painting: BoardPainting): TextLabel[] {
  const { kind, style } = painting;
  return ribLabels(ribView(painting), [], (rib) =>
    kind.mirrored && rib.face === 'rear'
      ? [`${printedDimension('room-free', rib.roomM, style)} free behind`]
      : [ribSize(rib, style)],
  );
}

/** Hole numbers, where they are drilled with the letter of their bit; then names of ribs and radii of bends. */
export function labelBoard(drawing: Drawing, painting: BoardPainting): string[] {
  const { board, kind, view, room, box } = painting;
  const group = openGroup(drawing, drawing.svg, 'labels');
  const names = kind.measured === 'holes' ? holeNames(board.holes) : null;
  const numbers = board.holes.map((hole): TextLabel => {
    const { n, of } = hole;
    const anchors = [holeBox(view, hole)];
    return {
      id: `H${n}`,
      lines: [names?.get(n) ?? String(n)],
      type: types.terminal,
      anchors,
      own: [of],
      subject: of,
    };
  });
  const radii = kind.measured === 'outline' ? radiusLabels(painting) : [];
  return [
    ...drawLabels(drawing, group, numbers, box),
    ...drawLabels(drawing, group, [...ribNames(painting), ...radii], room),
  ];
}

/** One label for every radius, at one of the bends that have it: `4x R 1/2 (0.5) [13]`. */
function radiusLabels({ board, view, style }: BoardPainting): TextLabel[] {
  const bends = [board.outline, ...board.cutouts].flatMap((loop) =>
    loop.flatMap((from, index) => {
      const to = loop[(index + 1) % loop.length];
      if (!to || from.bulge === 0) return [];
      const anchor = anchorAt(onPaper(view, arcPoint(from, to, 0.5)));
      return [{ text: `R ${printedDimension('cut', radiusOf(from, to), style)}`, anchor }];
    }),
  );
  return [...new Set(bends.map(({ text }) => text))].map((text): TextLabel => {
    const anchors = bends.filter((bend) => bend.text === text).map(({ anchor }) => anchor);
    const said = anchors.length > 1 ? `${anchors.length}x ${text}` : text;
    return { id: text, lines: [said], type: types.dimension, anchors, own: [board.id], subject: board.id };
  });
}

/** Radius of a bent edge, from its chord: chord (1 + b2) / (4 |b|). */
function radiusOf(from: OutlinePoint, to: OutlinePoint): number {
  const chord = Math.hypot(to.xM - from.xM, to.yM - from.yM);
  return (chord * (1 + from.bulge ** 2)) / (4 * Math.abs(from.bulge));
}
