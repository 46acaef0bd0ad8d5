import { expect, test } from 'vitest';
import type { OperatingPoint } from '../../../../lib/model/plan/index.ts';
import { continuousPoints } from '../../../../lib/plan/power/operating-points.ts';
import { continuousCurrent } from '../../../../lib/plan/power/sizing/continuous-current.ts';
import { smallPlan } from '../../plan-small-shop.ts';

/** The points of the small shop as they are solved. */
const solved = (): readonly OperatingPoint[] => smallPlan().plan.power.points;

/** The points of the small shop with other currents through its main fuse; null takes it out of a point. */
function withCurrents(currents: Readonly<Record<string, number | null>>): OperatingPoint[] {
  return solved().map((point): OperatingPoint => {
    const currentA = currents[point.name] ?? null;
    return {
      ...point,
      elements: point.elements.flatMap((element) =>
        element.of !== 'main-fuse' || element.kind !== 'fuse'
          ? [element]
          : currentA === null
            ? []
            : [{ ...element, currentA }],
      ),
    };
  });
}
const [first = '', second = ''] = continuousPoints;

test('the greatest current of the points that last counts, whichever way it flows', () => {
  const found = continuousCurrent('main-fuse', withCurrents({ [first]: 20, [second]: -30 }));
  expect(found).toMatchObject({ at: second, currentA: { value: 30 } });
  const titles = solved()
    .filter(({ name }) => [first, second].includes(name))
    .map(({ title }) => title);
  expect(found?.currentA.trace).toMatchObject({
    rule: 'fuse-continuous',
    unit: 'A',
    inputs: [
      { name: titles[0], value: 20, unit: 'A' },
      { name: titles[1], value: 30, unit: 'A' },
    ],
  });
  expect(continuousCurrent('main-fuse', withCurrents({ [first]: 40, [second]: 30 }))?.at).toBe(first);
});

test('full rating does not last: what flows there alone is no continuous current', () => {
  expect(solved().map(({ name }) => name)).toContain('full-rating');
  const found = continuousCurrent('main-fuse', withCurrents({ 'full-rating': 500, [first]: 20 }));
  expect(found?.currentA.value).toBe(20);
  expect(continuousCurrent('main-fuse', withCurrents({ 'full-rating': 500 }))).toBeNull();
});

test('what flows through another thing is no current of this fuse', () => {
  expect(continuousCurrent('feed', solved())).toBeNull();
  expect(continuousCurrent('no-fuse', solved())).toBeNull();
});
