import type { Side } from '../../board/layout/item.ts';
import { at, type PaperBox, type PaperPoint } from '../paper.ts';
import { inGroupsOf, type MergedName, mergedPairs, mergedRuns, single } from './merge-names.ts';

/** A name at an edge of an item. */
export interface PanelName {
  readonly id: string;
  readonly text: string;
  readonly side: Side;
  readonly alongMm: number;
  /** How wide what ends there is: a label keeps off it. Default: a fine line. */
  readonly wideMm?: number;
}

/** Ways of merging names, those that say most first. */
export const mergeLevels = [
  single,
  mergedPairs,
  mergedRuns,
  inGroupsOf(2),
  inGroupsOf(3),
  inGroupsOf(4),
] as const;

/** Ways of merging texts of neighbours into fewer, those that say most first. */
export type MergeLevels = readonly ((names: readonly string[]) => MergedName[])[];

/** A text with the place that it was given. */
export interface PlacedName {
  readonly merged: MergedName;
  readonly textMm: number;
  readonly box: PaperBox;
}

/** True for the sides beside which names are written level. */
export const isLevel = (side: Side): boolean => side === 'left' || side === 'right';

/** The middle of the places that share a text. */
export function middleOf(names: readonly PanelName[], { of }: MergedName): number {
  const alongs = of.map((index) => names[index]?.alongMm ?? 0);
  return (Math.min(...alongs) + Math.max(...alongs)) / 2;
}

/** How a text is written at an edge. */
export interface Writing {
  readonly point: PaperPoint;
  readonly align: 'start' | 'end';
  readonly turned: boolean;
}

/** A point at an edge of a box, or a depth inside it. */
export function edgePoint(box: PaperBox, side: Side, alongMm: number, depthMm: number): PaperPoint {
  if (side === 'left') return at(box.leftMm + depthMm, alongMm);
  if (side === 'right') return at(box.rightMm - depthMm, alongMm);
  return side === 'top' ? at(alongMm, box.topMm + depthMm) : at(alongMm, box.bottomMm - depthMm);
}
