import { computeAnew, type Keep } from '../../model/keep.ts';
import { differM } from '../layout/best-layouts.ts';
import type { Placement } from '../layout/item.ts';
import type { Site } from '../layout/lattice.ts';
import {
  isRaised,
  type LayoutTask,
  type Proposal,
  type Setting,
  settingOf,
} from '../layout/layout-setting.ts';
import type { ScoreRules } from '../layout/score/score.ts';
import { standKey } from './moved-parts.ts';
import { nextLayouts } from './next-layouts.ts';
import { sitesOfProposal } from './proposal-sites.ts';
import { tidyLayouts } from './tidy-layouts.ts';
import { bestTurned, compareLaid } from './turned-layouts.ts';
import { compareOnce, isWired, type WiredLayout, wiredLayout } from './wired-layout.ts';
import type { HowLaid, WiringTask } from './wiring-trial.ts';

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

/** Changes of the best layout that are wired on trial where it can be wired. */
const trialsOfWired = 3;

/** The same where it can't, and layouts from fresh starts: half of these first, since most boards have many ways. */
const trialsOfOthers = 24;
const freshStarts = 8;

/** Layouts that are scored for one fresh start. */
const evaluationsOfFresh = 6000;

/** Layouts that are shown, the best one among them. */
const mostShown = 3;

/**
 * Wires the layouts of a search on trial. Where none can be wired, others are looked for from fresh starts; then the best
 * is changed a little, each change wired in its turn, for as long as that helps: few where every wire has its way and
 * reaches, many where one does not. The best few are then laid as for good, and parts of the best of these are turned for
 * as long as that helps. Gives that one, and the two best of the others that differ from it.
 */
export function wiredProposals(search: WiredSearch, keep: Keep = computeAnew): WiredProposals {
  const { task, rules, proposals, wiring } = search;
  const setting = settingOf(task, rules, rules.house.stepM);
  const wireAs = (how: HowLaid) => (sites: readonly Site[], from?: WiredLayout) =>
    wiredLayout(setting, wiring, task.given, sites, how, from?.trial.routes, keep);
  const wire = wireAs('once');
  const found = proposals.map((proposal) => wire(sitesOfProposal(setting, proposal)));
  const isFlat = setting.open.every((one, at) => found.every(({ sites }) => !raisedAt(one, sites[at])));
  if (isFlat && found.length > 0)
    for (let fresh = 1; fresh <= freshStarts && !found.some(isWired); fresh += 1)
      found.push(...freshLayouts(search, fresh).map((one) => wire(sitesOfProposal(setting, one))));
  if (found.length === 0) return { proposals: [], trials: 0 };
  const { best, all } = improved(setting, wiring, found, wire);
  const ranked = [...all, ...found].filter((one) => one !== best).toSorted(compareOnce);
  const ways = { once: wire, forGood: wireAs('for-good') };
  const [top, ...others] = differing([best, ...ranked])
    .map((once) => ({ once, forGood: ways.forGood(once.sites, once) }))
    .toSorted(compareLaid);
  if (!top) return { proposals: [], trials: 0 };
  const turned = bestTurned(setting, top, ways);
  const shown = differing([turned.best, ...others].map(({ forGood }) => forGood));
  return {
    proposals: shown.map(({ proposal }) => proposal),
    trials: found.length + all.length + 1 + others.length + turned.trials,
  };
}

/** Of layouts, best first, as many as are shown, each differing from those before it. */
function differing(ranked: readonly WiredLayout[]): WiredLayout[] {
  const chosen: WiredLayout[] = [];
  for (const one of ranked) {
    if (chosen.length >= mostShown) break;
    if (chosen.every((other) => differs(one, other))) chosen.push(one);
  }
  return chosen;
}

function raisedAt(one: Setting['open'][number], site: Site | undefined): boolean {
  return site !== undefined && isRaised(one, site);
}

/** The best layout of another start, brought into line. */
function freshLayouts({ task, rules }: WiredSearch, fresh: number): readonly Proposal[] {
  const given = { rules, seed: 1 + fresh, starts: 1, evaluations: evaluationsOfFresh };
  return tidyLayouts(task, noStacks, given).proposals.slice(0, 1);
}

const noStacks = { layerM: 0, topM: 0 };

function improved(
  setting: Setting,
  wiring: WiringTask,
  found: readonly WiredLayout[],
  wire: (sites: readonly Site[], from?: WiredLayout) => WiredLayout,
): { readonly best: WiredLayout; readonly all: readonly WiredLayout[] } {
  const all: WiredLayout[] = [];
  const tried = new Set(found.map(({ sites }) => standKey(sites)));
  let best = found.reduce((least, one) => (compareOnce(one, least) < 0 ? one : least));
  for (let better = true; better; ) {
    better = false;
    for (const sites of nextLayouts(setting, wiring, best, tried)) {
      if (all.length >= (isWired(best) ? trialsOfWired : trialsOfOthers)) return { best, all };
      const next = wire(sites, best);
      all.push(next);
      if (compareOnce(next, best) >= 0) continue;
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
