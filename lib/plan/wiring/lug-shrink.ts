import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';
import { type CoveringSize, chooseCovering, heatShrink } from '../../power/conductor/covering-size.ts';
import { longestLengthM } from '../../shelf/shelf-lengths.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { coveringFit } from './runs/run-coverings.ts';
import { wireDiameterM } from './wire-diameter.ts';

/** Share of a stranded conductor's round that is copper: seven strands in a circle. */
const strandFill = 7 / 9;

/** Heat-shrink chosen for a lug, and how long it is cut. */
export interface LugShrink {
  readonly part: string | null;
  readonly length: Traced<number>;
}

/**
 * Heat-shrink for a lug: the smallest of the catalogue, from the shelf first, that slides over insulation and
 * barrel and closes on the thinner of the two by its ratio; as long as the barrel and what it reaches onto
 * the insulation.
 */
export function lugShrink(job: Job, { cable }: Pick<SizedConductor, 'cable'>, barrelM: number): LugShrink {
  const insulationM = wireDiameterM(job, cable);
  const coreM = Math.sqrt((4 * cable.size.areaMm2) / (Math.PI * strandFill)) * 1e-3;
  const barrelOutsideM = coreM * job.rules['barrel-over-conductor'].value;
  const over = {
    thickestM: Math.max(insulationM, barrelOutsideM),
    thinnestM: Math.min(insulationM, barrelOutsideM),
    lengthM: barrelM + job.rules['shrink-over-insulation'].value,
  };
  const sizes = shrinkSizes(job);
  const chosen = sizeFor(over, sizes, job) ?? sizeFor(over, sizes.map(anyStock), job);
  const working = { barrelM, insulationM, barrelOutsideM, areaMm2: cable.size.areaMm2 };
  return { part: chosen?.part ?? null, length: shrinkLength(job, working, over.lengthM, chosen) };
}

/** The cut length with all that the choice was made from. */
function shrinkLength(
  { rules }: Pick<Job, 'rules'>,
  given: Readonly<Record<'barrelM' | 'insulationM' | 'barrelOutsideM' | 'areaMm2', number>>,
  lengthM: number,
  chosen: CoveringSize | null,
): Traced<number> {
  const { room, grip } = coveringFit(rules);
  const bores = chosen
    ? ([
        ['bore', chosen.openM, 'm'],
        ['shrunk bore', chosen.closedM, 'm'],
      ] as const)
    : [];
  return traced(lengthM, 'm', {
    rule: 'heat-shrink',
    formula:
      'L = Lb + o; the smallest whose bore is r * the thicker of D and Db or more, and whose shrunk bore is g * the thinner or less; Db = b * sqrt(4 * A / (pi * f)) in mm',
    citation: commonPractice,
    mark: 'cp',
    inputs: [
      ['Lb', given.barrelM, 'm'],
      ['o', rules['shrink-over-insulation'].value, 'm'],
      ['D', given.insulationM, 'm'],
      ['Db', given.barrelOutsideM, 'm'],
      ['b', rules['barrel-over-conductor'].value, ''],
      ['A', given.areaMm2, 'mm2'],
      ['f', strandFill, ''],
      ['r', room, ''],
      ['g', grip, ''],
      ['chosen', chosen?.part ?? 'none that fits', ''],
      ...bores,
    ],
  });
}

function sizeFor(
  over: Parameters<typeof chooseCovering>[0],
  sizes: readonly CoveringSize[],
  { rules }: Pick<Job, 'rules'>,
): CoveringSize | null {
  const choice = chooseCovering(over, sizes, coveringFit(rules));
  return isFault(choice) ? null : choice.chosen;
}

function anyStock({ stockM: _, ...size }: CoveringSize): CoveringSize {
  return size;
}

function shrinkSizes(job: Job): CoveringSize[] {
  return partsOfKind(job.parts, 'covering').flatMap(([id, part]): CoveringSize[] => {
    if (part.form !== 'heat-shrink') return [];
    const shrunkM = part['shrunk-bore'] ?? part.bore / 2;
    return [
      { ...heatShrink(id, part.bore, part.bore / shrunkM), stockM: longestLengthM(job.shop.stock[id]) },
    ];
  });
}
