import type { Finding } from '../../model/finding.ts';
import { rank } from '../finding-order.ts';
import type { Case } from '../rule.ts';
import { type Bond, type Web, webOf } from './bonds.ts';
import { foldings } from './foldings.ts';

/** What explains a finding: the bonds by the cause's id. */
type Causes = ReadonlyMap<string, readonly Bond[]>;

/** Bonds by the follower's id, then by the cause's. */
const causesOf: ReadonlyMap<string, Causes> = (() => {
  const made = new Map<string, Map<string, Bond[]>>();
  for (const [cause, bonds] of Object.entries(foldings))
    for (const { follows, bond } of bonds)
      for (const follower of follows) {
        const causes = made.get(follower) ?? new Map<string, Bond[]>();
        causes.set(cause, [...(causes.get(cause) ?? []), bond]);
        made.set(follower, causes);
      }
  return made;
})();

/** Which finding each only follows from, by its place in the list; null where it stands for itself. */
function parents(findings: readonly Finding[], web: Web): readonly (number | null)[] {
  const ranks = findings.map(({ level }) => rank(level));
  return findings.map((follower, at) => {
    const causes = causesOf.get(follower.rule);
    if (!causes) return null;
    const found = findings.findIndex((cause, k) => {
      if (k === at || (ranks[k] ?? 0) > (ranks[at] ?? 0)) return false;
      return (causes.get(cause.rule) ?? []).some((bond) => {
        if (!bond(cause, follower, web)) return false;
        // Of two that could each explain the other, the first explains.
        return k < at || !explains(follower, cause, web);
      });
    });
    return found < 0 ? null : found;
  });
}

function explains(cause: Finding, follower: Finding, web: Web): boolean {
  const bonds = causesOf.get(follower.rule)?.get(cause.rule) ?? [];
  return bonds.some((bond) => bond(cause, follower, web));
}

/** Up to the finding that nothing explains; itself where the ways run in a ring. */
function rootOf(at: number, parent: readonly (number | null)[]): number {
  const seen = new Set<number>();
  let root = at;
  for (let next = parent[at] ?? null; next !== null; next = parent[next] ?? null) {
    if (next === at || seen.has(next)) return at;
    seen.add(next);
    root = next;
  }
  return root;
}

/**
 * The findings with each that only follows from another folded under it, in the given order. None is lost, and none
 * is folded under a milder one: a list has a stop at its top where it has one at all.
 */
export function withFolded(findings: readonly Finding[], about: Case): Finding[] {
  const parent = parents(findings, webOf(about, findings));
  const roots = findings.map((_, at) => rootOf(at, parent));
  return findings.flatMap((finding, at) => {
    if (roots[at] !== at) return [];
    const follows = findings.filter((_, k) => k !== at && roots[k] === at);
    return [follows.length === 0 ? finding : { ...finding, follows }];
  });
}
