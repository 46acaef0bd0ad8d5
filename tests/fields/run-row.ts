import type { Finding } from '../../lib/model/finding.ts';
import { pointer } from '../../lib/model/place.ts';
import type { Problem } from '../../lib/model/problem.ts';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { jobsIn } from '../shops/shop-once.ts';
import { editsOf, type Row, spotOf } from './row.ts';
import { type Edit, isJobSheet, type JobSheet, jobSheets, sheets, shopWith } from './shop.ts';

/** What is told of a job: errors of reading, or findings. */
export interface TellTale {
  readonly problems: readonly Problem[];
  readonly findings: readonly Finding[];
}

/** Reads, plans and judges one job of the shop after edits. */
export function toldOf(job: JobSheet, edits: readonly Edit[]): TellTale {
  const { problems, jobs } = jobsIn(shopWith(job, edits));
  const [only] = jobs;
  if (!only) return { problems, findings: [] };
  const { plan, remarks } = planKept(only);
  return { problems, findings: judge(only, plan, remarks) };
}

const before = new Map<string, TellTale>();

/** What is told with the scene of a row alone; each scene is planned once. */
function toldBefore(job: JobSheet, scene: readonly Edit[]): TellTale {
  const key = JSON.stringify([job, scene]);
  const known = before.get(key) ?? toldOf(job, scene);
  before.set(key, known);
  return known;
}

const sameProblem = (a: Problem, b: Problem) => a.message === b.message && a.where.path === b.where.path;
const sameFinding = (a: Finding, b: Finding) =>
  a.rule === b.rule && a.where.path === b.where.path && a.related[0] === b.related[0] && a.level === b.level;

/** What a slip adds to what is told. */
export interface Outcome {
  readonly before: TellTale;
  readonly problems: readonly Problem[];
  readonly findings: readonly Finding[];
}

/** What edits add to what is told of a job with a scene. */
export function outcomeOfEdits(job: JobSheet, scene: readonly Edit[], edits: readonly Edit[]): Outcome {
  const sound = toldBefore(job, scene);
  const slipped = toldOf(job, [...scene, ...edits]);
  return {
    before: sound,
    problems: slipped.problems.filter((one) => !sound.problems.some((other) => sameProblem(one, other))),
    findings: slipped.findings.filter((one) => !sound.findings.some((other) => sameFinding(one, other))),
  };
}

/** What the slip of a row adds. */
export function outcomeOf([at, , value, , more = {}]: Row): Outcome {
  const { sheet, keys } = spotOf(at);
  const job = more.job ?? (isJobSheet(sheet) ? sheet : 'wired');
  return outcomeOfEdits(job, editsOf(more.scene), [{ sheet, keys, value }, ...editsOf(more.too)]);
}

/** True for an error of reading that stands at the slip: at its value, within it, or at what holds it; or names what it is in. */
export function isAtSlip({ where, message }: Problem, at: string): boolean {
  const { sheet, keys } = spotOf(at);
  const path = pointer(keys);
  if (where.file !== sheets[sheet].path) return false;
  if (message.split(/[\s"]+/).includes(keys[1] ?? '')) return true;
  const entry = pointer(keys.slice(0, 2));
  const isWithin = (inner: string, outer: string) => inner === outer || inner.startsWith(`${outer}/`);
  return (
    isWithin(where.path, path) ||
    isWithin(path, where.path) ||
    (keys.length > 2 && isWithin(where.path, entry))
  );
}

/**
 * True for a finding that stands in a file where the slip is seen: in a job for a slip of a job, else in the file of the
 * slip or in the job that meets it.
 */
export function isToldFor({ where }: Finding, at: string): boolean {
  const { sheet } = spotOf(at);
  const jobs = jobSheets.map((job): string => sheets[job].path);
  if (where.file === sheets[sheet].path) return true;
  // A part is met where it is used.
  if (sheet === 'parts' && where.file === sheets.vehicle.path) return true;
  return !isJobSheet(sheet) && jobs.includes(where.file);
}
