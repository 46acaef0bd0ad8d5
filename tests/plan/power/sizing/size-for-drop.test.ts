import { describe, expect, test } from 'vitest';
import { deviceDrops } from '../../../../lib/plan/power/feed-and-ground-drop.ts';
import { operatingPoints, solvePoint } from '../../../../lib/plan/power/operating-points.ts';
import { notRunning } from '../../../../lib/plan/power/sizing/growth-attempts.ts';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import { sizeForDrop } from '../../../../lib/plan/power/sizing/size-for-drop.ts';
import { type SizedPower, sizePower } from '../../../../lib/plan/power/sizing/size-power.ts';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { addParts, inParts, inShop } from '../../shop-changes.ts';
import { settledShop, sizedAnew } from '../settled-power.ts';

/** The small shop's supply, sized for its drop from nothing. */
function sized(...changes: readonly Change[]) {
  const sizing = { ...sizedAnew(settledShop(...changes).sizing), least: new LeastSizes() };
  const power = sizeForDrop(sizing);
  const of = (id: string) => {
    const found = power.conductors.get(id);
    if (!found) throw new Error(`${id} is not sized.`);
    return found;
  };
  const point = solvePoint({ ...sizing, ...power }, operatingPoints[0]);
  return {
    sizing,
    power,
    of,
    label: (id: string) => of(id).cable.size.label,
    drop: deviceDrops({ ...sizing, ...power }, point).find(({ item }) => item === 'amp'),
  };
}
const feedLong = (length: string) => inJob('to: amp.B+ }', `to: amp.B+, length: ${length} }`);
const groundLong = (length: string) =>
  inJob('to: body.cargo, length: 12 in }', `to: body.cargo, length: ${length} }`);
const fuse = inJob('holder-a, in: bay', 'holder-a, in: bay, fuse: 30 A');
/** Reels of 6 AWG between the 8 and 4 AWG of the shop. */
const six: readonly Change[] = [
  addParts(
    'red-6: { kind: wire, title: "6 AWG red", size: 6 AWG, insulation: 105 C, colour: RD, for: [power] }',
    'black-6: { kind: wire, title: "6 AWG black", size: 6 AWG, insulation: 105 C, colour: BK, for: [ground] }',
  ),
  inShop('  red-8: {', '  red-6: { reels: [60 ft] }\n  black-6: { reels: [60 ft] }\n  red-8: {'),
];

/** Reels long enough for any way. */
const long: readonly Change[] = ['red-8: { reels: [30 ft]', 'red-6: { reels: [60 ft]'].map((reel) =>
  inShop(reel, reel.replace(/\d+ ft/, '200 ft')),
);

