import { type Side, turnedSide } from '../board/layout/item.ts';
import { type Box, boxOf, type Point, ringOfBox } from '../board/shape/point.ts';
import type { WishedSpace } from './wish.ts';

/** Turns of a board in a space, counter-clockwise, degrees; the one that asks for no other drawing first. */
export const boardTurns = [0, 90, 180, 270] as const;
export type BoardTurn = (typeof boardTurns)[number];

/** A space as a board sees it that stands turned in it. */
export type SeenSpace = Pick<WishedSpace, 'outline' | 'inTheWay' | 'soundPoints' | 'open'>;

/** A point turned about the datum, counter-clockwise. */
export function turnedPoint({ xM, yM }: Point, turn: BoardTurn): Point {
  switch (turn) {
    case 0:
      return { xM, yM };
    case 90:
      return { xM: -yM, yM: xM };
    case 180:
      return { xM: -xM, yM: -yM };
    case 270:
      return { xM: yM, yM: -xM };
  }
}

/** The turn that undoes one. */
const backwards = { 0: 0, 90: 270, 180: 180, 270: 90 } as const satisfies Record<BoardTurn, BoardTurn>;

/** A space in the axes of a board that stands turned in it: all of the space is turned the other way. */
export function turnedSpace(space: SeenSpace, turn: BoardTurn): SeenSpace {
  const back = backwards[turn];
  const side = (one: Side): Side => turnedSide(one, back);
  const box = (one: Box): Box => boxOf(ringOfBox(one).map((p) => turnedPoint(p, back)));
  return {
    outline: space.outline.map((p) => turnedPoint(p, back)),
    inTheWay: space.inTheWay.map((one) => ({ ...one, at: box(one.at) })),
    soundPoints: space.soundPoints.map(({ id, ...p }) => ({ id, ...turnedPoint(p, back) })),
    open: space.open.map(side),
  };
}
