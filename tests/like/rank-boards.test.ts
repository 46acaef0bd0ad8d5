import { describe, expect, test } from 'vitest';
import type { PastFeed } from '../../lib/like/past-board.ts';
import { type NearestBoard, nearestBoards } from '../../lib/like/rank-boards.ts';
import { worded } from '../../lib/model/phrase.ts';
import { madeBoard, madeItem, madePart, madeRules, madeSpace, madeWish, rectangle } from './made-boards.ts';

/** The nearest of one board. */
function only(...[wish, board]: [ReturnType<typeof madeWish>, ReturnType<typeof madeBoard>]): NearestBoard {
  const [found] = nearestBoards(wish, [board], 1);
  if (!found) throw new Error('No board was found.');
  return found;
}

const kinds = ({ changes }: NearestBoard): string[] => changes.map(({ kind }) => kind);
const toldOf = ({ changes }: NearestBoard, kind: string): string =>
  changes
    .filter((one) => one.kind === kind)
    .map(({ told }) => worded(told, (_, lengthM) => `${(lengthM * 1000).toFixed(1)} mm`))
    .join('; ');

describe('the outline of a past board in a space', () => {
  test('goes in where it is no larger, in its own place if that is free, else wherever it is', () => {
    expect(only(madeWish(madeSpace(0.5, 0.4)), madeBoard()).place).toEqual({
      xM: 0.02,
      yM: 0.02,
      turnDeg: 0,
    });
    const far = only(madeWish(madeSpace(0.5, 0.4)), madeBoard({ datum: { xM: 0.6, yM: 0 } }));
    expect([far.minutes, far.place?.turnDeg]).toEqual([0, 0]);
    expect(far.place?.xM).toBeGreaterThanOrEqual(0.005);
    expect(far.place?.xM).toBeLessThanOrEqual(0.095);
  });

  test('is turned where it goes in no other way, which asks for no work', () => {
    const found = only(madeWish(madeSpace(0.33, 0.43)), madeBoard());
    expect([found.minutes, kinds(found)]).toEqual([0, ['turned']]);
    expect([90, 270]).toContain(found.place?.turnDeg);
  });

  test('nearer to a wall than the house wants has its edge taken back; as near is enough', () => {
    // 5 mm on both sides are asked: 410 mm do, 409 mm don't.
    expect(
      kinds(only(madeWish(madeSpace(0.41, 0.4)), madeBoard({ datum: { xM: 0.005, yM: 0.02 } }))),
    ).toEqual([]);
    const tight = only(madeWish(madeSpace(0.409, 0.32)), madeBoard({ datum: { xM: 0.0045, yM: 0.01 } }));
    expect([tight.minutes, kinds(tight)]).toEqual([40, ['trimmed-edge']]);
  });

  test('that is too large is cut anew: its parts, holds and wires find other places', () => {
    const board = madeBoard({
      items: [madeItem()],
      fixings: [{ id: 'f1', xM: 0.02, yM: 0.02 }],
      exits: { left: 2 },
    });
    const found = only(madeWish(madeSpace(0.38, 0.29)), board);
    // 40 for the board, 10 for the part, 10 for the fixing, 2 wires of 8.
    expect([found.minutes, kinds(found), found.place]).toEqual([76, ['new-outline'], null]);
    expect(toldOf(found, 'new-outline')).toContain(
      'it is 20.0 mm too wide and 10.0 mm too high for the space',
    );
  });

  test('goes round what juts into the space only where its own shape does', () => {
    const notched = [
      ...[
        { xM: 0, yM: 0 },
        { xM: 0.5, yM: 0 },
        { xM: 0.5, yM: 0.2 },
        { xM: 0.38, yM: 0.2 },
      ],
      ...[
        { xM: 0.38, yM: 0.4 },
        { xM: 0, yM: 0.4 },
      ],
    ];
    const space = madeSpace(0.5, 0.4, { outline: notched });
    const whole = madeBoard({ outline: rectangle(0.45, 0.35), datum: { xM: 0.01, yM: 0.01 } });
    expect(kinds(only(madeWish(space), whole))).toEqual(['new-outline']);
    const cut = [
      ...[
        { xM: 0, yM: 0 },
        { xM: 0.45, yM: 0 },
        { xM: 0.45, yM: 0.15 },
        { xM: 0.35, yM: 0.15 },
      ],
      ...[
        { xM: 0.35, yM: 0.35 },
        { xM: 0, yM: 0.35 },
      ],
    ].map((p) => ({ ...p, bulge: 0 }));
    expect(kinds(only(madeWish(space), { ...whole, outline: cut }))).toEqual([]);
  });

  test('stands over what is lower than its back, and beside or round what is higher', () => {
    const post = (toM: number) => [{ id: 'post', at: { minX: 0.2, minY: 0.1, maxX: 0.22, maxY: 0.12 }, toM }];
    const space = (toM: number) => madeSpace(0.45, 0.35, { inTheWay: post(toM) });
    // The back stands 12 mm off the plane, and 5 mm are asked between.
    expect(kinds(only(madeWish(space(0.007)), madeBoard()))).toEqual([]);
    expect(kinds(only(madeWish(space(0.0071)), madeBoard()))).toEqual(['trimmed-edge']);
    const against = only(madeWish(space(0.0121)), madeBoard());
    expect(kinds(against)).toEqual(['new-outline']);
    expect(toldOf(against, 'new-outline')).toContain('it does not go in past post');
    const opening = rectangle(0.06, 0.06).map((p) => ({ ...p, xM: p.xM + 0.16, yM: p.yM + 0.06 }));
    expect(kinds(only(madeWish(space(0.05)), madeBoard({ cutouts: [opening] })))).toEqual([]);
  });
});

