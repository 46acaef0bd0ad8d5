import type { Job } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import { squareMmAtLeast } from '../../../model/printed/told.ts';
import {
  type CableCandidate,
  type ConductorChoice,
  type ConductorDuty,
  cableSm,
  chooseConductor,
  type JudgedCable,
  nearestToFit,
} from '../../../power/conductor/conductor-choice.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import { losesLug } from '../../wiring/terminal-parts.ts';
import type { ConductorTask } from './conductor-task.ts';

/** A choice, and where one had to be taken that is smaller than asked for, why. */
export interface SizeChoice extends ConductorChoice {
  readonly smaller?: string;
  /** Where its bends keep it thinner, what has no room for them. */
  readonly bent?: string;
}

/** The choice; where none can be made, why not is its reason. */
export function choose(
  duty: ConductorDuty,
  candidates: readonly CableCandidate[],
  job: Job,
): ConductorChoice {
  const choice = chooseConductor(duty, candidates, powerRules(job.rules));
  return isFault(choice) ? { chosen: null, governed: [], reason: choice.message, considered: [] } : choice;
}

/**
 * The largest speaker wire whose insulation lasts on its way, where those that are large enough for its loss would not: the
 * loss is told where it is judged, and a wire that carries nothing is none. Null where heat is not what rules them out.
 */
export function largestInHeat(
  duty: ConductorDuty,
  candidates: readonly CableCandidate[],
  job: Job,
  { role, why }: ConductorTask,
  full: ConductorChoice,
): SizeChoice | null {
  const { leastMm2 = 0 } = duty;
  const isRuledOut = full.considered.some(
    ({ candidate: { size }, ampacity: { ampacityA } }) =>
      size.areaMm2 >= leastMm2 / 1.001 && ampacityA.value <= 0,
  );
  if (role !== 'speaker' || !isRuledOut) return null;
  const { considered } = choose({ ...duty, leastMm2: 0 }, candidates, job);
  const [chosen] = considered
    .filter(({ misses, ampacity: { ampacityA } }) => misses.length === 0 && ampacityA.value > 0)
    .toSorted((a, b) => b.candidate.size.areaMm2 - a.candidate.size.areaMm2);
  if (!chosen) return null;
  const smaller = `the largest whose insulation lasts on its way${why === null ? '' : `, where ${why} asks for ${squareMmAtLeast(leastMm2)}`}`;
  return { chosen, governed: [], reason: smaller, considered, smaller };
}

/** The best conducting ground that its ports take and that carries its fuses; null where there is none. */
export function largestGround(
  duty: ConductorDuty,
  candidates: readonly CableCandidate[],
  job: Job,
  { link, feed }: ConductorTask,
  full: ConductorChoice,
): SizeChoice | null {
  const rules = powerRules(job.rules);
  const { considered } = choose({ ...duty, leastSm: 0 }, candidates, job);
  const mm2 = ({ candidate: { size } }: JudgedCable) => size.areaMm2;
  const lawful = considered
    .filter(({ misses }) => misses.length === 0)
    .toSorted((a, b) => cableSm(b.candidate, rules) - cableSm(a.candidate, rules));
  // One that no lug is had for goes behind one that can be ended.
  const ended = (one: JudgedCable) =>
    !lawful.some((other) => losesLug(job, link, { from: mm2(other), to: mm2(one) }));
  const chosen = lawful.find(ended) ?? lawful[0];
  const missing = nearestToFit(full.considered);
  if (!chosen || !missing) return null;
  const misses = missing.misses.map(({ text }) => text).join('; ');
  const smaller = `the largest that fits, where it should be ${feed?.why ?? ''}; ${missing.candidate.size.label}: ${misses}`;
  return { chosen, governed: [], reason: smaller, considered, smaller };
}
