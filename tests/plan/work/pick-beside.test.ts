import { describe, expect, test } from 'vitest';
import type { ReleasedFacts } from '../../../lib/model/content/built.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { builtJob } from '../../../lib/plan/built/built-job.ts';
import { shelfTakes } from '../../../lib/plan/work/shelf-takes.ts';
import { promiseOf } from '../../../lib/shelf/promising.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { jobOf } from '../plan-small-shop.ts';

const plan = (released: ReleasedFacts, ...changes: readonly Change[]): BuildPlan =>
  planKept(jobOf(smallShop(...changes), { demo: released })).plan;

const first = plan({ labels: {}, built: [] });
const releasedA: ReleasedFacts = { labels: {}, built: [builtJob(first)], takes: { A: shelfTakes(first) } };
const revisionB = (installed: string): Change =>
  inJob(
    'revision: A\n',
    `revision: B\nrevisions:\n  - { revision: A, date: 2026-03-14, what: First issue${installed} }\n  - { revision: B, date: 2026-05-01, what: More }\n`,
  );
const builtIn = revisionB(', installed: 2026-03-20');
/** A second holder with a wire of its own. */
const more = [
  inJob('  sub: { part', '  spare: { part: holder-a, in: bay }\n  sub: { part'),
  inJob('  feed: {', '  second: { from: main-fuse.OUT, to: spare.IN, length: 1 ft }\n  feed: {'),
  inJob('left-open:\n', 'left-open:\n  spare.OUT: not used yet\n'),
];
const listed = ({ pick }: BuildPlan) =>
  pick.map(({ part, quantity, unit }) => `${part} ${Number(quantity.toFixed(3))} ${unit}`);

describe('the pick list of a draft on a revision that is built in', () => {
  test('has nothing where nothing is new', () => {
    const next = plan(releasedA, builtIn);
    expect(listed(next)).toEqual([]);
    expect(next.pickBeyond?.revision).toBe('A');
    expect(next.pickBeyond?.inPlace.map(({ part }) => part)).toEqual(first.pick.map(({ part }) => part));
  });

  test('has what is new alone: the part, its wire, what is crimped on it, its fuse', () => {
    const next = plan(releasedA, builtIn, ...more);
    const second = next.wires.find(({ id }) => id === 'second');
    const parts = listed(next);
    expect(parts).toContain('holder-a 1 piece');
    expect(parts).toContain(`${second?.part} 0.305 m`);
    expect(parts.join()).not.toMatch(/amp-a|woofer-a|lead-a|bolt-a|blue-18|white-12/);
  });

  test('has a wire that is cut otherwise, whole', () => {
    const next = plan(
      releasedA,
      builtIn,
      inJob('length: 12 in }', 'length: 18 in }'),
      inJob('status:', 'anew: [ground]\nstatus:'),
    );
    const ground = next.wires.find(({ id }) => id === 'ground');
    expect(listed(next)).toContain(`${ground?.part} 0.457 m`);
    expect(listed(next).join()).not.toMatch(/amp-a|holder-a/);
  });

  test('has everything where the revision before is not built in, or none is released', () => {
    expect(listed(plan(releasedA, revisionB('')))).toEqual(listed(first));
    expect(plan(releasedA, revisionB('')).pickBeyond).toBeUndefined();
    expect(first.pickBeyond).toBeUndefined();
  });
});

// What is listed beside a revision is not taken off once more where it is promised.
test('what a released list beside a built-in revision takes is promised, all of it', () => {
  const next = plan(releasedA, builtIn, ...more);
  const released = [
    { revision: 'A', issuedOn: '2026-03-14', takes: shelfTakes(first) },
    { revision: 'B', issuedOn: '2026-05-01', takes: shelfTakes(next) },
  ];
  const standing = {
    ...{ revision: 'B', status: 'released' },
    revisions: [
      { revision: 'A', isInstalled: true },
      { revision: 'B', isInstalled: false },
    ],
  };
  const promised = promiseOf('demo', released, standing);
  expect(promised?.pieces['holder-a']).toBe(1);
  expect(promised?.pieces['amp-a']).toBeUndefined();
  expect(promised?.cuts.map(({ of }) => of)).toEqual(expect.arrayContaining(['wire second']));
  expect(promised?.cuts.map(({ of }) => of)).not.toContain('wire feed');
});
