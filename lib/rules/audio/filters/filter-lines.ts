import type { JobFilter } from '../../../model/content/job.ts';
import type { FilterPass } from '../../../model/vocabulary.ts';
import type { makersOnPath } from '../../../plan/audio/filter-places.ts';
import { hertzText, shapeOf } from '../../../propose/sound/filter-shape.ts';

type Maker = ReturnType<typeof makersOnPath>[number];

/** Where a corner belongs (Hz). */
export interface Belongs {
  readonly fromHz: number;
  readonly toHz: number;
}

/**
 * What stands under `filters:` of a device once a filter is added to those that are there, as a job writes it: its shape
 * and corner as its maker offers them, in the middle of where it belongs, or as near to that as it reaches.
 */
export function filterLine(
  { device, at, offer }: Maker,
  pass: FilterPass,
  { fromHz, toHz }: Belongs,
): string {
  const middleHz = Math.ceil((fromHz + toHz) / 2 - 1e-6);
  const corner = Math.min(Math.max(middleHz, offer.fromHz), offer.toHz);
  const others = (device.given?.filters[at] ?? []).filter((one) => one.pass !== pass);
  const all = [...others.map(written), written({ pass, ...shapeOf(offer, false), corner })];
  return `${at}: [${all.join(', ')}]`;
}

function written({
  pass,
  type,
  order,
  corner,
}: Pick<JobFilter, 'pass' | 'type' | 'order'> & { readonly corner: number }) {
  return `{ pass: ${pass}, type: ${type}, order: ${order}, corner: ${hertzText(corner)} }`;
}
