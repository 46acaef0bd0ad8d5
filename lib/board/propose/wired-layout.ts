import { computeAnew, type Keep } from '../../model/keep.ts';
import type { Placement } from '../layout/item.ts';
import type { Site } from '../layout/lattice.ts';
import {
  judgeLayout,
  type Proposal,
  proposedAt,
  type Setting,
  type WiredCounts,
} from '../layout/layout-setting.ts';
import { cautionWeight } from '../layout/layout-starts.ts';
import { lengthWeight } from '../layout/score/layout-house.ts';
import { overWantedM } from '../layout/score/links.ts';
import { type ScoreParts, totalOf } from '../layout/score/score.ts';
import type { Route } from '../route/route.ts';
import { type HowLaid, type Trial, tryWiring, type WiringTask } from './wiring-trial.ts';

/** A layout with how it can be wired. */
export interface WiredLayout extends WiredCounts {
  readonly sites: readonly Site[];
  readonly trial: Trial;
  readonly proposal: Proposal;
}

/** Wires a layout on trial; its score then has the wires as they are laid. */
export function wiredLayout(
  setting: Setting,
  wiring: WiringTask,
  given: readonly Placement[],
  sites: readonly Site[],
  how: HowLaid,
  before: readonly Route[] = [],
  keep: Keep = computeAnew,
): WiredLayout {
  const { boardLines, rules } = setting;
  const placements = setting.open.flatMap((one, at) => {
    const site = sites[at];
    return site ? [proposedAt(one, site)] : [];
  });
  const trial = tryWiring(
    wiring,
    { box: boardLines.box, placements: [...given, ...placements] },
    how,
    before,
    keep,
  );
  const { score, cautions } = judgeLayout(setting, sites);
  const overM = overWanted(trial, setting.links);
  const parts: ScoreParts = {
    ...score.parts,
    length: wiresLengthM(trial, wiring, rules),
    reach: rules.house.reach * trial.shortM,
    wanted: rules.house.over * overM.reduce((sum, byM) => sum + byM, 0),
    bends: rules.house.bendM * trial.bends,
    crossings: rules.house.crossingM * trial.crossings,
    far: rules.house.farM * trial.far,
  };
  const wired = {
    wiresWithoutWay: trial.noWay.length,
    wiresTooShort: trial.short.length,
    cautions: cautions + overM.length + trial.tight.length,
  };
  const proposal = { placements, score: { total: totalOf(parts), parts }, wired };
  return { sites, trial, proposal, ...wired };
}

/** Length of all wires as they are laid, each by what it counts for (m). */
function wiresLengthM({ lengthsM }: Trial, { wires }: WiringTask, { house }: Setting['rules']): number {
  return wires.reduce((sum, { id, diameterM }) => {
    return sum + lengthWeight(diameterM, house) * (lengthsM[id] ?? 0);
  }, 0);
}

/** By how much wires are longer as they are laid than the house wants them, of those that are (m). */
function overWanted({ routes }: Trial, links: Setting['links']): number[] {
  return links.flatMap(({ id, to, wanted }) => {
    const route = wanted && routes.find(({ wire }) => wire === id);
    const exit = route?.points.at('exit' in to ? -1 : 0);
    const overM = wanted && route && exit ? overWantedM(route.lengthM, exit, wanted) : 0;
    return overM > 0 ? [overM] : [];
  });
}

/**
 * Below zero where the first is better: fewer wires without a way, then fewer that don't reach, then fewer cautions
 * (bends that are too tight among them), then the better score, in which crossings and bends stand beside tidiness.
 */
export function compareWired(a: WiredLayout, b: WiredLayout): number {
  return (
    a.wiresWithoutWay - b.wiresWithoutWay ||
    a.wiresTooShort - b.wiresTooShort ||
    a.cautions - b.cautions ||
    a.proposal.score.total - b.proposal.score.total
  );
}

/**
 * The same of layouts whose wires were laid once: a bend that is too tight there often finds its room for good, so it
 * counts as so much wire.
 */
export function compareOnce(a: WiredLayout, b: WiredLayout): number {
  return (
    a.wiresWithoutWay - b.wiresWithoutWay ||
    a.wiresTooShort - b.wiresTooShort ||
    placesAtFault(a) - placesAtFault(b) ||
    a.proposal.score.total + tightM(a) - b.proposal.score.total - tightM(b)
  );
}

/** Cautions of where the parts stand, whatever their wires. */
function placesAtFault({ cautions, trial }: WiredLayout): number {
  return cautions - trial.tight.length;
}

function tightM({ trial }: WiredLayout): number {
  return cautionWeight * trial.tight.length;
}

/** True where a layout can be wired as it stands. */
export function isWired({ trial }: WiredLayout): boolean {
  return trial.noWay.length === 0 && trial.short.length === 0;
}
