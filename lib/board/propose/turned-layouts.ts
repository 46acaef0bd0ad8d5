import { turns } from '../layout/item.ts';
import type { Site } from '../layout/lattice.ts';
import { isRaised, LayoutJudge, type Setting } from '../layout/layout-setting.ts';
import { put, turned } from './moved-parts.ts';
import { compareOnce, compareWired, type WiredLayout } from './wired-layout.ts';

/** A layout wired once, and laid as for good. */
export interface LaidTwice {
  readonly once: WiredLayout;
  readonly forGood: WiredLayout;
}

/** Below zero where the first is better as laid for good. */
export function compareLaid(a: LaidTwice, b: LaidTwice): number {
  return compareWired(a.forGood, b.forGood);
}

/** How layouts are wired. */
export interface Wiring {
  readonly once: (sites: readonly Site[], from: WiredLayout) => WiredLayout;
  readonly forGood: (sites: readonly Site[], from: WiredLayout) => WiredLayout;
}

/** Layouts that may be wired while parts are turned. */
const mostTrials = 12;

/**
 * Turns single parts of a layout about their middles for as long as one is better for it, wired once and laid as for
 * good: of what stands then, no single turn is both lawful and better, unless the trials ran out.
 */
export function bestTurned(
  setting: Setting,
  start: LaidTwice,
  wiring: Wiring,
): { readonly best: LaidTwice; readonly trials: number } {
  let [best, trials] = [start, 0];
  for (let better = true; better; ) {
    better = false;
    for (const sites of singleTurns(setting, best.once.sites)) {
      if (trials >= mostTrials) return { best, trials };
      trials += 1;
      const once = wiring.once(sites, best.once);
      if (compareOnce(once, best.once) >= 0) continue;
      trials += 1;
      const next = { once, forGood: wiring.forGood(sites, once) };
      if (compareLaid(next, best) >= 0) continue;
      [best, better] = [next, true];
      break;
    }
  }
  return { best, trials };
}

/** The layout with one part turned about its middle, for each part and turn that breaks nothing and costs no caution. */
export function* singleTurns(setting: Setting, sites: readonly Site[]): Generator<readonly Site[]> {
  const judge = new LayoutJudge(setting);
  const now = judge.judge(sites);
  judge.take();
  for (const [at, one] of setting.open.entries()) {
    const site = sites[at];
    if (!site || isRaised(one, site)) continue;
    for (const turnDeg of turns) {
      if (turnDeg === site.turnDeg) continue;
      for (const next of put(setting, sites, at, turned(one.item, site, turnDeg))) {
        const { broken, cautions } = judge.judge(next);
        if (broken <= Math.max(0, now.broken) + 1e-9 && cautions <= now.cautions) yield next;
      }
    }
  }
}
