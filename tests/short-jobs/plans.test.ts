import { expect, test } from 'vitest';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import { judge } from '../../lib/rules/judge.ts';
import { casesOf } from '../long-run.ts';
import { demoJob } from '../plan/demo.ts';
import { rewrittenJob, shortJob, shortJobs } from './short-shop.ts';

function judged(job: ReadJob): BuildPlan {
  const { plan, remarks } = planJob(job);
  return { ...plan, findings: judge(job, plan, remarks) };
}

/** Those that take seconds to plan are planned in the short run too; the long run plans all. */
const quick = ['one-bass-amplifier', 'under-seat-five', 'open-boat'];

test.each(casesOf(shortJobs, (id) => quick.includes(id)))('%s is planned without a stop', (id) => {
  const plan = judged(shortJob(id));
  const stops = plan.findings.filter(({ level }) => level === 'stop');
  expect(stops.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
  expect(plan.terminals.filter(({ state }) => state === 'unaccounted')).toEqual([]);
  expect(plan.proposals?.length).toBeGreaterThan(20);
  expect(plan.proposals?.filter(({ reason }) => reason.trim() === '')).toEqual([]);
});

/** What each device is fed and grounded through: its conductors by the terminal at their far end. */
function sizesOf(plan: BuildPlan): Readonly<Record<string, string>> {
  const own = plan.power.conductors.filter(
    ({ role, id }) => role !== 'turn-on' && !id.startsWith('vehicle.'),
  );
  return Object.fromEntries(own.map(({ from, to, size }) => [[from, to].toSorted().join(' - '), size.label]));
}

const fusesOf = ({ power }: BuildPlan) =>
  power.fuses.map(({ form, ratingA }) => `${form} ${ratingA}`).toSorted();
const channelsOf = ({ audio }: BuildPlan) =>
  audio.channels.map(({ id, loadOhm, powerW }) => [id, loadOhm, powerW]);
const graveOf = ({ findings }: BuildPlan) =>
  findings.filter(({ level }) => level !== 'note').map(({ level, rule }) => `${level} ${rule}`);

/** Pieces and metres of each kind of part that the job takes, without what the two word otherwise. */
function costOf({ pick }: BuildPlan): Readonly<Record<string, number>> {
  const cost: Record<string, number> = {};
  for (const { kind, quantity } of pick) cost[kind] = Number(((cost[kind] ?? 0) + quantity).toFixed(1));
  return cost;
}

test.each(casesOf(['under-seat-five', 'estate-side-well'], (id) => id === 'under-seat-five'))(
  '%s rewritten short is planned as well as it is written',
  (id) => {
    const written = demoJob(id);
    const [own, short] = [
      judged({ ...written, file: { ...written.file, 'as-built': {} } }),
      judged(rewrittenJob(id)),
    ];
    expect(sizesOf(short)).toEqual(sizesOf(own));
    expect(fusesOf(short)).toEqual(fusesOf(own));
    expect(channelsOf(short)).toEqual(channelsOf(own));
    const crossings = (plan: BuildPlan) => plan.boards.map((board) => board.crossings);
    expect(Math.max(...crossings(short))).toBeLessThanOrEqual(Math.max(...crossings(own)));
    expect(graveOf(short)).toEqual(graveOf(own));
    const [cost, ownCost] = [costOf(short), costOf(own)];
    for (const kind of ['amplifier', 'fuse', 'fuse-holder', 'distribution', 'relay'])
      expect([kind, cost[kind]]).toEqual([kind, ownCost[kind]]);
  },
);
