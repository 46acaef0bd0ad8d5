import type { BuildPlan } from '../../model/plan/index.ts';
import type { Table } from '../sheets/table.ts';
import { conductorLimits, conductorReasons } from './conductors.ts';
import { fuseAlternatives, fuseReasons } from './fuses.ts';
import { layoutTables } from './layouts.ts';
import { networkTables } from './network.ts';

/** What stands behind the sheets of a job: reasons, limits, alternatives. Tables with nothing in them are left out. */
export function workingTables(plan: BuildPlan): Table[] {
  return [
    fuseReasons(plan),
    fuseAlternatives(plan),
    conductorReasons(plan),
    conductorLimits(plan),
    ...networkTables(plan),
    ...layoutTables(plan),
  ].filter((table) => table.rows.length > 0);
}
