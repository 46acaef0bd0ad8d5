import { type Beneath, bodyOf, type Placement, type Raising } from '../../board/layout/item.ts';
import { planGapM } from '../../board/layout/placed.ts';
import type { StackLimits } from '../../board/layout/raising/stacked-search.ts';
import { clearanceOverM } from '../../board/layout/raising/stacking.ts';
import type { Board, Device, Job, Link } from '../../model/content/resolved-job.ts';
import { type Traced, traced } from '../../model/trace.ts';
import { type Edge, edgeSchema } from '../../model/vocabulary.ts';
import { boardFixings } from './board-shape.ts';
import type { LaidBoard } from './laid-board.ts';

/** An amplifier or processor that the job neither places nor raises is left to the search to raise. */
export function raisingOf(
  { spec, given }: Pick<Device, 'spec' | 'given'>,
  { clearanceM, railWidthM }: Raising,
): Raising | undefined {
  const isEquipment = spec?.kind === 'amplifier' || spec?.kind === 'processor';
  if (!isEquipment || given?.at !== undefined || given?.raised !== undefined) return undefined;
  return { clearanceM, railWidthM };
}

/**
 * What a part raised by the search may stand over: a distribution or ground bar without fuses, a processor, an
 * amplifier without fuses of its own; nothing to reach on its face, each terminal on a known side, and no port still
 * open. Over what is cooled there stays the air that it asks for: the maker's figure or the house rule for its fins or
 * fan; over an amplifier that for fins at least, since its case is its cooler.
 */
export function beneathOf(job: Job, device: Device): Beneath | undefined {
  const { facts, given } = device;
  const onFace = Object.values(facts.controls).some(({ panel }) => panel === 'face');
  if (!isClosed(device) || onFace || (given?.raised ?? 0) > 0) return undefined;
  const wires: { side: Edge; from: string | null }[] = [];
  for (const link of job.links)
    for (const [end, other] of endsOf(link)) {
      if (end.device !== device.id) continue;
      const side = edgeSchema.safeParse(facts.terminals[end.terminal]?.panel);
      if (!side.success || link.open?.length) return undefined;
      const from = job.devices.find(({ id }) => id === other.device);
      wires.push({ side: side.data, from: from?.board === device.board ? other.device : null });
    }
  const airM = airOver(device, job.rules);
  return { ...(airM > 0 ? { airM } : {}), wires };
}

/** True for a kind of part that is not opened again once it is wired, and has no fuse to change. */
function isClosed({ spec }: Device): boolean {
  if (spec?.kind === 'distribution') return isUnfused(spec['fused-ways']);
  return (spec?.kind === 'amplifier' || spec?.kind === 'processor') && !spec.supply['fuses-fitted'];
}

/** Air that a part asks for over its face; where its maker does not say, what it asks for at any side, metres. */
function airOver({ spec, facts: { footprint } }: Device, rules: Job['rules']): number {
  const madeM = footprint?.airM.face;
  if (madeM !== undefined) return madeM;
  const cooled = Object.values(footprint?.cooling ?? {}).map((by) => {
    if (by === undefined) return 0;
    return rules[by === 'fan' ? 'gap-fan' : 'gap-fins'].value;
  });
  const least = spec?.kind === 'amplifier' ? rules['gap-fins'].value : 0;
  return Math.max(least, ...cooled, ...Object.values(footprint?.airM ?? {}).map((airM) => airM ?? 0));
}

function isUnfused(ways: object): boolean {
  return Object.keys(ways).length === 0;
}

function endsOf({ from, to }: Link) {
  return [
    [from, to],
    [to, from],
  ] as const;
}

/** Layers of the board's own sheet make the rails; a raised part keeps its clearance from the depth of the space. */
export function stackLimits(job: Job, board: Board): Omit<StackLimits, 'railsInStock'> {
  const spacersM = boardFixings(board, job.parts).map(({ spacerM }) => spacerM);
  const faceM = Math.max(0, ...spacersM) + board.sheet.thickness;
  return {
    layerM: board.sheet.thickness,
    topM: board.space.depth - faceM - job.rules['space-clearance'].value,
  };
}

/** An item that another stands over: its upper face over the board's, and the free height that the two ask for, metres. */
export interface LowerItem {
  readonly id: string;
  readonly topM: number;
  readonly clearanceM: number;
}

/** The items that a placed one stands over. */
export function itemsBeneath(
  { items, placements }: Pick<LaidBoard, 'items' | 'placements'>,
  upper: Placement,
): LowerItem[] {
  const over = items.find(({ id }) => id === upper.item);
  if (!over || upper.heightM <= 0) return [];
  const body = bodyOf(over, upper);
  return placements.flatMap((at): LowerItem[] => {
    const item = items.find(({ id }) => id === at.item);
    if (!item || item === over) return [];
    const lower = bodyOf(item, at);
    const clearanceM = clearanceOverM(item.beneath ?? { wires: [] }, over.raising);
    const isBeneath = lower.maxZ <= body.minZ + 1e-9 && planGapM(lower, body) < -1e-9;
    return isBeneath ? [{ id: item.id, topM: lower.maxZ, clearanceM }] : [];
  });
}

/** Why a part was raised: the height of the layers that clear what asks for most beneath it, metres. */
export function raisedHeight(heightM: number, layerM: number, beneath: readonly LowerItem[]): Traced<number> {
  const [most] = beneath.toSorted((a, b) => b.topM + b.clearanceM - a.topM - a.clearanceM);
  return traced(heightM, 'm', {
    rule: 'raised-over-part',
    formula: 'layers x thickness, at least height beneath + clearance; no room was found side by side',
    citation: 'house rules gap-parts, gap-fins, gap-fan: common practice, no source',
    mark: 'cp',
    inputs: [
      ['layers', Math.round(heightM / layerM), ''],
      ['thickness', layerM, 'm'],
      ['height beneath', most?.topM ?? 0, 'm'],
      ['clearance', most?.clearanceM ?? 0, 'm'],
      ['beneath', beneath.map(({ id }) => id).join(', '), ''],
    ],
  });
}
