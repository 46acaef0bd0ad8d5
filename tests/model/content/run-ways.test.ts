import { describe, expect, test } from 'vitest';
import {
  chained,
  joinedRoute,
  meetingPlaces,
  type NamedRoute,
  stretchesOf,
} from '../../../lib/model/content/run-ways.ts';
import { routeLengthM, routeSchema } from '../../../lib/model/content/vehicle-route.ts';

const route = (id: string, lengthsM: readonly number[], value: Record<string, unknown>): NamedRoute => ({
  id,
  route: routeSchema.parse({
    title: id,
    side: 'left',
    passes: lengthsM.map((lengthM) => ({ zone: 'cabin', length: `${lengthM} m` })),
    ...value,
  }),
});

const sill = route('sill', [2, 1], { ends: ['kick'], reaches: { space: 'wall', edge: 'left' } });
const sleeve = route('sleeve', [0.25, 0.5], { ends: ['kick', 'door'] });
const dash = route('dash', [0.75], { ends: ['dash-end', 'kick'] });

/** The lengths of the stretches in turn (m). */
const lengthsOf = (routes: readonly NamedRoute[]) =>
  joinedRoute(chained(routes) ?? []).passes.map(({ length }) => Number(length));

describe('routes that meet', () => {
  // The tape goes from the board down to the kick panel, then on into the door: added by hand.
  test('have their stretches in the order of the wire, each route turned as it is gone by', () => {
    expect(lengthsOf([sill, sleeve])).toEqual([1, 2, 0.25, 0.5]);
    expect(lengthsOf([sleeve, sill])).toEqual([0.5, 0.25, 2, 1]);
    expect(lengthsOf([dash, sleeve])).toEqual([0.75, 0.25, 0.5]);
  });

  test('meet at the first and the last that a route names, where it names more', () => {
    const feed = route('feed', [3], { ends: ['battery', 'beside-the-battery', 'kick'] });
    expect(lengthsOf([feed, sleeve])).toEqual([3, 0.25, 0.5]);
    expect(lengthsOf([sleeve, feed])).toEqual([0.5, 0.25, 3]);
    expect(chained([feed, route('other', [1], { ends: ['beside-the-battery', 'lamp'] })])).toBeNull();
  });

  test('are as long as all of them, and tell where each stretch was measured', () => {
    const ways = chained([sleeve, sill]) ?? [];
    expect(routeLengthM(joinedRoute(ways))).toBeCloseTo(3.75, 9);
    expect(stretchesOf(ways).map(({ way, at }) => `${way.id} ${at}`)).toEqual([
      'sleeve 1',
      'sleeve 0',
      'sill 0',
      'sill 1',
    ]);
    expect(meetingPlaces(ways)).toEqual([{ place: 'kick', alongM: 0.75 }]);
  });

  test('end where the outer two end, at the edge of the space too', () => {
    expect(joinedRoute(chained([sleeve, sill]) ?? [])).toMatchObject({
      ends: ['door'],
      reaches: { space: 'wall', edge: 'left' },
    });
  });

  test('are none where one ends elsewhere, or lies only along another', () => {
    const along = route('along', [3], {
      ends: ['kick', 'battery'],
      serves: ['seat'],
    });
    const seat = route('seat', [1], { ends: ['seat', 'rear'] });
    expect(chained([sill, seat])).toBeNull();
    expect(chained([along, seat])).toBeNull();
    expect(chained([along, sleeve])).not.toBeNull();
  });

  test('of two sides lie on neither as a whole', () => {
    const across = route('across', [1], { side: 'right', ends: ['door', 'right-door'] });
    expect(joinedRoute(chained([sleeve, across]) ?? []).side).toBe('middle');
  });
});
