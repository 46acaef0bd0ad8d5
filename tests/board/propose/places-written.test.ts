import { expect, it } from 'vitest';
import { placeM } from '../../../lib/board/layout/item.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { proposeBoard } from '../../../lib/board/propose/propose-board.ts';
import { barriersInPlace, wiresInPlace } from '../../../lib/board/propose/wires-in-place.ts';
import { boxOf } from '../../../lib/board/shape/point.ts';
import { madeUpBoard } from '../../../lib/commands/bench/made-up-board.ts';
import { caseCount } from '../../long-run.ts';
import { routeWires, usualRouting, usualScore } from '../usual-board.ts';

const diameterM = 0.004;

/** A length as a job says it in millimetres, and as it is read. */
const asWritten = (valueM: number) => placeM(Number((valueM * 1000).toFixed(6)) / 1000);

const wireOf = ({ id, from, to, layer }: Link) => ({
  ...{ id, layer, diameterM },
  along: [{ link: id, from, to }],
});

it('a layout that is proposed is wired as the same places are that a job gives', () => {
  for (let n = 0; n < caseCount({ all: 10, some: 2 }); n += 1) {
    const board = madeUpBoard(5150 + n);
    if (!board) throw new Error(`The board ${5150 + n} can not be drawn.`);
    const { shape, items, links } = board;
    const { placements, routing } = proposeBoard(
      { board: { shape }, items, given: [], links },
      { ...usualScore, routing: usualRouting },
      diameterM,
    );
    const written = placements.map((at) => ({ ...at, xM: asWritten(at.xM), yM: asWritten(at.yM) }));
    expect(written).toEqual(placements);
    const inPlace = { box: boxOf(shape.outline), items, placements: written };
    const again = routeWires({
      shape,
      barriers: barriersInPlace(inPlace),
      wires: wiresInPlace(inPlace, links.map(wireOf)),
    });
    expect(again.routes).toEqual(routing.routes);
  }
}, 120_000);
