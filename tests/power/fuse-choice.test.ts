import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isFault } from '../../lib/model/fault.ts';
import { fuseFormIds, fuseForms } from '../../lib/model/tables/fuse-forms.ts';
import { chooseFuse, type FuseChoice, type FuseDuty, type StockedFuse } from '../../lib/power/fuse-choice.ts';
import { interruptNeedA, prospectiveFaultA } from '../../lib/power/interrupting.ts';
import { duty, stocked } from './fuse-duty.ts';
import { usualRules } from './usual-rules.ts';

function choose(given: FuseDuty, fuses: readonly StockedFuse[] = []): FuseChoice {
  const result = chooseFuse(given, { fuses }, usualRules);
  if (isFault(result)) throw new Error(result.message);
  return result;
}

describe('a fuse choice', () => {
  test('is rated current with a quarter on top, then the next rating made', () => {
    // 40 A * 1.25 = 50 A, made in the form.
    expect(choose(duty()).chosen).toMatchObject({ form: 'small-bolt-in', ratingA: 50, stockQuantity: 0 });
    // 45 A * 1.25 = 56.25 A; 60 A is the next that is made.
    expect(choose(duty({ ratedA: 45 })).chosen?.ratingA).toBe(60);
  });

  test("stays at the maker's ceiling, short of the margin if need be", () => {
    const { chosen, reason } = choose(duty({ ratedA: 55 }));
    expect(chosen).toMatchObject({ ratingA: 60, keepsMargin: false });
    expect(reason).toContain("maker's ceiling, 60 A");
  });

  test('is what the maker of the device asks for where that is more than its draw', () => {
    const small = duty({ ratedA: 0.6, ceilingA: 7.5, form: 'mini-blade' });
    expect(choose(small).chosen?.ratingA).toBe(2);
    const { chosen, wantedA, reason } = choose({ ...small, makerA: 7.5 });
    expect(chosen).toMatchObject({ ratingA: 7.5, keepsMargin: true });
    expect(wantedA.value).toBe(7.5);
    expect(reason).toContain('the maker of the device asks for 7.5 A');
    // What asks for more by its current is not lowered to it.
    expect(choose(duty({ makerA: 30 })).chosen?.ratingA).toBe(50);
  });

  test('never passes the ampacity of what it protects', () => {
    const { chosen } = choose(
      duty({
        ceilingA: null,
        protects: [
          { id: 'a', ampacityA: 136 },
          { id: 'b', ampacityA: 51 },
        ],
      }),
    );
    expect(chosen?.ratingA).toBe(50);
  });

  test('is refused where the conductor carries less than the load, with the gap', () => {
    const result = choose(duty({ protects: [{ id: 'wire', ampacityA: 30 }] }), [
      stocked('small-bolt-in', 60),
    ]);
    expect(result).toMatchObject({ chosen: null, shortA: 10, alternatives: [] });
    expect(result.reason).toContain('ampacity of wire, 30 A');
  });

  test('prefers what is on the shelf', () => {
    expect(choose(duty(), [stocked('small-bolt-in', 60)]).chosen).toMatchObject({
      ratingA: 60,
      part: 'small-bolt-in-60',
    });
  });

  test('lists other forms beside it, with the holder to add', () => {
    const result = chooseFuse(
      duty(),
      {
        fuses: [stocked('maxi-blade', 50)],
        holders: [{ part: 'maxi-holder', form: 'maxi-blade', quantity: 1, boardAreaM2: 0.0016 }],
      },
      usualRules,
    );
    expect('alternatives' in result && result.alternatives).toContainEqual(
      expect.objectContaining({
        form: 'maxi-blade',
        ratingA: 50,
        stockQuantity: 2,
        addParts: ['maxi-holder'],
        boardAreaM2: 0.0016,
      }),
    );
  });

  test('at a battery must interrupt what the battery can deliver', () => {
    const result = choose(duty({ form: null, interruptNeedA: 3000 }), [
      stocked('maxi-blade', 50),
      stocked('large-bolt-in', 60),
    ]);
    // Neither maker says: 1 kA each. Class T, 20 kA from memory, is made though not on the shelf.
    expect(result.chosen?.form).toBe('class-t');
    expect(result.alternatives.map(({ form }) => form)).not.toContain('maxi-blade');
  });

  test('keeps the form of its holder where none of it interrupts enough, and names those that do', () => {
    const strong = { ...stocked('large-bolt-in', 60), interruptA: 6000 };
    const result = choose(duty({ interruptNeedA: 3000 }), [stocked('small-bolt-in', 60), strong]);
    expect(result.chosen).toMatchObject({ form: 'small-bolt-in', ratingA: 60, interruptA: 1000 });
    expect(result.alternatives.map(({ form }) => form)).toEqual(['large-bolt-in', 'class-t']);
  });

  test('of one form takes the part that interrupts enough before one that does not say', () => {
    const strong = { ...stocked('small-bolt-in', 60), part: 'strong', interruptA: 3000 };
    const shelf = [stocked('small-bolt-in', 50, 9), strong];
    expect(choose(duty({ interruptNeedA: 3000 }), shelf).chosen?.part).toBe('strong');
    expect(choose(duty({ interruptNeedA: 900 }), shelf).chosen?.ratingA).toBe(50);
  });

  test('names the form that interrupts most where nobody says what the source gives', () => {
    const result = choose(duty({ interruptNeedA: Number.POSITIVE_INFINITY }), [stocked('small-bolt-in', 60)]);
    expect(result.chosen?.form).toBe('small-bolt-in');
    expect(result.alternatives.map(({ form }) => form)).toEqual(['class-t']);
  });

  test('waits for nothing: without a bound the next made rating goes before a larger one on the shelf', () => {
    const { chosen, mostA } = choose(duty({ ceilingA: null, protects: [] }), [stocked('small-bolt-in', 150)]);
    expect([chosen?.ratingA, mostA]).toEqual([50, null]);
  });

  test('tells bad input', () => {
    expect(chooseFuse(duty({ ratedA: -1 }), { fuses: [] }, usualRules)).toHaveProperty('fault');
    expect(chooseFuse(duty({ ceilingA: Number.NaN }), { fuses: [] }, usualRules)).toHaveProperty('fault');
  });
});

