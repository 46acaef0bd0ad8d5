import { boxOf } from '../board/shape/point.ts';
import { cavityAir } from '../heat/cavity-air.ts';
import { length, phrase } from '../model/phrase.ts';
import { celsius, celsiusAllowed, wattsLost } from '../model/printed/told.ts';
import type { Change } from './change.ts';
import type { ComingPart } from './match-parts.ts';
import type { PastBoard } from './past-board.ts';
import type { Wish } from './wish.ts';

/** Parts that stand out of the depth of the space. */
export function heightChanges(
  { space, rules }: Wish,
  board: PastBoard,
  coming: readonly ComingPart[],
): Change[] {
  const faceM = board.standoffM + board.thicknessM;
  return coming.flatMap(({ item, part, placed }): Change[] => {
    if (!placed) return [];
    const lyingM = space.depthM - faceM - placed.heightM;
    const roomM = lyingM - placed.raisedM;
    if (roomM >= rules.clearanceM - 1e-9) return [];
    const name = item ?? part;
    const by = length('overlap', rules.clearanceM - roomM);
    const blocks = lyingM < -1e-9;
    const lower = placed.raisedM > 0 ? ', laid on the board in place of raised' : ', on lower spacers';
    const all = roomM < -1e-9 && placed.raisedM > 0 ? coming.length : 1;
    return [
      {
        kind: 'too-high',
        of: [name],
        minutes: all * rules.minutes['mount-item'],
        blocks,
        told: blocks
          ? phrase`${name} does not go under what closes the space: ${length('overlap', -lyingM)} is missing`
          : phrase`bring ${name} down by ${by}${lower}: what closes the space is too near`,
      },
    ];
  });
}

/** Parts that the space can't hold at all, however they are placed. */
export function sizeChanges({ space, parts }: Wish, board: PastBoard): Change[] {
  const sizes = parts
    ? parts.map(({ part, widthM, depthM }) => ({ id: part, widthM, depthM }))
    : board.items.map(({ id, at }) => ({ id, widthM: at.maxX - at.minX, depthM: at.maxY - at.minY }));
  const room = boxOf(space.outline);
  const [roomX, roomY] = [room.maxX - room.minX + 1e-9, room.maxY - room.minY + 1e-9];
  return sizes
    .filter(({ widthM: w, depthM: d }) => !((w <= roomX && d <= roomY) || (d <= roomX && w <= roomY)))
    .map(({ id, widthM, depthM }): Change => {
      return {
        kind: 'too-large',
        of: [id],
        minutes: 0,
        blocks: true,
        told: phrase`${id} is larger than the space: ${length('size', widthM)} by ${length('size', depthM)}`,
      };
    });
}

/** Whether the space gets warmer than its parts bear, with the losses that they had. */
export function warmthChanges({ space, rules }: Wish, coming: readonly ComingPart[]): Change[] {
  const lossW = coming.reduce((sum, one) => sum + one.lossW, 0);
  if (!(lossW > 0) || !(space.cavity.surfaceM2 > 0)) return [];
  const airC = cavityAir({ ...space.cavity, lossW }).airC.value;
  const warm = coming.filter(({ part }) => airC > (rules.bearsC[part] ?? Number.POSITIVE_INFINITY) + 1e-9);
  if (warm.length === 0) return [];
  const most = Math.min(...warm.map(({ part }) => rules.bearsC[part] ?? Number.POSITIVE_INFINITY));
  return [
    {
      kind: 'warmth',
      of: warm.map(({ item, part }) => item ?? part),
      minutes: rules.minutes['mount-item'],
      blocks: false,
      told: `fit a fan or give it openings: with ${wattsLost(lossW)} in it the air gets to ${celsius(airC)}, and ${celsiusAllowed(most)} is what the most sensitive part bears`,
    },
  ];
}
