import type { BuildPlan, PlanControl } from '../../model/plan/index.ts';
import { namesOf } from '../words/plan-names.ts';
import { builderSheet } from './sheet.ts';
import { type Cell, dense, groupedTable, groupsBy, strong, type Table, tick } from './table.ts';

/** The state of every switch and knob before first power-up and after commissioning, as the panels present them. */
export interface PresetsSheet {
  readonly presets: Table;
}

function presetsModel(plan: BuildPlan): PresetsSheet | null {
  if (plan.controls.length === 0) return null;
  const { item } = namesOf(plan);
  const groups = groupsBy(plan.controls, (one) => `${item(one.item)} (${one.item})`);
  const numbers = stepNumbers(plan);
  return {
    presets: dense(
      groupedTable(
        'Controls, panel by panel',
        groups,
        [
          { title: 'Control', cell: (one) => strong(one.control) },
          { title: 'Before first power', cell: before },
          tick('Set'),
          { title: 'After commissioning', kind: 'words', cell: (one) => after(one, numbers) },
          tick('Set'),
          {
            title: 'Why it stands so before',
            kind: 'words',
            cell: (one) => ({ text: one.why, ...(one.chosen === 'given' && { beside: 'as the job says' }) }),
          },
        ],
        (one) => `${one.item}.${one.control}`,
      ),
    ),
  };
}

/** What warns of a control that does not stand safe before first power; empty where it does. */
export function notSafeText({ safe, safeState }: PlanControl): string {
  return safe ? '' : `NOT SAFE: ${safeState} is`;
}

function before(control: PlanControl): Cell {
  return control.safe ? strong(control.preset) : strong(control.preset, notSafeText(control));
}

function after(control: PlanControl, numbers: ReadonlyMap<string, number>): Cell {
  const { item, control: name, final } = control;
  const number = numbers.get(`${final.during === 'presets' ? 'set' : 'finish'}:${item}.${name}`);
  const at = number === undefined ? '' : `step ${number}, `;
  return strong(final.state ?? '—', final.state === null ? 'not known' : `${at}${final.why}`);
}

/** The number of the step in which an act is done, by the act. */
function stepNumbers({ steps }: Pick<BuildPlan, 'steps'>): ReadonlyMap<string, number> {
  return new Map(steps.flatMap(({ acts }, index) => acts.map((act) => [act, index + 1] as const)));
}

export const presets = builderSheet('presets', 'Presets and final states', presetsModel, {
  cautions: ['firstPower'],
});
