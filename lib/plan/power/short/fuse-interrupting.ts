import { isFault } from '../../../model/fault.ts';
import type { PlanFuse } from '../../../model/plan/index.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import { chooseFuse, type LawfulFuse, type StockedFuse } from '../../../power/fuse-choice.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import { interruptNeedA } from '../../../power/interrupting.ts';
import type { PlanBook } from '../../plan-book.ts';
import { fuseShelf, usualInterruptA } from '../sizing/fuse-shelf.ts';
import type { SizedFuse } from '../sizing/fuse-sizing.ts';
import type { PowerSizing } from '../sizing/power-sizing.ts';
import type { FuseFault } from './fault-currents.ts';

/** Which part of the shelf a fuse is, what that interrupts, and what a short drives through it. */
export type Interrupting = Pick<
  PlanFuse,
  | 'part'
  | 'stockQuantity'
  | 'interruptA'
  | 'interruptBasis'
  | 'needsInterruptA'
  | 'faultA'
  | 'faultAt'
  | 'faultFrom'
  | 'faultWays'
  | 'faultByMakersA'
  | 'faultUnknown'
>;

/** Holds a fuse against the short behind it. */
export function interruptingOf(
  fuse: SizedFuse,
  fault: FuseFault | null,
  sizing: PowerSizing,
  book: PlanBook,
): Interrupting {
  const at = `power.fuses.${fuse.edge.id}`;
  const need = fault && fuse.source ? needOf(fuse, fault, sizing) : null;
  const stocked = onShelf(fuse, need?.value ?? 0, sizing);
  const { own, basis } = interrupts(fuse, stocked, sizing);
  return {
    part: stocked?.part ?? null,
    stockQuantity: stocked?.quantity ?? 0,
    interruptA: book.trace(`${at}.interruptA`, own),
    interruptBasis: basis,
    needsInterruptA: need && book.trace(`${at}.needsInterruptA`, need),
    faultA: fault?.faultA ? book.trace(`${at}.faultA`, fault.faultA) : null,
    ...(fault && {
      faultAt: fault.at,
      faultFrom: fault.from.map(({ source: { source, basis: rests }, currentA }) => ({
        source: source.device.id,
        currentA: book.trace(`${at}.faultFrom.${source.device.id}`, currentA),
        basis: rests,
      })),
      faultWays: fault.ways.map((way) => ({ ...way })),
      faultByMakersA: fault.byMakersA,
      ...(fault.unknown.length > 0 && {
        faultUnknown: fault.unknown.map(({ source }) => source.device.id),
      }),
    }),
  };
}

/**
 * What a fuse must interrupt as the first behind a battery: the prospective current. Where the resistance of such a
 * battery is assumed, what the table by cranking current asks of all of these together counts too, if that is more. Null
 * where nobody states what a battery right before it gives.
 */
function needOf(
  { edge }: SizedFuse,
  { faultA, from, unknown }: FuseFault,
  { paths, job }: PowerSizing,
): Traced<number> | null {
  if (unknown.some(({ source }) => paths.isBare(source, edge))) return null;
  const assumed = from.filter(
    ({ source: { source, basis } }) => source.type === 'battery' && basis === 'assumed',
  );
  const isFirst = assumed.some(({ source: { source } }) => paths.isBare(source, edge));
  const crankingA = assumed.reduce((sum, { source: { source } }) => sum + crankingOf(source.device.spec), 0);
  const table = isFirst && crankingA > 0 ? interruptNeedA(crankingA, powerRules(job.rules)) : null;
  if (table && !isFault(table) && table.value > (faultA?.value ?? 0)) return table;
  return faultA;
}

function crankingOf(spec: SizedFuse['device']['spec']): number {
  return spec?.kind === 'battery' ? (spec['cold-cranking'] ?? 0) : 0;
}

/**
 * The fuse of the shelf that has the form and the rating: of several parts the one that comes nearest to interrupting
 * what it needs, then the one with most pieces.
 */
function onShelf({ form, ratingA }: SizedFuse, needA: number, { job }: PowerSizing): StockedFuse | null {
  const clearsA = ({ interruptA = 0 }: StockedFuse) => Math.min(needA, interruptA);
  const [first] = fuseShelf(job.parts, job.shop, job.rules)
    .fuses.filter((one) => one.form === form && one.ratingA === ratingA)
    .toSorted(
      (a, b) =>
        Number(b.quantity > 0) - Number(a.quantity > 0) || clearsA(b) - clearsA(a) || b.quantity - a.quantity,
    );
  return first ?? null;
}

/** What a fuse interrupts: by its part, else by the house rule of its form. */
function interrupts({ form }: SizedFuse, stocked: StockedFuse | null, { job }: PowerSizing) {
  const spec = stocked && job.parts[stocked.part];
  if (spec?.kind !== 'fuse' || spec.interrupts === undefined)
    return { own: usualInterruptA(form, job.rules), basis: 'assumed' } as const;
  const own = traced(spec.interrupts, 'A', {
    origin: 'given',
    rule: 'fuse-interrupting',
    citation: "the part's data",
  });
  return { own, basis: 'maker' } as const;
}

/** What else may stand there, by what a short really drives through it now that conductors are sized. */
export function lawfulInstead(
  { choice, duty, source }: SizedFuse,
  { needsInterruptA }: Interrupting,
  { job }: PowerSizing,
): readonly LawfulFuse[] {
  if (!choice) return [];
  const isKnown = source === null || needsInterruptA !== null;
  const interruptNeedA = isKnown ? needsInterruptA : Number.POSITIVE_INFINITY;
  const shelf = fuseShelf(job.parts, job.shop, job.rules);
  const again = chooseFuse({ ...duty, interruptNeedA }, shelf, powerRules(job.rules));
  return isFault(again) ? choice.alternatives : again.alternatives;
}
