import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isFault } from '../../lib/model/fault.ts';
import { fuseForms } from '../../lib/model/tables/fuse-forms.ts';
import {
  chooseFuse,
  type FuseChoice,
  type FuseDuty,
  type StockedFuse,
  type StockedHolder,
} from '../../lib/power/fuse-choice.ts';
import { duty, stocked } from './fuse-duty.ts';
import { usualRules } from './usual-rules.ts';

function choose(
  given: FuseDuty,
  fuses: readonly StockedFuse[] = [],
  holders: readonly StockedHolder[] = [],
): FuseChoice {
  const result = chooseFuse(given, { fuses, holders }, usualRules);
  if (isFault(result)) throw new Error(result.message);
  return result;
}

const inForm = ({ alternatives }: FuseChoice, form: StockedFuse['form']) =>
  alternatives.filter((fuse) => fuse.form === form);

describe('the bounds of a fuse', () => {
  test('the rated current itself may be fused where no more may stand there, and not a tenth more', () => {
    expect(choose(duty({ ratedA: 60 }))).toMatchObject({ chosen: { ratingA: 60 }, shortA: 0 });
    const short = choose(duty({ ratedA: 60.1 }));
    expect(short.chosen).toBeNull();
    expect(short.shortA).toBeCloseTo(0.1, 9);
    expect(short.reason).toContain('no fuse may stand here');
  });

  test('where the margin has to be kept, no rating under it stands, on the shelf or not', () => {
    // 40 A and a quarter are 50 A; a conductor for 49 A takes none that keeps it.
    const thin = { protects: [{ id: 'wire', ampacityA: 49 }] };
    expect(choose(duty(thin)).chosen).toMatchObject({ ratingA: 40, keepsMargin: false });
    expect(choose(duty({ ...thin, keepsMargin: true })).chosen).toBeNull();
    const shelf = [stocked('small-bolt-in', 40)];
    expect(choose(duty({ keepsMargin: true }), shelf).chosen).toMatchObject({ ratingA: 50, part: null });
  });

  test('a holder limits the fuses of its own form, and no others', () => {
    // 45 A and a quarter are 56.25 A: 60 A is the next, in a holder that takes it.
    expect(choose(duty({ ratedA: 45, holderLargestA: 60 })).chosen?.ratingA).toBe(60);
    const small = choose(duty({ ratedA: 45, holderLargestA: 50 }));
    expect(small.chosen).toMatchObject({ ratingA: 50, keepsMargin: false });
    expect(inForm(small, 'maxi-blade').map(({ ratingA }) => ratingA)).toEqual([60]);
  });

  test('fuses side by side share a limit evenly', () => {
    // 120 A of a maker over two fuses are 60 A each; 90 A of a conductor over two 45 A, so 40 A is all that is made.
    const two = choose(duty({ ceilingA: 120, ceilingFuses: 2 }));
    expect(two.mostA?.value).toBe(60);
    expect(two.chosen?.ratingA).toBe(50);
    const wire = duty({ ceilingA: null, protects: [{ id: 'wire', ampacityA: 90, sideBySide: 2 }] });
    expect(choose(wire)).toMatchObject({ mostA: { value: 45 }, chosen: { ratingA: 40 } });
    expect(choose(wire).mostA?.trace.inputs[0]?.name).toContain('over 2 fuses');
  });

  test('a negative need to interrupt is no duty, and one that nobody states is', () => {
    const given = (interruptA: number) =>
      chooseFuse(duty({ interruptNeedA: interruptA }), { fuses: [] }, usualRules);
    expect(given(-1)).toHaveProperty('fault');
    expect(given(0)).not.toHaveProperty('fault');
    expect(given(Number.POSITIVE_INFINITY)).not.toHaveProperty('fault');
  });
});

describe('the shelf', () => {
  test('a fuse of which none is left is not on the shelf', () => {
    expect(choose(duty(), [stocked('small-bolt-in', 60, 0)]).chosen).toMatchObject({
      ratingA: 50,
      part: null,
    });
    expect(choose(duty(), [stocked('small-bolt-in', 50, 0)]).chosen).toMatchObject({ part: null });
  });

  test('what was chosen, or lies on the shelf, is not listed a second time as one to buy', () => {
    const result = choose(duty(), [stocked('small-bolt-in', 50), stocked('maxi-blade', 50)]);
    expect(result.chosen?.part).toBe('small-bolt-in-50');
    expect(inForm(result, 'small-bolt-in').map(({ ratingA }) => ratingA)).not.toContain(50);
    expect(inForm(result, 'maxi-blade').map(({ part }) => part)).toEqual(['maxi-blade-50']);
    const empty = choose(duty());
    expect(empty.chosen?.ratingA).toBe(50);
    expect(inForm(empty, 'small-bolt-in').map(({ ratingA }) => ratingA)).not.toContain(50);
  });

  test('of another form the one on the shelf is listed, with one to buy beside it only where it lacks the margin', () => {
    // 55 A and a quarter are 68.75 A.
    const lacking = choose(duty({ ratedA: 55, ceilingA: 80 }), [stocked('maxi-blade', 60)]);
    const listed = inForm(lacking, 'maxi-blade').map(({ ratingA, stockQuantity }) => [
      ratingA,
      stockQuantity,
    ]);
    expect(listed).toEqual([
      [60, 2],
      [70, 0],
    ]);
    const bounded = choose(duty({ ratedA: 55 }), [stocked('maxi-blade', 60)]);
    expect(inForm(bounded, 'maxi-blade').map(({ ratingA }) => ratingA)).toEqual([60]);
    const unbounded = choose(duty({ ceilingA: null, protects: [] }), [stocked('maxi-blade', 80)]);
    expect(inForm(unbounded, 'maxi-blade').map(({ part }) => part)).toEqual(['maxi-blade-80']);
  });

  test('the order in which it is listed changes nothing: of equal fuses the first by form, then by part', () => {
    const a = { ...stocked('small-bolt-in', 50), part: 'a' };
    const b = { ...stocked('small-bolt-in', 50), part: 'b' };
    for (const shelf of [
      [a, b],
      [b, a],
    ])
      expect(choose(duty(), shelf).chosen?.part).toBe('a');
    const anyForm = duty({ form: null });
    expect(choose(anyForm).chosen?.form).toBe('maxi-blade');
    const other = stocked('bolt-in-30mm', 50);
    for (const shelf of [
      [a, other],
      [other, a],
    ])
      expect(choose(anyForm, shelf).chosen?.form).toBe('bolt-in-30mm');
  });
});

