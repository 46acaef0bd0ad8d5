import { type Device, type Job, terminalId } from '../../../model/content/resolved-job.ts';
import type { HouseRules } from '../../../model/house-rules.ts';
import { fuseCeilingA } from '../../../model/kinds/fields/supply.ts';
import { turnOnDrawOf } from '../../../model/kinds/fields/turn-on-draw.ts';
import { wholeUp } from '../../../model/quantity/safe-rounding.ts';
import type { FuseForm } from '../../../model/vocabulary.ts';
import type { FuseChoice, FuseDuty } from '../../../power/fuse-choice.ts';
import { type CircuitEdge, type CircuitLoad, type CircuitSource, isStore } from '../circuit/circuit.ts';
import type { CircuitPaths } from '../circuit/circuit-paths.ts';
import { type DeviceLoad, supplyOf } from '../device-loads.ts';
import { type ShortSource, shortSources } from '../short/short-sources.ts';
import { type Choosing, chooseBare, chooseWithGrounds } from './fuse-chooser.ts';
import { type Protected, type Protection, protectedBy } from './protection.ts';

/** A fuse with what it has to do and what was chosen for it. */
export interface SizedFuse {
  readonly edge: CircuitEdge;
  readonly device: Device;
  readonly form: FuseForm;
  readonly ratedA: number;
  /** What flows at the voltages that its devices really get, as far as that was solved by now (A). */
  readonly solvedA: number;
  /** What it is the sum of at the voltage for sizing, by name (A). */
  readonly shares: readonly (readonly [name: string, currentA: number])[];
  readonly ceilingA: number | null;
  readonly holderA: number | null;
  /** The battery that reaches it without another fuse, the strongest of several; null where none does. */
  readonly source: CircuitSource | null;
  /** What it was chosen for. */
  readonly duty: FuseDuty;
  readonly protects: readonly string[];
  readonly givenA: number | null;
  readonly choice: FuseChoice | null;
  /** Given, else chosen; null where no lawful rating was found. */
  readonly ratingA: number | null;
}

/** What the fuses of a circuit are sized from. */
export interface FuseSizing extends Choosing {
  readonly job: Job;
  readonly loads: readonly DeviceLoad[];
  readonly protection: ReadonlyMap<string, Protection>;
  /** What a fuse carries at the voltages that its devices really get, as far as that was solved by now (A). */
  readonly flowA: (fuse: string) => number;
}

/** Chooses or takes over the rating of every fuse whose outgoing side is wired. */
export function sizeFuses(sizing: FuseSizing): SizedFuse[] {
  const { circuit } = sizing;
  const wired = new Set(sizing.job.links.flatMap(({ from, to }) => [terminalId(from), terminalId(to)]));
  const used = (edge: CircuitEdge) =>
    wired.has(edge.to) ||
    circuit.edges.some((other) => other !== edge && [other.from, other.to].includes(edge.to));
  return circuit.edges.flatMap((edge): SizedFuse[] => {
    const form = formOf(edge);
    return edge.kind === 'fuse' && edge.device && form && used(edge)
      ? [sizeFuse(edge, edge.device, form, sizing)]
      : [];
  });
}

function formOf({ device, way }: CircuitEdge): FuseForm | null {
  const spec = device?.spec;
  if (spec?.kind === 'fuse-holder') return spec['fuse-form'];
  return spec?.kind === 'distribution' ? (spec['fused-ways'][way]?.['fuse-form'] ?? null) : null;
}

