import type { Job, Link } from '../../../model/content/resolved-job.ts';
import type { SizedConductor } from './conductor-sizing.ts';

/** What a conductor has to stay under, by its link (mm2): as thick as this it has no room for its bend where it lies. */
export type BendBounds = ReadonlyMap<string, number>;

/** A wire of a board that kinks, by the id of its link. */
interface Kink {
  readonly rule: string;
  readonly level: string;
  readonly of: readonly string[];
}

/** True for a wire that is bent to less than it bears. */
export const isKink = ({ rule, level }: Kink): boolean => rule === 'bend-too-tight' && level === 'stop';

/**
 * The bounds under which conductors of the supply are sized once more: what kinks becomes thinner, and with it what goes
 * to the same device, since a ground is as large as its feed. Null where none becomes thinner by that: what was given is
 * as thick as it is, and what is over its bound already had nothing thinner that is lawful.
 */
export function thinnerBounds(
  { devices }: Pick<Job, 'devices'>,
  faults: readonly Kink[],
  sized: ReadonlyMap<string, SizedConductor>,
  before: BendBounds,
): BendBounds | null {
  const onBoard = new Set(devices.flatMap(({ id, board }) => (board === null ? [] : [id])));
  const ends = ({ from, to }: Link) => [from.device, to.device].filter((id) => onBoard.has(id));
  const bounds = new Map(before);
  const kinked = faults.filter(isKink).flatMap(({ of: [id = ''] }) => sized.get(id) ?? []);
  for (const { link, role, cable } of kinked) {
    if (role !== 'power' && role !== 'ground') continue;
    const { areaMm2 } = cable.size;
    for (const other of sized.values()) {
      const isMate = ends(other.link).some((id) => ends(link).includes(id));
      const boundMm2 = bounds.get(other.link.id) ?? Infinity;
      if (!isMate || !['power', 'ground'].includes(other.role) || other.chosen === 'given') continue;
      if (areaMm2 < boundMm2 / 1.001) bounds.set(other.link.id, areaMm2);
    }
  }
  const isTighter = [...bounds].some(([id, mm2]) => mm2 !== before.get(id));
  return isTighter ? bounds : null;
}
