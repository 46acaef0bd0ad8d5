import { type Fault, isFault, positiveFault } from '../../model/fault.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';

/** Least bend radius (m) of a wire: a number of its outside diameters, common practice. Fault on one not above zero. */
export function bendRadius(diameterM: number, bendDiameters: number): Traced<number> | Fault {
  const bad = positiveFault({ diameter: diameterM, 'bend factor': bendDiameters });
  if (bad) return bad;
  return traced(diameterM * bendDiameters, 'm', {
    rule: 'bend-radius',
    formula: 'R = b * D',
    citation: commonPractice,
    mark: 'cp',
    inputs: [
      ['b', bendDiameters, ''],
      ['D', diameterM, 'm'],
    ],
  });
}

/** The same by itself; 0 for a wire of which nothing is known. */
export function bendRadiusM(diameterM: number, bendDiameters: number): number {
  const radius = bendRadius(diameterM, bendDiameters);
  return isFault(radius) ? 0 : radius.value;
}