// House rules, common practice, no source: feed and return lose at most 3 % of 13.8 V, 0.41 V, the ground side at most
// 0.2 V. The amplifier of 300 W draws 29 A there.
describe('conductors grow while a device misses its drop', () => {
  test('one that keeps it has the size of its fuse', () => {
    const short = sized(fuse, ...six, feedLong('1 m'));
    expect([short.label('feed'), short.label('ground')]).toEqual(['8 AWG', '8 AWG']);
    expect(short.drop?.share).toBeLessThan(0.03);
    expect(short.of('feed').reason).not.toMatch(/would lose/);
  });

  test('by one size at a time until it keeps it, and no further', () => {
    const way = (metres: number) => sized(fuse, ...six, feedLong(`${metres} m`));
    const lengths = [1, 2.5, 4, 7];
    const found = lengths.map((metres) => ({ metres, ...way(metres) }));
    const labels = found.map(({ label }) => label('feed'));
    // 8 AWG, then 6, then 4: never back, none left out.
    expect(labels).toEqual(labels.toSorted((a, b) => Number(b.split(' ')[0]) - Number(a.split(' ')[0])));
    expect(new Set(labels)).toEqual(new Set(['8 AWG', '6 AWG', '4 AWG']));
    for (const { drop, label } of found)
      if (label('feed') !== '4 AWG') expect(drop?.share).toBeLessThanOrEqual(0.03);
    const grown = found.find(({ label }) => label('feed') === '6 AWG');
    expect(grown?.of('feed').reason).toMatch(
      /^6 AWG: with 8 AWG amp would lose 0\.\d+ V on feed and ground at rated power, 0\.414 V are allowed$/,
    );
  });

  test('the one that drops most first: a long feed and not its short ground', () => {
    const { of, sizing } = sized(fuse, ...six, feedLong('5 m'));
    expect(of('feed').reason).toMatch(/would lose/);
    expect(of('ground').reason).not.toMatch(/would lose/);
    expect(sizing.least.of('tail').why).not.toMatch(/would lose/);
  });

  test('the ground alone where it is the ground side that misses', () => {
    const lax = inShop('stock:\n', 'rules: { drop-limit: 10 % }\nstock:\n');
    const { of, label, drop } = sized(fuse, ...six, feedLong('300 mm'), groundLong('3.5 m'), lax);
    expect(of('ground').reason).toMatch(
      /^\d AWG: with \d AWG amp would lose 0\.\d+ V on the ground side at rated power, 0\.2 V are allowed$/,
    );
    expect(label('feed')).toBe('8 AWG');
    expect(drop?.groundDropV).toBeLessThanOrEqual(0.2);
  });

  test('to no size without a lug for its stud, where its own size has one; where no size has one, as ever', () => {
    const lug = (...sizes: readonly number[]) =>
      addParts(
        ...sizes.map(
          (awg) =>
            `lug-${awg}: { kind: terminal, title: Lug, form: ring-lug, takes: { from: ${awg} AWG, to: ${awg} AWG }, stud: M8, strip: 12 mm }`,
        ),
      );
    const label = (...changes: readonly Change[]) =>
      sized(fuse, ...six, feedLong('7 m'), ...changes).label('feed');
    expect(label()).toBe('4 AWG');
    expect(label(lug(8))).toBe('8 AWG');
    expect(label(lug(8, 6, 4))).toBe('4 AWG');
  });

  test('never one that the job gives', () => {
    const given = inJob('to: amp.B+ }', 'to: amp.B+, length: 6 m, size: 8 AWG }');
    const { label, of } = sized(fuse, ...six, given);
    expect(label('feed')).toBe('8 AWG');
    expect(of('feed').chosen).toBe('given');
    // The short leads beside it would not mend the drop, however thick.
    expect(label('ground')).toBe('8 AWG');
  });

  test('not in vain: where no size that goes in keeps the limit, the sizes stay those of the fuse', () => {
    const { label, drop } = sized(fuse, ...six, feedLong('9 m'));
    expect([label('feed'), label('ground')]).toEqual(['8 AWG', '8 AWG']);
    expect(drop?.share).toBeGreaterThan(0.03);
  });

  test('by no second size for what is little over the limit, of which the size before was far', () => {
    // By hand, 29 A: 5 m of 8 AWG lose 0.33 V, of 6 AWG 0.21 V, of 4 AWG 0.13 V beside fuses, joints and ground.
    const share = (more: readonly Change[]) => sized(fuse, ...six, feedLong('5 m'), ...more);
    const left = share([]);
    expect([left.label('feed'), left.label('ground')]).toEqual(['6 AWG', '6 AWG']);
    expect(left.drop?.share).toBeGreaterThan(0.03);
    expect(left.drop?.share).toBeLessThanOrEqual(0.033);
    expect(left.of('feed').grown).toMatchObject({ from: { label: '8 AWG' }, item: 'amp', side: 'both' });
    // Beyond what is little it goes on, and so it does where the shop wrote its limit.
    const strict = (rule: string) =>
      share([inShop('stock:\n', `rules: { ${rule} }\nstock:\n`)]).label('feed');
    expect(strict('drop-over-little: 5 %')).toBe('4 AWG');
    expect(strict('drop-limit: 3 %')).toBe('4 AWG');
  });

  test('by none where the drop is little over the limit before and after', () => {
    const given = inJob('to: amp.B+ }', 'to: amp.B+, length: 4.5 m, size: 6 AWG }');
    const { of, label, drop } = sized(fuse, ...six, given, groundLong('600 mm'));
    expect(drop?.share).toBeGreaterThan(0.03);
    expect(label('ground')).toBe('6 AWG');
    expect(of('ground').grown).toBeNull();
  });

  test('as far as the device runs at all, where no size keeps the limit', () => {
    const { label, drop, power, sizing } = sized(fuse, ...six, ...long, feedLong('32 m'));
    expect([label('feed'), label('ground')]).toEqual(['6 AWG', '6 AWG']);
    expect(drop?.share).toBeGreaterThan(0.03);
    const runs = (with8: SizedPower) => !notRunning({ ...sizing, ...with8 }).has('amp');
    expect(runs(power)).toBe(true);
    expect(runs(sizePower({ ...sizing, least: new LeastSizes() }))).toBe(false);
    for (const { remarks } of power.conductors.values())
      expect(remarks.filter(({ level }) => level === 'stop')).toEqual([]);
  });

  test('by the limits of the shop', () => {
    const strict = inShop('stock:\n', 'rules: { drop-limit: 2.2 % }\nstock:\n');
    const way = [fuse, ...six, feedLong('1.5 m')];
    expect(sized(...way).label('feed')).toBe('8 AWG');
    expect(sized(...way, strict).of('feed').reason).toMatch(/0\.30\d? V are allowed/);
    const bare = inShop('stock:\n', 'rules: { ground-drop-limit: 70 mV }\nstock:\n');
    expect(sized(...way, bare).of('ground').reason).toMatch(/on the ground side at rated power, 0\.07 V/);
  });
});

