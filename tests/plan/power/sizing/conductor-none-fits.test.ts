import { describe, expect, test } from 'vitest';
import { awgSize } from '../../../../lib/model/quantity/wire-size.ts';
import { noneFits } from '../../../../lib/plan/power/sizing/conductor-none-fits.ts';
import type { ConductorTask } from '../../../../lib/plan/power/sizing/conductor-task.ts';
import type { LinkPort } from '../../../../lib/plan/power/sizing/link-ports.ts';
import type { RunZone } from '../../../../lib/power/conductor/ampacity.ts';
import { chooseConductor, type JudgedCable } from '../../../../lib/power/conductor/conductor-choice.ts';
import { usualRules } from '../../../power/usual-rules.ts';
import { edgeOf, tree } from '../circuits.ts';

const cabin: RunZone = { zone: 'cabin', ambientC: 50, engineSpace: false, covered: false, bundleCount: 1 };
const bay: RunZone = { zone: 'engine-bay', ambientC: 85, engineSpace: true, covered: false, bundleCount: 1 };

function considered(
  awg: readonly string[],
  zones: readonly RunZone[],
  insulationC = 105,
): readonly JudgedCable[] {
  const candidates = awg.map((name) => {
    return { part: name, size: awgSize(name), material: 'copper', insulationC } as const;
  });
  const choice = chooseConductor(
    { fuseA: 1, currentA: 1, lengthM: 1, otherOhm: 0, mostDropV: 1000, zones },
    candidates,
    usualRules,
  );
  if (!('considered' in choice)) throw new Error(choice.message);
  return choice.considered;
}

const { link } = edgeOf(tree(), 'feed');
function told(
  neededA: number,
  ports: readonly LinkPort[],
  cables: readonly JudgedCable[],
  zones: readonly RunZone[] = [cabin],
  asked: Pick<ConductorTask, 'leastMm2' | 'why'> = { leastMm2: 0, why: null },
) {
  if (!link) throw new Error('The tree has a feed.');
  const task: ConductorTask = {
    link,
    role: 'power',
    lengthM: 1,
    zones,
    neededA,
    ratedA: 1,
    ...asked,
    underMm2: Infinity,
  };
  return noneFits(task, ports, cables, 'its reason');
}
const port = (id: string, awg: string, clamps = true): LinkPort => {
  const { areaMm2, label } = awgSize(awg);
  return { id, smallestMm2: 0, largestMm2: areaMm2, largest: label, clamps, reduces: () => false };
};

// 33 CFR 183.425, Table 5, at 105 C: 8 AWG carries 80 A, 4 AWG 160 A; at 50 C 0.85 of that.
describe('a cable that carries enough and goes into no port', () => {
  const cables = considered(['8', '4', '1/0'], [cabin]);

  test('is named with the port that refuses it, the reducer that would do, and the fuse that needs none', () => {
    const { message, remedy, level, of, rule } = told(120, [port('amp.B+', '8')], cables);
    expect({ level, of, rule }).toEqual({ level: 'stop', of: ['feed'], rule: 'conductor-none-fits' });
    expect(message).toBe(
      'feed must carry 120 A: 4 AWG is the smallest cable of the catalogue that does, and amp.B+ takes at most 8 AWG',
    );
    expect(remedy).toMatch(
      /^put a reducer for 4 AWG with a pin of 8 AWG or less into the catalogue; or use a part whose amp\.B\+ takes 4 AWG; or fit fuses that let at most (\d+) A through to it$/,
    );
    // What 8 AWG carries: the largest that goes in.
    const most = Number(/at most (\d+) A through/.exec(remedy)?.[1]);
    expect(most).toBe(Math.floor(cables[0]?.ampacity.ampacityA.value ?? 0));
  });

  test('of what no fuse limits is told without a current', () => {
    const { message, remedy } = told(0, [port('amp.CH1+', '10')], cables);
    expect(message).toBe(
      '8 AWG is the smallest cable of the catalogue for feed, and amp.CH1+ takes at most 10 AWG',
    );
    expect(remedy).not.toMatch(/fuse/);
    // 80 C in a bay of 85 C carries nothing: it is the heat that is told, and no current of 0 A.
    const hot = told(0, [], considered(['8'], [bay], 80), [bay]).message;
    expect(hot).toMatch(/^feed passes engine-bay, at 85 C, and no cable/);
  });

  test('is the smallest that carries it, on the bound too', () => {
    const exact = cables[1]?.ampacity.ampacityA.value ?? 0;
    expect(told(exact, [port('amp.B+', '8')], cables).message).toMatch(/: 4 AWG is the smallest/);
    expect(told(exact + 0.5, [port('amp.B+', '8')], cables).message).toMatch(/: 1\/0 AWG is the smallest/);
  });

  test('is refused by both of its ports, or by the one that is too small for it alone', () => {
    const both = told(120, [port('main.OUT', '8'), port('amp.B+', '8')], cables);
    expect(both.message).toMatch(/main\.OUT takes at most 8 AWG, and amp\.B\+ takes at most 8 AWG$/);
    expect(both.remedy).toMatch(
      /^put a reducer for 4 AWG with a pin of 8 AWG or less into the catalogue; or use a part whose main\.OUT and amp\.B\+ takes/,
    );
    const one = told(120, [port('main.OUT', '1/0'), port('amp.B+', '8')], cables);
    expect(one.message).not.toMatch(/main\.OUT/);
  });

  test('goes by the ports together: the fuse is bounded by what goes into both', () => {
    const { remedy } = told(120, [port('main.OUT', '4'), port('amp.B+', '8')], cables);
    expect(remedy).toMatch(
      new RegExp(`at most ${Math.floor(cables[0]?.ampacity.ampacityA.value ?? 0)} A through`),
    );
  });

  test('has no reducer where a port clamps none', () => {
    expect(told(120, [port('amp.B+', '8', false)], cables).remedy).toMatch(
      /^use a part whose amp\.B\+ takes/,
    );
    expect(told(120, [port('main.OUT', '8'), port('amp.B+', '8', false)], cables).remedy).not.toMatch(
      /reducer/,
    );
  });

  test('has no smaller fuse that would do where nothing goes in at all', () => {
    expect(told(120, [port('amp.B+', '12')], cables).remedy).not.toMatch(/fuses/);
  });
});

