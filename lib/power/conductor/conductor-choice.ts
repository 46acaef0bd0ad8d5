import { type Fault, faultOf, isFault, negativeFault, positiveFault } from '../../model/fault.ts';
import { printedMetres } from '../../model/printed/lengths.ts';
import {
  amps,
  ampsDrawn,
  percentKept,
  squareMm,
  squareMmAtLeast,
  voltsAllowed,
  voltsLost,
} from '../../model/printed/told.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { ConductorMaterial } from '../../model/vocabulary.ts';
import { conductanceGrace, conductanceSm } from '../network/conductance.ts';
import type { PowerRules } from '../power-rules.ts';
import { type Ampacity, ampacity, type InsulatedConductor, type RunZone } from './ampacity.ts';
import { conductorTemperatureC } from './conductor-temperature.ts';
import { ohmPerM } from './resistance.ts';

/** A cable on the shelf, or one that could be had. */
export interface CableCandidate {
  readonly part: string;
  readonly size: { readonly label: string; readonly areaMm2: number };
  readonly material: ConductorMaterial;
  readonly insulationC: number | null;
  readonly measuredOhmPerM?: number;
  /** Longest piece on the shelf (m); left out where the shelf is not counted. */
  readonly stockM?: number;
}

/** What a port takes (mm2). */
export interface PortLimit {
  readonly largestMm2: number;
  /** True for a conductor that a reducer brings in. */
  readonly reduces?: (areaMm2: number) => boolean;
}

/** True for a conductor that goes into a port, by itself or by a reducer. Areas within 0.1 % are the same size. */
export function goesIn(areaMm2: number, { largestMm2, reduces }: PortLimit): boolean {
  return areaMm2 <= largestMm2 * 1.001 || (reduces?.(areaMm2) ?? false);
}

/** What a conductor has to do. */
export interface ConductorDuty {
  /** The fuse that protects it (A); for a source-limited conductor the source's limit. */
  readonly fuseA: number;
  /** Current at which the drop is judged (A). */
  readonly currentA: number;
  /** Length of this run (m). */
  readonly lengthM: number;
  /** Length of the whole way, feed and return, that takes this size (m); by default this run alone. */
  readonly loopLengthM?: number;
  /** Resistance of all else on the way: fuses, joints, body (ohm). */
  readonly otherOhm: number;
  /** Greatest drop over the way (V). */
  readonly mostDropV: number;
  readonly zones: readonly RunZone[];
  /** Ports at the ends (mm2); a conductor above the largest doesn't go in, unless a reducer is made for it. */
  readonly ports?: readonly (PortLimit & { readonly id: string })[];
  /** A size never shrinks between passes: at least this area (mm2). */
  readonly leastMm2?: number;
  /** What asks for that area, as a clause: a port by its name, a feed, a drop. */
  readonly leastWhy?: string;
  /**
   * The fuse once more (A), held against the ampacity at the true ambient, under loom and in its bundle (caution limit):
   * a candidate that misses it is taken only where none keeps it.
   */
  readonly warmFuseA?: number;
  /** For a ground: at least the conductance of its feeds (S m at 20 C). */
  readonly leastSm?: number;
}

/** What rules a candidate out. */
export type ConductorLimit = 'fuse' | 'insulation' | 'drop' | 'port' | 'stock' | 'least-size' | 'conductance';

/** A candidate with its figures and all limits that it misses. */
export interface JudgedCable {
  readonly candidate: CableCandidate;
  readonly ampacity: Ampacity;
  /** Temperature that its resistance counts at (C). */
  readonly temperatureC: Traced<number>;
  /** Hot resistance of a metre. */
  readonly ohmPerM: Traced<number>;
  readonly dropV: Traced<number>;
  readonly misses: readonly { readonly limit: ConductorLimit; readonly text: string }[];
  /** Why another candidate goes before it, though it is lawful; null where nothing speaks against it. */
  readonly doubt: string | null;
}

/** The choice, or that nothing fits and by how much the best candidate misses. */
export interface ConductorChoice {
  readonly chosen: JudgedCable | null;
  /** The limits that ruled out the next smaller candidate; where nothing fits, those that the best one misses. */
  readonly governed: readonly ConductorLimit[];
  readonly reason: string;
  /** All candidates, thin to thick. */
  readonly considered: readonly JudgedCable[];
}

