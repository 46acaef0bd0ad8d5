import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { inParts, inShop } from '../shop-changes.ts';

const feedGiven = (text: string) => inJob('to: amp.B+ }', `to: amp.B+, ${text} }`);
const fuseGiven = (ampere: number) => inJob('holder-a, in: bay', `holder-a, in: bay, fuse: ${ampere} A`);

const rules = (remarks: readonly { readonly rule: string }[]) => remarks.map(({ rule }) => rule);

describe('a fuse that is left open', () => {
  test('is a made rating, at most what its conductor carries and its device allows', () => {
    const { plan } = smallPlan();
    const fuse = byId(plan.power.fuses, 'main-fuse');
    const feed = byId(plan.power.conductors, 'feed');
    expect(fuse).toMatchObject({ chosen: 'computed', ratingA: 60, ceilingA: 60, part: 'large-60' });
    expect(fuse.protects).toEqual(['feed']);
    expect(feed.fuses).toEqual(['main-fuse']);
    expect(fuse.ratingA).toBeLessThanOrEqual(feed.ampacityA);
  });

  test('says why, and how its number came about', () => {
    const { plan } = smallPlan();
    expect(byId(plan.power.fuses, 'main-fuse').reason).toMatch(/A/);
    expect(plan.traces['power.fuses.main-fuse.ratingA']).toMatchObject({
      origin: 'computed',
      rule: 'fuse-choice',
    });
  });

  test('is not on the shelf: the next made rating is chosen, and the pick list says that it is short', () => {
    const { plan } = smallPlan(
      inShop('  large-60: { pieces: 2 }\n', ''),
      inShop('  large-80: { pieces: 2 }\n', ''),
      inParts('"60 A", form: large-bolt-in, rating: 60 A', '"50 A", form: large-bolt-in, rating: 50 A'),
    );
    const fuse = byId(plan.power.fuses, 'main-fuse');
    expect(fuse).toMatchObject({ ratingA: 50, stockQuantity: 0, part: 'large-60' });
    expect(fuse.ratingA).toBeGreaterThanOrEqual(1.25 * fuse.ratedA);
    expect(plan.pick.find(({ part }) => part === 'large-60')).toMatchObject({ quantity: 1, short: 1 });
  });

  test('has no lawful rating where its conductor can not carry the current of its device', () => {
    const { plan } = smallPlan(feedGiven('size: 8 AWG'), inParts('fuse: 60 A,', 'fuse: 20 A,'));
    expect(byId(plan.power.fuses, 'main-fuse')).toMatchObject({ ratingA: null, part: null });
    expect(byId(plan.power.fuses, 'main-fuse').reason).toMatch(
      /no fuse may stand here: .*limit is maker's ceiling, 20 A/,
    );
  });
});

describe('what the job gives', () => {
  test.each([40, 60, 80, 125, 200])('a fuse of %i A is kept', (ampere) => {
    const { plan } = smallPlan(fuseGiven(ampere));
    expect(byId(plan.power.fuses, 'main-fuse')).toMatchObject({ ratingA: ampere, chosen: 'given' });
  });

  test.each(['8 AWG', '4 AWG'])('a feed of %s is kept', (size) => {
    const { plan } = smallPlan(feedGiven(`size: ${size}`));
    expect(byId(plan.power.conductors, 'feed')).toMatchObject({ chosen: 'given', size: { label: size } });
    expect(byId(plan.wires, 'feed').size.label).toBe(size);
  });

  test('a size that no reel has is kept and counts as unmarked copper', () => {
    const { plan } = smallPlan(feedGiven('size: 2 AWG'));
    expect(byId(plan.power.conductors, 'feed')).toMatchObject({
      chosen: 'given',
      size: { label: '2 AWG' },
      insulationC: 60,
    });
  });

  test('a reel and a length are kept', () => {
    const { plan } = smallPlan(feedGiven('wire: red-4, length: 17 ft'));
    expect(byId(plan.wires, 'feed')).toMatchObject({ part: 'red-4', measured: 'given' });
    expect(byId(plan.wires, 'feed').lengthM).toBeCloseTo(5.1816, 9);
  });

  test('any fuse and size together stay as they were given, and the plan is made all the same', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(30, 60, 80, 100, 150, 225, 300),
        fc.constantFrom('12 AWG', '8 AWG', '4 AWG', '1/0 AWG', '4/0 AWG', '16 mm2'),
        (ampere, size) => {
          const { plan } = smallPlan(fuseGiven(ampere), feedGiven(`size: ${size}`));
          expect(byId(plan.power.fuses, 'main-fuse').ratingA).toBe(ampere);
          expect(byId(plan.wires, 'feed').size.label).toBe(size);
        },
      ),
      { numRuns: 12 },
    );
  });
});

