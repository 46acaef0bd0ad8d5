import { terminalId } from '../../model/content/resolved-job.ts';
import type {
  ConductorLimit,
  FuseAlternative,
  OperatingPoint,
  PlanConductor,
  PlanFuse,
  PlanPower,
} from '../../model/plan/index.ts';
import { amps, ampsDrawn } from '../../model/printed/told.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { Ampacity } from '../../power/conductor/ampacity.ts';
import type { FuseChoice, LawfulFuse } from '../../power/fuse-choice.ts';
import { longestLengthM } from '../../shelf/shelf-lengths.ts';
import { turnOnChain } from '../audio/turn-on-chain.ts';
import { turnOnSums } from '../audio/turn-on-sums.ts';
import type { PlanBook } from '../plan-book.ts';
import { planSize } from '../wiring/wires.ts';
import { planCharging } from './charging.ts';
import { planCranking } from './cranking.ts';
import { bandedDrops } from './drop-bands.ts';
import { dropWorkings } from './feed-and-ground-drop.ts';
import { planKeyOff } from './key-off.ts';
import { remarkFaults } from './network-remarks.ts';
import { operatingPoints, pointFaults } from './operating-points.ts';
import { faultCurrents } from './short/fault-currents.ts';
import { interruptingOf, lawfulInstead } from './short/fuse-interrupting.ts';
import { needTrace } from './sizing/conductor-need.ts';
import type { SizedConductor } from './sizing/conductor-sizing.ts';
import { continuousCurrent } from './sizing/continuous-current.ts';
import type { SizedFuse } from './sizing/fuse-sizing.ts';
import type { GrownFor } from './sizing/least-sizes.ts';
import type { PowerSizing } from './sizing/power-sizing.ts';
import { ratingsOf, type SizedPower } from './sizing/size-power.ts';
import { solvedPoints } from './solved-points.ts';
import { sourceReadings } from './source-readings.ts';

/** The power part of the plan, once sizes and lengths have settled. */
export function planPower(sizing: PowerSizing, sized: SizedPower, book: PlanBook): PlanPower {
  const { job, devices, circuit, loads } = sizing;
  const network = { ...sizing, ...sized };
  const faults = faultCurrents(network);
  const solved = solvedPoints(network);
  const points = operatingPoints.map((point) => solved(point));
  const faulty = operatingPoints.filter((_, k) => k === 0 || points[k]?.state === 'no-solution');
  remarkFaults(
    network,
    faulty.map((point) => [point.name, pointFaults(network, point)] as const),
    book,
  );
  for (const point of points) for (const [id, drop] of dropWorkings(network, point)) book.trace(id, drop);
  const atSources = sourceReadings(network, solved, book);
  const cranking = planCranking(network);
  const chain = turnOnChain(job, devices, book);
  return {
    points,
    drops: bandedDrops(network, points, solved),
    ...(atSources.length > 0 && { sourceReadings: atSources }),
    turnOn: turnOnSums(job, devices, chain, book),
    turnOnChain: chain,
    conductors: [...sized.conductors.values()].map((one) => planConductor(one, sizing, sized, book)),
    fuses: sized.fuses.map((fuse) => planFuse(fuse, sizing, sized, { faults, points }, book)),
    charging: planCharging(job, { circuit, islands: sizing.paths.islands }, points, book),
    keyOff: planKeyOff(job, book),
    ...(cranking && { cranking }),
    loads: [...loads],
  };
}

