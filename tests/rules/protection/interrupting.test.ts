import { describe, expect, test } from 'vitest';
import { defaultSource } from '../../../lib/model/findings/source.ts';
import type { BuildPlan, PlanFuse } from '../../../lib/model/plan/index.ts';
import { about, entry, partIn } from '../case.ts';
import { fuse, secondBattery } from '../changes.ts';
import type { Written } from '../content.ts';
import { found } from '../found.ts';

type Change = (content: Written) => void;

/** What is found of the main fuse at the battery, with what the plan says of it. */
const atMain = (more: Partial<PlanFuse>, content: Change = () => {}) =>
  found(
    'fuse-interrupting',
    about({ content, plan: (plan) => Object.assign(fuse(plan, 'main-fuse'), more) }),
  );

const lithium =
  (shortCircuit?: string): Change =>
  (content) => {
    const battery = partIn(content, 'agm', 'battery');
    battery.chemistry = 'lithium';
    if (shortCircuit !== undefined) battery['short-circuit'] = shortCircuit;
  };

describe('a first fuse behind lithium', () => {
  // Common practice, no source: lithium may give several kA, and nothing is taken for granted of it or of its fuse.
  const makers = { interruptBasis: 'maker', interruptA: 20_000 } as const;
  const unstated = { interruptBasis: 'assumed', interruptA: 20_000 } as const;
  const nothingKnown = { needsInterruptA: null, faultA: null } as const;

  test.each([
    ['both', unstated, lithium(), "short-circuit: in the battery's part and interrupts: in the fuse's part"],
    ['that of the battery', makers, lithium(), "short-circuit: in the battery's part"],
    ['that of the fuse', unstated, lithium('6 kA'), "interrupts: in the fuse's part"],
  ])('is told which figures are missing: %s', (_, more, content, figures) => {
    const [told, ...others] = atMain({ ...more, ...nothingKnown }, content);
    expect(others).toEqual([]);
    expect(told?.level).toBe('stop');
    expect(told?.remedy.startsWith(`write ${figures}, as their makers print them;`), told?.remedy).toBe(true);
    expect(told).toMatchObject({ value: 20_000, unit: 'A' });
    expect(told).not.toHaveProperty('limit');
  });

  test('whose own figure is not known has none, whoever was asked for it', () => {
    const [told] = atMain({ interruptBasis: 'maker', interruptA: null, ...nothingKnown }, lithium('6 kA'));
    expect(told?.level).toBe('stop');
    expect(told?.message).toMatch(/states what the large bolt-in fuse main-fuse interrupts$/);
    expect(told).not.toHaveProperty('value');
  });

  test('is judged by lithium alone where another battery stands beside', () => {
    const one = (plan: BuildPlan) => {
      Object.assign(fuse(plan, 'main-fuse'), { ...makers, needsInterruptA: 9000, faultA: 9000 });
    };
    const beside = secondBattery(false, one);
    expect(found('fuse-interrupting', beside)).toEqual([]);
  });
});

