import { z } from 'zod';
import { builders } from '../audience.ts';
import { operatingPointNames } from '../operating-points.ts';

const maybe = builders(z.number().optional());
const name = builders(z.string());

/** One element of the network. Currents run from `from` to `to`; `dropV` is V(from) - V(to). */
export const networkElementSchema = z.object({
  id: name,
  /** The item, wire or joint that it stands for. */
  of: name,
  kind: builders(z.enum(['source', 'conductor', 'fuse', 'joint', 'load'])),
  from: name,
  to: name,
  /**
   * What it obeys, u = V(from) - V(to), i = currentA:
   *
   *   emf         u = emfV + ohm * i; with `limitA` it gives at most that and takes nothing back
   *   two-slope   a battery: u = emfV + ohm * i while it gives (i < 0), else emfV + chargeOhm * i; at most i = acceptA
   *   current     i = givenA of a load, -givenA of a source
   *   power       i = powerW / u
   *   square-law  i = powerW * u / ratedV^2
   *   resistance  u = ohm * i
   *   converter   i = what the element `feeds` gives (-u * i there) / efficiency / u
   */
  model: builders(z.enum(['emf', 'two-slope', 'current', 'power', 'square-law', 'resistance', 'converter'])),
  emfV: maybe,
  ohm: maybe,
  chargeOhm: maybe,
  powerW: maybe,
  ratedV: maybe,
  givenA: maybe,
  limitA: maybe,
  acceptA: maybe,
  /** The id of the source that is a converter's other side. */
  feeds: builders(z.string().optional()),
  efficiency: maybe,
  cutoutV: maybe,
  currentA: maybe,
  dropV: maybe,
  heatW: maybe,
});

export const operatingPointSchema = z.object({
  name: builders(z.enum(operatingPointNames)),
  title: name,
  state: builders(z.enum(['solved', 'no-solution', 'cut-out'])),
  reason: builders(z.string().optional()),
  /** How the state is brought about safely beside a meter; none where it can't be held. */
  reach: builders(z.string().optional()),
  referenceNode: name,
  residualA: maybe,
  nodes: z.array(z.object({ id: name, voltageV: builders(z.number().nullable()) })),
  elements: z.array(networkElementSchema),
});

export type NetworkElement = z.output<typeof networkElementSchema>;
export type OperatingPoint = z.output<typeof operatingPointSchema>;
