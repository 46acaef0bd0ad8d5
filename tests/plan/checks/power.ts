import { expect, test } from 'vitest';
import type { HouseRules } from '../../../lib/model/house-rules.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { fuseForms } from '../../../lib/model/tables/fuse-forms.ts';
import { outsideCheck } from '../../outside-check.ts';

/** Fuses and conductors: each protects what it says, and neither is larger or smaller than it may be. */
export function powerChecks(plan: () => BuildPlan, rules: () => HouseRules): void {
  const made = outsideCheck('made-ratings');

  test('a fuse is at most the ampacity of all it protects, of a made rating, and within its holder', () => {
    const { fuses, conductors } = plan().power;
    expect(fuses.length).toBeGreaterThan(0);
    for (const { id, form, ratingA, protects, ceilingA, holderA, leastAmpacityA } of fuses) {
      if (ratingA === null) throw new Error(`${id} has no rating`);
      const isLawful = fuseForms[form].ratingsA.includes(ratingA) && ratingA <= (leastAmpacityA ?? ratingA);
      made.differs(isLawful ? 0 : 1, 0);
      expect(fuseForms[form].ratingsA, id).toContain(ratingA);
      if (ceilingA !== null) expect(ratingA, id).toBeLessThanOrEqual(ceilingA);
      if (holderA !== null) expect(ratingA, id).toBeLessThanOrEqual(holderA);
      const protectedOnes = conductors.filter((conductor) => protects.includes(conductor.id));
      expect(protectedOnes.map((one) => one.id).sort(), id).toEqual([...protects].sort());
      for (const { ampacityA } of protectedOnes) expect(ratingA, id).toBeLessThanOrEqual(ampacityA);
      if (protectedOnes.length > 0)
        expect(leastAmpacityA, id).toBe(Math.min(...protectedOnes.map(({ ampacityA }) => ampacityA)));
    }
  });

  test('every feed of the job has a fuse behind or before it, and carries what that lets through', () => {
    const { conductors, fuses } = plan().power;
    const ratingA = new Map(fuses.map((fuse) => [fuse.id, fuse.ratingA ?? 0]));
    for (const { id, role, fuses: own, neededA, ampacityA } of conductors.filter(
      (one) => one.role === 'power',
    )) {
      expect(ampacityA, `${id} (${role})`).toBeGreaterThanOrEqual(neededA);
      if (own.length > 0)
        expect(neededA, id).toBeGreaterThanOrEqual(Math.min(...own.map((fuse) => ratingA.get(fuse) ?? 0)));
    }
  });

  test('a fuse carries its rated current, and the current of its point runs through it', () => {
    const { fuses, points } = plan().power;
    const rated = points.find(({ name }) => name === 'rated-power');
    for (const { id, ratedA, ratingA } of fuses) {
      expect(ratingA, id).toBeGreaterThanOrEqual(ratedA);
      expect(
        rated?.elements.some(({ of, kind }) => of === id && kind === 'fuse'),
        id,
      ).toBe(true);
    }
  });

  test('feed and ground drops add to the share, and are those of the network', () => {
    const { drops, points } = plan().power;
    const sizingV = rules()['voltage-sizing'].value;
    expect(drops.length).toBeGreaterThan(0);
    for (const { point, item, feedDropV, groundDropV, liftedV = 0, share, voltageV } of drops) {
      const lostV = (feedDropV ?? Number.NaN) + (groundDropV ?? Number.NaN) + liftedV;
      expect(share, item).toBeCloseTo(lostV / sizingV, 9);
      const found = points.find(({ name }) => name === point);
      const load = found?.elements.find(({ of, kind }) => of === item && kind === 'load');
      expect(load?.dropV, `${point} ${item}`).toBeCloseTo(voltageV, 9);
    }
  });
}
