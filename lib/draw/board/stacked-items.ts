import { withoutRectangle } from '../../board/cut/free-rectangles.ts';
import { boxesMeet, heightMm, type PaperBox, widthMm } from '../paper.ts';
import type { ItemOnBoard } from './item-on-board.ts';

/** Hair's breadth on paper, millimetres: items that only touch hide nothing of each other. */
const touchMm = 0.05;

/** The items that stand over one, and hide what of it lies beneath them. */
export function itemsOver({ placement, box }: ItemOnBoard, items: readonly ItemOnBoard[]): ItemOnBoard[] {
  const topM = placement.raisedM + placement.heightM;
  return items.filter(
    (other) =>
      other.placement.item !== placement.item &&
      other.placement.raisedM > 0 &&
      other.placement.raisedM >= topM - 1e-9 &&
      boxesMeet(box, shrunk(other.box)),
  );
}

/** The items that one stands over: their names are written there, so its own keep out of them. */
export function itemsBeneath(upper: ItemOnBoard, items: readonly ItemOnBoard[]): ItemOnBoard[] {
  return items.filter((item) => itemsOver(item, [upper]).length > 0);
}

/** Items in the order in which they are drawn: those that are partly hidden come last, in hidden lines over the others. */
export function hiddenLast(items: readonly ItemOnBoard[]): ItemOnBoard[] {
  const isHidden = (item: ItemOnBoard): boolean => itemsOver(item, items).length > 0;
  return [...items.filter((item) => !isHidden(item)), ...items.filter(isHidden)];
}

/** The largest part of a box that is left free by others; the box itself where nothing is taken. */
export function largestFree(box: PaperBox, taken: readonly PaperBox[]): PaperBox {
  if (taken.length === 0) return box;
  const rectangle = (one: PaperBox) => ({
    ...{ xM: one.leftMm, yM: one.topMm },
    ...{ widthM: widthMm(one), heightM: heightMm(one) },
  });
  let free = [rectangle(box)];
  for (const one of taken) free = withoutRectangle(free, rectangle(one));
  const [best] = free.toSorted((a, b) => b.widthM * b.heightM - a.widthM * a.heightM);
  if (!best) return { ...box, rightMm: box.leftMm, bottomMm: box.topMm };
  return {
    ...{ leftMm: best.xM, rightMm: best.xM + best.widthM },
    ...{ topMm: best.yM, bottomMm: best.yM + best.heightM },
  };
}

function shrunk(box: PaperBox): PaperBox {
  return {
    ...{ leftMm: box.leftMm + touchMm, rightMm: box.rightMm - touchMm },
    ...{ topMm: box.topMm + touchMm, bottomMm: box.bottomMm - touchMm },
  };
}
