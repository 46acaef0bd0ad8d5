import type { PlanBoard, PlanPlacement } from '../../model/plan/index.ts';

/** A rail below a raised part, across its width and in height over the board (m). */
export interface Rail {
  readonly subject: string;
  readonly fromXM: number;
  readonly acrossM: number;
  readonly toM: number;
}

/** The two rails below the left and the right side of a raised part, as they are cut; none where pads or nothing hold it. */
export function railsBelow(
  { pieces }: Pick<PlanBoard, 'pieces'>,
  { item, xM, widthM, raisedM }: Pick<PlanPlacement, 'item' | 'xM' | 'widthM' | 'raisedM'>,
): Rail[] {
  const piece = pieces.find(({ carries, form }) => carries === item && form !== 'pad');
  if (!piece || raisedM <= 0) return [];
  const acrossM = piece.form === 'rail' ? piece.widthM : piece.thicknessM;
  const toM = Math.min(raisedM, piece.makesM);
  return [xM, xM + widthM - acrossM].map((fromXM) => ({ subject: piece.id, fromXM, acrossM, toM }));
}
