import { nestJobs } from '../../board/cut/sheet-pieces.ts';
import type { Device, Job } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type {
  PlanBoard,
  PlanCable,
  PlanFuse,
  PlanOffCut,
  PlanPick,
  PlanRun,
  PlanWire,
} from '../../model/plan/index.ts';
import { cutLengths } from '../../shelf/cut-lengths.ts';
import { piecesOf, promisedThere, shelfLengths } from '../../shelf/shelf-lengths.ts';
import { mountingScrew, screwedInto } from '../board/screws/mounting-screw.ts';
import { planHouseRules } from '../plan-house-rules.ts';
import { type GroundBolt, groundBolts } from '../wiring/ground-bolts.ts';
import { countsHole } from '../wiring/runs/way-holes.ts';
import { boardTies } from '../wiring/ties.ts';
import { boxHolders, holdersToBuy } from './box-holders.ts';
import { fusesToBuy, interruptersToBuy } from './fuses-to-buy.ts';
import { frameScrews, looseScrews } from './loose-parts.ts';
import { cutsTaken } from './shelf-takes.ts';
import { threadLockFor, threadLockToBuy } from './thread-lock.ts';
import { wireToBuy } from './wire-to-buy.ts';

/** What a pick list is made from. */
export interface PickInput {
  readonly job: Job;
  readonly wires: readonly PlanWire[];
  readonly runs: readonly PlanRun[];
  readonly cables: readonly PlanCable[];
  readonly fuses: readonly PlanFuse[];
  readonly boards: readonly PlanBoard[];
  readonly offCuts: readonly PlanOffCut[];
}

/** Everything to fetch from the shelf, by kind and part, with what is there and what is short. */
export function pickList(input: PickInput): PlanPick[] {
  const pieces = countPieces(input);
  const lengths = collectLengths(input);
  const rows = [
    ...[...pieces].map(([part, quantity]) => pieceRow(input.job, part, quantity)),
    ...[...lengths].map(([part, cuts]) => reelRow(input.job, part, cuts)),
    ...fusesToBuy(input),
    ...interruptersToBuy(input),
    ...wireToBuy(input.wires),
    ...groundFastenersToBuy(input.job),
    ...holdersToBuy(input.job),
    ...looseScrews(input.job),
    ...frameScrews(input.job),
    ...threadLockToBuy(input.job, input.boards),
    ...suppliedLeads(input),
    ...broughtDevices(input),
  ];
  const key = ({ kind, part }: PlanPick) => `${kind} ${part}`;
  return rows.toSorted((a, b) => (key(a) < key(b) ? -1 : 1));
}

function countPieces({
  job,
  wires,
  runs,
  cables,
  fuses,
  boards,
  offCuts,
}: PickInput): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  const add = (part: string | null | undefined, quantity = 1) => {
    if (part && quantity > 0) counts.set(part, (counts.get(part) ?? 0) + quantity);
  };
  for (const device of job.devices) if (isOfShop(device)) add(device.part);
  for (const { part } of fuses) add(part);
  for (const part of endParts(job, wires)) add(part);
  for (const { passes = [] } of runs) for (const { tie, ties } of passes) add(tie, ties);
  for (const board of boards) for (const [tie, ties] of boardTies(job, board, wires)) add(tie, ties);
  for (const { part } of cables) {
    const spec = job.parts[part];
    if (spec?.kind === 'cable' && spec['made-length'] !== undefined) add(part);
  }
  for (const { id, grommets } of runs)
    for (const grommet of grommets) if (countsHole(runs, id, grommet)) add(grommet.part);
  for (const board of boards) {
    for (const { part, made } of board.fixings) {
      add(part);
      add(made?.part);
    }
    for (const { parts } of board.pieces) for (const { part, count } of parts) add(part, count);
    for (const { screw } of board.ribs) add(screw?.part, screw?.count);
  }
  for (const { bolt, nut, washer, made } of groundBolts(job)) {
    add(bolt);
    add(nut);
    add(washer);
    add(made?.part);
  }
  add(threadLockFor(job, boards));
  for (const { part, count } of boxHolders(job)) add(part, count);
  for (const glue of new Set(boards.flatMap(({ ribs }) => ribs.map((rib) => rib.glue)))) add(glue);
  // Sheets that are opened, not boards: several boards come out of one sheet.
  const { sheets, unplaced } = nestJobs([{ job, boards, rules: planHouseRules(job), offCuts }]);
  for (const { stock } of sheets) if (stock.offCut === undefined) add(stock.sheet);
  for (const { id, sheet } of boards) if (unplaced.some((piece) => piece.id === id)) add(sheet);
  for (const { facts, origin, board } of job.devices) {
    if (origin !== 'job' || !board) continue;
    const own = job.boards.find(({ id }) => id === board);
    if (!own) continue;
    const { thicknessM = own.sheet.thickness } = boards.find(({ id }) => id === board) ?? {};
    const into = screwedInto(own, thicknessM);
    for (const hole of facts.footprint?.holes ?? []) add(mountingScrew(hole, job, into)?.id);
  }
  return counts;
}

