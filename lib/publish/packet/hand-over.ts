import { type BuildPlan, isStopped, type PlanFuse, type PlanMeasurement } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import { printed } from '../../model/printed/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { counted, spelledWithin } from '../page/words.ts';

/** Why a job can't be handed over, with the lines of its record that it is about. */
export interface HandOverLack {
  readonly why: 'draft' | 'stopped' | 'out-of-limit' | 'not-read';
  readonly lines: readonly string[];
}

/** A fuse that makes the feed dead: what whoever puts one back must know. */
export interface MainFuse {
  readonly name: string;
  readonly rating: string;
  readonly form: string;
  readonly place: string;
}

/** What a packet needs of a plan beyond what its reader sees of it: words that are fit for everyone. */
export interface HandOver {
  /** Why there is no packet, in sentences; empty where there may be one. */
  readonly refused: readonly string[];
  readonly mainFuses: readonly MainFuse[];
  readonly hasBoards: boolean;
  /** Days after which power joints are tightened again. */
  readonly retorqueDays: number;
  /** The highest voltage that the system may be charged at (V). */
  readonly highestV: number;
}

/** What a plan's packet rests on. */
export function handOverOf(plan: BuildPlan): HandOver {
  return {
    refused: handOverLacks(plan).map(lackText),
    mainFuses: mainFusesOf(plan),
    hasBoards: plan.boards.length > 0,
    retorqueDays: ruleOf(plan, 'retorque-days'),
    highestV: ruleOf(plan, 'voltage-variable-high'),
  };
}

/**
 * Why no packet is made: the job is a draft, a finding stops it, a reading lies outside its limits, or one is not taken
 * that the record holds against a limit. None: it may be handed over.
 */
export function handOverLacks(plan: Pick<BuildPlan, 'job' | 'findings' | 'measurements'>): HandOverLack[] {
  const ids = (isMeant: (line: PlanMeasurement) => boolean): string[] =>
    plan.measurements.filter(isMeant).map(({ id }) => id);
  const outside = ids(({ state }) => state === 'differs');
  const missing = ids((line) => isAskedFor(line) && line.asBuilt === undefined);
  const lacks: readonly (HandOverLack & { readonly holds: boolean })[] = [
    { why: 'draft', lines: [], holds: plan.job.status === 'draft' },
    { why: 'stopped', lines: [], holds: isStopped(plan) },
    { why: 'out-of-limit', lines: outside, holds: outside.length > 0 },
    { why: 'not-read', lines: missing, holds: missing.length > 0 },
  ];
  return lacks.filter(({ holds }) => holds).map(({ why, lines }) => ({ why, lines }));
}

/** A line with a limit must be read; what has none is noted for the vehicle file. */
function isAskedFor({ least, greatest }: PlanMeasurement): boolean {
  return least !== null || greatest !== null;
}

/** A reason as any reader may have it: how many, and no name of the bench. */
export function lackText({ why, lines }: HandOverLack): string {
  switch (why) {
    case 'draft':
      return 'The job is still a draft.';
    case 'stopped':
      return 'A fault that stops the job is still to be mended.';
    case 'out-of-limit':
      return `${counted(lines.length, 'reading lies', 'readings lie')} outside the limits.`;
    case 'not-read':
      return `${counted(lines.length, 'reading of the record is', 'readings of the record are')} still to be taken.`;
  }
}

/** The fuses nearest to a source that the job adds. */
function mainFusesOf({ power, items, boards }: BuildPlan): MainFuse[] {
  return power.fuses.flatMap((fuse): MainFuse[] => {
    const item = items.find(({ id }) => id === fuse.item);
    if (fuse.source === null || item?.origin !== 'job') return [];
    const board = boards.find(({ id }) => id === item.board)?.title;
    const place = item.seatTitle ?? board ?? spelledWithin(item.zone);
    const name = hasWays(power.fuses, fuse) ? `${item.title}, ${fuse.way}` : item.title;
    return [
      {
        name,
        rating: printed('current-allowed', fuse.ratingA),
        form: fuseForms[fuse.form].name,
        place: `${place.charAt(0).toLowerCase()}${place.slice(1)}`,
      },
    ];
  });
}

/** True where its holder has more than one fuse: then the way tells which. */
function hasWays(fuses: readonly PlanFuse[], { item }: PlanFuse): boolean {
  return fuses.filter((other) => other.item === item).length > 1;
}
