import type { BuildPlan, PlanFuse, PlanItem, PlanWire } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { printedInches, printedMetres } from '../../model/printed/lengths.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';

/** A length of wire as a diagram tells it: up to the next inch, or centimetre. The cut list has it finer. */
export function wireLengthText({ shop }: Pick<BuildPlan, 'shop'>, lengthM: number): string {
  return shop.units === 'millimetre' ? printedMetres('wire', lengthM) : printedInches('wire', lengthM);
}

/** A current that is drawn, rounded up: `0.7 A`, `29 A`, `105 A`. */
export const drawnText = (currentA: number): string => printed('current-carried', currentA);

/** A current that may be drawn at most, rounded down. */
export const atMostText = (currentA: number): string => printed('current-allowed', currentA);

/** Rating of a fuse, or that it has none. */
export function ratingText(fuse: PlanFuse | undefined): { readonly text: string; readonly rated: boolean } {
  if (fuse === undefined || fuse.ratingA === null) return { text: 'NO RATING', rated: false };
  return { text: atMostText(fuse.ratingA), rated: true };
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
