import type { KindName } from '../../../../model/kinds/index.ts';
import type { Named } from '../../yaml-text.ts';

/**
 * Fields that a part may lack, and that tell what its own maker measured: a fuse is held against them, or a cable. Another
 * part that is like it elsewise has its own, and until somebody reads them the rules of the shop stand in their place.
 */
const makersOwn: Partial<Readonly<Record<string, readonly string[]>>> = {
  battery: ['short-circuit', 'resistance', 'reserve-end'],
  fuse: ['voltage', 'time-current', 'interrupts'],
  amplifier: ['damping'],
} satisfies Partial<Record<KindName, readonly string[]>>;

/** Which of these a part has, and nobody told of the one that is like it: `told` are the fields that were. */
export function notTakenOver(part: Named, told: ReadonlySet<string>): readonly string[] {
  const own = makersOwn[String(part.kind)] ?? [];
  return own.filter((field) => part[field] !== undefined && !told.has(field));
}
