import { z } from 'zod';
import { builders } from '../audience.ts';

const name = builders(z.string());

/** A wire that is joined to another before the port that both begin at, or on the way of the other. */
export const planJointSchema = z.object({
  /** The wire that is joined. */
  id: name,
  label: name,
  /** The wire that enters the port, and is opened for the joint. */
  trunk: name,
  trunkLabel: name,
  terminal: name,
  /** Where on its way that is; left out where it is before the port. */
  at: builders(z.string().optional()),
  /** From the port along the wire. */
  distanceM: builders(z.number()),
  /** The splice; null where the catalogue has none that takes both. */
  part: builders(z.string().nullable()),
});

export type PlanJoint = z.output<typeof planJointSchema>;