describe('what stands on a past board', () => {
  test('goes under what closes the space: board, spacers, part and the clearance of the house', () => {
    // 12 mm of spacer, 12 mm of board and 50 mm of amplifier: 74 mm, and 5 mm are asked over it.
    const board = madeBoard({ items: [madeItem()] });
    const at = (depthM: number) => only(madeWish(madeSpace(0.5, 0.4, { depthM })), board);
    expect(kinds(at(0.079))).toEqual([]);
    expect([at(0.0789).minutes, at(0.0789).blocked]).toEqual([10, false]);
    expect([at(0.074).blocked, at(0.0739).blocked]).toEqual([false, true]);
    expect(toldOf(at(0.07), 'too-high')).toBe(
      'amp does not go under what closes the space: 4.0 mm is missing',
    );
    const raised = only(
      madeWish(madeSpace(0.5, 0.4, { depthM: 0.09 })),
      madeBoard({ items: [madeItem({ raisedM: 0.03 })] }),
    );
    expect([raised.blocked, kinds(raised)]).toEqual([false, ['too-high']]);
  });

  test('keeps room for hand, tool and plugs up to the walls, but not on an open side; air is another matter', () => {
    const side = (kind: 'tool' | 'air') =>
      madeBoard({
        items: [madeItem({ keepClear: [{ kind, side: 'left', depthM: 0.15 }] })],
        datum: { xM: 0.02, yM: 0.02 },
      });
    const space = madeSpace(0.44, 0.34);
    const short = only(madeWish(space), side('tool'));
    expect([short.minutes, kinds(short)]).toEqual([10, ['kept-clear']]);
    expect(kinds(only(madeWish(space), side('air')))).toEqual([]);
    expect(kinds(only(madeWish({ ...space, open: ['left'] }), side('tool')))).toEqual([]);
    // 150 mm from the left side of the part, which stands 50 mm from that of the board: 100 mm beside it do.
    expect(kinds(only(madeWish(madeSpace(0.506, 0.34)), side('tool')))).toEqual([]);
  });

  test('that takes no room in the space at all is told, whatever the board', () => {
    const large = madePart({ widthM: 0.6, depthM: 0.2 });
    const found = only(madeWish(madeSpace(0.55, 0.5), [large]), madeBoard());
    expect([found.blocked, kinds(found)[0]]).toEqual([true, 'too-large']);
    expect(only(madeWish(madeSpace(0.2, 0.6), [large]), madeBoard()).blocked).toBe(false);
  });

  test('is held where sound points lie under the board, off its edges and its parts', () => {
    const board = madeBoard({
      items: [madeItem()],
      fixings: [
        { id: 'f1', xM: 0.02, yM: 0.02 },
        { id: 'f2', xM: 0.38, yM: 0.28 },
      ],
    });
    const point = (xM: number, yM: number) => ({ id: `p${xM}`, xM, yM });
    const points = (...soundPoints: ReturnType<typeof point>[]) =>
      only(madeWish(madeSpace(0.41, 0.31, { soundPoints })), { ...board, datum: { xM: 0.005, yM: 0.005 } });
    // 12 mm to the edge of a board that can be moved by nothing: from 17 mm on in the axes of the space.
    expect(kinds(points(point(0.017, 0.2), point(0.39, 0.29)))).toEqual([]);
    const near = points(point(0.0165, 0.2), point(0.39, 0.29));
    expect([near.minutes, kinds(near)]).toEqual([10, ['fixings']]);
    // Below the amplifier no bolt is reached, whichever way the board is turned.
    const covered = madeItem({ at: { minX: 0.05, minY: 0.05, maxX: 0.35, maxY: 0.25 } });
    const soundPoints = [point(0.205, 0.155), point(0.39, 0.29)];
    const under = only(madeWish(madeSpace(0.41, 0.31, { soundPoints })), {
      ...board,
      items: [covered],
      datum: { xM: 0.005, yM: 0.005 },
    });
    expect(kinds(under)).toEqual(['fixings']);
    expect(points().minutes).toBe(20);
  });

  test('gets no warmer than it bears: P = k A dT, 3.5 W/(m2 K) by 1 m2, so that 35 W are 10 K over 50 C', () => {
    const board = madeBoard({ items: [madeItem({ lossW: 35 })] });
    const bears = (bearsC: number) =>
      only(madeWish(madeSpace(0.5, 0.4), null, { ...madeRules, bearsC: { 'amp-a': bearsC } }), board);
    expect(kinds(bears(60.01))).toEqual([]);
    expect([bears(59.99).minutes, kinds(bears(59.99))]).toEqual([10, ['warmth']]);
    expect(toldOf(bears(59.99), 'warmth')).toContain('with 35 W in it the air gets to 60 C');
  });

  test('is led out over edges that ways reach, as the board is turned; where no way tells, nothing is known', () => {
    const board = madeBoard({ exits: { left: 3, bottom: 1 } });
    const found = only(madeWish(madeSpace(0.5, 0.4, { reached: ['left', 'top'] })), board);
    expect([found.minutes, kinds(found)]).toEqual([8, ['exits']]);
    expect(toldOf(found, 'exits')).toContain(
      'lead 1 wire over another edge than the bottom one of the space',
    );
    // Turned by 270 degrees its left is up and its lower edge is left.
    const turned = only(madeWish(madeSpace(0.5, 0.5, { reached: ['left', 'top'] })), board);
    expect([turned.minutes, turned.place?.turnDeg]).toEqual([0, 270]);
    expect(only(madeWish(madeSpace(0.5, 0.4)), board).minutes).toBe(0);
  });
});

