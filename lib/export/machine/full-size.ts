import { outlineBox } from '../../draw/bulge-path.ts';
import { at } from '../../draw/paper.ts';
import type { PlanView } from '../../draw/sheet/scale.ts';
import type { OutlinePoint } from '../../model/plan/index.ts';

/** A board at full size on paper that is just large enough for it: y down, millimetres. */
export interface FullSize {
  readonly view: PlanView;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The view of an outline at 1:1, the smallest upright rectangle round it as the paper. */
export function fullSizeView(outline: readonly OutlinePoint[]): FullSize {
  const box = outlineBox(outline, { ratio: 1, datum: at(0, 0), mirrored: false });
  return {
    view: { ratio: 1, datum: at(-box.leftMm, -box.topMm), mirrored: false },
    widthMm: box.rightMm - box.leftMm,
    heightMm: box.bottomMm - box.topMm,
  };
}
