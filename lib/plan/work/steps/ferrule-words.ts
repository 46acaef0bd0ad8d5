import { linkEndOf } from '../../../model/content/resolved-job.ts';
import type { PlanWire } from '../../../model/plan/index.ts';
import { listed } from '../../../model/printed/listed.ts';
import { ifTooWideSchema } from '../../../model/vocabulary.ts';
import type { WithPlan } from '../work.ts';

const instead = {
  bare: 'one that does not go in stays off, and the strands go in bare and twisted',
  'pin-adapter': 'in place of one that does not go in a pin adapter made for the conductor is crimped on',
} as const;

/**
 * The ferrules of some wires, on boards or off them, that are named above what their ports take, and what is done with one
 * that is too wide: what is crimped does not come off again. Empty where there are none. Common practice, no source.
 */
export function dryFerrulesText(
  { plan: { items } }: WithPlan<'items'>,
  wires: readonly PlanWire[],
  where: 'board' | 'vehicle',
): string {
  const onBoard = new Set(items.flatMap(({ id, board }) => (board === null ? [] : [id])));
  const ends = wires.flatMap(({ label, ends: both }) =>
    both.flatMap(({ terminal, ifTooWide }) => {
      const isHere = onBoard.has(linkEndOf(terminal).device) === (where === 'board');
      return ifTooWide && isHere ? [{ name: `${label} at ${terminal}`, ifTooWide }] : [];
    }),
  );
  return ifTooWideSchema.options
    .map((way) => {
      const names = ends.filter(({ ifTooWide }) => ifTooWide === way).map(({ name }) => name);
      if (names.length === 0) return '';
      return `; try the ferrule of ${listed(names)} dry in its port before it is crimped: ${instead[way]}`;
    })
    .join('');
}
