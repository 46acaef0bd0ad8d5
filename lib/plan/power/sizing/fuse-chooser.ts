import type { Job } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import { chooseFuse, type FuseChoice, type FuseDuty } from '../../../power/fuse-choice.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import { once, onceEach } from '../../once-each.ts';
import type { Circuit, CircuitEdge } from '../circuit/circuit.ts';
import type { CircuitPaths } from '../circuit/circuit-paths.ts';
import { fuseShelf } from './fuse-shelf.ts';
import type { Protected } from './protection.ts';

/** The choice of a fuse for its duty; null where none can be made. */
export type FuseChooser = (duty: FuseDuty) => FuseChoice | null;

/** Chooses the fuses of a job from its catalogue and shelf: for one duty once, since the loop of sizes asks many times. */
export function fuseChooser({ parts, shop, rules }: Pick<Job, 'parts' | 'shop' | 'rules'>): FuseChooser {
  const shelf = once(() => fuseShelf(parts, shop, rules));
  const power = powerRules(rules);
  return onceEach((duty) => {
    const choice = chooseFuse(duty, shelf(), power);
    return isFault(choice) ? null : choice;
  }, dutyKey);
}

/** All of a duty as text: what is infinite is not taken for what is null. */
function dutyKey(duty: FuseDuty): string {
  return JSON.stringify(duty, (_, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  );
}

/** What the choice of one fuse in its circuit follows from. */
export interface Choosing {
  readonly circuit: Circuit;
  readonly paths: CircuitPaths;
  readonly choose: FuseChooser;
  /** The most that a conductor could carry with the best cable that it may have. */
  readonly mostA: (conductor: string) => number;
  /** The most that it could carry at the true ambient of its way without a reducer at its ends. */
  readonly bareWarmA: (conductor: string) => number;
}

/**
 * The choice; where the ground of a device can't be had as large as the rating asks for, the one that the ground
 * bounds too, as long as that leaves a lawful rating. A device's ground takes back all that its fuse lets through.
 */
export function chooseWithGrounds(edge: CircuitEdge, sizing: Choosing, duty: FuseDuty): Chosen {
  const { choose, mostA } = sizing;
  const first = choose(duty);
  const ratingA = first?.chosen?.ratingA;
  if (ratingA === undefined) return { choice: first, duty };
  const thin = ownGrounds(edge, sizing)
    .map((id) => ({ id: `${id} at its thickest`, ampacityA: mostA(id) }))
    .filter(({ ampacityA }) => ampacityA < ratingA);
  if (thin.length === 0) return { choice: first, duty };
  const bounded = { ...duty, protects: [...duty.protects, ...thin] };
  const choice = choose(bounded);
  return choice?.chosen ? { choice, duty: bounded } : { choice: first, duty };
}

/**
 * The choice; where a conductor that it protects would have to go into its ports by reducers, or to carry it in the warmth
 * with a doubt, a smaller rating that spares it that and keeps the margin, if one is made: a fuse is bought more easily
 * than a conductor is forced into a port. Common practice, no source.
 */
export function chooseBare(
  protects: readonly Protected[],
  { choose, bareWarmA }: Choosing,
  first: Chosen,
): Chosen {
  const ratingA = first.choice?.chosen?.ratingA;
  const warm = protects.map(({ id, sideBySide }) => {
    return { id: `${id} in the warmth, without a reducer`, ampacityA: bareWarmA(id), sideBySide };
  });
  const tight = warm.filter(({ ampacityA, sideBySide }) => (ratingA ?? 0) > ampacityA / sideBySide);
  if (tight.length === 0) return first;
  const duty = { ...first.duty, protects: [...first.duty.protects, ...tight], keepsMargin: true };
  const choice = choose(duty);
  return choice?.chosen ? { choice, duty } : first;
}

/** A choice, and the duty that it was made for. */
export interface Chosen {
  readonly choice: FuseChoice | null;
  readonly duty: FuseDuty;
}

/** The ground leads of devices that this fuse alone feeds. */
function ownGrounds(edge: CircuitEdge, { circuit, paths }: Choosing): string[] {
  const alone = paths.downstream(edge).filter(({ from }) => {
    const { bare, fuses } = paths.inflows.into(from, '');
    return !bare && fuses.length === 1 && fuses[0]?.id === edge.id;
  });
  const negatives = new Set(alone.map(({ to }) => to));
  return circuit.edges.flatMap(({ id, kind, from, to }) =>
    kind === 'conductor' && circuit.roles.get(id) === 'ground' && (negatives.has(from) || negatives.has(to))
      ? [id]
      : [],
  );
}