describe('the parts of a past board against those that are wanted', () => {
  const space = madeSpace(0.5, 0.4);
  const board = madeBoard({ items: [madeItem()] });

  test('that are the same ask for nothing', () => {
    const found = only(madeWish(space, [madePart()]), board);
    expect([found.minutes, found.parts.common]).toEqual([0, ['amp']]);
  });

  test('that fit room and holes of another ask for their wires; other holes are drilled', () => {
    const same = only(madeWish(space, [madePart({ part: 'amp-b', plannedA: 20 })]), board);
    expect([same.minutes, kinds(same)]).toEqual([5 * 8, ['other-part']]);
    expect(toldOf(same, 'other-part')).toContain('its holes are those of the other');
    const holes = [{ xM: 0.02, yM: 0.01 }, ...madePart().holes.slice(1)];
    const drilled = only(madeWish(space, [madePart({ part: 'amp-b', plannedA: 20, holes })]), board);
    expect(drilled.minutes).toBe(5 * 8 + 2);
    expect(toldOf(drilled, 'other-part')).toContain('1 hole to drill');
  });

  test('that are larger go in as far as the gap to the next part lets them, else on a free spot, else nowhere', () => {
    const beside = madeItem({ id: 'dsp', part: 'dsp', kind: 'processor', sort: 'processor', drawA: 1 });
    const two = madeBoard({
      items: [madeItem(), { ...beside, at: { minX: 0.3, minY: 0.05, maxX: 0.38, maxY: 0.15 }, holes: [] }],
    });
    const wider = (widthM: number) =>
      only(
        madeWish(space, [
          madePart({ part: 'amp-b', plannedA: 20, widthM, holes: [] }),
          madePart({ part: 'dsp', kind: 'processor', sort: 'processor', plannedA: 1 }),
        ]),
        two,
      );
    // Grown over both sides of its middle at 150 mm, up to 287 mm, which leaves the gap of 13 mm: twice 137 mm.
    expect(kinds(wider(0.274))).toEqual(['other-part']);
    // At its corners it would take the gap or leave the board; free board over it is 150 mm to 300 mm high.
    const moved = wider(0.28);
    expect([moved.minutes, kinds(moved)]).toEqual([5 * 8 + 10, ['moved-part']]);
    expect(toldOf(moved, 'moved-part')).toContain('a free spot is there for it');
    const none = wider(0.41);
    expect(toldOf(none, 'moved-part')).toContain('no spot is free for it');
    // All that stays is placed anew: the other part.
    expect(none.minutes).toBe(5 * 8 + 10 + 10);
  });

  test('that are missing are added, and those that nobody wants are left out', () => {
    const added = only(madeWish(space, [madePart(), madePart({ part: 'amp-b', plannedA: 0 })]), board);
    expect([added.minutes, added.parts.added]).toEqual([5 * 8 + 10 + 4 * 2, ['amp-b']]);
    const fewer = only(madeWish(space, []), board);
    expect([fewer.minutes, fewer.parts.leftOut, kinds(fewer)]).toEqual([0, ['amp'], ['left-out']]);
  });

  test('that serve the others stay as long as nobody asks for one of their kind', () => {
    const dist = madeItem({ id: 'dist', part: 'dist', kind: 'distribution', sort: 'distribution power' });
    const found = only(madeWish(space, []), madeBoard({ items: [dist] }));
    expect([found.parts.kept, found.parts.leftOut]).toEqual([['dist'], []]);
    const other = madePart({ part: 'bar', kind: 'distribution', sort: 'distribution ground', plannedA: 0 });
    expect(only(madeWish(space, [other]), madeBoard({ items: [dist] })).parts.leftOut).toEqual(['dist']);
  });
});

