import type { BuildPlan } from '../../model/plan/index.ts';
import { namesOf } from '../plan-names.ts';
import { builderSheet } from './sheet.ts';
import { dense, groupedTable, groupsBy, strong, type Table, tick } from './table.ts';

/** The state of every switch and knob before first power-up, as the panels present them. */
export interface PresetsSheet {
  readonly presets: Table;
}

function presetsModel(plan: BuildPlan): PresetsSheet | null {
  if (plan.controls.length === 0) return null;
  const { item } = namesOf(plan);
  const groups = groupsBy(plan.controls, (one) => `${item(one.item)} (${one.item})`);
  return {
    presets: dense(
      groupedTable(
        'Controls, panel by panel',
        groups,
        [
          { title: 'Control', cell: (one) => strong(one.control) },
          { title: 'Set to', cell: (one) => strong(one.preset) },
          { title: 'Safe', cell: (one) => ({ text: one.safe ? 'yes' : 'NO', strong: !one.safe }) },
          { title: 'Why', kind: 'words', cell: (one) => ({ text: one.why, beside: one.chosen }) },
          tick('Set'),
        ],
        (one) => `${one.item}.${one.control}`,
      ),
    ),
  };
}

export const presets = builderSheet('presets', 'Presets before first power', presetsModel, {
  cautions: ['firstPower'],
});
