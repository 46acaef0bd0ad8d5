import type { BuildPlan } from '../../model/plan/index.ts';
import { spelled } from '../words.ts';
import { builderSheet } from './sheet.ts';
import { strong, type Table, tableOf, tick } from './table.ts';

/** The state of every switch and knob before first power-up, as the panels present them. */
export interface PresetsSheet {
  readonly items: readonly Table[];
}

function presetsModel(plan: BuildPlan): PresetsSheet | null {
  if (plan.controls.length === 0) return null;
  const titles = new Map(plan.items.map((item) => [item.id, item.title]));
  const items = [...new Set(plan.controls.map((one) => one.item))];
  return {
    items: items.map((item) =>
      tableOf(
        titles.has(item) ? `${titles.get(item)} (${item})` : item,
        plan.controls.filter((one) => one.item === item),
        [
          { title: 'Control', cell: (one) => strong(one.control) },
          { title: 'Set to', cell: (one) => strong(one.preset) },
          { title: 'Safe', cell: (one) => (one.safe ? 'Yes' : 'NO') },
          { title: 'Why', cell: (one) => ({ text: one.why, beside: spelled(one.chosen) }) },
          tick('Set'),
        ],
        (one) => `${one.item}.${one.control}`,
      ),
    ),
  };
}

export const presets = builderSheet('presets', 'Presets before first power', presetsModel, { cautions: ['firstPower'] });
