import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { batteriesAmong, type LiveSide, noFuse, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, endsOf, terminalSpecOf } from '../look-up.ts';
import type { Case } from '../rule.ts';
import { amps, listed } from '../words.ts';

/** What feeds an end of a wire without the wire itself, past no fuse. */
interface FedEnd {
  readonly end: string;
  readonly batteries: readonly string[];
  readonly isFed: boolean;
}

/**
 * Where a live wire without a fuse gets one, and up to which rating. A battery or a bank drives thousands of amperes
 * into a short, a charger or an alternator little more than it gives: the battery's end comes first, whichever end the
 * link is written from.
 */
export function fusePlaces({ job, plan }: Case, wire: PlanWire, side: LiveSide): string {
  const others = side.edges.filter((edge) => edge.wire?.id !== wire.id);
  const ends = endsOf(wire).map((end): FedEnd => {
    const there = reached(others, [end], noFuse);
    return {
      end,
      batteries: batteriesAmong(job, side, there),
      isFed: side.sources.some((source) => there.has(source)),
    };
  });
  const carriedA = plan.power.conductors.find(({ id }) => id === wire.id)?.ampacityA ?? 0;
  const carries = carriedA > 0 ? `the ${amps(carriedA)} that ${wire.id} carries` : `what ${wire.id} carries`;
  const ceilings = endsOf(wire).flatMap((end) => makersFuse(job, end));
  const most = `rated at most at ${listed([carries, ...ceilings])}`;
  const strong = ends.filter(({ batteries }) => batteries.length > 0).map(atEnd);
  const weak = ends.filter(({ batteries, isFed }) => batteries.length === 0 && isFed).map(({ end }) => end);
  const also = ceilings.length > 0 || strong.length > 1 ? '' : ', or branch off after a fuse';
  if (strong.length === 0)
    return `put a fuse at ${listed(weak.length > 0 ? weak : ['the source end'])}, ${most}${also}`;
  const next = weak.length > 0 ? `, then one at ${listed(weak)}` : '';
  const one = strong.length + weak.length > 1;
  return `put a fuse at ${listed(strong, 'and one at')}${next}${one ? ', each' : ','} ${most}${also}`;
}

/** An end by its terminal, with the battery that feeds it from elsewhere. */
function atEnd({ end, batteries }: FedEnd): string {
  return batteries.includes(end) ? end : `${end} (fed by ${listed(batteries)})`;
}

/** The fuse that the maker of a charger or of a bank states for a terminal: a ceiling. */
function makersFuse(job: Job, terminal: string): string[] {
  const id = deviceIdOf(terminal);
  const spec = deviceOf(job, id)?.spec;
  if (spec?.kind === 'capacitor-bank') return [`the ${amps(spec.fuse)} of the maker of ${id}`];
  if (spec?.kind !== 'charger') return [];
  const role = terminalSpecOf(job, terminal)?.role;
  if (role === 'source-positive')
    return [`the ${amps(spec.output.fuse)} of the maker of ${id} for its output`];
  return role === 'supply-positive'
    ? [`the ${amps(spec.input.fuse)} of the maker of ${id} for its input`]
    : [];
}
