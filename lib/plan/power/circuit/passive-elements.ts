import { bodyId, type Job, type LinkEnd } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import type { Joint } from '../../../model/vocabulary.ts';
import { ohmPerM } from '../../../power/conductor/resistance.ts';
import { fuseOhm } from '../../../power/fuse-resistance.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import type { NetworkElement } from '../../../power/network/network-types.ts';
import type { SizedConductor } from '../sizing/conductor-sizing.ts';
import type { SizedFuse } from '../sizing/fuse-sizing.ts';
import type { CircuitEdge } from './circuit.ts';

/** What the passive part of a network is made from. */
export interface PassiveInput {
  readonly job: Job;
  readonly fuses: readonly SizedFuse[];
  readonly conductors: ReadonlyMap<string, SizedConductor>;
}

/**
 * What one edge of the circuit puts in the way of a current. Its conductors are at the temperature (C) that is given,
 * else as warm as their zones make them.
 */
export function passiveElements(
  { job, fuses, conductors }: PassiveInput,
  edge: CircuitEdge,
  conductorC?: number,
): NetworkElement[] {
  const { id, kind, from, to } = edge;
  if (kind === 'conductor') {
    const sized = conductors.get(id);
    const warmC = sized?.judged?.temperatureC.value ?? job.rules['conductor-temperature'].value;
    return sized ? conductorElements(job, sized, edge, conductorC ?? warmC) : [];
  }
  const of = edge.device?.id ?? id;
  if (kind === 'joint') {
    // Two ground points share the way through the body, so each has half of it.
    const ohm = of === bodyId ? job.rules['body-resistance'].value / 2 : (edge.ohm ?? 0);
    return [{ id, of, kind: 'joint', model: 'resistance', from, to, ohm }];
  }
  const fuse = fuses.find(({ edge: own }) => own.id === id);
  if (!fuse) return [];
  return [
    { id: `${id}:fuse`, of: id, kind: 'fuse', model: 'resistance', from, to, ohm: sizedFuseOhm(job, fuse) },
  ];
}

/** The resistance (ohm) of a fuse of a job; where it has no rating yet, that of one for its current. */
export function sizedFuseOhm({ rules }: Pick<Job, 'rules'>, { form, ratingA, ratedA }: SizedFuse): number {
  return fuseOhm({ form, ratingA: ratingA ?? ratedA }, rules);
}

/** Joints that are bolted: the contact of lug and stud adds to that of crimp and conductor. */
const bolted: readonly Joint[] = ['stud', 'body-bolt', 'post-clamp'];

/** A conductor between what its two ends add: a crimp each, and a bolted contact where it ends on a stud. */
function conductorElements(
  job: Job,
  { cable, lengthM, link }: SizedConductor,
  { id, from, to }: CircuitEdge,
  conductorC: number,
): NetworkElement[] {
  const { size, material, measuredOhmPerM } = cable;
  const perM = ohmPerM(
    { areaMm2: size.areaMm2, material, ...(measuredOhmPerM === undefined ? {} : { measuredOhmPerM }) },
    conductorC,
    powerRules(job.rules),
  );
  if (isFault(perM)) return [];
  const crimp = (end: 'from' | 'to'): Stretch => {
    return { name: `${end}-crimp`, kind: 'joint', ohm: job.rules['lug-resistance'].value };
  };
  const bolt = (end: 'from' | 'to'): Stretch[] =>
    isBolted(job, link[end])
      ? [{ name: `${end}-bolt`, kind: 'joint', ohm: job.rules['joint-resistance'].value }]
      : [];
  const chain: readonly Stretch[] = [
    ...bolt('from'),
    crimp('from'),
    { name: 'conductor', kind: 'conductor', ohm: perM.value * lengthM },
    crimp('to'),
    ...bolt('to'),
  ];
  return chain.map(({ name, kind, ohm }, k): NetworkElement => {
    const next = chain[k + 1];
    const [start, end] = [k === 0 ? from : `${id}:${name}`, next ? `${id}:${next.name}` : to];
    return { id: `${id}:${name}`, of: link.id, kind, model: 'resistance', from: start, to: end, ohm };
  });
}

interface Stretch {
  readonly name: string;
  readonly kind: 'conductor' | 'joint';
  readonly ohm: number;
}

function isBolted(job: Job, { device, terminal }: LinkEnd): boolean {
  const joint = job.devices.find(({ id }) => id === device)?.facts.terminals[terminal]?.joint;
  return joint !== undefined && bolted.includes(joint);
}