/** Bolts, nuts and serrated washers of ground points that the catalogue lacks: they have no part, and are to be bought all the same. */
function groundFastenersToBuy(job: Job): PlanPick[] {
  const points = groundBolts(job);
  const lacking = (what: string, title: string, of: (point: GroundBolt) => boolean): PlanPick[] =>
    [...new Set(points.map(({ stud }) => stud))].flatMap((stud) => {
      const quantity = points.filter((point) => point.stud === stud && of(point)).length;
      const named = {
        part: `${what}-${stud.toLowerCase()}`,
        title: `${title}, ${stud}, not in the catalogue`,
      };
      const counted = { quantity, unit: 'piece', stockQuantity: 0, short: quantity } as const;
      return quantity === 0 ? [] : [{ ...named, kind: 'fixing', ...counted }];
    });
  return [
    ...lacking(
      'ground-bolt',
      'Bolt for a ground point',
      ({ own, by, bolt }) => !own && by !== 'nut' && bolt === null,
    ),
    ...lacking(
      'ground-nut',
      'Nut for a ground point',
      ({ own, by, nut }) => !own && by !== 'bolt' && nut === null,
    ),
    ...lacking('ground-washer', 'Serrated washer for a ground point', ({ washer }) => washer === null),
  ];
}

/** Leads that makers supply with a device, by its part: a set for each device of which the job uses any, one plug or several. */
function suppliedLeads({ job, wires }: PickInput): PlanPick[] {
  const ends = wires.flatMap(({ ends: both }) => both).filter(({ form }) => form === 'supplied-lead');
  const used = job.devices.filter(({ id }) => ends.some(({ terminal }) => terminal.startsWith(`${id}.`)));
  const counts = new Map<string, number>();
  for (const { origin, part } of used)
    if (origin === 'job' && part !== null) counts.set(part, (counts.get(part) ?? 0) + 1);
  return [...counts].map(([part, quantity]): PlanPick => {
    return {
      ...{
        part: `${part}-lead`,
        title: `Leads for speaker level of ${part}, a set for each`,
        kind: 'cable',
      },
      ...{ quantity, unit: 'piece', stockQuantity: quantity, short: 0, suppliedWith: part },
    };
  });
}

/** True for a device that the shop brings: one of the vehicle, and one that the customer brings, is none of its shelf's. */
function isOfShop({ origin, given }: Device): boolean {
  return origin === 'job' && given?.['brought-by'] === undefined;
}