const anyForm = fc.constantFrom(...fuseFormIds);
const anyStock: fc.Arbitrary<StockedFuse> = anyForm.chain((form) =>
  fc
    .record({ ratingA: fc.constantFrom(...fuseForms[form].ratingsA), quantity: fc.nat({ max: 3 }) })
    .map(({ ratingA, quantity }) => stocked(form, ratingA, quantity)),
);
const amperes = (max: number) => fc.integer({ min: 1, max });
const anyDuty: fc.Arbitrary<FuseDuty> = fc.record({
  ratedA: amperes(300),
  ceilingA: fc.option(amperes(400)),
  ceilingFuses: fc.integer({ min: 1, max: 3 }),
  protects: fc.array(
    fc.record({ id: fc.string(), ampacityA: amperes(450), sideBySide: fc.integer({ min: 1, max: 3 }) }),
    { maxLength: 4 },
  ),
  form: fc.option(anyForm),
  interruptNeedA: fc.option(fc.constantFrom(500, 1500, 3000, 5000)),
});

test('no fuse, chosen or listed, passes what it protects or its ceiling; no listed one its interrupting rating', () => {
  fc.assert(
    fc.property(anyDuty, fc.array(anyStock, { maxLength: 12 }), (given, fuses) => {
      const { chosen, alternatives } = choose(given, fuses);
      for (const fuse of [...(chosen ? [chosen] : []), ...alternatives]) {
        expect(fuseForms[fuse.form].ratingsA).toContain(fuse.ratingA);
        // Fuses side by side: all of them together let no more through than the conductor carries, or its maker allows.
        for (const { ampacityA, sideBySide = 1 } of given.protects)
          expect(fuse.ratingA * sideBySide).toBeLessThanOrEqual(ampacityA);
        const { ceilingA, ceilingFuses = 1 } = given;
        if (ceilingA !== null) expect(fuse.ratingA * ceilingFuses).toBeLessThanOrEqual(ceilingA);
        expect(fuse.ratingA).toBeGreaterThanOrEqual(given.ratedA);
        if (fuse !== chosen) expect(fuse.interruptA).toBeGreaterThanOrEqual(given.interruptNeedA ?? 0);
      }
    }),
    { numRuns: 500 },
  );
});

test('more on the shelf never takes a choice away, nor one off the shelf', () => {
  fc.assert(
    fc.property(anyDuty, fc.array(anyStock, { maxLength: 8 }), anyStock, (given, fuses, added) => {
      const before = choose(given, fuses).chosen;
      const after = choose(given, [...fuses, added]).chosen;
      if (before) expect(after).not.toBeNull();
      if ((before?.stockQuantity ?? 0) > 0 && (given.ceilingA !== null || given.protects.length > 0))
        expect(after?.stockQuantity).toBeGreaterThan(0);
    }),
    { numRuns: 500 },
  );
});

// ABYC E-11, from memory: 1.5 kA to 650 A of cranking current, 3 kA to 1,100 A, 5 kA above.
test.each([
  [650, 1500],
  [651, 3000],
  [1100, 3000],
  [1200, 5000],
])('a battery of %s A cranking asks for %s A', (crankingA, needA) => {
  expect(interruptNeedA(crankingA, usualRules)).toMatchObject({ value: needA, trace: { mark: 'mem' } });
});

test('a fault further along is limited by the line', () => {
  // 12 V over 5 + 7 mohm: 1,000 A.
  expect(prospectiveFaultA(12, 0.005, 0.007)).toMatchObject({ value: 1000 });
  expect(prospectiveFaultA(12, 0, 0)).toHaveProperty('fault');
});