describe('no cable that carries enough', () => {
  test('the best one is named with its zone, and the fuse that it allows', () => {
    const cool = { ...cabin, ambientC: 30 };
    const cables = considered(['8', '4'], [cool, bay]);
    const best = Math.floor(cables[1]?.ampacity.ampacityA.value ?? 0);
    const { message, remedy } = told(300, [], cables, [cool, bay]);
    expect(message).toBe(
      `feed must carry 300 A, and the most that a cable of the catalogue carries on its way is ${best} A: 4 AWG, in its zone engine-bay`,
    );
    expect(remedy).toMatch(
      new RegExp(`^put a larger cable.*; or fit fuses that let at most ${best} A through to it$`),
    );
  });

  test('because its insulation bears no such zone: the zone is named with its temperature', () => {
    const hot = { ...bay, ambientC: 110 };
    const cables = considered(['8', '4'], [cabin, hot]);
    const { message, remedy } = told(10, [], cables, [cabin, hot]);
    expect(message).toBe(
      'feed passes engine-bay, at 110 C, and no cable of the catalogue for it has insulation for more than that',
    );
    expect(remedy).toMatch(/insulation for well above 110 C/);
  });

  test('says so before it speaks of ports', () => {
    const cables = considered(['8', '4'], [cabin]);
    expect(told(300, [port('amp.B+', '12')], cables).message).toMatch(/^feed must carry 300 A, and the most/);
  });
});

test('where current and ports are in order, or nothing could be judged, the reason stands as it is', () => {
  const cables = considered(['8', '4'], [cabin]);
  for (const of of [told(50, [port('amp.B+', '4')], cables), told(50, [], [])]) {
    expect(of.message).toBe('no cable of the catalogue fits feed: its reason');
    expect(of.remedy).toMatch(/larger port or reducer/);
  }
});

// By hand: 8 AWG is 8.366 mm2 and goes in; what asks for 4 AWG, 21.15 mm2, is no fuse.
describe('something beside its fuses that asks for more than its ports take', () => {
  const cables = considered(['8', '4'], [cabin]);
  const drop = { leastMm2: 21.15, why: 'with 8 AWG amp would lose 0.6 V' };

  test('is named, with the line that settles it', () => {
    const { message, remedy } = told(50, [port('amp.B+', '8')], cables, [cabin], drop);
    expect(message).toMatch(
      /asked to be 21\.2 mm2 or larger \(with 8 AWG amp would lose 0\.6 V\), and amp\.B\+ takes at most 8 AWG$/,
    );
    expect(remedy).toMatch(
      /^write the size that fits, which carries the 50 A of its fuses.*links: \{ feed: \{ .*size: 8 AWG \} \}/,
    );
  });

  test('is the other port: no line makes both lawful', () => {
    const wide = { ...port('main.OUT', '1/0'), smallestMm2: awgSize('4').areaMm2 };
    const { message, remedy } = told(50, [wide, port('amp.B+', '8')], cables);
    expect(message).toMatch(/main\.OUT takes no less than 21\.2 mm2, and .*amp\.B\+ takes at most 8 AWG/);
    expect(remedy).not.toMatch(/links:/);
  });
});
