import type { PartOf } from '../../model/kinds/index.ts';
import { amps, ampsDrawn } from '../../model/printed/told.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import { routesBetween } from '../draft/ways.ts';
import { type FeedWay, feedAreaMm2, ratingFor } from './feed-sizes.ts';
import { feedWay, whereFed } from './feed-way.ts';
import type { SupplyNeed } from './supply-needs.ts';
import { compareShelved, isUntouched } from './turn-on.ts';

type Block = PartOf<'distribution'>;

/** A block, of the job or of the catalogue, with the ways of it that nothing takes. */
interface BlockChoice {
  readonly part: string;
  readonly spec: Block;
  /** A block that the job has already. */
  readonly device: DraftDevice | null;
  readonly ways: readonly string[];
  /** The place that it stands in, where that is another than that of the devices. */
  readonly apart?: string;
}

/** Which way of a block feeds what; what fits none goes to a small block behind one. */
export interface BlockPlan {
  readonly block: BlockChoice;
  readonly ways: ReadonlyMap<string, SupplyNeed>;
  readonly nested: { readonly way: string; readonly plan: BlockPlan } | null;
}

/** Length on a board that a way is sized for before anything is placed (m): common practice, no source. */
const onBoardM = 0.5;

/**
 * The block that feeds several devices, each through a fused way that takes a conductor which it takes too, with a rating
 * from its current with the margin up to its maker's ceiling: fewest parts, then fewest spare ways, then the smallest.
 */
export function planBlock(draft: Draft, needs: readonly SupplyNeed[]): BlockPlan | null {
  const own = writtenBlocks(draft, needs).flatMap((block) => withNested(draft, block, needs) ?? []);
  if (own.length > 0) return own[0] ?? null;
  const plans = catalogueBlocks(draft).flatMap((block) => withNested(draft, block, needs) ?? []);
  const [best] = plans.toSorted(
    (a, b) =>
      partsOf(a) - partsOf(b) ||
      spareOf(a) - spareOf(b) ||
      compareShelved(draft, a.block.part, b.block.part) ||
      areaOf(a.block) - areaOf(b.block) ||
      (a.block.part < b.block.part ? -1 : 1),
  );
  return best ?? null;
}

const partsOf = ({ nested }: BlockPlan): number => (nested ? 1 + partsOf(nested.plan) : 1);
const spareOf = ({ block, ways, nested }: BlockPlan): number =>
  block.ways.length - ways.size - (nested ? 1 : 0) + (nested ? spareOf(nested.plan) : 0);
const areaOf = ({ spec }: BlockChoice): number => spec.size.width * spec.size.depth;

/** The blocks of the job for some devices: those that stand with them first, then those that a route leads from. */
function writtenBlocks(draft: Draft, needs: readonly SupplyNeed[]): BlockChoice[] {
  return [
    ...draft.own.flatMap((device) => writtenBlock(draft, device, needs)),
    ...draft.own.flatMap((device) => blockApart(draft, device, needs)),
  ];
}

/** True where the job has a block with fused ways for some devices. */
export function hasBlock(draft: Draft, needs: readonly SupplyNeed[]): boolean {
  return writtenBlocks(draft, needs).length > 0;
}

/**
 * A block that the job has in another place, beside the battery or on the way: for devices that a route leads to from
 * there, where no device to be fed stands in that place itself.
 */
function blockApart(draft: Draft, device: DraftDevice, needs: readonly SupplyNeed[]): BlockChoice[] {
  const { spec, seat, partId } = device;
  const [first] = needs;
  if (spec.kind !== 'distribution' || seat === null || !first || first.device.seat === seat) return [];
  const ways = freeWays(draft, device);
  const serves = draft.own.some(
    (one) =>
      one.seat === seat && terminalsWith(one, 'supply-positive').some((name) => draft.isFree(one.id, name)),
  );
  if (ways.length === 0 || serves || hasOtherUse(draft, device)) return [];
  if (routesBetween(draft, { served: [seat] }, whereFed(first.device)).length === 0) return [];
  return [{ part: partId, spec, device, ways, apart: seat }];
}

/** True for a block that is linked by hand, and not to be fed as a whole: what else it is for nobody says. */
function hasOtherUse(draft: Draft, device: DraftDevice): boolean {
  const isFed = terminalsWith(device, 'feed-in').some((name) => !draft.isFree(device.id, name));
  return !isFed && !isUntouched(draft, device);
}

/** The fused ways of a block that nothing takes. */
function freeWays(draft: Draft, { id, spec }: DraftDevice): readonly string[] {
  const all = spec.kind === 'distribution' ? Object.keys(spec['fused-ways']) : [];
  return all.filter((way) => draft.isFree(id, way) && !draft.isLeftOpen(id, way));
}

/** A block that stands where the devices stand, with ways that nothing takes. */
function writtenBlock(draft: Draft, device: DraftDevice, needs: readonly SupplyNeed[]): BlockChoice[] {
  const { spec, partId } = device;
  const [first] = needs;
  if (spec.kind !== 'distribution' || Object.keys(spec['fused-ways']).length === 0 || !first) return [];
  if (device.board !== first.device.board || device.seat !== first.device.seat) return [];
  const ways = freeWays(draft, device);
  const isFed = terminalsWith(device, 'feed-in').some((name) => !draft.isFree(device.id, name));
  return isFed || isUntouched(draft, device) || ways.length > 0 ? [{ part: partId, spec, device, ways }] : [];
}

function catalogueBlocks({ around }: Draft): readonly BlockChoice[] {
  return Object.entries(around.parts).flatMap(([part, spec]): BlockChoice[] =>
    spec.kind === 'distribution' && Object.keys(spec['fused-ways']).length > 0
      ? [{ part, spec, device: null, ways: Object.keys(spec['fused-ways']) }]
      : [],
  );
}

