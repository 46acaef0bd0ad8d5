import { describe, expect, test } from 'vitest';
import type { FindingId } from '../../lib/model/findings/index.ts';
import { rules } from '../../lib/rules/index.ts';
import { type Case, findingOf } from '../../lib/rules/rule.ts';
import { about, aboutContent, aboutPlan, byId, entry, one, partIn } from './case.ts';
import { behind } from './changes.ts';
import type { Written } from './content.ts';

/** What one rule finds, as it is told. */
function found(id: FindingId, made: Case) {
  const rule = one(rules, (each) => each.id === id);
  return rule.judge(made).map((verdict) => findingOf({ ...verdict, rule: rule.id }, verdict, made.job));
}

test('every rule finds what the catalogue calls it by, and is one of its own', () => {
  for (const { id, judge } of rules) {
    expect(id).toMatch(/^[a-z]+(-[a-z0-9]+)*$/);
    expect(judge).toBeTypeOf('function');
    expect(Array.isArray(judge(about())), id).toBe(true);
  }
});

describe('what lies behind a hole', () => {
  test('is named in words, also where nobody looked', () => {
    const told = (what: 'wiring' | 'unknown') => found('hole-before-hazard', behind(what))[0];
    expect(told('wiring')?.message).toBe('behind the hole for a lies wiring');
    expect(told('unknown')?.message).toBe('behind the hole for a lies something nobody has looked at');
    expect(told('unknown')?.remedy).toMatch(/^look behind the panel/);
  });

  // By hand: of 55 mm 12 mm are in the board and 12 mm in the spacer; 31 mm come out behind, and 30 mm are free.
  test('bounds a fixing by its length less board and spacer', () => {
    const fixing = (length: `${number} mm` | undefined, spacer?: `${number} mm`) =>
      aboutContent((content) => {
        const screw = partIn(content, 'screw', 'fixing');
        delete screw.length;
        if (length !== undefined) screw.length = length;
        const own = entry(entry(content.job.boards, 'main').fixings, 'a');
        if (spacer !== undefined) own.spacer = spacer;
      });
    expect(found('fixing-too-long', fixing('54 mm', '12 mm'))).toEqual([]);
    expect(found('fixing-too-long', fixing('55 mm', '12 mm'))).toEqual([
      expect.objectContaining({ level: 'stop', value: expect.closeTo(0.031, 9), limit: 0.03 }),
    ]);
    expect(found('fixing-too-long', fixing('55 mm'))[0]?.value).toBeCloseTo(0.043, 9);
    expect(found('fixing-too-long', fixing(undefined))).toEqual([]);
  });
});

describe('the label that is free', () => {
  const twice = (change: (content: Written) => void, released: Readonly<Record<string, string>> = {}) => {
    const made = about({
      content: (content) => {
        entry(content.job.links, 'amp-feed').label = 'p7';
        change(content);
      },
      plan: (plan) => {
        byId(plan.wires, 'amp-feed').label = 'p7';
        byId(plan.wires, 'dsp-feed').label = 'P7';
      },
    });
    const rule = one(rules, ({ id }) => id === 'label-twice');
    const [told] = rule.judge({ ...made, job: { ...made.job, releasedLabels: released } });
    return told?.instead?.text;
  };

  test('is the first number that no wire, no released wire and no terminal or its mark has, capitals or not', () => {
    const own = about()
      .plan.wires.flatMap(({ label }) => /^P(\d+)$/.exec(label)?.[1] ?? [])
      .map(Number);
    const free = (taken: readonly number[]) =>
      Array.from({ length: 99 }, (_, k) => k + 1).find((n) => ![...own, 7, ...taken].includes(n)) ?? 0;
    const first = free([]);
    expect(twice(() => {})).toBe(`p${first}`);
    expect(twice(() => {}, { old: `P${first}` })).toBe(`p${free([first])}`);
    const marked = twice((content) => {
      entry(partIn(content, 'dsp', 'processor').terminals, 'OUT1').mark = `P${first}`;
    });
    expect(marked).toBe(`p${free([first])}`);
  });
});

