import { type Loop, loopEdges } from '../../../lib/board/shape/bulge.ts';

/** A loop mirrored about the line x = `aboutXM`, kept in its sense of travel. */
export function mirrorLoop(loop: Loop, aboutXM: number): Loop {
  return loopEdges(loop)
    .map(({ from, to }) => ({ xM: 2 * aboutXM - to.xM, yM: to.yM, bulge: from.bulge }))
    .reverse();
}
