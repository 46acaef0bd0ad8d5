import type { BuildPlan } from '../../model/plan/index.ts';
import { fuseAlternatives } from '../sheets/alternatives.ts';
import type { Table } from '../sheets/table.ts';
import { coilWirings } from './coils.ts';
import { conductorLimits, conductorReasons } from './conductors.ts';
import { findingSources } from './findings.ts';
import { fuseReasons, shortsThroughFuses } from './fuses.ts';
import { heatLosses, heatOfSpaces } from './heat.ts';
import { houseRulesTable } from './house-rules-table.ts';
import { layoutTables } from './layouts.ts';
import { networkTables, nodeTables } from './network.ts';
import { stepReasons, workTimes } from './steps.ts';

/** What stands behind the sheets of a job: reasons, limits, alternatives. Tables with nothing in them are left out. */
export function workingTables(plan: BuildPlan): Table[] {
  return [
    findingSources(plan),
    fuseReasons(plan),
    shortsThroughFuses(plan),
    fuseAlternatives('Fuses that would do instead', plan.power.fuses),
    conductorReasons(plan),
    conductorLimits(plan),
    coilWirings(plan),
    ...networkTables(plan),
    ...nodeTables(plan),
    heatLosses(plan),
    heatOfSpaces(plan),
    ...layoutTables(plan),
    stepReasons(plan),
    workTimes(plan),
    houseRulesTable(plan),
  ].filter((table) => table.rows.length > 0);
}