describe('the feed of a past board', () => {
  const feed = (change: Partial<PastFeed> = {}): PastFeed => ({
    ...{ wire: 'feed', sizeLabel: '4 AWG', ampacityA: 80 },
    fuse: { id: 'main-fuse', ratingA: 50, holderA: 60, ratedA: 20 },
    items: ['amp'],
    ...change,
  });
  const draws = (plannedA: number, own: PastFeed = feed()) =>
    only(
      madeWish(madeSpace(0.5, 0.4), [madePart({ plannedA })]),
      madeBoard({ items: [madeItem()], feeds: [own] }),
    );

  test('carries 1.25 times the current up to its fuse, then asks for a fuse, a holder, a size', () => {
    expect(kinds(draws(40))).toEqual([]);
    expect([kinds(draws(40.1)), draws(40.1).minutes]).toEqual([['fuse'], 3]);
    expect(draws(48).minutes).toBe(3);
    expect(draws(48.1).minutes).toBe(3 + 10);
    expect(kinds(draws(64))).toEqual(['fuse']);
    expect([kinds(draws(64.1)), draws(64.1).minutes]).toEqual([['feed'], 6 + 4 + 3 + 10]);
  });

  test('is no worse for what it carried already, whatever its fuse is', () => {
    const small = feed({ fuse: { id: 'main-fuse', ratingA: 20, holderA: 60, ratedA: 20 } });
    expect(kinds(draws(20, small))).toEqual([]);
    expect(kinds(draws(20.2, small))).toEqual(['fuse']);
  });

  test('is missed where there is none; what it drew and what is wanted are told', () => {
    const found = only(
      madeWish(madeSpace(0.5, 0.4), [madePart({ plannedA: 25 })]),
      madeBoard({ items: [madeItem()] }),
    );
    expect([kinds(found), found.supply]).toEqual([['feed'], { hadA: 20, needsA: 25 }]);
  });
});