describe('a size that the shop does not have', () => {
  /** 4 AWG and what reaches it are left to be bought; ports take it. */
  const noFour = [inShop('  red-4: { reels: [30 ft] }\n', ''), inShop('  black-4: { reels: [30 ft] }\n', '')];
  const labels = (...changes: readonly Change[]) => {
    const { label } = sized(fuse, ...six, ...noFour, ...changes);
    return [label('feed'), label('ground')];
  };

  test('is not taken for a drop, which is a caution', () => {
    expect(labels(feedLong('7 m'))).toEqual(['8 AWG', '8 AWG']);
    expect(labels(feedLong('2.5 m'))).toEqual(['6 AWG', '6 AWG']);
  });

  test('is taken where the shop wrote the limit itself', () => {
    const own = inShop('stock:\n', 'rules: { drop-limit: 3 % }\nstock:\n');
    expect(labels(feedLong('5 m'), own)).toEqual(['4 AWG', '4 AWG']);
  });

  test('is taken where the device would not run otherwise', () => {
    expect(labels(...long, feedLong('60 m'))[0]).toBe('4 AWG');
  });

  test('is not taken for the ground of a feed that grows from the shelf for a drop', () => {
    const noBlackSix = inShop('  black-6: { reels: [60 ft] }\n', '');
    expect(labels(feedLong('2.5 m'), noBlackSix)).toEqual(['8 AWG', '8 AWG']);
  });
});

describe('a ground', () => {
  test('stays as large as its feed where a larger feed keeps the limit', () => {
    // The ground drops most here, and would grow first.
    const { label, drop } = sized(fuse, ...six, feedLong('1 m'), groundLong('1.5 m'));
    expect(drop?.groundDropV).toBeGreaterThan(0);
    expect(drop?.share).toBeLessThanOrEqual(0.03);
    expect(label('ground')).toBe(label('feed'));
  });
});

