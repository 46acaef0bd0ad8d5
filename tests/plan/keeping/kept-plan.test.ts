import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { ReadJob } from '../../../lib/model/content/resolved-job.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { keepEdits } from '../../../lib/plan/keeping/keep-edits.ts';
import { keptName, namesOfKind, valuesNamed } from '../../../lib/plan/keeping/kept-names.ts';
import { type KeptKind, keptKinds, keptValues } from '../../../lib/plan/keeping/kept-values.ts';
import { onceEach } from '../../../lib/plan/once-each.ts';
import { splice } from '../../../lib/read/yaml/splice.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';
import { judge } from '../../../lib/rules/judge.ts';
import { casesOf } from '../../long-run.ts';
import { readShort, shortJobs, shortText } from '../../short-jobs/short-shop.ts';
import { demoJobs, root } from '../demo.ts';
import { planKept } from '../plan-kept.ts';

interface Planned {
  readonly text: string;
  readonly job: ReadJob;
  readonly plan: BuildPlan;
}

function planned(text: string): Planned {
  const { job, problems } = readShort(text);
  if (!job) throw new Error(problems.map(({ message }) => message).join('\n'));
  const { plan, remarks } = planKept(job);
  return { text, job, plan: { ...plan, findings: judge(job, plan, remarks) } };
}

/** A short job or a demo job of that name. */
const jobOf = onceEach(
  (name: string) => {
    const [from, id = ''] = name.split(' ');
    return planned(
      from === 'short' ? shortText(id) : readFileSync(join(root, `content/jobs/${id}.yaml`), 'utf8'),
    );
  },
  (name) => name,
);

/** The job file with all that is kept of some kinds. */
function keptText({ text, job, plan }: Planned, kinds: readonly KeptKind[] = keptKinds): string {
  const doc = readYaml(`content/jobs/${job.id}.yaml`, text).value;
  if (!doc) throw new Error(`${job.id} can not be read.`);
  const after = splice(text, keepEdits(doc, keptValues(job, plan), kinds, plan).edits);
  if (typeof after !== 'string') throw new Error(after.fault);
  return after;
}

/** All that is built, set and labelled: what of it was proposed and what is written no longer matters. */
function builtOf({ plan }: Planned) {
  const { items, power, audio, boards, wires, runs, cables, controls, terminals, pick } = plan;
  return {
    items,
    power,
    audio,
    // A length that a rule proposed is given once it is written.
    wires: wires.map(({ cutAs: _cutAs, measured: _measured, ...one }) => one),
    runs,
    cables,
    pick,
    terminals: terminals.map(({ reason: _, ...one }) => one),
    controls: controls.map(({ chosen: _, ...one }) => one),
    boards: boards.map(({ placements, holes, routes, sheet, datumInSpace, fixings, crossings }) => {
      const places = placements.map(({ chosen: _chosen, score: _score, ...one }) => one);
      return { placements: places, holes, routes, sheet, datumInSpace, fixings, crossings };
    }),
  };
}

/** Figures to a millionth: a place that is written is read back to a nanometre. */
function rounded(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_, one) => (typeof one === 'number' ? Number(one.toPrecision(6)) + 0 : one)),
  );
}

/** Findings that ask whether a proposal may stand: what is written may. */
const ofProposals = ['open-only-by-proposal', 'length-not-measured', 'fader-moves-bass'];

const gravest = ({ plan }: Planned) =>
  plan.findings
    .filter(({ level, rule }) => level !== 'note' && !ofProposals.includes(rule))
    .map(({ level, rule, related }) => [level, rule, related]);

const all = [...shortJobs.map((id) => `short ${id}`), ...demoJobs.map((id) => `demo ${id}`)];
const quick = [
  'short one-bass-amplifier',
  'short open-boat',
  'short under-seat-five',
  'demo under-seat-five',
];

