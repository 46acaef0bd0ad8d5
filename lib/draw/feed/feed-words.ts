import { formatLength } from '../../model/length-text.ts';
import type { BuildPlan, PlanFuse, PlanItem, PlanWire } from '../../model/plan/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { figuresDown, figuresUp } from '../safe-figures.ts';

const inchM = 0.0254;

/** A length of wire as a diagram tells it: to the inch, or to the centimetre. The cut list has it finer. */
export function wireLengthText({ shop }: Pick<BuildPlan, 'shop'>, lengthM: number): string {
  if (shop.units === 'millimetre') return `${lengthM.toFixed(2)} m`;
  const inches = Math.max(1, Math.round(lengthM / inchM));
  return formatLength(inches * inchM, { system: 'inch', fraction: shop.fraction, feet: true }).primary;
}

/** A current that is drawn, to three figures and rounded up: `0.7 A`, `29 A`, `105 A`. */
export const drawnText = (currentA: number): string => `${figuresUp(currentA, 3)} A`;

/** A current that may be drawn at most, to three figures and rounded down. */
export const atMostText = (currentA: number): string => `${figuresDown(currentA, 3)} A`;

/** Rating of a fuse, or that it has none. */
export function ratingText(fuse: PlanFuse | undefined): { readonly text: string; readonly rated: boolean } {
  if (fuse === undefined || fuse.ratingA === null) return { text: 'NO RATING', rated: false };
  return { text: `${fuse.ratingA} A`, rated: true };
}

/** The fuse form as the trade says it. */
export function formText(fuse: PlanFuse | undefined): string {
  return fuse === undefined ? '' : fuseForms[fuse.form].name;
}

/** What stands under a conductor: its size, then its length. */
export function conductorLines(plan: Pick<BuildPlan, 'shop'>, wire: PlanWire): readonly [string, string] {
  const fitted = wire.origin === 'vehicle' ? 'as fitted' : wireLengthText(plan, wire.lengthM);
  return [wire.size.label, fitted];
}

/** The name of an item on a diagram: its title, or its id where the title is only that of its part. */
export function shortName({ id, title, partTitle, origin }: PlanItem): string {
  if (origin === 'job' && title !== partTitle) return title;
  return title === partTitle ? `${id.charAt(0).toUpperCase()}${id.slice(1).replaceAll('-', ' ')}` : title;
}
