import type { PartOf } from '../../model/kinds/index.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import { feedAreaMm2, ratingFor } from './feed-sizes.ts';
import type { SupplyNeed } from './supply-needs.ts';
import { isUntouched, shelvedFirst } from './turn-on.ts';

type Block = PartOf<'distribution'>;

/** A block, of the job or of the catalogue, with the ways of it that nothing takes. */
interface BlockChoice {
  readonly part: string;
  readonly spec: Block;
  /** A block that the job has already. */
  readonly device: DraftDevice | null;
  readonly ways: readonly string[];
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
  const written = draft.own.flatMap((device) => writtenBlock(draft, device, needs));
  const own = written.flatMap((block) => withNested(draft, block, needs) ?? []);
  if (own.length > 0) return own[0] ?? null;
  const plans = catalogueBlocks(draft).flatMap((block) => withNested(draft, block, needs) ?? []);
  const [best] = plans.toSorted(
    (a, b) =>
      partsOf(a) - partsOf(b) ||
      spareOf(a) - spareOf(b) ||
      shelvedFirst(draft, a.block.part, b.block.part) ||
      areaOf(a.block) - areaOf(b.block) ||
      (a.block.part < b.block.part ? -1 : 1),
  );
  return best ?? null;
}

const partsOf = ({ nested }: BlockPlan): number => (nested ? 1 + partsOf(nested.plan) : 1);
const spareOf = ({ block, ways, nested }: BlockPlan): number =>
  block.ways.length - ways.size - (nested ? 1 : 0) + (nested ? spareOf(nested.plan) : 0);
const areaOf = ({ spec }: BlockChoice): number => spec.size.width * spec.size.depth;

/** A block that stands where the devices stand, with ways that nothing takes. */
function writtenBlock(draft: Draft, device: DraftDevice, needs: readonly SupplyNeed[]): BlockChoice[] {
  const { spec, partId } = device;
  const [first] = needs;
  if (spec.kind !== 'distribution' || Object.keys(spec['fused-ways']).length === 0 || !first) return [];
  if (device.board !== first.device.board || device.seat !== first.device.seat) return [];
  const ways = Object.keys(spec['fused-ways']).filter(
    (way) => draft.isFree(device.id, way) && !draft.isLeftOpen(device.id, way),
  );
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
function fits({ around }: Draft, { spec }: BlockChoice, way: string, need: SupplyNeed): boolean {
  const form = spec['fused-ways'][way]?.['fuse-form'];
  const [terminal, port] = [spec.terminals[way], need.device.facts.terminals[need.terminal]];
  if (!form || !terminal || !port) return false;
  const ratingA = ratingFor(around, form, need.currentA * around.rules['fuse-margin'].value, need.ceilingA);
  return ratingA !== null && carries(around, ratingA, need.currentA, [terminal, port]);
}

function carries(
  around: Draft['around'],
  ratingA: number,
  currentA: number,
  ports: readonly Block['terminals'][string][],
): boolean {
  const way = { lengthM: onBoardM, zones: [{ zone: 'cargo' as const, lengthM: onBoardM }] };
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
