import { z } from 'zod';
import { builders } from '../audience.ts';
import { zoneKindSchema } from '../vocabulary.ts';

const number = builders(z.number());
const name = builders(z.string());

/** How warm the air of a space gets while music plays, and where the heat comes from and goes. */
export const planHeatSchema = z.object({
  space: name,
  spaceTitle: name,
  zone: builders(zoneKindSchema),
  /** Air of the zone round it. */
  outsideC: number,
  /** Its devices: what each takes and gives as sound, by the average of music. */
  items: z.array(z.object({ item: name, inputW: number, outputW: number, lossW: number })),
  lossW: number,
  /** Effective cooling surface. */
  surfaceM2: number,
  /** What a square metre of it passes by the kelvin, W/(m2 K). */
  passesWM2K: number,
  fanM3S: number,
  openings: z.array(z.object({ widthM: number, heightM: number })),
  /** Heat through the walls, with the fan, through the openings. */
  wallsW: number,
  fanW: number,
  openingsW: number,
  riseK: number,
  airC: number,
});

export type PlanHeat = z.output<typeof planHeatSchema>;
