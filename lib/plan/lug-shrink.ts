import type { WireEnd } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';
import { type CoveringSize, chooseCovering, heatShrink } from '../power/covering-size.ts';
import { isPowerFault } from '../power/traced.ts';
import { wireDiameterM } from './board-wires.ts';
import { longestPieceM } from './cable-candidates.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import { coveringFit } from './run-coverings.ts';

/** Share of a stranded conductor's round that is copper: seven strands in a circle. */
const strandFill = 7 / 9;

/**
 * Heat-shrink for a lug: the smallest of the catalogue, from the shelf first, that slides over insulation and
 * barrel and closes on the thinner of the two by its ratio; as long as the barrel and what it reaches onto
 * the insulation.
 */
export function lugShrink(
  job: Job,
  { cable }: Pick<SizedConductor, 'cable'>,
  barrelM: number,
): NonNullable<WireEnd['shrink']> {
  const insulationM = wireDiameterM(job, cable);
  const coreM = Math.sqrt((4 * cable.size.areaMm2) / (Math.PI * strandFill)) * 1e-3;
  const outsideM = coreM * job.rules['barrel-over-conductor'].value;
  const lengthM = barrelM + job.rules['shrink-over-insulation'].value;
  const over = {
    thickestM: Math.max(insulationM, outsideM),
    thinnestM: Math.min(insulationM, outsideM),
    lengthM,
  };
  const sizes = shrinkSizes(job);
  const choice = chooseCovering(over, sizes, coveringFit(job.rules));
  const anyway =
    isPowerFault(choice) || choice.chosen
      ? choice
      : chooseCovering(
          over,
          sizes.map(({ stockM: _, ...size }) => size),
          coveringFit(job.rules),
        );
  return { part: isPowerFault(anyway) ? null : (anyway.chosen?.part ?? null), lengthM };
}

function shrinkSizes(job: Job): CoveringSize[] {
  return Object.entries(job.parts).flatMap(([id, part]): CoveringSize[] => {
    if (part.kind !== 'covering' || part.form !== 'heat-shrink') return [];
    const shrunkM = part['shrunk-bore'] ?? part.bore / 2;
    return [{ ...heatShrink(id, part.bore, part.bore / shrunkM), stockM: longestPieceM(job.shop.stock[id]) }];
  });
}