describe('a fuse of another form asks for a holder', () => {
  const holder = (part: string, more: Partial<StockedHolder> = {}): StockedHolder => ({
    part,
    form: 'maxi-blade',
    quantity: 1,
    ...more,
  });
  const added = (...holders: StockedHolder[]) =>
    inForm(choose(duty(), [stocked('maxi-blade', 50)], holders), 'maxi-blade')[0]?.addParts;

  test('of its form, that takes its rating, one on the shelf before one to buy', () => {
    const bought = holder('bought', { quantity: 0 });
    expect(added(bought, holder('there'))).toEqual(['there']);
    expect(added(holder('there'), bought)).toEqual(['there']);
    expect(added(bought)).toEqual(['bought']);
    expect(added(holder('takes-50', { largestA: 50 }))).toEqual(['takes-50']);
    expect(added(holder('takes-49', { largestA: 49 }), holder('there'))).toEqual(['there']);
    expect(added(holder('takes-49', { largestA: 49 }))).toEqual([]);
    expect(added(holder('large', { form: 'large-bolt-in' }))).toEqual([]);
  });

  test('one that goes into the holder in place asks for none', () => {
    const own = holder('own', { form: 'small-bolt-in' });
    expect(choose(duty(), [], [own]).chosen?.addParts).toEqual([]);
    expect(choose(duty(), [], []).chosen).toMatchObject({ addParts: [], boardAreaM2: null });
  });
});

describe('what is told of a choice', () => {
  test('the working names the current and its margin, or the greater wish of the maker', () => {
    expect(choose(duty()).wantedA).toMatchObject({
      value: 50,
      trace: {
        unit: 'A',
        rule: 'fuse-choice',
        mark: 'cp',
        inputs: [
          { name: 'I', value: 40 },
          { name: 'm', value: 1.25 },
        ],
      },
    });
    expect(choose(duty({ makerA: 60 })).wantedA.trace).toMatchObject({
      rule: 'fuse-choice',
      mark: 'cp',
      inputs: [
        { name: 'rated current with its margin', value: 50, unit: 'A' },
        { name: "maker's fuse", value: 60, unit: 'A' },
      ],
    });
    // Where both ask for the same, the maker changes nothing.
    expect(choose(duty({ makerA: 50 })).wantedA.trace.formula).toBe('In = I * m');
  });

  test('the working of the most names each limit as it stands', () => {
    expect(choose(duty()).mostA?.trace.inputs).toMatchObject([
      { name: "maker's ceiling", value: 60 },
      { name: 'ampacity of wire', value: 136 },
    ]);
  });

  test('the reason tells shelf from purchase, and who asks for how much', () => {
    expect(choose(duty()).reason).toMatch(/40 A with its margin asks for 50 A.*rating, not on the shelf/);
    expect(choose(duty(), [stocked('small-bolt-in', 50)]).reason).toMatch(/rating, on the shelf/);
    expect(choose(duty({ makerA: 50 })).reason).toContain('the maker of the device asks for 50 A');
  });

  test('where no rating is made between the current and the limit, that is the reason', () => {
    for (const ceilingA of [58, 55]) {
      const { chosen, reason, shortA } = choose(duty({ ratedA: 55, ceilingA }));
      expect([chosen, shortA]).toEqual([null, 0]);
      expect(reason).toContain('no rating is made in small bolt-in for 55 A or more');
    }
  });
});

const amperes = (min: number, max: number) => fc.integer({ min, max });
const ratings = fuseForms['small-bolt-in'].ratingsA;

/** The nearest that keeps the margin, else the greatest that carries the current: common practice, no source. */
function nearest(lawful: readonly number[], wantedA: number): number | null {
  const keeping = lawful.filter((ratingA) => ratingA >= wantedA);
  if (keeping.length > 0) return Math.min(...keeping);
  return lawful.length > 0 ? Math.max(...lawful) : null;
}

test('of what lies on the shelf the nearest lawful fuse is taken, and only where none does one is bought', () => {
  const shelves = fc.array(fc.constantFrom(...ratings), { maxLength: 8 });
  fc.assert(
    fc.property(amperes(10, 160), amperes(10, 200), shelves, (ratedA, ceilingA, shelf) => {
      const lawful = (all: readonly number[]) =>
        all.filter((ratingA) => ratingA >= ratedA && ratingA <= ceilingA);
      const wantedA = ratedA * 1.25;
      const expected = nearest(lawful(shelf), wantedA) ?? nearest(lawful(ratings), wantedA);
      const fuses = shelf.map((ratingA) => stocked('small-bolt-in', ratingA));
      expect(choose(duty({ ratedA, ceilingA, protects: [] }), fuses).chosen?.ratingA ?? null).toBe(expected);
    }),
    { numRuns: 500 },
  );
});