/** Devices that the customer brings: to be there when the job begins, and none of the shelf's. */
function broughtDevices({ job }: Pick<PickInput, 'job'>): PlanPick[] {
  const rows = new Map<string, PlanPick>();
  for (const { part, given } of job.devices) {
    const broughtBy = given?.['brought-by'];
    if (part === null || broughtBy === undefined) continue;
    const quantity = (rows.get(part)?.quantity ?? 0) + 1;
    rows.set(part, {
      ...{ part, ...named(job, part), quantity, unit: 'piece', stockQuantity: 0, short: 0, broughtBy },
    });
  }
  return [...rows.values()];
}

/** What is crimped on the ends of the wires; what shares a port shares its twin ferrule, or the receptacle on its tab. */
function endParts({ parts }: Pick<Job, 'parts'>, wires: readonly PlanWire[]): string[] {
  const twins = new Set<string>();
  const ends = wires.flatMap(({ origin, ends: both }) => (origin === 'job' ? both : []));
  return ends.flatMap(({ part, terminal }) => {
    const spec = part === null ? undefined : parts[part];
    if (part === null || !spec) return [];
    if (spec.kind !== 'terminal' || !isShared(spec)) return [part];
    if (twins.has(terminal)) return [];
    twins.add(terminal);
    return [part];
  });
}

function isShared({ form }: PartOf<'terminal'>): boolean {
  return form === 'twin-ferrule' || form === 'blade-receptacle';
}

/** Lengths to cut, by part. */
function collectLengths({ job, ...plan }: PickInput): ReadonlyMap<string, readonly number[]> {
  const cuts = new Map<string, number[]>();
  const isOffReel = (part: string) => {
    const spec = job.parts[part];
    return spec?.kind === 'cable' && spec['made-length'] === undefined;
  };
  for (const { part, lengthM } of cutsTaken(plan, isOffReel))
    cuts.set(part, [...(cuts.get(part) ?? []), lengthM]);
  return cuts;
}

function pieceRow(job: Job, part: string, quantity: number): PlanPick {
  const stockQuantity = piecesOf(job.shop.stock[part]);
  return {
    part,
    ...named(job, part),
    quantity,
    unit: 'piece',
    stockQuantity,
    short: Math.max(0, quantity - stockQuantity),
    ...promisedTo(job, part),
  };
}

/** What is cut from the reels of a part, with what is there and what is short. */
export function reelRow(job: Job, part: string, cuts: readonly number[]): PlanPick {
  const shelf = shelfLengths(job.shop.stock[part], job.promised[part]);
  const shared = cutLengths(shelf, cuts);
  return {
    part,
    ...named(job, part),
    quantity: total(cuts),
    unit: 'm',
    stockQuantity: total(shelf.map(({ freeM }) => freeM)),
    short: total(shared.uncut),
    ...promisedTo(job, part),
    reels: shared.lengths
      .filter(({ cutsM }) => cutsM.length > 0)
      .map(({ from: { offCut, freeM, promisedM }, cutsM }) => ({
        ...(offCut !== null && { offCut }),
        lengthM: total([freeM, promisedM]),
        ...(promisedM > 0 && { promisedM: total([promisedM]) }),
        cuts: cutsM.length,
        cutsM: [...cutsM],
        leftM: total([freeM, -total(cutsM)]),
      })),
  };
}

/** To the millimetre. */
function total(lengths: readonly number[]): number {
  return Number(lengths.reduce((sum, lengthM) => sum + lengthM, 0).toFixed(3));
}

/** What of a part is promised to other jobs: the shelf has it, but not for this one. */
function promisedTo({ promised }: Pick<Job, 'promised'>, part: string): Pick<PlanPick, 'promised'> {
  const promise = promised[part];
  if (!promise || promisedThere(promise) === 0) return {};
  return { promised: promise.to.map((one) => ({ ...one })) };
}

function named({ parts }: Pick<Job, 'parts'>, part: string): Pick<PlanPick, 'title' | 'kind'> {
  const spec = parts[part];
  return { title: spec?.title ?? part, kind: spec?.kind ?? 'wire' };
}