function planConductor(
  sized: SizedConductor,
  sizing: PowerSizing,
  { fuses: sizedFuses, conductors }: SizedPower,
  book: PlanBook,
): PlanConductor {
  const { job, circuit, paths, protection } = sizing;
  const { link, role, cable, judged, lengthM, neededA, chosen, reason } = sized;
  const at = `power.conductors.${link.id}`;
  const edge = circuit.edges.find(({ id }) => id === link.id);
  const fuses = protection.get(link.id)?.fuses.map(({ id }) => id) ?? [];
  if (edge) book.trace(`${at}.neededA`, needTrace(edge, sizing, ratingsOf(sizedFuses, job), conductors));
  if (judged) {
    book.trace(`${at}.dropV`, judged.dropV);
    book.trace(`${at}.conductorC`, judged.temperatureC);
    book.trace(`${at}.ohmPerM`, judged.ohmPerM);
    book.trace(`${at}.cautionA`, judged.ampacity.cautionA);
  }
  const ampacityA = judged ? book.trace(`${at}.ampacityA`, judged.ampacity.ampacityA) : 0;
  return {
    id: link.id,
    from: terminalId(link.from),
    to: terminalId(link.to),
    role,
    size: planSize(cable),
    material: cable.material,
    insulationC: cable.insulationC ?? job.rules['insulation-unmarked'].value,
    lengthM,
    ampacityA,
    cautionA: judged?.ampacity.cautionA.value ?? 0,
    limits: judged ? limitsOf(judged.ampacity, neededA) : [],
    fuses,
    fed: edge !== undefined && role === 'power' ? paths.sourcesOf(edge).length > 0 : true,
    neededA,
    chosen,
    reason,
    ...(sized.grown && { grown: planGrown(sized.grown) }),
    ...(sized.shortOf && { shortOf: { part: sized.shortOf.part, size: planSize(sized.shortOf) } }),
    alternatives: sized.alternatives.map(({ candidate, ampacity }) => ({
      part: candidate.part,
      size: planSize(candidate),
      ampacityA: ampacity.ampacityA.value,
      stockM: longestLengthM(job.shop.stock[candidate.part]),
      note: `carries its fuse of ${ampsDrawn(neededA)}`,
    })),
  };
}

function planGrown({ from, with: tried, ...rest }: GrownFor): NonNullable<PlanConductor['grown']> {
  return { from: planSize({ size: from }), with: planSize({ size: tried }), ...rest };
}

function limitsOf({ limits }: Ampacity, neededA: number): ConductorLimit[] {
  return limits.flatMap(({ zone, stopA, cautionA, stopGoverned, cautionGoverned }) => [
    ampacityLimit('stop', zone, neededA, stopA, stopGoverned),
    ampacityLimit('caution', zone, neededA, cautionA, cautionGoverned),
  ]);
}

function ampacityLimit(
  level: ConductorLimit['level'],
  zone: string,
  neededA: number,
  { value: limit, trace: { citation, mark } }: Traced<number>,
  governed: readonly string[],
): ConductorLimit {
  const what = governed.length > 0 ? `ampacity, lowered by ${governed.join(', ')}` : 'ampacity';
  return { what, zone, value: neededA, limit, unit: 'A', level, citation, ...(mark && { mark }) };
}

function planFuse(
  fuse: SizedFuse,
  sizing: PowerSizing,
  { conductors }: SizedPower,
  {
    faults,
    points,
  }: { readonly faults: ReturnType<typeof faultCurrents>; readonly points: readonly OperatingPoint[] },
  book: PlanBook,
): PlanFuse {
  const continuous = continuousCurrent(fuse.edge.id, points);
  const { edge, device, form, ratingA, choice, protects } = fuse;
  const at = `power.fuses.${edge.id}`;
  const interrupting = interruptingOf(fuse, faults.get(edge.id) ?? null, sizing, book);
  const ampacities = protects.map((id) => conductors.get(id)?.judged?.ampacity.ampacityA.value ?? 0);
  const leastAmpacityA = ampacities.length > 0 ? Math.min(...ampacities) : null;
  writeRating(fuse, leastAmpacityA, at, book);
  if (continuous) book.trace(`${at}.continuousA`, continuous.currentA);
  return {
    id: edge.id,
    item: device.id,
    way: edge.way,
    form,
    ratingA,
    ...interrupting,
    holderA: fuse.holderA,
    from: edge.from,
    to: edge.to,
    source: fuse.source?.device.id ?? null,
    distanceM: distance(fuse, sizing, at, book),
    protects: [...protects],
    ratedA: fuse.ratedA,
    ...(continuous && { continuousA: continuous.currentA.value, continuousAt: continuous.at }),
    ceilingA: fuse.ceilingA,
    leastAmpacityA,
    chosen: fuse.givenA === null ? 'computed' : 'given',
    reason: reasonOf(fuse),
    alternatives: choice
      ? alternativesOf({ ...choice, alternatives: lawfulInstead(fuse, interrupting, sizing) }, ratingA)
      : [],
    loads: sizing.paths.downstream(edge).map(({ device: { id } }) => id),
  };
}

