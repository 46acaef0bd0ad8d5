import { describe, expect, test } from 'vitest';
import { judgedPlan } from '../../../lib/commands/shop/judged-plan.ts';
import type { PlanFuse } from '../../../lib/model/plan/index.ts';
import type { NetworkElement } from '../../../lib/power/network/network-types.ts';
import { Spice } from '../../power/network/ngspice.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { byId, jobOf, smallPlan } from '../plan-small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';

const battery = (text: string): Change =>
  inParts('cold-cranking: 600 A', `cold-cranking: 600 A\n    ${text}`);
const mainFuse = (...changes: readonly Change[]): PlanFuse =>
  byId(smallPlan(...changes).plan.power.fuses, 'main-fuse');
const given = ({ faultFrom = [] }: PlanFuse) =>
  Object.fromEntries(faultFrom.map(({ source, currentA, basis }) => [source, [Math.round(currentA), basis]]));

/**
 * Solid copper of 4 AWG at 20 C, 0.2485 ohm per 1,000 ft (the published table of AWG), and the house rule of 2 % for
 * stranding: milliohm per metre.
 */
const ft1000 = 304.8;
const no4 = ((0.2485 * 1000) / ft1000) * 1.02;

/**
 * By hand, the fuse a link without resistance (IEC 60269): 14.8 V, over the tail of 6 in, half of the body's way of
 * 0.5 mohm, and in parallel the battery with its strap of 300 mm, and the alternator of 150 A (which gives three times
 * that at its posts) with 1 m of charge lead and 300 mm to the engine. Milliohm.
 */
function byHandA(batteryMohm: number): { readonly allA: number; readonly batteryA: number } {
  const own = batteryMohm + 0.3 * no4;
  const alternator = 14800 / 450 + 1.3 * no4;
  const both = (own * alternator) / (own + alternator);
  const allA = 14800 / (both + 0.1524 * no4 + 0.25);
  return { allA, batteryA: (allA * both) / own };
}

describe('the prospective current at a main fuse', () => {
  test('counts the lowest resistance of the battery, the highest voltage, cold copper, every source', () => {
    const fuse = mainFuse();
    const { allA, batteryA } = byHandA(2);
    expect(fuse.faultA).toBeCloseTo(allA, -1);
    expect(Math.abs((fuse.faultA ?? 0) / allA - 1)).toBeLessThan(1e-3);
    expect(given(fuse)).toEqual({
      battery: [expect.closeTo(batteryA, -1), 'assumed'],
      alternator: [expect.closeTo(allA - batteryA, -1), 'assumed'],
    });
    expect(fuse.faultAt).toBe('main-fuse.OUT');
    expect(fuse.faultWays).toEqual([{ of: 'tail', currentA: expect.closeTo(fuse.faultA ?? 0, 6) }]);
  });

  test('goes by the short-circuit current of the maker where there is one, whatever the resistance', () => {
    // 14.8 V that let 2.5 kA flow at the posts stand behind 5.92 mohm.
    const fuse = mainFuse(
      battery('short-circuit: 2.5 kA'),
      inParts('capacity: 70 Ah', 'capacity: 70 Ah\n    resistance: 1 mohm'),
    );
    expect(Math.abs((fuse.faultA ?? 0) / byHandA(5.92).allA - 1)).toBeLessThan(1e-3);
    expect(given(fuse)).toMatchObject({ battery: [expect.anything(), 'maker'] });
    // Alone without the alternator, in one line.
    const aloneA = 14800 / (5.92 + (0.3 + 0.1524) * no4 + 0.25);
    expect(Math.abs((fuse.faultByMakersA ?? 0) / aloneA - 1)).toBeLessThan(1e-3);
  });

  test('goes by the resistance of the part where that alone is stated', () => {
    const fuse = mainFuse(battery('resistance: 5 mohm'));
    expect(Math.abs((fuse.faultA ?? 0) / byHandA(5).allA - 1)).toBeLessThan(1e-3);
    expect(given(fuse)).toMatchObject({ battery: [expect.anything(), 'stated'] });
    expect(fuse.faultByMakersA).toBe(0);
  });

  test('does not hang on the rating of the fuse itself: it counts as a link', () => {
    const at = (ratingA: number) =>
      mainFuse(
        inJob(
          'main-fuse: { part: holder-a, in: bay }',
          `main-fuse: { part: holder-a, in: bay, fuse: ${ratingA} A }`,
        ),
      );
    const wires = (ratingA: number) => at(ratingA).faultA;
    expect(wires(60)).toBeCloseTo(wires(35) ?? 0, 6);
  });

  test('is what a working tells, with each source', () => {
    const { plan } = smallPlan();
    const trace = plan.traces['power.fuses.main-fuse.faultA'];
    const input = (name: string) => Number(trace?.inputs.find((one) => one.name === name)?.value);
    expect(input('E')).toBe(14.8);
    expect(input('E') / (input('Rs') + input('Rl'))).toBeCloseTo(Number(trace?.value), 6);
    expect(input('battery gives') + input('alternator gives')).toBeCloseTo(Number(trace?.value), 3);
    expect(plan.traces['power.fuses.main-fuse.faultFrom.battery']?.mark).toBe('cp');
  });
});

