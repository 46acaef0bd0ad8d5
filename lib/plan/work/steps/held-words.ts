import type { Holding } from '../../../model/vocabulary.ts';
import { screwsText } from '../loose-parts.ts';
import type { WithPlan, Work } from '../work.ts';

const holding: Readonly<Record<Holding, string>> = {
  strap: 'under a strap',
  bracket: 'in a bracket',
  clamp: 'in a clamp',
  tape: 'by tape',
  'hook-and-loop': 'by hook-and-loop',
};

/** A part with what holds it, where the job says so. */
export function heldText({ plan }: WithPlan<'items'>, id: string): string {
  const held = plan.items.find((item) => item.id === id)?.held;
  return held === undefined ? id : `${id} (${holding[held]})`;
}

/** The same of a part off the boards, with the screws that it has holes for. What holds a box is told with its load. */
export function looseText({ plan, loose }: WithPlan<'items'> & Pick<Work, 'loose'>, id: string): string {
  const item = plan.items.find((one) => one.id === id);
  const part = loose.find((one) => one.item === id);
  const held = item?.kind === 'enclosure' || item?.held === undefined ? [] : [holding[item.held]];
  const by = [...held, ...(part ? [`by ${screwsText(part)}`] : [])];
  return by.length === 0 ? id : `${id} (${by.join(', ')})`;
}
