import type { Part, PartOf } from '../model/kinds/index.ts';
import { copperOhmMm2PerM } from '../power/conductor/resistance.ts';
import type { Report } from './report.ts';

/** What a measured resistance may lie under that of its size in annealed copper: makers draw a little over the gauge. */
const least = 0.8;

/** What is measured of a wire fits its size: no conductor is better than the copper in it, or thicker than its insulation. */
export function checkWireFigures(id: string, part: Part, report: Report): void {
  if (part.kind !== 'wire') return;
  checkResistance(id, part, report);
  checkDiameter(id, part, report);
}

/** Resistance of a metre at 20 C from the area, r = rho / A with rho of IEC 60028. */
function checkResistance(id: string, { size, measured }: PartOf<'wire'>, report: Report): void {
  const copperOhmPerM = copperOhmMm2PerM / size.areaMm2;
  if (measured === undefined || measured >= least * copperOhmPerM) return;
  const mohm = (value: number) => Number((1000 * value).toPrecision(3));
  report.at(
    ['parts', id, 'measured'],
    `${id} is written with ${mohm(measured)} mohm/m, and ${size.label} of pure copper has ${mohm(copperOhmPerM)} mohm/m`,
    'check the number and its unit: ohm/km and mohm/m are the same, ohm/m is a thousand times as much',
  );
}

/** A round conductor of the area is at least d = sqrt(4 A / pi) thick. */
function checkDiameter(
  id: string,
  { size, 'outside-diameter': outsideM }: PartOf<'wire'>,
  report: Report,
): void {
  const bareMm = Math.sqrt((4 * size.areaMm2) / Math.PI);
  if (outsideM === undefined || 1000 * outsideM >= bareMm) return;
  report.at(
    ['parts', id, 'outside-diameter'],
    `${id} is written as ${Number((1000 * outsideM).toPrecision(3))} mm thick, and ${size.label} without insulation is ${Number(bareMm.toPrecision(3))} mm`,
    'measure over the insulation',
  );
}