describe('what a main fuse must interrupt', () => {
  // ABYC E-11 as published charts print it: 1.5 kA to 650 A, 3 kA to 1,100 A, 5 kA above, all batteries together.
  const weak: readonly Change[] = [
    ['content/shop.yaml', 'stock:', 'rules:\n  short-resistance-agm: 40 mohm\nstock:'],
  ];

  test.each([
    ['600 A', 1500],
    ['650 A', 1500],
    ['651 A', 3000],
    ['1101 A', 5000],
  ])(
    'is what the table asks for %s of cranking, where the assumed resistance gives less',
    (crankingA, needA) => {
      const fuse = mainFuse(...weak, inParts('cold-cranking: 600 A', `cold-cranking: ${crankingA}`));
      expect(fuse.faultA).toBeLessThan(1500);
      expect(fuse.needsInterruptA).toBe(needA);
    },
  );

  test('is the prospective current where that is more', () => {
    const fuse = mainFuse();
    expect(fuse.needsInterruptA).toBe(fuse.faultA);
    expect(fuse.faultA).toBeGreaterThan(1500);
  });

  test.each(['resistance: 40 mohm', 'short-circuit: 370 A'])(
    'is no matter of the table where the part says %s',
    (text) => {
      const fuse = mainFuse(battery(text));
      expect(fuse.needsInterruptA).toBe(fuse.faultA);
      expect(fuse.faultA).toBeLessThan(1000);
    },
  );

  test('asks the table nothing of a battery that is no starter', () => {
    const fuse = mainFuse(...weak, inParts('    cold-cranking: 600 A\n', ''));
    expect(fuse.needsInterruptA).toBe(fuse.faultA);
  });
});

describe('lithium', () => {
  const lithium = inParts('chemistry: absorbed-glass-mat', 'chemistry: lithium');

  test('is not guessed: without a figure what it gives is not known, and the rest is told', () => {
    const fuse = mainFuse(lithium);
    expect(fuse).toMatchObject({ needsInterruptA: null, faultUnknown: ['battery'] });
    expect(Object.keys(given(fuse))).toEqual(['alternator']);
  });

  test('counts by the figure of its maker', () => {
    const fuse = mainFuse(lithium, battery('short-circuit: 6 kA'));
    expect(fuse.faultUnknown).toBeUndefined();
    expect(Math.abs((fuse.faultA ?? 0) / byHandA(14800 / 6000).allA - 1)).toBeLessThan(1e-3);
  });

  test('has the form named that interrupts it', () => {
    const forms = (fuse: PlanFuse) => [...new Set(fuse.alternatives.map(({ form }) => form))];
    expect(forms(mainFuse(lithium))).toEqual(['class-t']);
    expect(forms(mainFuse(lithium, battery('short-circuit: 6 kA')))).toEqual(['class-t']);
  });
});