function sizeFuse(edge: CircuitEdge, device: Device, form: FuseForm, sizing: FuseSizing): SizedFuse {
  const protects = protectedBy(sizing.protection, edge.id);
  const bare = bareBatteries(edge, sizing);
  const { ratedA, solvedA, shares, ceilingA, ceilingFuses, makerA } = demand(edge, sizing);
  const holderA = holderLimitA(device);
  const asked = {
    ratedA,
    ceilingA,
    ceilingFuses,
    makerA,
    protects: atTheirThickest(protects, sizing),
    form,
    interruptNeedA: bare.length > 0 ? mostIntoShortA(edge, sizing) : null,
    ...(holderA === null ? {} : { holderLargestA: holderA }),
  };
  const { choice, duty } = chooseBare(protects, sizing, chooseWithGrounds(edge, sizing, asked));
  const givenA = givenRatingA(edge, device);
  return {
    edge,
    device,
    form,
    ratedA,
    solvedA,
    shares,
    ceilingA,
    holderA,
    source: bare[0]?.source ?? null,
    duty,
    protects: protects.map(({ id }) => id),
    givenA,
    choice,
    // What the vehicle came with is read off, never chosen.
    ratingA: givenA ?? (device.origin === 'vehicle' ? null : (choice?.chosen?.ratingA ?? null)),
  };
}

/** Conductors are sized after their fuse: until then each counts with the thickest cable that it may have. */
function atTheirThickest(protects: readonly Protected[], { mostA }: FuseSizing) {
  return protects.map(({ id, sideBySide }) => ({
    id: `${id} at its thickest`,
    ampacityA: mostA(id),
    sideBySide,
  }));
}

/** The batteries and banks that reach a fuse bare, first what nobody states, then by what each gives into a short at its posts. */
function bareBatteries(edge: CircuitEdge, { job, circuit, paths }: FuseSizing): readonly ShortSource[] {
  return shortSources(job, circuit.sources)
    .filter(({ source }) => isStore(source) && paths.isBare(source, edge))
    .toSorted((a, b) => (a.ohm ?? 0) / a.emfV - (b.ohm ?? 0) / b.emfV);
}

/**
 * The most (A) that all sources of a fuse together may give into a short, before any conductor is sized: infinite where
 * nobody states what one of them gives.
 */
function mostIntoShortA(edge: CircuitEdge, { job, paths }: FuseSizing): number {
  return shortSources(job, paths.sourcesOf(edge)).reduce(
    (sum, { emfV, ohm }) => sum + (ohm === null ? Number.POSITIVE_INFINITY : emfV / ohm),
    0,
  );
}

function holderLimitA({ spec }: Device): number | null {
  return spec?.kind === 'fuse-holder' || spec?.kind === 'distribution' ? spec.current : null;
}

/** The rating that the job writes, or that the vehicle came with; null where neither does. */
function givenRatingA({ way }: CircuitEdge, { origin, fittedFuses, given }: Device): number | null {
  if (origin === 'vehicle') return fittedFuses?.[way === '' ? 'fuse' : way] ?? null;
  return (way === '' ? given?.fuse : given?.fuses[way]) ?? null;
}

/**
 * Current through a fuse at rated power, rounded up to 0.1 A, and the ceiling that the makers of the devices right
 * behind it set: the least of theirs, with how many fuses side by side share it. A device behind a further fuse sets
 * its ceiling there.
 */
function demand(
  edge: CircuitEdge,
  { job, paths, loads, flowA }: FuseSizing,
): Pick<SizedFuse, 'ratedA' | 'solvedA' | 'shares' | 'ceilingA'> & {
  readonly ceilingFuses: number;
  readonly makerA: number;
} {
  const behind = paths.downstream(edge);
  const others = paths.sourcesBehind(edge);
  const batteries = others.filter(({ type }) => type === 'battery');
  const ratedOf = (id: string) => loads.find(({ item }) => item === id)?.ratedA ?? 0;
  const switched = switchedA(job, paths.nodesBehind(edge));
  const shares = [
    ...behind.map(({ device: { id } }) => [id, ratedOf(id)] as const),
    ...batteries.map(({ device }) => [`recharge of ${device.id}`, rechargeA(device, job)] as const),
    ...others.flatMap((source) => ownShares(source, behind.length > 0, job)),
    ...(switched > 0 ? [['turn-on', switched] as const] : []),
  ];
  const ratedA = shares.reduce((sum, [, currentA]) => sum + currentA, 0);
  const solvedA = flowA(edge.id);
  const ceilings = [
    ...(batteries.length > 0 ? [] : behind.flatMap((load) => ceilingAt(load, edge, paths, job.rules))),
    ...(batteries.length > 0 || behind.length > 0 ? [] : others.flatMap(sourceCeiling)),
  ];
  const [least] = ceilings.toSorted((a, b) => a.ceilingA / a.fuses - b.ceilingA / b.fuses);
  return {
    ratedA: Math.max(wholeUp(ratedA * 10) / 10, solvedA),
    solvedA,
    shares,
    ceilingA: least?.ceilingA ?? null,
    ceilingFuses: least?.fuses ?? 1,
    makerA: least && behind.length <= 1 ? (least.ceilingA / least.fuses) * least.makerShare : 0,
  };
}

