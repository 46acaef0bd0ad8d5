import type { PlanWire } from '../../model/plan/index.ts';
import { drawKeyStrip, type KeyEntry, type KeySizes, keyStripHeightMm } from '../key-strip.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import type { PaperBox } from '../paper.ts';
import { type Parent, pathThrough } from '../pen.ts';
import { type Drawing, openGroup } from '../surface.ts';
import { drawBody } from './conductor-body.ts';
import { insulationWords } from './insulation-patterns.ts';

const sizes: KeySizes = { sampleMm: 11, gapMm: 1.6, betweenMm: 4.5, lineMm: 5 };
const bodyMm = 1.4;

/** The insulations of wires in the order of their letters; null stands for cables. */
export function insulationsIn(
  wires: readonly Pick<PlanWire, 'colour'>[],
  withSheath: boolean,
): (string | null)[] {
  const letters = [...new Set(wires.flatMap(({ colour }) => colour ?? []))].sort();
  return withSheath || wires.some(({ colour }) => colour === null) ? [...letters, null] : letters;
}

/** Height of the key of insulations in a room so wide. */
export function insulationStripHeightMm(
  metrics: TextMetrics,
  all: readonly (string | null)[],
  wideMm: number,
): number {
  return keyStripHeightMm(metrics, all.map(entryOf), wideMm, sizes);
}

/** Draws the key of insulations in the middle of the head of a room: colour and pattern beside letters and word. */
export function drawInsulationStrip(
  drawing: Drawing,
  parent: Parent,
  room: PaperBox,
  all: readonly (string | null)[],
): void {
  drawKeyStrip(drawing, openGroup(drawing, parent, 'insulations'), room, all.map(entryOf), sizes);
}

function entryOf(letters: string | null): KeyEntry {
  return {
    name: insulationWords(letters),
    drawSample: (group, from, to) => drawBody(group, pathThrough([from, to]), bodyMm, letters),
  };
}
