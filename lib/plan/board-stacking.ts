import { boardDefaults } from '../board/defaults.ts';
import { type Beneath, bodyOf, type Item, type Placement, type Raising } from '../board/item.ts';
import { computed, input } from '../board/measure.ts';
import { planGapM } from '../board/placed.ts';
import { riserDefaults } from '../board/risers.ts';
import type { StackLimits } from '../board/stacked-search.ts';
import type { Board, Device, Job, Link } from '../model/resolved-job.ts';
import type { Traced } from '../model/trace.ts';
import { type Edge, edgeSchema } from '../model/vocabulary.ts';
import type { LaidBoard } from './board-layout.ts';
import { boardFixings } from './board-shape.ts';

/** An amplifier or processor that the job neither places nor raises is left to the search to raise. */
export function raisingOf({ spec, given }: Device, clearanceM: number): Raising | undefined {
  const isEquipment = spec?.kind === 'amplifier' || spec?.kind === 'processor';
  if (!isEquipment || given?.at !== undefined || given?.raised !== undefined) return undefined;
  return { clearanceM, railWidthM: riserDefaults.railWidthM };
}

/**
 * What a part raised by the search may stand over: a distribution or ground bar without fuses, or a processor;
 * nothing to set by hand, no fins, fan or air asked for, each terminal on a known side, and no port still open.
 */
export function beneathOf(job: Job, device: Device): Beneath | undefined {
  const { spec, facts, given } = device;
  const isLow =
    spec?.kind === 'processor' || (spec?.kind === 'distribution' && isUnfused(spec['fused-ways']));
  const asksAir = [
    ...Object.values(facts.footprint?.airM ?? {}),
    ...Object.values(facts.footprint?.cooling ?? {}),
  ];
  const isQuiet = Object.keys(facts.controls).length === 0 && asksAir.every((air) => !air);
  if (!isLow || !isQuiet || (given?.raised ?? 0) > 0) return undefined;
  const wires: { side: Edge; from: string | null }[] = [];
  for (const link of job.links)
    for (const [end, other] of endsOf(link)) {
      if (end.device !== device.id) continue;
      const side = edgeSchema.safeParse(facts.terminals[end.terminal]?.panel);
      if (!side.success || link.open?.length) return undefined;
      const from = job.devices.find(({ id }) => id === other.device);
      wires.push({ side: side.data, from: from?.board === device.board ? other.device : null });
    }
  return { wires };
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
export function stackLimits(job: Job, board: Board): StackLimits {
  const spacersM = boardFixings(board, job.parts).map(({ spacerM }) => spacerM);
  const faceM = Math.max(0, ...spacersM) + board.sheet.thickness;
  return { layerM: board.sheet.thickness, topM: board.space.depth - faceM - boardDefaults.spaceClearanceM };
}

/** The items that a placed one stands over. */
export function itemsBeneath(
  { items, placements }: Pick<LaidBoard, 'items' | 'placements'>,
  upper: Placement,
): Item[] {
  const over = items.find(({ id }) => id === upper.item);
  if (!over || upper.heightM <= 0) return [];
  const body = bodyOf(over, upper);
  return placements.flatMap((at): Item[] => {
    const item = items.find(({ id }) => id === at.item);
    if (!item || item === over) return [];
    const lower = bodyOf(item, at);
    return lower.maxZ <= body.minZ + 1e-9 && planGapM(lower, body) < -1e-9 ? [item] : [];
  });
}

/** Why a part was raised: the height of the layers that clear the highest part beneath it, metres. */
export function raisedHeight(
  heightM: number,
  layerM: number,
  beneath: readonly Item[],
  clearanceM: number,
): Traced<number> {
  return computed(
    heightM,
    'm',
    {
      rule: 'raised-over-part',
      formula: 'layers x thickness, at least height beneath + clearance; no room was found side by side',
      citation: 'house rule gap-parts: common practice, no source',
      mark: 'cp',
    },
    [
      input('layers', Math.round(heightM / layerM), ''),
      input('thickness', layerM, 'm'),
      input('height beneath', Math.max(0, ...beneath.map((item) => item.heightM)), 'm'),
      input('clearance', clearanceM, 'm'),
      input('beneath', beneath.map(({ id }) => id).join(', '), ''),
    ],
  );
}
