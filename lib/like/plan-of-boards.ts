import { z } from 'zod';
import { buildPlanSchema } from '../model/plan/index.ts';

const plan = buildPlanSchema.shape;
const power = plan.power.shape;
const heat = plan.heat.unwrap();

/**
 * What of a plan a past board is taken from: leaves with the audiences that the plan declares for them. Who may not see one
 * of them is told nothing of past boards.
 */
export const planOfBoardsSchema = z.object({
  job: plan.job.pick({ id: true, title: true, revision: true, status: true, issuedOn: true }),
  vehicle: plan.vehicle.pick({ id: true }),
  boards: z.array(
    plan.boards.element.pick({
      id: true,
      space: true,
      outline: true,
      cutouts: true,
      thicknessM: true,
      fixings: true,
      datumInSpace: true,
      placements: true,
      holes: true,
      exits: true,
    }),
  ),
  items: z.array(plan.items.element.pick({ id: true, part: true, kind: true, terminals: true })),
  power: z.object({
    loads: z.array(power.loads.element.pick({ item: true, ratedA: true })),
    conductors: z.array(
      power.conductors.element.pick({
        id: true,
        from: true,
        to: true,
        role: true,
        size: true,
        ampacityA: true,
        fuses: true,
      }),
    ),
    fuses: z.array(
      power.fuses.element.pick({ id: true, ratingA: true, ratedA: true, holderA: true, loads: true }),
    ),
  }),
  heat: z.array(heat.element.pick({ space: true, items: true })),
  findings: z.array(plan.findings.element.pick({ level: true })),
});

export type PlanOfBoards = z.output<typeof planOfBoardsSchema>;
