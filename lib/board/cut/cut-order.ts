import type { Rectangle } from './free-rectangles.ts';
import type { NestedSheet, NestRules } from './nesting.ts';

/** A straight cut right through one part of a sheet. */
export interface SawCut {
  /** Upright: the saw runs upwards, at a distance from the left edge of the part; level: to the right, from its lower edge. */
  readonly runs: 'upright' | 'level';
  /** What is cut in two, metres from the lower left corner of the sheet. */
  readonly part: Rectangle;
  /** From the left or lower edge of the part to the edge that stays. */
  readonly atM: number;
  /** On which side of that edge the saw cut is lost. */
  readonly lost: 'before' | 'after';
}

/** How a sheet is taken apart by straight cuts. */
export interface CutOrder {
  readonly cuts: readonly SawCut[];
  /** What no straight cut parts: each list is sawn apart along its outlines. */
  readonly together: readonly (readonly Rectangle[])[];
}

/** Lengths below a tenth of a millimetre are no strip that a saw takes off. */
const nothingM = 1e-4;

/**
 * The order of straight cuts, each from edge to edge of what is left of a sheet, that frees its pieces and off-cuts
 * (guillotine cuts). Waste at the rim goes first, so that a clean edge lies at the fence; then the part is cut in two,
 * the shorter cut before the longer, and each half is taken on in the same way. Any cut that hits nothing is as good as
 * another: what could be parted before can be parted after it. What can't stays together.
 */
export function cutOrderOf(
  sheet: Pick<NestedSheet, 'stock' | 'pieces' | 'offCuts'>,
  rules: Pick<NestRules, 'kerfM'>,
): CutOrder {
  const { widthM, heightM } = sheet.stock;
  const cuts: SawCut[] = [];
  const together: (readonly Rectangle[])[] = [];
  const open: Share[] = [
    { part: { xM: 0, yM: 0, widthM, heightM }, members: [...sheet.pieces, ...sheet.offCuts] },
  ];
  for (let share = open.shift(); share; share = open.shift()) {
    const trimmed = trimOf(share);
    cuts.push(...trimmed.cuts);
    const halves = trimmed.share.members.length > 1 ? halvesOf(trimmed.share, rules) : null;
    if (halves) {
      cuts.push(halves.cut);
      open.unshift(...halves.shares);
    } else if (trimmed.share.members.length > 1) together.push(trimmed.share.members);
  }
  return { cuts, together };
}

/** A part of a sheet with what is to come out of it. */
interface Share {
  readonly part: Rectangle;
  readonly members: readonly Rectangle[];
}

type Runs = SawCut['runs'];

/** From and to, across the way that a saw runs. */
function spanOf({ xM, yM, widthM, heightM }: Rectangle, runs: Runs): readonly [number, number] {
  return runs === 'upright' ? [xM, xM + widthM] : [yM, yM + heightM];
}

function withSpan(part: Rectangle, runs: Runs, [from, to]: readonly [number, number]): Rectangle {
  return runs === 'upright'
    ? { ...part, xM: from, widthM: to - from }
    : { ...part, yM: from, heightM: to - from };
}

/** Cuts that take off what lies round all members, left and lower edge first. */
function trimOf({ part, members }: Share): { readonly cuts: SawCut[]; readonly share: Share } {
  const cuts: SawCut[] = [];
  let left = part;
  if (members.length === 0) return { cuts, share: { part, members } };
  for (const lost of ['before', 'after'] as const)
    for (const runs of ['upright', 'level'] as const) {
      const [from, to] = spanOf(left, runs);
      const spans = members.map((member) => spanOf(member, runs));
      const edge =
        lost === 'before' ? Math.min(...spans.map(([a]) => a)) : Math.max(...spans.map(([, b]) => b));
      const wasteM = lost === 'before' ? edge - from : to - edge;
      if (wasteM <= nothingM) continue;
      cuts.push({ runs, part: left, atM: edge - from, lost });
      left = withSpan(left, runs, lost === 'before' ? [edge, to] : [from, edge]);
    }
  return { cuts, share: { part: left, members } };
}

/** A cut that parts the members of a share, and its two halves; null where every one hits something. */
function halvesOf(
  { part, members }: Share,
  { kerfM }: Pick<NestRules, 'kerfM'>,
): { readonly cut: SawCut; readonly shares: readonly [Share, Share] } | null {
  const acrossFirst: readonly Runs[] =
    part.widthM >= part.heightM ? ['upright', 'level'] : ['level', 'upright'];
  for (const runs of acrossFirst) {
    const [from, to] = spanOf(part, runs);
    const ends = [...new Set(members.map((member) => spanOf(member, runs)[1]))].toSorted((a, b) => a - b);
    for (const edge of ends) {
      const before = members.filter((member) => spanOf(member, runs)[1] <= edge + nothingM);
      const after = members.filter((member) => spanOf(member, runs)[0] >= edge + kerfM - nothingM);
      if (after.length === 0 || before.length + after.length < members.length) continue;
      return {
        cut: { runs, part, atM: edge - from, lost: 'after' },
        shares: [
          { part: withSpan(part, runs, [from, edge]), members: before },
          { part: withSpan(part, runs, [edge + kerfM, to]), members: after },
        ],
      };
    }
  }
  return null;
}