/**
 * The smallest candidate whose ampacity (stop limit) covers its fuse, whose insulation is for more than the ambient of
 * its way, and whose drop, I * (r * L + Rother) with hot
 * resistance, stays within the limit; of these one that covers its fuse at the true ambient too, if there is any. The reason names the limit that ruled out the next smaller one; where nothing
 * fits, it names what the thickest candidate still misses and by how much. A candidate that can't be judged, such as
 * one that is too thin for any ampacity, is passed over. Fault on a length or current that is out of range, and where
 * no candidate can be judged.
 */
export function chooseConductor(
  duty: ConductorDuty,
  candidates: readonly CableCandidate[],
  rules: PowerRules,
): ConductorChoice | Fault {
  const bad =
    positiveFault({ length: duty.lengthM, 'greatest drop': duty.mostDropV }) ??
    negativeFault({ fuse: duty.fuseA, current: duty.currentA, 'other resistance': duty.otherOhm });
  if (bad) return bad;
  const considered: JudgedCable[] = [];
  const faults: string[] = [];
  const ways = {
    carries: carriedBy(duty.zones, rules),
    temperatureC: conductorTemperatureC(duty.zones, rules),
  };
  for (const candidate of candidates.toSorted(thinFirst)) {
    const judged = judge(duty, candidate, rules, ways);
    if (isFault(judged)) faults.push(`${candidate.part || candidate.size.label}: ${judged.message}`);
    else considered.push(judged);
  }
  if (considered.length === 0 && faults.length > 0)
    return faultOf(
      'no-cable-judged',
      candidates.map(({ part, size }) => part || size.label),
      faults.join('; '),
      'correct the figures of the cables, or of the run',
    );
  const beyondDoubt = considered.findIndex(({ misses, doubt }) => misses.length === 0 && doubt === null);
  const at = beyondDoubt >= 0 ? beyondDoubt : considered.findIndex(({ misses }) => misses.length === 0);
  const chosen = considered[at] ?? null;
  const telling = chosen ? considered.slice(0, at).at(-1) : nearestToFit(considered);
  return {
    chosen,
    governed: telling?.misses.map(({ limit }) => limit) ?? [],
    reason: reasonOf(chosen, telling),
    considered,
  };
}

const thinFirst = (a: CableCandidate, b: CableCandidate): number =>
  a.size.areaMm2 - b.size.areaMm2 || a.part.localeCompare(b.part, 'en');

/** Where nothing fits, what comes nearest: it misses fewest limits, and is the thickest of these. */
export function nearestToFit(considered: readonly JudgedCable[]): JudgedCable | undefined {
  return considered.toReversed().toSorted((a, b) => a.misses.length - b.misses.length)[0];
}

/** What is the same for every candidate, or for all that differ by part alone, such as in colour. */
interface Ways {
  readonly carries: (conductor: InsulatedConductor) => Ampacity | Fault;
  readonly temperatureC: Traced<number>;
}

/** The ampacity of conductors through zones, each worked out once. */
function carriedBy(zones: readonly RunZone[], rules: PowerRules): Ways['carries'] {
  const known = new Map<string, Ampacity | Fault>();
  return (conductor) => {
    const { areaMm2, material, insulationC } = conductor;
    const key = `${areaMm2} ${material} ${insulationC}`;
    const found = known.get(key) ?? ampacity(conductor, zones, rules);
    known.set(key, found);
    return found;
  };
}

function judge(
  duty: ConductorDuty,
  candidate: CableCandidate,
  rules: PowerRules,
  { carries: ampacityOf, temperatureC }: Ways,
): JudgedCable | Fault {
  const { size, material, insulationC, measuredOhmPerM } = candidate;
  const conductor = { areaMm2: size.areaMm2, material, insulationC };
  const carries = ampacityOf(conductor);
  if (isFault(carries)) return carries;
  const perM = ohmPerM(
    { ...conductor, ...(measuredOhmPerM !== undefined && { measuredOhmPerM }) },
    temperatureC.value,
    rules,
  );
  if (isFault(perM)) return perM;
  const wayM = duty.loopLengthM ?? duty.lengthM;
  const dropV = traced(duty.currentA * (perM.value * wayM + duty.otherOhm), 'V', {
    rule: 'conductor-drop',
    formula: 'U = I * (r * L + Ro)',
    citation: `Ohm's law; r: ${perM.trace.citation}`,
    ...(perM.trace.mark && { mark: perM.trace.mark }),
    inputs: [
      ['I', duty.currentA, 'A'],
      ['r', perM.value, 'ohm/m'],
      ['L', wayM, 'm'],
      ['Ro', duty.otherOhm, 'ohm'],
    ],
  });
  const misses = [...missesOf(duty, candidate, carries, dropV), ...conductanceMiss(duty, candidate, rules)];
  return {
    candidate,
    ampacity: carries,
    temperatureC,
    ohmPerM: perM,
    dropV,
    misses,
    doubt: doubtOf(duty, carries),
  };
}