describe('a conductor that is left open', () => {
  test('carries its fuse, and its ground is at least as large', () => {
    const { plan } = smallPlan();
    const feed = byId(plan.power.conductors, 'feed');
    expect(feed.chosen).toBe('computed');
    expect(feed.ampacityA).toBeGreaterThanOrEqual(feed.neededA);
    expect(byId(plan.power.conductors, 'ground').size.areaMm2).toBeGreaterThanOrEqual(feed.size.areaMm2);
  });

  test('not on the shelf in one piece: still chosen, with a caution', () => {
    const { plan, remarks } = smallPlan(
      inShop('red-8: { reels: [30 ft] }', 'red-8: { reels: [8 ft, 8 ft] }'),
      inShop('red-4: { reels: [30 ft] }', 'red-4: { reels: [8 ft] }'),
    );
    const remark = remarks.find(({ rule, of }) => rule === 'conductor-not-on-shelf' && of.includes('feed'));
    expect(remark).toMatchObject({ level: 'caution' });
    expect(byId(plan.wires, 'feed').part).toMatch(/^red-/);
  });

  test('with nothing in the catalogue for it: a stop that names it', () => {
    const { plan, remarks } = smallPlan(
      inParts(
        '  red-4: { kind: wire, title: "4 AWG red", size: 4 AWG, insulation: 105 C, colour: RD, for: [power] }\n',
        '',
      ),
      inParts(
        '  red-8: { kind: wire, title: "8 AWG red", size: 8 AWG, insulation: 105 C, colour: RD, for: [power] }\n',
        '',
      ),
      inShop('  red-4: { reels: [30 ft] }\n', ''),
      inShop('  red-8: { reels: [30 ft] }\n', ''),
    );
    const stops = remarks.filter(({ level, rule }) => level === 'stop' && rule === 'conductor-no-reel');
    expect(stops.map(({ of }) => of.toSorted())).toEqual([['feed', 'tail']]);
    expect(stops[0]?.message).toBe(
      'no reel of the catalogue is for power conductors: tail and feed need one',
    );
    expect(plan.wires.map(({ id }) => id)).toContain('feed');
  });

  test('with insulation that no zone on its way allows: a stop that names what fails', () => {
    const { remarks } = smallPlan(
      inParts('size: 4 AWG, insulation: 105 C, colour: RD', 'size: 4 AWG, insulation: 60 C, colour: RD'),
      inParts('size: 8 AWG, insulation: 105 C, colour: RD', 'size: 8 AWG, insulation: 60 C, colour: RD'),
    );
    const stop = remarks.find(({ rule, of }) => rule === 'conductor-none-fits' && of.includes('feed'));
    expect(stop).toMatchObject({ level: 'stop' });
    expect(stop?.message).toMatch(/feed/);
    expect(rules(remarks)).not.toContain('conductor-no-reel');
  });

  test('a longer way never gives a smaller feed or ground', () => {
    const areas = (feet: number) => {
      const { plan } = smallPlan(feedGiven(`length: ${feet} ft`));
      return ['feed', 'ground'].map((id) => byId(plan.power.conductors, id).size.areaMm2);
    };
    const [short, middle, long] = [areas(3), areas(15), areas(40)];
    for (const at of [0, 1]) {
      expect(middle[at]).toBeGreaterThanOrEqual(short[at] ?? Number.NaN);
      expect(long[at]).toBeGreaterThanOrEqual(middle[at] ?? Number.NaN);
    }
  });
});

describe('stock', () => {
  test('added to the shelf never adds a stop', () => {
    const stops = (remarks: readonly { readonly level: string }[]) =>
      remarks.filter(({ level }) => level === 'stop').length;
    const reels = ['red-4', 'black-4', 'red-8', 'black-8', 'blue-18', 'white-12', 'striped-12'] as const;
    fc.assert(
      fc.property(fc.subarray([...reels]), fc.subarray([...reels]), (some, more) => {
        const without = (present: readonly string[]) =>
          reels
            .filter((reel) => !present.includes(reel))
            .map((reel): Change => inShop(`${reel}: { reels: [30 ft] }`, `${reel}: { reels: [1 ft] }`));
        const few = smallPlan(...without(some));
        const many = smallPlan(...without([...some, ...more]));
        expect(stops(many.remarks)).toBeLessThanOrEqual(stops(few.remarks));
      }),
      { numRuns: 10 },
    );
  });
});