describe.each(casesOf(all, (name) => quick.includes(name)))('%s', (name) => {
  test('is planned the same once all of it is kept, and proposes nothing any more', () => {
    const before = jobOf(name);
    const after = planned(keptText(before));
    expect(rounded(builtOf(after))).toEqual(rounded(builtOf(before)));
    expect(gravest(after)).toEqual(gravest(before));
    expect(after.plan.proposals).toEqual([]);
    expect(keptText(after)).toBe(after.text);
  });

  test('has every line of its file still, in order', () => {
    const before = jobOf(name);
    const after = keptText(before).split('\n');
    let at = 0;
    for (const line of before.text.split('\n')) {
      // Within braces the line goes on.
      const begin = line.replace(/[ }]*(#.*)?$/, '');
      const found = after.findIndex((one, index) => index >= at && one.startsWith(begin));
      expect(found, line).toBeGreaterThanOrEqual(at);
      at = found + 1;
    }
  });
});

describe('of one kind', () => {
  test.each(keptKinds)('%s alone change nothing of the plan', (kind) => {
    const before = jobOf('short open-boat');
    const after = planned(keptText(before, [kind]));
    expect(rounded(builtOf(after))).toEqual(rounded(builtOf(before)));
  });
});

test('a job that is written in rows is planned the same once its links are kept', () => {
  const row = `    fixings:
      f1..4: { point: [rear-outer, rear-inner, front-inner, front-outer], fixing: bolt-m6-40, spacer: 12 mm }`;
  const before = planned(shortText('under-seat-five').replace('    spacer: 12 mm', row));
  expect(before.text).toContain('f1..4');
  const after = planned(keptText(before, ['links']));
  expect(rounded(builtOf(after))).toEqual(rounded(builtOf(before)));
});

test('labels of links that are proposed themselves wait for them', () => {
  const { text, job, plan } = jobOf('short open-boat');
  const doc = readYaml(`content/jobs/${job.id}.yaml`, text).value;
  if (!doc) throw new Error(`${job.id} can not be read.`);
  const values = keptValues(job, plan);
  const labels = values.filter(({ kind }) => kind === 'labels');
  expect(labels.length).toBeGreaterThan(5);
  expect(keepEdits(doc, values, ['labels'], plan)).toEqual({
    edits: [],
    kept: [],
    waiting: labels,
    alongside: [],
  });
  expect(keepEdits(doc, values, ['links', 'labels'], plan).waiting).toEqual([]);
});

describe('one link alone', () => {
  const asWritten = () => jobOf('short under-seat-five');
  const linksIn = ({ links }: ReadJob) =>
    links.map(({ id, from, to }) => [id, from, to]).toSorted(([a], [b]) => (String(a) < String(b) ? -1 : 1));
  const withOne = (name: string) => {
    const { text, job, plan } = asWritten();
    const doc = readYaml(`content/jobs/${job.id}.yaml`, text).value;
    if (!doc) throw new Error(`${job.id} can not be read.`);
    const values = keptValues(job, plan);
    const single = valuesNamed(values, [{ kind: 'links', name }]);
    const edits = keepEdits(doc, values, { kinds: [], single }, plan);
    const after = splice(text, edits.edits);
    if (typeof after !== 'string') throw new Error(after.fault);
    return { ...edits, after };
  };

  test('is written with what it names, and nothing waits for anything', () => {
    const { job, plan } = asWritten();
    const names = namesOfKind(keptValues(job, plan), 'links').filter((name) => job.file.links[name]);
    expect(names.length).toBeGreaterThan(5);
    for (const name of names) {
      const { kept, waiting, after } = withOne(name);
      expect(waiting).toEqual([]);
      const links = kept.flatMap(({ path: [section, id] }) => (section === 'links' ? [id] : []));
      // The conductors of one cable are written together.
      const { cable } = job.file.links[name] ?? {};
      const own = Object.keys(job.file.links).filter((other) => {
        return other === name || (cable !== undefined && job.file.links[other]?.cable === cable);
      });
      expect(links.toSorted()).toEqual(own.toSorted());
      // What is written governs, and the rest is proposed as it was: not one link more or less.
      const { job: read, problems } = readShort(after);
      expect(problems.map(({ message }) => message)).toEqual([]);
      if (read) expect([name, linksIn(read)]).toEqual([name, linksIn(job)]);
    }
  });

  test('moves nothing, and changes no wire, label or fuse', () => {
    const [feed = ''] = Object.keys(asWritten().job.file.links).filter((name) => name.startsWith('feed-'));
    const built = (one: Planned) => {
      const { boards, wires, power } = one.plan;
      return rounded([
        boards.map(({ placements }) =>
          placements.map(({ item, xM, yM, turnDeg }) => [item, xM, yM, turnDeg]),
        ),
        wires.map(({ id, label, size, lengthM }) => [id, label, size, lengthM]).toSorted(),
        power.fuses.map(({ id, ratingA }) => [id, ratingA]).toSorted(),
      ]);
    };
    expect(built(planned(withOne(feed).after))).toEqual(built(asWritten()));
  });

  test.each([
    ['links.feed-amp', { kind: 'links', name: 'feed-amp' }],
    ['labels.a.b', { kind: 'labels', name: 'a.b' }],
    ['links', null],
    ['links.', null],
    ['linked.feed-amp', null],
  ])('%s is read as %j', (word, name) => {
    expect(keptName(word)).toEqual(name);
  });
});

describe('what is kept does not move', () => {
  const placesOf = ({ plan }: Planned) =>
    plan.boards.flatMap(({ id, placements }) =>
      placements.map(({ item, xM, yM, turnDeg }) => [
        id,
        item,
        Math.round(xM * 1e6),
        Math.round(yM * 1e6),
        turnDeg,
      ]),
    );
  const labelsOf = ({ plan }: Planned) => plan.wires.map(({ id, label, from, to }) => [id, label, from, to]);

  test('when a speaker is exchanged, a title is changed and a device is added', () => {
    const before = jobOf('short under-seat-five');
    const kept = keptText(before);
    const changed = kept
      .replace('subwoofer-10-single-4', 'subwoofer-10-dual-2')
      .replace(/^title: .*$/m, 'title: "Another title"')
      .replace(/^devices:$/m, 'devices:\n  extra: { part: dist-plain-2, title: Extra, on: board }')
      .replace(/^left-open:$/m, 'left-open:\n  extra.IN: spare\n  extra.OUT1: spare\n  extra.OUT2: spare');
    expect(changed).not.toBe(kept);
    const after = planned(changed);
    expect(placesOf(after).filter(([, item]) => item !== 'extra')).toEqual(placesOf(before));
    const ids = new Set(before.plan.wires.map(({ id }) => id));
    expect(labelsOf(after).filter(([id]) => ids.has(String(id)))).toEqual(labelsOf(before));
  });
});
