import { cut } from './cut.ts';
import type { DrawingKind } from './kind.ts';
import { nest } from './nest.ts';
import { picture } from './picture.ts';
import { placement } from './placement.ts';
import { power } from './power.ts';
import { presets } from './presets.ts';
import { responses } from './responses.ts';
import { signal } from './signal.ts';
import { wiring } from './wiring.ts';

/** The kinds of drawing in the order in which they are numbered. */
export const drawingIds = [
  'picture',
  'cut',
  'nest',
  'placement',
  'wiring',
  'power',
  'signal',
  'responses',
  'presets',
] as const;
export type DrawingId = (typeof drawingIds)[number];

/** Every kind of drawing. One that is missing here does not compile. */
export const drawingKinds: { readonly [K in DrawingId]: DrawingKind } = {
  picture,
  cut,
  nest,
  placement,
  wiring,
  power,
  signal,
  responses,
  presets,
};