/** How far along its conductors a fuse stands from the battery that reaches it bare (m); null where none does. */
function distance(
  { source, edge }: SizedFuse,
  { paths, lengths }: PowerSizing,
  at: string,
  book: PlanBook,
): number | null {
  const lengthM = (id: string) => lengths(id).lengthM;
  const wayM = source && paths.bareLengthM(source, edge, lengthM);
  if (!source || wayM === null) return null;
  const way = (paths.way(source, edge, lengthM) ?? []).filter(({ kind }) => kind === 'conductor');
  const shortestM = way.reduce((sum, { id }) => sum + lengthM(id), 0);
  const single = Math.abs(shortestM - wayM) < 1e-9;
  const working = traced(wayM, 'm', {
    rule: 'fuse-distance',
    formula: single
      ? 'the sum of the conductors between source and fuse'
      : 'the sum of the conductors between source and fuse, by the longest of the ways side by side',
    citation: 'lengths of the conductors',
    inputs: single ? way.map(({ id }) => [id, lengthM(id), 'm'] as const) : [],
  });
  return book.trace(`${at}.distanceM`, working);
}

function reasonOf({ givenA, choice }: SizedFuse): string {
  return givenA === null ? (choice?.reason ?? 'no rating could be computed') : `given: ${amps(givenA)}`;
}

/** How the rating of a fuse came about, from its current on. */
function writeRating(fuse: SizedFuse, leastAmpacityA: number | null, at: string, book: PlanBook): void {
  const { choice, ratingA } = fuse;
  book.trace(`${at}.ratedA`, ratedTrace(fuse));
  if (choice) book.trace(`${at}.wantedA`, choice.wantedA);
  if (choice?.mostA) book.trace(`${at}.mostA`, choice.mostA);
  if (ratingA !== null) book.trace(`${at}.ratingA`, ratingTrace(fuse, ratingA, leastAmpacityA));
}

/** The current through a fuse at rated power, as the sum of what it feeds. */
function ratedTrace({ ratedA, solvedA, shares }: SizedFuse): Traced<number> {
  if (solvedA >= ratedA && solvedA > 0)
    return traced(ratedA, 'A', {
      rule: 'fuse-current',
      formula:
        'the greatest of what it feeds at the voltage for sizing and what flows at the voltages that its devices get, both rounded up to 0.1 A',
      citation: "sum of currents; Kirchhoff's laws",
      inputs: [
        ['sum', shares.reduce((sum, [, currentA]) => sum + currentA, 0), 'A'],
        ['solved', solvedA, 'A'],
      ],
    });
  return traced(ratedA, 'A', {
    rule: 'fuse-current',
    formula: 'the sum of what it feeds at rated power, rounded up to 0.1 A',
    citation: 'sum of currents',
    inputs: shares.map(([name, currentA]) => [name, currentA, 'A'] as const),
  });
}

function ratingTrace(
  { choice, givenA, ratedA, form }: SizedFuse,
  ratingA: number,
  leastAmpacityA: number | null,
) {
  return traced(ratingA, 'A', {
    origin: givenA === null ? 'computed' : 'given',
    rule: 'fuse-choice',
    formula: 'the next made rating at or above In, at most the ceiling and the least ampacity protected',
    citation: choice?.wantedA.trace.citation ?? 'the job',
    ...(choice?.wantedA.trace.mark ? { mark: choice.wantedA.trace.mark } : {}),
    inputs: [
      ['I', ratedA, 'A'],
      ['In', choice?.wantedA.value ?? ratedA, 'A'],
      ['made', `${fuseForms[form].ratingsA.join(', ')} A`, ''],
      [
        'of which on the shelf',
        choice?.chosen ? (choice.chosen.stockQuantity > 0 ? 'yes' : 'no') : 'none fits',
        '',
      ],
      ...(leastAmpacityA === null ? [] : [['least ampacity', leastAmpacityA, 'A'] as const]),
    ],
  });
}

/** What else may lawfully stand there: where the job gave another rating, the one that would have been chosen first. */
function alternativesOf({ alternatives, chosen }: FuseChoice, ratingA: number | null): FuseAlternative[] {
  const all = chosen && chosen.ratingA !== ratingA ? [chosen, ...alternatives] : alternatives;
  return all.map(
    ({ form, ratingA, part, stockQuantity, addParts, boardAreaM2, keepsMargin }: LawfulFuse) => ({
      form,
      ratingA,
      part,
      stockQuantity,
      parts: [...addParts],
      areaM2: boardAreaM2 ?? 0,
      note: keepsMargin
        ? 'keeps the margin on the rated current'
        : 'carries the rated current without the margin',
    }),
  );
}
