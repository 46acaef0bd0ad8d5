import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { planPower } from '../../../lib/plan/power/plan-power.ts';
import { one, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { settledPower } from './settled-power.ts';
import { isolated } from './two-batteries.ts';

type Change = (content: Written) => void;
function planned(...changes: readonly Change[]) {
  const sizing = settledPower((content) => {
    for (const change of changes) change(content);
  });
  const book = new PlanBook();
  const power = planPower(sizing, sizing, book);
  const traces = book.traces();
  return {
    power,
    traces,
    sizing,
    fuse: (id: string) => one(power.fuses, (fuse) => fuse.id === id),
    conductor: (id: string) => one(power.conductors, (conductor) => conductor.id === id),
    input: (trace: string, name: string) => traces[trace]?.inputs.find((each) => each.name === name)?.value,
    remarks: book.remarks().map(({ remark }) => remark),
  };
}
const mainFuse =
  (fuse: `${number} A`): Change =>
  ({ job }) => {
    job.devices['main-fuse'] = { part: 'holder', in: 'bay', fuse };
  };

describe('a fuse in the plan', () => {
  test('stands as far from its source as the conductors between them are long; behind another fuse it has none', () => {
    const { fuse, traces } = planned(isolated);
    expect(fuse('main-fuse')).toMatchObject({ source: 'battery', distanceM: 1, item: 'main-fuse', way: '' });
    expect(traces['power.fuses.main-fuse.distanceM']).toMatchObject({
      unit: 'm',
      formula: 'the sum of the conductors between source and fuse',
      inputs: [{ name: 'feed', value: 1, unit: 'm' }],
    });
    expect(fuse('block.OUT1')).toMatchObject({ source: null, distanceM: null, item: 'block', way: 'OUT1' });
    expect(traces['power.fuses.block.OUT1.distanceM']).toBeUndefined();
  });

  test('reached by leads side by side stands as far as the longer of them, which may be the one that shorts', () => {
    const { fuse, traces } = planned(isolated, ({ job, parts }) => {
      Object.assign(parts.agm ?? {}, {
        terminals: {
          POS: { role: 'source-positive', joint: 'stud', stud: 'M8', conductors: 4 },
          NEG: { role: 'source-negative', joint: 'stud', stud: 'M8' },
        },
      });
      job.links['feed-2'] = { from: 'battery.POS', to: 'main-fuse.IN', wire: 'cable', length: '3 m' };
    });
    expect(fuse('main-fuse').distanceM).toBe(3);
    expect(traces['power.fuses.main-fuse.distanceM']).toMatchObject({
      formula: expect.stringMatching(/longest of the ways side by side/),
      inputs: [],
    });
  });

  test('protects what the thinnest conductor behind it carries', () => {
    const { fuse, conductor, input } = planned(isolated);
    const least = Math.min(...fuse('second-fuse').protects.map((id) => conductor(id).ampacityA));
    expect(fuse('second-fuse').protects.length).toBeGreaterThan(1);
    expect(fuse('second-fuse').leastAmpacityA).toBe(least);
    expect(input('power.fuses.second-fuse.ratingA', 'least ampacity')).toBe(least);
  });

  test('says whether its rating was given or chosen, with what it came from', () => {
    const given = planned(mainFuse('125 A'));
    expect(given.fuse('main-fuse')).toMatchObject({ chosen: 'given', ratingA: 125, reason: 'given: 125 A' });
    expect(given.traces['power.fuses.main-fuse.ratingA']).toMatchObject({
      origin: 'given',
      rule: 'fuse-choice',
    });
    const open = planned();
    const fuse = open.fuse('main-fuse');
    expect(fuse.chosen).toBe('computed');
    expect(open.traces['power.fuses.main-fuse.ratingA']).toMatchObject({ origin: 'computed', mark: 'cp' });
    expect(open.input('power.fuses.main-fuse.ratingA', 'I')).toBe(fuse.ratedA);
    expect(open.input('power.fuses.main-fuse.ratingA', 'In')).toBe(
      open.traces['power.fuses.main-fuse.wantedA']?.value,
    );
    expect(open.input('power.fuses.main-fuse.ratingA', 'made')).toMatch(/80, .* A$/);
    expect(fuse.reason).not.toMatch(/given/);
  });

  test('says in its working whether what was chosen lies on the shelf', () => {
    const shelf = (pieces: number) =>
      planned((content) => {
        content.parts['large-fuse'] = { kind: 'fuse', title: 'Fuse', form: 'large-bolt-in', rating: '40 A' };
        content.shop.stock = { 'large-fuse': { pieces } };
        content.job.devices['main-fuse'] = { part: 'holder', in: 'bay', fuse: '40 A' };
      });
    const key = 'power.fuses.main-fuse.ratingA';
    const [some, none] = [shelf(1), shelf(0)];
    const chosen = (found: typeof some) =>
      found.sizing.fuses.find(({ edge }) => edge.id === 'main-fuse')?.choice?.chosen;
    expect(some.input(key, 'of which on the shelf')).toBe(
      (chosen(some)?.stockQuantity ?? 0) > 0 ? 'yes' : 'no',
    );
    expect(none.input(key, 'of which on the shelf')).toBe('no');
    expect(some.fuse('main-fuse').stockQuantity).toBe(1);
    expect(none.fuse('main-fuse').stockQuantity).toBe(0);
  });

  test('names what would have been chosen first among what else may stand there, where the job gave another', () => {
    const chosen = planned().fuse('main-fuse').ratingA;
    const given = planned(mainFuse('125 A')).fuse('main-fuse');
    expect(given.alternatives[0]?.ratingA).toBe(chosen);
    const same = planned(mainFuse(`${chosen ?? 0} A`)).fuse('main-fuse');
    expect(same.alternatives.map(({ form, ratingA }) => [form, ratingA])).not.toContainEqual([
      'large-bolt-in',
      chosen,
    ]);
    for (const { areaM2, note } of given.alternatives) {
      expect(areaM2).toBeGreaterThanOrEqual(0);
      expect(note).toMatch(/^(keeps the margin on|carries the rated current without)/);
    }
  });

  test('lists the devices behind it, and its current as their sum', () => {
    const { fuse, traces } = planned();
    expect([...fuse('main-fuse').loads].toSorted()).toEqual(['amp', 'dsp', 'radio']);
    expect(fuse('block.OUT2').loads).toEqual(['dsp']);
    const inputs = traces['power.fuses.block.OUT1.ratedA']?.inputs ?? [];
    expect(inputs.map(({ name }) => name)).toContain(
      traces['power.fuses.block.OUT1.ratedA']?.formula?.includes('solved') ? 'solved' : 'amp',
    );
  });

  test('goes by what was solved where that is more, and says both figures', () => {
    const { sizing } = planned();
    const book = new PlanBook();
    const raised = sizing.fuses.map((fuse) => ({
      ...fuse,
      ratedA: 31,
      solvedA: 31,
      shares: [['amp', 29.04] as const],
    }));
    planPower(sizing, { ...sizing, fuses: raised }, book);
    expect(book.traces()['power.fuses.main-fuse.ratedA']).toMatchObject({
      value: 31,
      inputs: [
        { name: 'sum', value: 29.04, unit: 'A' },
        { name: 'solved', value: 31, unit: 'A' },
      ],
    });
    const plain = new PlanBook();
    const below = raised.map((fuse) => ({ ...fuse, solvedA: 30 }));
    planPower(sizing, { ...sizing, fuses: below }, plain);
    expect(plain.traces()['power.fuses.main-fuse.ratedA']?.inputs).toEqual([
      { name: 'amp', value: 29.04, unit: 'A' },
    ]);
  });

  test('says what flows through it for long, and at which point that is', () => {
    const { fuse, traces, power } = planned(isolated);
    const main = fuse('main-fuse');
    expect(main.continuousA).toBeGreaterThan(0);
    expect(traces['power.fuses.main-fuse.continuousA']?.value).toBe(main.continuousA);
    const title = one(power.points, ({ name }) => name === main.continuousAt).title;
    const greatest = traces['power.fuses.main-fuse.continuousA']?.inputs.find(({ name }) => name === title);
    expect(greatest?.value).toBe(main.continuousA);
  });
});

describe('a conductor in the plan', () => {
  test('is held against each limit of each of its zones, with what lowered it', () => {
    const { conductor } = planned(isolated);
    const main = conductor('main');
    expect(main.limits.map(({ level }) => level)).toEqual(expect.arrayContaining(['stop', 'caution']));
    expect(main.limits).toHaveLength(2 * new Set(main.limits.map(({ zone }) => zone)).size);
    expect(Math.min(...main.limits.flatMap(({ level, limit }) => (level === 'stop' ? [limit] : [])))).toBe(
      main.ampacityA,
    );
    expect(Math.min(...main.limits.flatMap(({ level, limit }) => (level === 'caution' ? [limit] : [])))).toBe(
      main.cautionA,
    );
    for (const { value, what } of main.limits) {
      expect(value).toBe(main.neededA);
      expect(what).toMatch(/^ampacity(, lowered by .+)?$/);
    }
  });

  test('has its fuses, what it must carry and its working', () => {
    const { conductor, traces } = planned(isolated);
    expect(conductor('board-feed')).toMatchObject({
      role: 'power',
      fed: true,
      from: 'second-fuse.OUT',
      to: 'block.IN',
    });
    expect(conductor('board-feed').fuses).toEqual(expect.arrayContaining(['second-fuse']));
    for (const name of ['neededA', 'dropV', 'conductorC', 'ohmPerM', 'cautionA', 'ampacityA'])
      expect(traces[`power.conductors.main.${name}`], name).toBeDefined();
    expect(traces['power.conductors.main.neededA']?.value).toBe(conductor('main').neededA);
    expect(traces['power.conductors.main.ampacityA']?.value).toBe(conductor('main').ampacityA);
  });

  test('without a mark on its insulation counts as the shop says', () => {
    const { conductor } = planned(isolated, (content) => {
      delete partIn(content, 'cable', 'wire').insulation;
    });
    expect(conductor('main').insulationC).toBe(60);
    expect(planned(isolated).conductor('main').insulationC).toBe(105);
  });

  test('that no source feeds says so; a ground is none that is fed', () => {
    const { conductor } = planned(isolated, ({ job }) => {
      job.devices.loose = { part: 'holder', in: 'boot' };
      job.devices.lone = { part: 'holder', in: 'boot' };
      job.links.dead = { from: 'loose.OUT', to: 'lone.IN', wire: 'cable', length: '1 m' };
    });
    expect(conductor('dead').fed).toBe(false);
    expect(conductor('main').fed).toBe(true);
    expect(conductor('second-ground').fed).toBe(true);
  });

  test('that is given too thin names what would carry its fuse, with the longest piece of it', () => {
    const { conductor } = planned(isolated, mainFuse('100 A'), (content) => {
      const cable = partIn(content, 'cable', 'wire');
      content.parts.thin = { ...cable, title: '8 AWG', size: '8 AWG' };
      content.parts.thick = { ...cable, title: '1/0 AWG', size: '1/0 AWG' };
      content.shop.stock = { thick: { reels: ['2 m', '5 m'] } };
      content.job.links.main = { from: 'main-fuse.OUT', to: 'isolator.A', wire: 'thin', length: '1 m' };
    });
    expect(conductor('main').chosen).toBe('given');
    expect(conductor('main').alternatives?.at(-1)).toMatchObject({
      part: 'thick',
      size: { label: '1/0 AWG' },
      stockM: 5,
      note: 'carries its fuse of 100 A',
    });
  });
});