/** All needs on a block, or the most of them with the rest on a small one behind one of its ways. */
function withNested(draft: Draft, block: BlockChoice, needs: readonly SupplyNeed[]): BlockPlan | null {
  const whole = assign(draft, block, needs);
  if (whole) return { block, ways: whole, nested: null };
  const fitting = needs.filter((need) => block.ways.some((way) => fits(draft, block, way, need)));
  const rest = needs.filter((need) => !fitting.includes(need));
  if (fitting.length === 0 || rest.length === 0) return null;
  return behindWay(draft, block, fitting, rest);
}

function behindWay(
  draft: Draft,
  block: BlockChoice,
  fitting: readonly SupplyNeed[],
  rest: readonly SupplyNeed[],
): BlockPlan | null {
  const small = [
    ...draft.own.flatMap((device) => writtenBlock(draft, device, rest)),
    ...catalogueBlocks(draft).toSorted((a, b) => a.ways.length - b.ways.length || areaOf(a) - areaOf(b)),
  ].filter((one) => one.device === null || one.device !== block.device);
  for (const inner of small) {
    const innerWays = assign(draft, inner, rest);
    const input = Object.entries(inner.spec.terminals).find(([, { role }]) => role === 'feed-in');
    if (!innerWays || !input) continue;
    const currentA = rest.reduce((sum, need) => sum + need.currentA, 0);
    const ways = assign(draft, block, fitting);
    const way = block.ways.find((one) => !ways?.has(one) && feeds(draft, block, one, input[1], currentA));
    if (ways && way !== undefined)
      return { block, ways, nested: { way, plan: { block: inner, ways: innerWays, nested: null } } };
  }
  return null;
}

/** True for a way that carries so much to a port. */
function feeds(
  { around }: Draft,
  { spec }: BlockChoice,
  way: string,
  port: Block['terminals'][string],
  currentA: number,
): boolean {
  const [form, terminal] = [spec['fused-ways'][way]?.['fuse-form'], spec.terminals[way]];
  if (!form || !terminal) return false;
  const ratingA = ratingFor(around, form, currentA * around.rules['fuse-margin'].value, null);
  return ratingA !== null && carries(around, ratingA, currentA, [terminal, port]);
}

/** True for a way that may feed a device: its conductor goes into both, its fuse is made between need and ceiling. */
function fits(draft: Draft, { spec, apart, device }: BlockChoice, way: string, need: SupplyNeed): boolean {
  const { around } = draft;
  const form = spec['fused-ways'][way]?.['fuse-form'];
  const [terminal, port] = [spec.terminals[way], need.device.facts.terminals[need.terminal]];
  if (!form || !terminal || !port) return false;
  const ratingA = ratingFor(around, form, need.currentA * around.rules['fuse-margin'].value, need.ceilingA);
  const along = apart !== undefined && device ? feedWay(draft, apart, need.device, device) : shortWay;
  return ratingA !== null && carries(around, ratingA, need.currentA, [terminal, port], along);
}

/** A way that is sized before anything is placed. */
const shortWay: FeedWay = { lengthM: onBoardM, zones: [{ zone: 'cargo', lengthM: onBoardM }] };

function carries(
  around: Draft['around'],
  ratingA: number,
  currentA: number,
  ports: readonly Block['terminals'][string][],
  way = shortWay,
): boolean {
  return feedAreaMm2(around, { ratingA, currentA, way, ports, dropShare: 1 }) !== null;
}

/** A way for each need, the ones that fit fewest ways first; null where some get none. */
function assign(
  draft: Draft,
  block: BlockChoice,
  needs: readonly SupplyNeed[],
): ReadonlyMap<string, SupplyNeed> | null {
  const possible = new Map(
    needs.map((need) => [need, block.ways.filter((way) => fits(draft, block, way, need))] as const),
  );
  const choose = (
    left: readonly SupplyNeed[],
    taken: ReadonlyMap<string, SupplyNeed>,
  ): ReadonlyMap<string, SupplyNeed> | null => {
    const [need, ...rest] = left;
    if (!need) return taken;
    for (const way of possible.get(need) ?? []) {
      if (taken.has(way)) continue;
      const found = choose(rest, new Map([...taken, [way, need]]));
      if (found) return found;
    }
    return null;
  };
  const scarce = needs.toSorted((a, b) => (possible.get(a)?.length ?? 0) - (possible.get(b)?.length ?? 0));
  return choose(scarce, new Map());
}

/**
 * Why a block of the job feeds none of some devices: no route leads there, or none of its free ways has a fuse and a
 * port for them.
 */
export function whyNoFeed(draft: Draft, block: DraftDevice, needs: readonly SupplyNeed[]): string {
  const { seat } = block;
  if (needs.length === 0) return 'everything that is to be fed is linked without it';
  const names = [...new Set(needs.map(({ device }) => device.id))].join(', ');
  const far =
    seat !== null &&
    needs.every(({ device }) => routesBetween(draft, { served: [seat] }, whereFed(device)).length === 0);
  if (far) return `no route of ${draft.around.vehicle.id} leads from ${seat} to ${names}`;
  const forms = block.spec.kind === 'distribution' ? Object.values(block.spec['fused-ways']) : [];
  const makes = [...new Set(forms.map((way) => fuseForms[way['fuse-form']].name))].join(' and ');
  const asked = needs.map(
    ({ device, currentA, ceilingA }) =>
      `${device.id} (${ampsDrawn(currentA)}${ceilingA === null ? '' : `, at most ${amps(ceilingA)} by its maker`})`,
  );
  return `its free ways (${makes}) have no fuse, conductor and port for all of ${asked.join(', ')} together`;
}