/**
 * What a battery behind a fuse takes up for long once it is run down (A): its share of its capacity, and at least what
 * it takes when nearly full.
 */
function rechargeA({ spec }: Device, { rules }: Pick<Job, 'rules'>): number {
  const capacityAh = spec?.kind === 'battery' ? spec.capacity / 3600 : 0;
  return Math.max(rules['battery-acceptance'].value, capacityAh * rules['battery-recharge'].value);
}

/** What a charger gives through a fuse to the battery before it, and what a bank by itself asks of its own fuse (A). */
function ownShares(
  { device: { id, spec } }: CircuitSource,
  feedsOthers: boolean,
  { rules }: Pick<Job, 'rules'>,
): readonly (readonly [string, number])[] {
  if (spec?.kind === 'charger') return [[`output of ${id}`, spec.output.current]];
  // A bank takes and gives in turns: what its maker fuses it for tells how much.
  if (spec?.kind === 'capacitor-bank' && !feedsOthers)
    return [[`what the maker of ${id} fuses it for`, spec.fuse / rules['fuse-margin'].value]];
  return [];
}

/** The ceiling that the maker of a charger or a bank sets to the fuse at its output or post. */
function sourceCeiling({ device: { spec } }: CircuitSource) {
  if (spec?.kind === 'charger') return [{ ceilingA: spec.output.fuse, fuses: 1, makerShare: 1 }];
  return spec?.kind === 'capacitor-bank' ? [{ ceilingA: spec.fuse, fuses: 1, makerShare: 1 }] : [];
}

/**
 * The ceiling that the maker of a device sets to its fuses, where a fuse is one of those nearest to it. A device with
 * fuses of its own aboard sets none but what its maker states for the fuse before it: that protects the conductor.
 */
function ceilingAt({ device, from }: CircuitLoad, edge: CircuitEdge, paths: CircuitPaths, rules: HouseRules) {
  const supply = supplyOf(device.spec);
  const ceilingA = supply ? fuseCeilingA(supply) : null;
  if (ceilingA === null) return [];
  const { fuses } = paths.inflows.into(from, '');
  const isOne = fuses.some(({ id }) => id === edge.id);
  // An amplifier draws by what it is loaded with; of any other device the fuse that its maker states is the one to fit.
  const makerShare = device.spec?.kind === 'amplifier' ? rules['fuse-under-maker'].value : 1;
  return isOne ? [{ ceilingA, fuses: fuses.length, makerShare }] : [];
}

/** What turn-on wires draw that begin behind a fuse: through a relay's contact, or straight from a way. */
function switchedA(job: Job, behind: ReadonlySet<string>): number {
  return job.links.reduce((sum, { from, to }) => {
    const far = behind.has(terminalId(from)) ? to : behind.has(terminalId(to)) ? from : null;
    const device = far && job.devices.find(({ id }) => id === far.device);
    const isTurnOn = far && device?.facts.terminals[far.terminal]?.role === 'turn-on-in';
    return sum + (isTurnOn ? (turnOnDrawOf(device?.spec ?? null, job.rules)?.currentA ?? 0) : 0);
  }, 0);
}
