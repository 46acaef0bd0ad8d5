import { describe, expect, test } from 'vitest';
import { traced } from '../../../../lib/model/trace.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import type { CircuitSource } from '../../../../lib/plan/power/circuit/circuit.ts';
import type { FuseFault } from '../../../../lib/plan/power/short/fault-currents.ts';
import { interruptingOf, lawfulInstead } from '../../../../lib/plan/power/short/fuse-interrupting.ts';
import type { ShortSource } from '../../../../lib/plan/power/short/short-sources.ts';
import type { SizedFuse } from '../../../../lib/plan/power/sizing/fuse-sizing.ts';
import { usualHouseRules } from '../../../power/usual-rules.ts';
import { one, partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { settledPower } from '../settled-power.ts';
import { banked, isolated } from '../two-batteries.ts';

/** The main fuse of the small job, of 80 A and large bolt-in, with the shelf that a test gives. */
function mainFuse(change: (content: Written) => void = () => {}) {
  const sizing = settledPower((content) => {
    content.job.devices['main-fuse'] = { part: 'holder', in: 'bay', fuse: '80 A' };
    change(content);
  });
  return { sizing, fuse: one(sizing.fuses, ({ edge }) => edge.id === 'main-fuse') };
}
type Found = ReturnType<typeof mainFuse>;

const current = (value: number) =>
  traced(value, 'A', { rule: 'fuse-interrupting', citation: 'a test', inputs: [] });
const fault = (more: Partial<FuseFault>): FuseFault => {
  return {
    faultA: current(5000),
    at: 'main-fuse.OUT',
    from: [],
    ways: [],
    byMakersA: 0,
    unknown: [],
    ...more,
  };
};
const sourceIn = ({ sizing }: Found, id: string): CircuitSource =>
  one(sizing.circuit.sources, ({ device }) => device.id === id);
const short = (source: CircuitSource, basis: ShortSource['basis']): ShortSource => {
  return { source, emfV: 14.8, ohm: basis === 'assumed' ? 0.002 : 0.004, basis, from: [] };
};
const gives = (source: CircuitSource, basis: ShortSource['basis'], currentA = 100) => {
  return { source: short(source, basis), currentA: current(currentA) };
};
function found({ fuse, sizing }: Found, of: FuseFault | null, own: Partial<SizedFuse> = {}) {
  const book = new PlanBook();
  return { ...interruptingOf({ ...fuse, ...own }, of, sizing, book), traces: book.traces() };
}

const large = (rating: `${number} A`, interrupts?: `${number} A`) => ({
  kind: 'fuse' as const,
  title: `Fuse, ${rating}`,
  form: 'large-bolt-in' as const,
  rating,
  ...(interrupts && { interrupts }),
});
/** A shelf with these fuses alone, each with its pieces. */
const shelf =
  (fuses: Readonly<Record<string, readonly [part: ReturnType<typeof large> | object, pieces: number]>>) =>
  (content: Written) => {
    delete content.parts['large-fuse'];
    for (const [id, [part, pieces]] of Object.entries(fuses)) {
      Object.assign(content.parts, { [id]: part });
      content.shop.stock = { ...content.shop.stock, [id]: { pieces } };
    }
  };
const partFor = (needA: number, fuses: Parameters<typeof shelf>[0]) =>
  found(mainFuse(shelf(fuses)), fault({ faultA: current(needA) })).part;

describe('the fuse of the shelf that stands there', () => {
  test('has the form and the rating', () => {
    const others = {
      'other-rating': [large('100 A'), 9],
      'other-form': [{ ...large('80 A'), form: 'class-t' }, 9],
      own: [large('80 A'), 1],
    } as const;
    expect(found(mainFuse(shelf(others)), null)).toMatchObject({ part: 'own', stockQuantity: 1 });
  });

  test('is none where the shelf has none: what the form interrupts is assumed', () => {
    const none = found(mainFuse(shelf({ other: [large('100 A', '9000 A'), 9] })), null);
    const assumedA = usualHouseRules['interrupt-large-bolt-in'].value;
    expect(none).toMatchObject({
      part: null,
      stockQuantity: 0,
      interruptA: assumedA,
      interruptBasis: 'assumed',
    });
    expect(none.traces['power.fuses.main-fuse.interruptA']).toMatchObject({ origin: 'assumed' });
  });

  test('interrupts what its maker says', () => {
    const own = found(mainFuse(shelf({ own: [large('80 A', '2500 A'), 1] })), null);
    expect(own).toMatchObject({ interruptA: 2500, interruptBasis: 'maker' });
    expect(own.traces['power.fuses.main-fuse.interruptA']).toMatchObject({
      origin: 'given',
      rule: 'fuse-interrupting',
      citation: "the part's data",
      unit: 'A',
    });
    const silent = found(mainFuse(shelf({ own: [large('80 A'), 1] })), null);
    expect(silent).toMatchObject({ part: 'own', interruptBasis: 'assumed' });
  });

  test('is one that lies there before one that interrupts more and must be bought', () => {
    const two = { strong: [large('80 A', '9000 A'), 0], weak: [large('80 A', '1000 A'), 1] } as const;
    expect(partFor(5000, two)).toBe('weak');
    expect(partFor(5000, { weak: two.weak, strong: two.strong })).toBe('weak');
  });

  test('is, of several that lie there, the one that comes nearest to interrupting what it must', () => {
    const several = {
      weak: [large('80 A', '1000 A'), 9],
      strong: [large('80 A', '2000 A'), 1],
      middle: [large('80 A', '1500 A'), 9],
    } as const;
    expect(partFor(5000, several)).toBe('strong');
    // Beyond what must be interrupted more is worth nothing: then the one with most pieces.
    expect(partFor(900, { ...several, middle: [large('80 A', '1500 A'), 20] })).toBe('middle');
    expect(partFor(1400, several)).toBe('middle');
  });

  test('is the one with most pieces where nothing is to be interrupted', () => {
    const none = mainFuse(
      shelf({
        few: [large('80 A', '9000 A'), 2],
        many: [large('80 A', '1000 A'), 3],
        one: [large('80 A'), 1],
      }),
    );
    expect(found(none, null)).toMatchObject({ part: 'many', stockQuantity: 3, needsInterruptA: null });
  });
});

describe('what a fuse must interrupt', () => {
  test('is the prospective current of the first fuse behind a battery, and of no other', () => {
    const main = mainFuse();
    expect(found(main, fault({}))).toMatchObject({
      needsInterruptA: 5000,
      faultA: 5000,
      faultAt: 'main-fuse.OUT',
    });
    expect(found(main, fault({}), { source: null })).toMatchObject({ needsInterruptA: null, faultA: 5000 });
    const none = found(main, null);
    expect(none).toMatchObject({ needsInterruptA: null, faultA: null });
    expect(Object.keys(none)).not.toContain('faultAt');
    expect(Object.keys(none.traces)).toEqual(['power.fuses.main-fuse.interruptA']);
  });

  test('is not known where nobody states what a battery right before it gives, one far off being another matter', () => {
    const main = mainFuse(isolated);
    const unknown = (id: string) => [{ ...short(sourceIn(main, id), 'assumed'), ohm: null }];
    expect(found(main, fault({ unknown: unknown('battery') }))).toMatchObject({
      needsInterruptA: null,
      faultUnknown: ['battery'],
    });
    // The second battery has a fuse of its own before this one.
    expect(found(main, fault({ unknown: unknown('second') }))).toMatchObject({
      needsInterruptA: 5000,
      faultUnknown: ['second'],
    });
    expect(Object.keys(found(main, fault({})))).not.toContain('faultUnknown');
  });

  // ABYC E-11 as published charts print it, from memory: 1.5 kA to 650 A of cranking, 3 kA to 1,100 A, 5 kA above.
  test('is at least what the table asks of all batteries whose resistance is assumed', () => {
    const main = mainFuse(isolated);
    const [first, second] = ['battery', 'second'].map((id) => sourceIn(main, id));
    if (!first || !second) throw new Error('The job has two batteries.');
    const needs = (from: FuseFault['from'], faultA: number) =>
      found(main, fault({ faultA: current(faultA), from })).needsInterruptA;
    expect(needs([gives(first, 'assumed')], 1000)).toBe(1500);
    // 600 A each, 1,200 A together.
    expect(needs([gives(first, 'assumed'), gives(second, 'assumed')], 1000)).toBe(5000);
    expect(needs([gives(first, 'assumed'), gives(second, 'assumed')], 5001)).toBe(5001);
    expect(needs([gives(first, 'stated'), gives(second, 'stated')], 1000)).toBe(1000);
    expect(needs([gives(first, 'maker')], 1000)).toBe(1000);
    expect(needs([gives(first, 'assumed'), gives(second, 'maker')], 1000)).toBe(1500);
    // None of those that are assumed is right before it: the table is about the first fuse.
    expect(needs([gives(second, 'assumed')], 1000)).toBe(1000);
    expect(needs([], 1000)).toBe(1000);
  });

  test('is what the table asks where no current could be computed at all', () => {
    const main = mainFuse();
    const from = [gives(sourceIn(main, 'battery'), 'assumed')];
    expect(found(main, fault({ faultA: null, from }))).toMatchObject({ needsInterruptA: 1500, faultA: null });
  });

  test('is no matter of the table for a battery that starts no engine, and for what is no battery', () => {
    const silent = mainFuse((content) => {
      delete partIn(content, 'agm', 'battery')['cold-cranking'];
    });
    const low = (main: Found, id: string) =>
      found(main, fault({ faultA: current(1000), from: [gives(sourceIn(main, id), 'assumed')] }));
    expect(low(silent, 'battery').needsInterruptA).toBe(1000);
    expect(low(mainFuse(), 'alternator').needsInterruptA).toBe(1000);
    expect(low(mainFuse(banked), 'bank').needsInterruptA).toBe(1000);
  });

  test('has its working, and each source the current that it gives', () => {
    const main = mainFuse();
    const battery = sourceIn(main, 'battery');
    const { traces, ...told } = found(
      main,
      fault({
        from: [gives(battery, 'stated', 4000)],
        ways: [{ of: 'feed', currentA: 5000 }],
        byMakersA: 70,
      }),
    );
    expect(told).toMatchObject({
      faultFrom: [{ source: 'battery', currentA: 4000, basis: 'stated' }],
      faultWays: [{ of: 'feed', currentA: 5000 }],
      faultByMakersA: 70,
    });
    for (const id of ['faultA', 'needsInterruptA', 'faultFrom.battery', 'interruptA'])
      expect(traces[`power.fuses.main-fuse.${id}`], id).toBeDefined();
  });
});

describe('what may stand there instead', () => {
  const classT = { 'class-t-80': [{ ...large('80 A', '20000 A'), form: 'class-t' }, 1] } as const;
  const instead = (main: Found, needsInterruptA: number | null, own: Partial<SizedFuse> = {}) => {
    const interrupting = { ...interruptingOf(main.fuse, null, main.sizing, new PlanBook()), needsInterruptA };
    return lawfulInstead({ ...main.fuse, ...own }, interrupting, main.sizing);
  };
  const weakest = (main: Found, ...given: [number | null, Partial<SizedFuse>?]) =>
    Math.min(...instead(main, ...given).map(({ interruptA }) => interruptA));

  test('interrupts what a short drives through it, as far as any form does', () => {
    const main = mainFuse(shelf(classT));
    expect(weakest(main, 500)).toBe(1000);
    expect(weakest(main, 1000)).toBe(1000);
    expect(weakest(main, 1001)).toBe(20_000);
  });

  test('interrupts most where nobody states what a battery before it gives', () => {
    expect(weakest(mainFuse(shelf(classT)), null)).toBe(20_000);
  });

  test('is any form where nothing behind a battery is to be interrupted', () => {
    expect(weakest(mainFuse(shelf(classT)), null, { source: null })).toBe(1000);
  });

  test('is nothing where no rating could be chosen at all', () => {
    expect(instead(mainFuse(), 500, { choice: null })).toEqual([]);
  });
});