describe('a fuse between two batteries', () => {
  const second: readonly Change[] = [
    inJob(
      '  sub: {',
      '  second: { part: battery-a, in: boot }\n  link-fuse: { part: holder-a, in: boot }\n  sub: {',
    ),
    inJob(
      '  speaker: {',
      `  link: { from: main-fuse.OUT, to: link-fuse.OUT, length: 4 m }
  second-tail: { from: second.POS, to: link-fuse.IN, length: 6 in }
  second-ground: { from: second.NEG, to: body.cargo, length: 12 in }
  speaker: {`,
    ),
  ];

  test('carries what comes from one side, the worse of both: what hangs on the shorted end passes it by', () => {
    const { plan } = smallPlan(...second);
    const fuse = byId(plan.power.fuses, 'link-fuse');
    expect(Object.keys(given(fuse))).toEqual(['second']);
    expect(fuse.faultAt).toBe('link-fuse.OUT');
    expect(byId(plan.power.fuses, 'main-fuse').faultAt).toBe('main-fuse.OUT');
  });

  test('carries what comes from afar where its own battery is weak', () => {
    const weak = inParts(
      '  generator-a:\n',
      `  battery-b:
    kind: battery
    title: Small battery
    size: { width: 100 mm, depth: 80 mm, height: 40 mm }
    mass: 1 kg
    chemistry: absorbed-glass-mat
    capacity: 7 Ah
    short-circuit: 100 A
    terminals:
      POS: { role: source-positive, joint: stud, stud: M8, conductors: 4 }
      NEG: { role: source-negative, joint: stud, stud: M8, conductors: 4 }
  generator-a:
`,
    );
    const { plan } = smallPlan(
      ...second,
      weak,
      inJob('second: { part: battery-a', 'second: { part: battery-b'),
    );
    const fuse = byId(plan.power.fuses, 'link-fuse');
    expect(fuse.faultAt).toBe('link-fuse.IN');
    expect(Object.keys(given(fuse)).sort()).toEqual(['alternator', 'battery']);
    expect(fuse.needsInterruptA).toBe(fuse.faultA);
  });
});

describe('a lithium battery before the main fuse', () => {
  const lithium = inParts('chemistry: absorbed-glass-mat', 'chemistry: lithium');
  const stated = battery('short-circuit: 6 kA');
  const found = (...changes: readonly Change[]) =>
    judgedPlan(jobOf(smallShop(lithium, ...changes)))
      .findings.filter(({ rule }) => rule === 'fuse-interrupting')
      .map(({ level, message, remedy }) => ({ level, message, remedy }));
  const classT: readonly Change[] = [
    inParts('fuse-form: large-bolt-in', 'fuse-form: class-t'),
    inParts('form: large-bolt-in, rating: 60 A }', 'form: class-t, rating: 60 A, interrupts: 20 kA }'),
  ];

  test('stops the job without both figures of the makers, and names the form that is made for it', () => {
    const [finding, ...others] = found();
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      level: 'stop',
      message: expect.stringMatching(/short-circuit current of battery and what the large bolt-in fuse/),
      remedy: expect.stringMatching(/lawful instead: Class T/),
    });
    expect(found(...classT)).toHaveLength(1);
    expect(found(stated)).toHaveLength(1);
  });

  test('is told the whole line of a holder that the catalogue has for that form', () => {
    const holder = addParts(
      'holder-t: { kind: fuse-holder, title: Holder, size: { width: 90 mm, depth: 50 mm, height: 40 mm }, mass: 200 g, fuse-form: class-t, current: 200 A, terminals: { IN: { role: feed-in, joint: stud, stud: M8, takes: 8 AWG to 1/0 AWG }, OUT: { role: feed-out, joint: stud, stud: M8, takes: 8 AWG to 1/0 AWG } } }',
    );
    const [finding] = found(holder);
    const [, line = ''] = /: write main-fuse: (\{[^}]*\}) under devices:/.exec(finding?.remedy ?? '') ?? [];
    expect(line).toBe('{ part: holder-t, in: bay }');
    // What it says is in order once it is written, with the figures of both makers.
    const written = inJob('main-fuse: { part: holder-a, in: bay }', `main-fuse: ${line}`);
    expect(found(holder, stated, ...classT.slice(1), written)).toEqual([]);
    expect(found()[0]?.remedy).not.toContain('under devices:');
  });

  test('behind a Class T fuse, both stated, is in order', () => {
    expect(found(stated, ...classT)).toEqual([]);
  });

  test('is judged by what arrives at the fuse, not by what flows at the posts', () => {
    // 14.8 V over 21 kA are 0.7 mohm, and what lies on the way is as much again: some 10 kA.
    expect(found(battery('short-circuit: 21 kA'), ...classT)).toEqual([]);
    const [finding] = found(battery('short-circuit: 90 kA'), ...classT, [
      'content/vehicles/wagon.yaml',
      'strap: { from: battery.NEG, to: body.engine, size: 4 AWG, length: 300 mm }',
      'strap: { from: battery.NEG, to: body.engine, size: 4/0 AWG, length: 100 mm }',
    ]);
    expect(finding?.level).toBe('stop');
  });
});

