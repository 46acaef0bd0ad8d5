import { findingEntry, isFindingId } from '../model/findings/index.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { AskingFinding } from './kept-first.ts';
import { listed } from './words.ts';

/**
 * A finding that rests on what devices draw, with what of that was assumed for want of their makers' figures. Which
 * findings rest on it is told by the catalogue; which devices, by what the finding is about: a device itself, all that a
 * fuse or a conductor feeds, and where it names none of these, every device.
 */
export function withAssumed(finding: AskingFinding, { power }: Pick<BuildPlan, 'power'>): AskingFinding {
  if (!isFindingId(finding.rule) || !findingEntry(finding.rule).restsOnDraw) return finding;
  const about = new Set(finding.related.flatMap((id) => [id, ...fedBy(id, power)]));
  const assumed = power.loads.filter(({ assumed: what = [] }) => what.length > 0);
  const named = power.loads.some(({ item }) => about.has(item));
  const own = assumed.filter(({ item }) => !named || about.has(item));
  if (own.length === 0) return finding;
  const told = own.map(({ item, assumed: what = [] }) => `for ${item} ${listed(what)}`);
  return { ...finding, message: `${finding.message}; assumed ${listed(told)}` };
}

/** The devices behind a fuse, or behind the fuses of a conductor. */
function fedBy(id: string, { fuses, conductors }: BuildPlan['power']): readonly string[] {
  const names = conductors.find((one) => one.id === id)?.fuses ?? [id];
  return fuses.flatMap((fuse) => (names.includes(fuse.id) ? fuse.loads : []));
}
