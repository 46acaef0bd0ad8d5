import { shownLabel } from '../../model/plan/shown-names.ts';
import type { Exit } from '../board/exits.ts';
import { nearestSide } from '../board/item-on-board.ts';
import { labelsText } from '../board/merge-names.ts';
import type { BoardScene, Continuation } from '../board/scaled-sheet.ts';
import { at, type PaperBox, type PaperPoint, sharesInBox } from '../paper.ts';
import { placeOnBoard } from '../sheet/scale.ts';
import type { LaidRoute } from './strands.ts';

/**
 * Every line that a sheet cuts, with its label and with the part and the zone in which it goes on (interrupted lines after
 * IEC 61082-1): the two ends of a cut name each other. One that goes there and back has a letter at each of its cuts,
 * the same on both sheets.
 */
export function cutReferences(scene: BoardScene, routes: readonly LaidRoute[]): Exit[] {
  const { clip } = scene;
  if (clip === null) return [];
  return routes.flatMap(({ route, wires, axis }) => {
    const cuts = cutsOf(axis, clip).map((cut) => {
      return { ...cut, goesOn: scene.elsewhere(placeOnBoard(scene.view, cut.beyond)) };
    });
    return cuts.map(({ point, goesOn }, nth): Exit => {
      const { side } = nearestSide(clip, point.xMm, point.yMm);
      const there = cuts.filter((other) => other.goesOn?.part === goesOn?.part);
      const back = goesOn === null ? [] : cutsOf(axis, goesOn.box).filter((cut) => boxHas(clip, cut.beyond));
      const place = there.findIndex(({ point: each }) => each === point);
      // Letters follow the order along the line: only if both sheets cut it as often do they mean the same.
      const letter =
        there.length > 1 && back.length === there.length ? `, cut ${letters[place] ?? nth + 1}` : '';
      const text = `${labelsText(wires.map(shownLabel))}${letter}\n${referenceText(goesOn)}`;
      return { subject: wires[0]?.id ?? route.wire, side, point, text };
    });
  });
}

const letters = 'abcdefgh';

const boxHas = ({ leftMm, rightMm, topMm, bottomMm }: PaperBox, { xMm, yMm }: PaperPoint): boolean =>
  xMm >= leftMm && xMm <= rightMm && yMm >= topMm && yMm <= bottomMm;

/** `to part 2, B4`. */
export function referenceText(goesOn: Continuation | null): string {
  return goesOn === null ? 'goes on' : `to ${goesOn.part}, ${goesOn.zone}`;
}

/** How far beyond a cut the line is looked for on other sheets, millimetres of paper. */
const beyondMm = 0.5;

/** Where a line passes the rim of a box, and a point of it just outside. */
function cutsOf(
  line: readonly PaperPoint[],
  box: PaperBox,
): { readonly point: PaperPoint; readonly beyond: PaperPoint }[] {
  return line.slice(1).flatMap((to, index) => {
    const from = line[index];
    const inside = from ? sharesInBox({ from, to }, box, true) : null;
    if (!from || !inside || inside.enters >= inside.leaves) return [];
    const long = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
    const pointAt = (share: number): PaperPoint =>
      at(from.xMm + (to.xMm - from.xMm) * share, from.yMm + (to.yMm - from.yMm) * share);
    const cut = (share: number, way: 1 | -1) => {
      return { point: pointAt(share), beyond: pointAt(share + (way * beyondMm) / long) };
    };
    return [
      ...(inside.enters > 0 ? [cut(inside.enters, -1)] : []),
      ...(inside.leaves < 1 ? [cut(inside.leaves, 1)] : []),
    ];
  });
}