// Outside reference: ngspice, as carried by the npm package eecircuit-engine; resistances by the published table of AWG.
test('ngspice finds the same current through a fuse that two batteries and the alternator feed', async () => {
  const { plan } = smallPlan(
    inJob('  sub: {', '  second: { part: battery-a, in: bay }\n  sub: {'),
    inJob(
      '  speaker: {',
      `  second-tail: { from: second.POS, to: main-fuse.IN, length: 12 in, size: 4 AWG }
  second-ground: { from: second.NEG, to: body.cargo, length: 12 in, size: 4 AWG }
  speaker: {`,
    ),
    inJob('main-fuse.IN, length: 6 in }', 'main-fuse.IN, length: 6 in, size: 4 AWG }'),
  );
  const ohm = (metres: number) => (no4 / 1000) * metres;
  const line = (id: string, from: string, to: string, value: number): NetworkElement => {
    return { id, kind: 'conductor', model: 'resistance', from, to, ohm: value };
  };
  const source = (id: string, value: number): NetworkElement => {
    return { id, kind: 'source', model: 'emf', from: `${id}+`, to: `${id}-`, emfV: 14.8, ohm: value };
  };
  const elements = [
    source('first', 0.002),
    source('second', 0.002),
    source('alternator', 14.8 / 450),
    line('tail', 'first+', 'fuse', ohm(0.1524)),
    line('second-tail', 'second+', 'fuse', ohm(0.3048)),
    line('charge', 'alternator+', 'first+', ohm(1)),
    line('strap', 'first-', 'engine', ohm(0.3)),
    line('case', 'alternator-', 'engine', ohm(0.3)),
    line('second-ground', 'second-', 'cargo', ohm(0.3048)),
    line('body-front', 'engine', 'body', 0.00025),
    line('body-rear', 'cargo', 'body', 0.00025),
    line('link', 'fuse', 'body', 1e-9),
  ];
  const answer = await new Spice().solve({ referenceNode: 'body', elements }, new Map());
  if ('errors' in answer) throw new Error(answer.errors.join('\n'));
  const at = (node: string) => answer.voltages.get(node) ?? Number.NaN;
  const firstA = (at('first+') - at('fuse')) / ohm(0.1524);
  const secondA = (at('second+') - at('fuse')) / ohm(0.3048);
  const fuse = byId(plan.power.fuses, 'main-fuse');
  expect(Math.abs((fuse.faultA ?? 0) / (firstA + secondA) - 1)).toBeLessThan(1e-3);
  const ways = Object.fromEntries((fuse.faultWays ?? []).map(({ of, currentA }) => [of, currentA]));
  expect(Math.abs((ways.tail ?? 0) / firstA - 1)).toBeLessThan(1e-3);
  expect(Math.abs((ways['second-tail'] ?? 0) / secondA - 1)).toBeLessThan(1e-3);
});