describe('a reducer', () => {
  const thick: readonly Change[] = [
    addParts(
      'red-0: { kind: wire, title: "1/0 red", size: 1/0 AWG, insulation: 105 C, colour: RD, for: [power] }',
      'black-0: { kind: wire, title: "1/0 black", size: 1/0 AWG, insulation: 105 C, colour: BK, for: [ground] }',
    ),
    inShop('  red-8: {', '  red-0: { reels: [200 ft] }\n  black-0: { reels: [200 ft] }\n  red-8: {'),
    ...['red-4', 'red-8'].map((reel) => inShop(`${reel}: { reels: [30 ft]`, `${reel}: { reels: [200 ft]`)),
  ];
  const reducer = inParts(
    '  lead-a:',
    '  reducer-0: { kind: terminal, title: Reducer, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG }\n  lead-a:',
  );
  const feed = (...changes: readonly Change[]) => {
    const { label, sizing, drop } = sized(...thick, ...changes);
    return {
      size: label('feed'),
      leastMm2: sizing.least.of('feed').areaMm2,
      share: drop?.share ?? Number.NaN,
    };
  };

  test('is not taken for a drop, which is a caution: what the terminals take bare stays', () => {
    const left = feed(reducer, feedLong('9 m'));
    expect(left.size).toBe('4 AWG');
    expect(left.share).toBeGreaterThan(0.03);
  });

  const own = inShop('stock:\n', 'rules: { drop-limit: 3 % }\nstock:\n');

  test('is taken where the shop wrote the limit itself, and the size is kept', () => {
    const mended = feed(reducer, feedLong('16 m'), own);
    expect(mended.size).toBe('1/0 AWG');
    expect(mended.share).toBeLessThanOrEqual(0.03);
    expect(mended.leastMm2).toBeCloseTo(53.475, 2);
  });

  test('is not taken where the sizes that go in bare do, nor where there is none', () => {
    expect(feed(reducer, feedLong('5 m'), own).size).not.toBe('1/0 AWG');
    expect(feed(feedLong('8 m'), own).size).not.toBe('1/0 AWG');
  });

  describe('on a board', () => {
    /** The feed between two parts of one board, as long as it is. */
    const onBoard = (length: string, ...changes: readonly Change[]) => {
      const { sizing: settled } = settledShop(...thick, reducer, fuse, feedLong(length), ...changes);
      const { job } = settled;
      const devices = job.devices.map((one) => {
        return ['main-fuse', 'amp'].includes(one.id) ? { ...one, board: 'board' } : one;
      });
      const sizing = { ...settled, job: { ...job, devices }, least: new LeastSizes() };
      return sizeForDrop(sizing).conductors.get('feed')?.cable.size.label;
    };

    test('is not taken for a drop, which is a caution', () => {
      expect(onBoard('8 m')).not.toBe('1/0 AWG');
    });

    test('is taken where the shop wrote the limit itself', () => {
      expect(onBoard('8 m', own)).toBe('1/0 AWG');
    });

    test('is taken where the device would not run otherwise', () => {
      const cutOut = (volts: string) =>
        inParts(
          'supply: { type: regulated, fuse: 60 A',
          `supply: { type: regulated, cut-out: ${volts}, fuse: 60 A`,
        );
      // Engine off the battery gives 12.2 V: by 4 AWG more than 11.9 V arrive, by 1/0 AWG more than 12 V.
      expect(onBoard('8 m', cutOut('11.9 V'))).toBe('4 AWG');
      expect(onBoard('8 m', cutOut('12 V'))).toBe('1/0 AWG');
    });
  });
});

describe('what a fuse carries', () => {
  test('is held against what flows at the voltage that its device gets, and rises with the drop', () => {
    const flow = (...changes: readonly Change[]) => {
      const { sizing, power } = sized(...changes);
      const [main] = power.fuses.filter(({ edge }) => edge.id === 'main-fuse');
      return { flowA: sizing.least.flowA('main-fuse'), ratedA: main?.ratedA ?? 0, sizing, power };
    };
    // By hand: of 300 W at 14.4 V a supply that is not regulated has 275.5 W at 13.8 V, at 75 % 26.6 A; it draws the
    // less the less it gets.
    const plain = inParts(
      'supply: { type: regulated, fuse: 60 A, amplifier-class',
      'supply: { type: unregulated, fuse: 60 A, amplifier-class',
    );
    expect(flow(fuse, feedLong('1 m'), plain)).toMatchObject({ flowA: 0, ratedA: 26.7 });
    // A regulated one draws more.
    const far = flow(fuse, feedLong('25 m'));
    expect(far.flowA).toBeGreaterThan(0);
    expect(far.ratedA).toBe(far.flowA);
    const point = solvePoint({ ...far.sizing, ...far.power }, operatingPoints[0]);
    const through =
      point.elements.find(({ of, kind }) => of === 'main-fuse' && kind === 'fuse')?.currentA ?? 0;
    // Rounded up to a tenth of an ampere, and by no more.
    expect(far.flowA).toBeGreaterThanOrEqual(through - 1e-9);
    expect(far.flowA - through).toBeLessThan(0.1);
  });
});

test('for a device that can not be fed by any size nothing grows, and the sizing ends', () => {
  const { label } = sized(fuse, ...six, feedLong('200 m'));
  expect(label('feed')).toBe('8 AWG');
});
