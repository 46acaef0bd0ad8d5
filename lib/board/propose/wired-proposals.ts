import type { Placement } from '../layout/item.ts';
import { differM } from '../layout/best-layouts.ts';
import type { Site } from '../layout/lattice.ts';
import { type LayoutTask, type Proposal, settingOf, type Setting } from '../layout/layout-setting.ts';
import type { ScoreRules } from '../layout/score.ts';
import { nextLayouts } from './next-layouts.ts';
import { sitesOfProposal } from './proposal-sites.ts';
import { compareWired, isWired, type WiredLayout, wiredLayout } from './wired-layout.ts';
import type { WiringTask } from './wiring-trial.ts';

/** What proposals are judged by, and how often they may be wired on trial. */
export interface WiredSearch {
  readonly task: LayoutTask;
  readonly rules: ScoreRules;
  /** Layouts that the search found, best first. */
  readonly proposals: readonly Proposal[];
  readonly wiring: WiringTask;
}

/** Proposals as they can be wired, best first. */
export interface WiredProposals {
  readonly proposals: readonly Proposal[];
  /** Layouts that were wired on trial. */
  readonly trials: number;
}

/** Changes of the best layout that are wired on trial: where it can be wired, and as long as it can't. */
const trialsOfWired = 5;
const trialsOfOthers = 60;

/** Layouts that are shown beside the best one. */
const alternatives = 2;

/**
 * Wires the layouts of a search on trial and goes on from the best by small changes, each wired in its turn, for as long
 * as that helps: few where every wire has its way and reaches, many where one does not. Gives the best, and the two best
 * that differ from it.
 */
export function wiredProposals({ task, rules, proposals, wiring }: WiredSearch): WiredProposals {
  const setting = settingOf(task, rules, rules.house.stepM);
  const wire = (sites: readonly Site[]) => wiredLayout(setting, wiring, task.given, sites);
  const found = proposals.map((proposal) => wire(sitesOfProposal(setting, proposal))).toSorted(compareWired);
  const [first] = found;
  if (!first) return { proposals: [], trials: 0 };
  const { best, all } = improved(setting, wiring, first, wire);
  const ranked = [...all, ...found].filter((one) => one !== best).toSorted(compareWired);
  const shown = [best];
  for (const one of ranked) {
    if (shown.length > alternatives) break;
    if (shown.every((other) => differs(one, other))) shown.push(one);
  }
  return { proposals: shown.map(({ proposal }) => proposal), trials: found.length + all.length };
}

function improved(
  setting: Setting,
  wiring: WiringTask,
  first: WiredLayout,
  wire: (sites: readonly Site[]) => WiredLayout,
): { readonly best: WiredLayout; readonly all: readonly WiredLayout[] } {
  const all: WiredLayout[] = [];
  const tried = new Set<string>();
  let best = first;
  for (let better = true; better; ) {
    better = false;
    for (const sites of nextLayouts(setting, wiring, best, tried)) {
      if (all.length >= (isWired(best) ? trialsOfWired : trialsOfOthers)) return { best, all };
      const next = wire(sites);
      all.push(next);
      if (compareWired(next, best) >= 0) continue;
      [best, better] = [next, true];
      break;
    }
  }
  return { best, all };
}

/** True where a part of one stands elsewhere than in the other, or is turned. */
function differs(a: WiredLayout, b: WiredLayout): boolean {
  return a.proposal.placements.some((at: Placement, index) => {
    const other = b.proposal.placements[index];
    if (!other) return true;
    return at.turnDeg !== other.turnDeg || Math.hypot(at.xM - other.xM, at.yM - other.yM) >= differM;
  });
}
