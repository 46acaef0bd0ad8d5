import { describe, expect, test } from 'vitest';
import { type BuiltJob, builtBefore } from '../../../lib/model/content/built.ts';
import type { ReadJob } from '../../../lib/model/content/resolved-job.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { builtJob } from '../../../lib/plan/built/built-job.ts';
import { onceEach } from '../../../lib/plan/once-each.ts';
import { judge } from '../../../lib/rules/judge.ts';
import { casesOf } from '../../long-run.ts';
import { readShort, shortJobs, shortText } from '../../short-jobs/short-shop.ts';
import { planKept } from '../plan-kept.ts';

interface Planned {
  readonly job: ReadJob;
  readonly plan: BuildPlan;
}

function planned(text: string, before?: BuildPlan): Planned {
  const labels = Object.fromEntries((before?.wires ?? []).map(({ id, label }) => [id, label]));
  const { job, problems } = readShort(text, { labels, built: before ? [builtJob(before)] : [] });
  if (!job) throw new Error(problems.map(({ message, remedy }) => `${message}: ${remedy}`).join('\n'));
  const { plan, remarks } = planKept(job);
  return { job, plan: { ...plan, findings: judge(job, plan, remarks) } };
}

/** The text of the next revision, with changes. */
function nextText(id: string, ...changes: readonly (readonly [found: string, instead: string])[]): string {
  return changes.reduce(
    (text, [found, instead]) => {
      if (!text.includes(found)) throw new Error(`${id} has no "${found}".`);
      return text.replace(found, instead);
    },
    shortText(id).replace(/^title: /m, 'revision: B\ntitle: '),
  );
}

const releasedPlan = onceEach(
  (id: string) => planned(shortText(id)).plan,
  (id) => id,
);

const next = (id: string, ...changes: Parameters<typeof nextText>[1][]) =>
  planned(nextText(id, ...changes), releasedPlan(id));

const changedIn = ({ plan }: Planned) => plan.built?.changed.map(({ id }) => id);
const anewIn = ({ plan }: Planned) =>
  plan.proposals?.filter(({ since }) => since === undefined).map(({ id }) => id);
const stopsIn = ({ plan }: Planned) => plan.findings.filter(({ level }) => level === 'stop');

/** All that is built: to a micrometre, which is less than anything is cut to. */
function builtOf({ boards, wires, items }: BuildPlan): unknown {
  const um = (lengthM: number) => Math.round(lengthM * 1e6);
  return {
    items: items.map(({ id, part }) => [id, part]),
    wires: wires.map(({ id, label, from, to, part, lengthM }) => [id, label, from, to, part, um(lengthM)]),
    places: boards.flatMap(({ id, sheet, placements, fixings }) => [
      [id, sheet, fixings.map((one) => [one.id, one.part])],
      ...placements.map(({ item, xM, yM, turnDeg, raisedM }) => [item, um(xM), um(yM), turnDeg, um(raisedM)]),
    ]),
  };
}

describe.each(casesOf(shortJobs, (id) => ['under-seat-five', 'open-boat'].includes(id)))('%s', (id) => {
  test('of which nothing is changed is built as it was released', () => {
    const later = next(id);
    expect(builtOf(later.plan)).toEqual(builtOf(releasedPlan(id)));
    expect(later.plan.built).toMatchObject({ revision: 'A', changed: [] });
    const built = builtJob(releasedPlan(id));
    const parts = [built.items, built.places, built.boards, built.wires];
    expect(later.plan.built?.unchanged.length).toBe(parts.flatMap((one) => Object.keys(one)).length);
    expect(stopsIn(later)).toEqual([]);
    expect(anewIn(later)?.filter((one) => !/filters|mix|left-open/.test(one))).toEqual([]);
  });
});

describe('a later revision', () => {
  test('with another speaker moves no device and no wire but those of that speaker', () => {
    const later = next('under-seat-five', ['subwoofer-10-single-4', 'subwoofer-10-dual-2']);
    expect(changedIn(later)).toEqual(['sub', 'to-sub.+', 'to-sub.-']);
    expect(later.plan.wires.map(({ id }) => id)).toContain('sub-series');
    expect(later.plan.terminals.filter(({ state }) => state === 'unaccounted')).toEqual([]);
  });

  test('keeps a place that a search would not come to again', () => {
    const before = planned(
      shortText('under-seat-five').replace('on: board }', 'on: board, at: { x: 5 in, y: 3 in } }'),
    ).plan;
    const again = planned(nextText('under-seat-five'), before);
    const [place] = again.plan.boards[0]?.placements ?? [];
    expect(place).toMatchObject({ item: 'amp', turnDeg: 0 });
    expect(place?.xM).toBeCloseTo(0.127, 6);
    expect(place?.yM).toBeCloseTo(0.0762, 6);
  });

  test('places anew what the job names', () => {
    const before = planned(
      shortText('under-seat-five').replace('on: board }', 'on: board, at: { x: 5 in, y: 3 in } }'),
    ).plan;
    const named = planned(nextText('under-seat-five', ['devices:', 'anew: [amp]\ndevices:']), before);
    expect(changedIn(named)).toContain('place of amp');
  });

  test('lets what is written now go before what was built', () => {
    const later = next('under-seat-five', ['on: board }', 'on: board, at: { x: 5 in, y: 3 in } }']);
    const [place] = later.plan.boards[0]?.placements ?? [];
    expect([place?.xM, place?.yM].map((one) => one?.toFixed(4))).toEqual(['0.1270', '0.0762']);
  });

  test('proposes a place anew that the board no longer has', () => {
    const at: [string, string] = ['width: 17 in', 'width: 15 in'];
    const before = releasedPlan('under-seat-five').boards[0]?.placements[0];
    const later = next('under-seat-five', at);
    const [now] = later.plan.boards[0]?.placements ?? [];
    expect(before && now && now.xM + now.widthM <= 15 * 0.0254 + 1e-9).toBe(true);
  });

  test('cuts a wire anew that has become too small, and leaves the others', () => {
    const plan = releasedPlan('under-seat-five');
    const thin = {
      ...plan,
      wires: plan.wires.map((wire) =>
        wire.id === 'feed-amp' ? { ...wire, part: 'wire-power-12-rd' } : wire,
      ),
    };
    const later = planned(nextText('under-seat-five'), thin);
    expect(changedIn(later)).toEqual(['feed-amp']);
    const feed = (one: BuildPlan) => one.wires.find(({ id }) => id === 'feed-amp');
    expect(feed(later.plan)?.part).toBe(feed(plan)?.part);
    expect(later.job.held?.reels).toContain('feed-amp');
  });

  test('has a name under anew that is none of the job told at its place', () => {
    const { problems } = readShort(nextText('under-seat-five', ['devices:', 'anew: [ampp]\ndevices:']));
    expect(problems.map(({ where, message }) => [where.path, message])).toEqual([
      ['/anew/0', 'there is no device, link or board "ampp"'],
    ]);
  });
});

test('a revision is built on the one that was released before it', () => {
  const built = ['A', 'B'].map(
    (revision): BuiltJob => ({ revision, items: {}, places: {}, boards: {}, wires: {}, proposals: [] }),
  );
  const before = (revision: string) => builtBefore({ built }, revision)?.revision ?? null;
  expect([before('A'), before('B'), before('C')]).toEqual([null, 'A', 'B']);
  expect(builtBefore({ built: [] }, 'A')).toBeNull();
});