describe('the battery that starts the engine', () => {
  const batteries = (change: (content: Written) => void) =>
    found(
      'starter-battery-unknown',
      aboutContent((content) => {
        const agm = partIn(content, 'agm', 'battery');
        content.parts.other = { ...agm };
        content.vehicle.fitted.other = { part: 'other', zone: 'cargo' };
        change(content);
      }),
    );

  test('is known by one that says its cold-cranking current, of those that came with the vehicle', () => {
    expect(
      batteries((content) => {
        delete partIn(content, 'other', 'battery')['cold-cranking'];
      }),
    ).toEqual([]);
    const none = batteries((content) => {
      delete partIn(content, 'other', 'battery')['cold-cranking'];
      delete partIn(content, 'agm', 'battery')['cold-cranking'];
      content.parts.ours = { ...partIn(content, 'agm', 'battery'), 'cold-cranking': '700 A' };
      content.job.devices.ours = { part: 'ours', in: 'boot' };
    });
    expect(none[0]?.related).toEqual(['battery', 'other']);
  });
});

describe('what draws with the key off', () => {
  test('is told with what draws most first, of two alike the first by name', () => {
    const [told] = found(
      'key-off-over-limit',
      aboutPlan((plan) => {
        plan.power.keyOff = {
          drawA: 0.11,
          limitA: 0.05,
          items: [
            { item: 'dsp', drawA: 0.03 },
            { item: 'amp', drawA: 0.05 },
            { item: 'block', drawA: 0.03 },
            { item: 'radio', drawA: null },
          ],
        };
      }),
    );
    expect(told?.related).toEqual(['amp', 'block', 'dsp']);
  });
});

describe('a supply that gives way', () => {
  test('is told at the first device of the job that it does not feed', () => {
    const [told] = found(
      'supply-collapse',
      aboutPlan((plan) => {
        for (const point of plan.power.points)
          Object.assign(point, { state: 'no-solution', reason: 'the loads cannot be fed' });
      }),
    );
    expect(told?.where.path).toMatch(/^\/devices\/(amp|dsp|radio)/);
  });

  test('cuts a device out below its cut-out, and not at it', () => {
    const at = (shareOfCutOut: number) =>
      found(
        'below-cut-out',
        aboutPlan((plan) => {
          for (const point of plan.power.points) {
            const load = point.elements.find(({ kind, of }) => kind === 'load' && of === 'amp');
            if (!load) continue;
            for (const node of point.nodes)
              if (node.id === load.from) node.voltageV = 10 * shareOfCutOut;
              else if (node.id === load.to) node.voltageV = 0;
            Object.assign(load, { cutoutV: 10 });
          }
        }),
      ).length;
    expect(at(1)).toBe(0);
    expect(at(0.999)).toBeGreaterThan(0);
  });
});

describe('a reading that differs', () => {
  test('is told beside what was predicted, or that nothing was', () => {
    const told = (predicted: number | null) =>
      found(
        'as-built-differs',
        aboutPlan((plan) => {
          plan.measurements = [
            {
              ...{ id: 'amp.noise', what: 'amp: noise', predicted, unit: 'V', least: null, greatest: 1 },
              ...{ when: 'load', asBuilt: 1.4, state: 'differs', explanation: null },
            },
          ];
        }),
      )[0];
    expect(told(null)).toMatchObject({
      message: 'amp: noise: 1.4 V, where nothing was predicted',
      value: 1.4,
    });
    expect(told(null)).not.toHaveProperty('limit', 0);
    expect(told(0.9)?.message).toMatch(/^amp: noise: 1\.4 V, where 0\.9.* V was predicted$/);
    expect(told(0.9)).toMatchObject({ value: 1.4, limit: 0.9 });
  });
});
