import { z } from 'zod';
import type { Audience } from '../../model/audience.ts';
import { buildPlanSchema } from '../../model/plan/index.ts';
import { type Visible, visibleTo } from '../site/visible-to.ts';

const plan = buildPlanSchema.shape;
const power = plan.power.shape;
const audio = plan.audio.shape;

/**
 * What the shop reference and the search know of a job: leaves of the plan, each with the audiences that the plan declares
 * for it, so that nothing is browsed by or found by that a reader may not see.
 */
export const jobFactsSchema = z.object({
  job: plan.job.pick({
    id: true,
    title: true,
    revision: true,
    status: true,
    issuedOn: true,
    fabricator: true,
    notes: true,
    revisions: true,
  }),
  vehicle: plan.vehicle.pick({ id: true, title: true }),
  items: z.array(
    plan.items.element.pick({ id: true, part: true, title: true, partTitle: true, origin: true }),
  ),
  boards: z.array(
    plan.boards.element.pick({
      id: true,
      title: true,
      spaceTitle: true,
      sheet: true,
      material: true,
      thicknessM: true,
      widthM: true,
      heightM: true,
      outline: true,
      cutouts: true,
    }),
  ),
  wires: z.array(plan.wires.element.pick({ label: true, origin: true, role: true, size: true })),
  power: z.object({ fuses: z.array(power.fuses.element.pick({ form: true, ratingA: true })) }),
  audio: z.object({ channels: z.array(audio.channels.element.pick({ id: true, speakers: true })) }),
  findings: z.array(plan.findings.element.pick({ message: true, follows: true })),
});

/** What an audience may see of them: a leaf that is not for them is not there. */
export type JobFacts = Visible<z.output<typeof jobFactsSchema>>;

/** What an audience may know of a job by browsing and searching. */
export function factsOf(job: z.output<typeof jobFactsSchema>, audience: Audience): JobFacts {
  return visibleTo(jobFactsSchema, job, audience) ?? {};
}
