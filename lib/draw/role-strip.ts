import type { ConductorRole } from '../model/vocabulary.ts';
import { drawConductor } from './conductor-line.ts';
import { drawKeyStrip, type KeyEntry, type KeySizes, keyStripHeightMm } from './key-strip.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import type { PaperBox } from './paper.ts';
import type { Parent } from './pen.ts';
import { type Drawing, openGroup } from './surface.ts';

const sizes: KeySizes = { sampleMm: 13, gapMm: 2, betweenMm: 5, lineMm: 5.5 };

/** A line of a role, and what it stands for on a sheet. */
export interface StripEntry {
  readonly role: ConductorRole;
  readonly name: string;
}

/** Height of a key in a room so wide. */
export function roleStripHeightMm(
  metrics: TextMetrics,
  entries: readonly StripEntry[],
  wideMm: number,
): number {
  return keyStripHeightMm(metrics, entries, wideMm, sizes);
}

/** Draws the key of conductor lines side by side, in the middle of the head of a room. */
export function drawRoleStrip(
  drawing: Drawing,
  parent: Parent,
  room: PaperBox,
  entries: readonly StripEntry[],
): void {
  const keyed = entries.map(
    ({ role, name }): KeyEntry => ({
      name,
      drawSample: (group, from, to) => drawConductor(group, [from, to], role),
    }),
  );
  drawKeyStrip(drawing, openGroup(drawing, parent), room, keyed, sizes);
}