describe('a first fuse that interrupts less than is asked', () => {
  const byTable = { interruptBasis: 'maker', interruptA: 1499, needsInterruptA: 1500, faultA: 900 } as const;

  test('names the table by cranking current as what asks, and the short where that is more', () => {
    const [table] = atMain(byTable);
    expect(table).toMatchObject({
      level: 'caution',
      of: ['main-fuse', 'battery'],
      value: 1499,
      limit: 1500,
      ...defaultSource('interrupt-to-650'),
    });
    const [short] = atMain({ ...byTable, faultA: 1500 });
    expect(short).not.toHaveProperty('source');
    expect(short?.message).toBe(
      'the large bolt-in fuse main-fuse interrupts 1490 A; a dead short drives about 1500 A through it',
    );
  });

  test('tells of each source what it gives and by whom, and of which nobody states it', () => {
    const [told] = atMain(
      {
        ...byTable,
        faultA: 1500,
        needsInterruptA: 1500,
        faultFrom: [
          { source: 'battery', currentA: 900, basis: 'stated' },
          { source: 'bank', currentA: 600, basis: 'maker' },
        ],
        faultUnknown: ['second', 'third'],
      },
      ({ job }) => {
        job.devices.bank = { part: 'bank', on: 'main' };
      },
    );
    // A bank's maker states its resistance: the current only follows from it.
    expect(told?.message).toMatch(
      /: 900 A from battery \(by its resistance\) and 600 A from bank \(by its resistance\), and what second and third give, which nobody states$/,
    );
  });

  test('is told whose cranking current asks: of two batteries that which has one', () => {
    const two = (cranking: boolean) =>
      about({
        content: (content) => {
          const { job, parts } = content;
          parts.house = { ...partIn(content, 'agm', 'battery') };
          const house = partIn(content, 'house', 'battery');
          delete house['cold-cranking'];
          if (!cranking) delete partIn(content, 'agm', 'battery')['cold-cranking'];
          job.devices.second = { part: 'house', in: 'boot' };
          job.links['second-ground'] = { from: 'second.NEG', to: 'body.cargo' };
          job.links['second-tail'] = { from: 'second.POS', to: 'main-fuse.IN' };
        },
        plan: (plan) => Object.assign(fuse(plan, 'main-fuse'), byTable),
      });
    const message = (cranking: boolean) => found('fuse-interrupting', two(cranking))[0]?.message ?? '';
    expect(message(true)).toMatch(/asked for behind battery with 600 A of cold cranking$/);
    expect(message(false)).toMatch(/asked for behind (battery and second|second and battery)$/);
  });

  describe('says which figures would settle it', () => {
    const battery = "short-circuit: in the battery's part";
    const own = "interrupts: in the fuse's part";
    const from = (basis: 'maker' | 'assumed') =>
      [
        { source: 'battery', currentA: 1000, basis: 'maker' },
        { source: 'alternator', currentA: 500, basis },
      ] as const;
    test.each([
      ['maker', from('assumed'), battery],
      ['maker', from('maker'), battery],
      ['maker', undefined, battery],
      ['assumed', from('maker'), own],
      ['assumed', undefined, own],
      ['assumed', from('assumed'), `${own} and ${battery}`],
    ] as const)('%s, %j', (interruptBasis, faultFrom, figures) => {
      const more = { ...byTable, interruptBasis, ...(faultFrom && { faultFrom: [...faultFrom] }) };
      const [told] = atMain(more);
      expect(told?.remedy.endsWith(`, or write the makers' figures: ${figures}`), told?.remedy).toBe(true);
    });

    test('and none where the makers have spoken: the larger form alone does', () => {
      const certain = { interruptA: 1000, needsInterruptA: 1500, faultA: 1500, faultByMakersA: 1001 };
      const [told] = atMain({ interruptBasis: 'maker', ...certain });
      expect(told?.level).toBe('stop');
      expect(told?.remedy).not.toContain('figures');
      const [unknown] = atMain({ interruptBasis: 'maker', ...certain, interruptA: null });
      expect(unknown?.level).toBe('caution');
      expect(unknown).not.toHaveProperty('value');
    });
  });
});

describe('which fuses stand first behind a battery', () => {
  const weak = { interruptBasis: 'maker', interruptA: 100, needsInterruptA: 1500, faultA: 1500 } as const;

  test('is read from the wires where the plan names no source, and from the plan where no wire leads there', () => {
    expect(atMain({ ...weak, source: null })[0]?.of).toEqual(['main-fuse', 'battery']);
    const apart = found(
      'fuse-interrupting',
      about({ plan: (plan) => Object.assign(fuse(plan, 'block.OUT2'), { ...weak, source: 'battery' }) }),
    );
    expect(apart.map(({ of }) => of)).toEqual([['block.OUT2', 'battery']]);
    const none = about({ plan: (plan) => Object.assign(fuse(plan, 'block.OUT2'), weak) });
    expect(found('fuse-interrupting', none)).toEqual([]);
  });

  test('counts batteries and banks of capacitors, not the alternator', () => {
    const first = (from: string) =>
      atMain(weak, ({ job }) => {
        job.devices.bank = { part: 'bank', on: 'main' };
        entry(job.links, 'feed').from = from;
      }).map(({ of }) => of);
    expect(first('bank.POS')).toEqual([['main-fuse', 'bank', 'battery']]);
    const generator = about({
      content: ({ job }) => {
        entry(job.links, 'feed').from = 'alternator.B+';
      },
      plan: (plan) => Object.assign(fuse(plan, 'main-fuse'), { ...weak, source: null }),
    });
    expect(found('fuse-interrupting', generator)).toEqual([]);
  });

  test('leaves those that the vehicle came with to its maker', () => {
    const fitted = (holder: 'fitted' | 'added') =>
      about({
        content: ({ vehicle, job }) => {
          if (holder === 'fitted') vehicle.fitted.own = { part: 'holder', zone: 'engine-bay' };
          else job.devices.own = { part: 'holder', in: 'bay' };
          job.links['own-tail'] = { from: 'battery.POS', to: 'own.IN' };
        },
        plan: (plan) => {
          plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...weak, id: 'own', item: 'own' });
        },
      });
    expect(found('fuse-interrupting', fitted('added'))).toHaveLength(1);
    expect(found('fuse-interrupting', fitted('fitted'))).toEqual([]);
  });
});

