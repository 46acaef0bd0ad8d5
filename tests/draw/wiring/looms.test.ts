import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LoomStretch, loomsOf } from '../../../lib/draw/wiring/looms.ts';

const place = (xM: number, yM: number) => ({ xM, yM });

/** True where all stretches hang together at their ends. */
function hangTogether(stretches: readonly LoomStretch[]): boolean {
  const key = ({ xM, yM }: { xM: number; yM: number }): string => `${xM.toFixed(4)} ${yM.toFixed(4)}`;
  const [first, ...rest] = stretches;
  if (!first) return true;
  const reached = new Set([key(first.from), key(first.to)]);
  let open = rest;
  for (;;) {
    const next = open.filter(({ from, to }) => reached.has(key(from)) || reached.has(key(to)));
    if (next.length === 0) return open.length === 0;
    for (const { from, to } of next) reached.add(key(from)).add(key(to));
    open = open.filter((one) => !next.includes(one));
  }
}

describe('looms', () => {
  it('gather runs beside each other onto one line, and tell where one leaves', () => {
    const { stretches } = loomsOf([
      { wire: 'a', points: [place(0, 0), place(0.4, 0)] },
      { wire: 'b', points: [place(0, 0.01), place(0.4, 0.01)] },
      { wire: 'c', points: [place(0, 0.02), place(0.2, 0.02), place(0.2, 0.3)] },
    ]);
    const told = stretches.map(({ routes }) => routes.join(''));
    expect(told.toSorted()).toEqual(['ab', 'abc', 'c']);
    const level = stretches.filter(({ from, to }) => from.yM === to.yM);
    expect(new Set(level.map(({ from }) => from.yM)).size).toBe(1);
  });

  it('leave runs that are farther apart, or beside each other for too short, by themselves', () => {
    const two = (byM: number, fromM: number) =>
      loomsOf([
        { wire: 'a', points: [place(0, 0), place(0.4, 0)] },
        { wire: 'b', points: [place(fromM, byM), place(0.8, byM)] },
      ]).stretches.filter(({ routes }) => routes.length === 2).length;
    expect(two(0.03, 0)).toBe(1);
    expect(two(0.031, 0)).toBe(0);
    expect(two(0.01, 0.387)).toBe(1);
    expect(two(0.01, 0.389)).toBe(0);
  });

  it('hold every route from end to end, whatever lies beside it', () => {
    const leg = fc.integer({ min: 1, max: 60 });
    const route = fc.tuple(leg, leg, fc.array(fc.tuple(leg, fc.boolean()), { minLength: 1, maxLength: 5 }));
    fc.assert(
      fc.property(fc.array(route, { minLength: 1, maxLength: 6 }), (made) => {
        const routes = made.map(([x, y, legs], nth) => {
          let at = place(x / 100, y / 100);
          const points = [at];
          legs.forEach(([length, back], index) => {
            const step = (back ? -length : length) / 100;
            at = index % 2 === 0 ? place(at.xM + step, at.yM) : place(at.xM, at.yM + step);
            points.push(at);
          });
          return { wire: `w${nth}`, points };
        });
        const { stretches, ways } = loomsOf(routes);
        expect(ways.map((way) => way.route)).toEqual(routes.map(({ wire }) => wire));
        for (const { wire } of routes)
          expect(hangTogether(stretches.filter((one) => one.routes.includes(wire)))).toBe(true);
      }),
    );
  });
});