function doubtOf({ warmFuseA = 0 }: ConductorDuty, { cautionA }: Ampacity): string | null {
  if (cautionA.value >= warmFuseA) return null;
  return `it carries ${amps(cautionA.value)} at the true ambient, under loom or in its bundle, ${ampsDrawn(warmFuseA - cautionA.value)} less than its fuse`;
}

function missesOf(
  duty: ConductorDuty,
  { size, stockM }: CableCandidate,
  carries: Ampacity,
  dropV: Traced<number>,
): JudgedCable['misses'] {
  const misses: { limit: ConductorLimit; text: string }[] = [];
  const miss = (limit: ConductorLimit, text: string) => misses.push({ limit, text });
  const carriesA = carries.ampacityA.value;
  if (carriesA < duty.fuseA)
    miss('fuse', `it carries ${amps(carriesA)}, ${ampsDrawn(duty.fuseA - carriesA)} less than its fuse`);
  // What no fuse limits asks for no ampacity, and its insulation has to last all the same.
  else if (carriesA <= 0) miss('insulation', 'its insulation is not for the ambient of its way');
  if (dropV.value > duty.mostDropV)
    miss(
      'drop',
      `it drops ${voltsLost(dropV.value)}, ${voltsLost(dropV.value - duty.mostDropV)} above the ${voltsAllowed(duty.mostDropV)} allowed`,
    );
  for (const port of duty.ports ?? [])
    if (!goesIn(size.areaMm2, port)) miss('port', `${port.id} takes at most ${squareMm(port.largestMm2)}`);
  if (stockM !== undefined && stockM < duty.lengthM)
    miss(
      'stock',
      `the longest piece is ${printedMetres('length-left', stockM)} of ${printedMetres('length-taken', duty.lengthM)}`,
    );
  if (size.areaMm2 < (duty.leastMm2 ?? 0) / 1.001)
    miss(
      'least-size',
      `it is to be ${squareMmAtLeast(duty.leastMm2 ?? 0)} or larger${duty.leastWhy === undefined ? '' : `: ${duty.leastWhy}`}`,
    );
  return misses;
}

/** A ground conducts at least as well as its feeds. */
function conductanceMiss(
  { leastSm = 0 }: ConductorDuty,
  candidate: CableCandidate,
  rules: PowerRules,
): JudgedCable['misses'] {
  const ownSm = cableSm(candidate, rules);
  if (ownSm >= leastSm * (1 - conductanceGrace)) return [];
  return [
    { limit: 'conductance', text: `it conducts ${percentKept(ownSm / leastSm)} of what its feed does` },
  ];
}

/** Conductance of one metre of a cable (S m). */
export function cableSm({ size, material, measuredOhmPerM }: CableCandidate, rules: PowerRules): number {
  return conductanceSm(
    { areaMm2: size.areaMm2, material, ...(measuredOhmPerM !== undefined && { measuredOhmPerM }) },
    rules,
  );
}

function reasonOf(chosen: JudgedCable | null, telling: JudgedCable | undefined): string {
  // That an earlier pass needed more is told only where nothing else speaks against a cable.
  const weighty = telling?.misses.filter(({ limit }) => limit !== 'least-size') ?? [];
  const doubt = telling?.doubt ?? null;
  const least = doubt === null ? (telling?.misses ?? []).map(({ text }) => text) : [doubt];
  const texts = weighty.length > 0 ? weighty.map(({ text }) => text) : least;
  const told = telling ? `${telling.candidate.size.label}: ${texts.join('; ')}` : '';
  if (chosen)
    return telling
      ? `${chosen.candidate.size.label} is the smallest that fits; ${told}`
      : `${chosen.candidate.size.label} is the smallest on the shelf, and fits`;
  return telling ? `nothing fits; the nearest is ${told}` : 'nothing fits: no cable is on the shelf';
}
