import type { Point } from '../../../board/shape/point.ts';
import { type LaidRib, onRib, ribLengthM } from '../../../board/strength/rib.ts';
import { partsOfKind } from '../../../model/content/parts-of-kind.ts';
import type { Job, SheetPart } from '../../../model/content/resolved-job.ts';
import type { HouseRules } from '../../../model/house-rules.ts';
import type { PartOf } from '../../../model/kinds/index.ts';
import { piecesOf } from '../../../shelf/shelf-lengths.ts';

/** Material between a screw and another hole of the board. */
const webM = 0.004;
const stepM = 0.005;

/**
 * The screw that goes through the board into a rib: a wood screw that bites as the house rules ask and stays inside the
 * rib, from stock before one to buy, the shortest first. Null where none does, or the rib takes no wood screw.
 */
export function ribScrew(
  { parts, shop, rules }: Pick<Job, 'parts' | 'shop' | 'rules'>,
  boardM: number,
  { heightM }: Pick<LaidRib, 'heightM'>,
  sheet: SheetPart,
): { readonly id: string; readonly part: PartOf<'fixing'> } | null {
  if (sheet.material === 'aluminium' || sheet.material === 'acrylic') return null;
  const [fitting] = partsOfKind(parts, 'fixing')
    .flatMap(([id, part]) => (part.form === 'wood-screw' ? [{ id, part }] : []))
    .filter(({ part: { length = 0, clearance } }) => {
      const biteM = length - boardM;
      const most = heightM - rules['rib-screw-skin'].value;
      return clearance !== undefined && biteM >= rules['rib-screw-bite'].value - 1e-9 && biteM <= most + 1e-9;
    })
    .toSorted(
      (a, b) =>
        stockFirst(shop, a.id, b.id) || (a.part.length ?? 0) - (b.part.length ?? 0) || (a.id < b.id ? -1 : 1),
    );
  return fitting ?? null;
}

/** What wood is glued with, from stock before one to buy; null where the catalogue has none. */
export function ribGlue({ parts, shop }: Pick<Job, 'parts' | 'shop'>): string | null {
  const [first] = partsOfKind(parts, 'fixing')
    .flatMap(([id, part]) => (part.form === 'adhesive' ? [id] : []))
    .toSorted((a, b) => stockFirst(shop, a, b) || (a < b ? -1 : 1));
  return first ?? null;
}

/** What is in stock goes before what has to be bought. */
function stockFirst({ stock }: Job['shop'], a: string, b: string): number {
  return Number(piecesOf(stock[b]) > 0) - Number(piecesOf(stock[a]) > 0);
}

/** Glue does not hold on polyethylene: common practice, no source. */
export function takesGlue({ material }: Pick<SheetPart, 'material'>): boolean {
  return material !== 'polyethylene';
}

/**
 * Where the screws of a rib go: inside its ends and apart by the house rules, in two rows in a wide rib. One
 * that would meet another hole moves along by up to half their distance; where that is no help, it is left out.
 */
export function screwPoints(
  rib: LaidRib,
  holeM: number,
  holes: readonly (Point & { readonly diameterM: number })[],
  rules: HouseRules,
): readonly Point[] {
  const { lengthM, endM, spans, pitchM } = screwRow(rib, rules);
  const insideM = rules['rib-row-inside'].value;
  const rows =
    rib.widthM >= rules['rib-two-rows'].value ? [insideM - rib.widthM / 2, rib.widthM / 2 - insideM] : [0];
  const isFree = (at: Point) =>
    holes.every((hole) => {
      const apartM = Math.hypot(hole.xM - at.xM, hole.yM - at.yM);
      return apartM >= (hole.diameterM + holeM) / 2 + webM - 1e-9;
    });
  return rows.flatMap((leftM) =>
    Array.from({ length: spans + 1 }, (_, nth) => endM + nth * pitchM).flatMap((wantedM) => {
      for (let byM = 0; byM <= pitchM / 2; byM += stepM)
        for (const alongM of [wantedM + byM, wantedM - byM]) {
          const at = onRib(rib, alongM, leftM);
          if (alongM >= endM / 2 && alongM <= lengthM - endM / 2 && isFree(at)) return [at];
        }
      return [];
    }),
  );
}

/** The least distance between neighbouring screws of a row, as they are told: what they are apart. */
export function apartM(rib: LaidRib, rules: HouseRules): number {
  return screwRow(rib, rules).pitchM;
}

/** A row of screws along a rib: how far from its ends it begins, and into how many like spans it is parted. */
function screwRow(rib: LaidRib, rules: HouseRules) {
  const lengthM = ribLengthM(rib);
  const endM = Math.min(rules['rib-screw-end'].value, lengthM / 4);
  const betweenM = lengthM - 2 * endM;
  const spans = Math.max(1, Math.ceil(betweenM / rules['rib-screw-spacing'].value - 1e-9));
  return { lengthM, endM, spans, pitchM: betweenM / spans };
}