describe('a fuse behind others that a short may overtax', () => {
  const behind = (
    more: Partial<PlanFuse>,
    mainA: number | null,
    plan: (plan: BuildPlan) => void = () => {},
  ) =>
    found(
      'fuse-interrupting-downstream',
      about({
        plan: (made) => {
          const short = { faultA: 1400, interruptA: 1000, needsInterruptA: null };
          Object.assign(fuse(made, 'block.OUT2'), short, more);
          fuse(made, 'main-fuse').interruptA = mainA;
          plan(made);
        },
      }),
    );

  test('is cleared by one before it that interrupts just as much, and named with both figures', () => {
    expect(behind({}, 1400)).toMatchObject([
      { level: 'note', of: ['block.OUT2', 'main-fuse'], value: 1400, limit: 1000, unit: 'A' },
    ]);
    expect(behind({}, 1399)).toMatchObject([{ level: 'caution', of: ['block.OUT2'] }]);
    expect(behind({}, null)).toMatchObject([{ level: 'caution', of: ['block.OUT2'] }]);
  });

  test('is not cleared by itself, nor by a strong one that stands elsewhere', () => {
    const beside = (plan: BuildPlan) => {
      fuse(plan, 'block.OUT1').interruptA = 6000;
    };
    expect(behind({}, 1200, beside)).toMatchObject([{ level: 'caution', of: ['block.OUT2'] }]);
    expect(behind({}, 6000, beside)).toMatchObject([{ level: 'note', of: ['block.OUT2', 'main-fuse'] }]);
  });

  test('is the affair of the first one where it is itself the first, and of none without figures', () => {
    expect(behind({ needsInterruptA: 1400 }, 6000)).toEqual([]);
    expect(behind({ source: 'battery' }, 6000)).toEqual([]);
    expect(behind({ faultA: null }, 6000)).toEqual([]);
    expect(behind({ interruptA: null }, 6000)).toEqual([]);
  });

  test('is told with those that are alike alone: another fault of the same block has its own sentence', () => {
    const three = (more: Partial<PlanFuse>) => (plan: BuildPlan) => {
      const short = { faultA: 1500, interruptA: 1000, needsInterruptA: null };
      Object.assign(fuse(plan, 'block.OUT3'), short);
      Object.assign(fuse(plan, 'block.OUT1'), short, more);
    };
    const subjects = (more: Partial<PlanFuse>) => behind({}, 6000, three(more)).map(({ of }) => of);
    expect(subjects({ form: 'standard-blade' })).toEqual([
      ['block.OUT1', 'block.OUT2', 'block.OUT3', 'main-fuse'],
    ]);
    // A fuse of another form is another to buy.
    expect(subjects({ form: 'maxi-blade' })).toEqual([
      ['block.OUT1', 'main-fuse'],
      ['block.OUT3', 'block.OUT2', 'main-fuse'],
    ]);
    const [told] = behind({}, 6000, three({ form: 'standard-blade' }));
    expect(told?.message).toContain('drives up to 1500 A through them; main-fuse before it clears that');
    expect(behind({}, 6000)[0]?.message).toContain('drives up to 1400 A through it;');
  });

  test('leaves those that the vehicle came with to its maker', () => {
    const fitted = about({
      content: ({ vehicle }) => {
        vehicle.fitted.own = { part: 'holder', zone: 'engine-bay' };
      },
      plan: (plan) => {
        const short = { faultA: 1400, interruptA: 1000, needsInterruptA: null, source: null };
        plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...short, id: 'own', item: 'own' });
      },
    });
    expect(found('fuse-interrupting-downstream', fitted)).toEqual([]);
  });
});
