import { commonPractice, type Traced, traced } from '../../model/trace.ts';

/**
 * Strip length (m) for a ferrule whose maker is silent, by its area (mm2): the sleeve of the size. Common practice,
 * no source.
 */
export function ferruleStripM(areaMm2: number): Traced<number> {
  const sleeveM = areaMm2 <= 1 ? 0.008 : areaMm2 <= 6 ? 0.012 : areaMm2 <= 16 ? 0.018 : 0.022;
  return traced(sleeveM, 'm', {
    rule: 'strip-length',
    formula: 'the sleeve of the ferrule: 8 mm to 1 mm2, 12 mm to 6 mm2, 18 mm to 16 mm2, 22 mm above',
    citation: commonPractice,
    mark: 'cp',
    inputs: [['A', areaMm2, 'mm2']],
  });
}

/**
 * Strip length (m) for the barrel of a ring lug whose maker is silent: 2.5 times the diameter of the copper as one
 * round, at least 6 mm. Rather too long than too short: what stands out is seen and cut back, what is missing is not
 * seen once it is crimped. Common practice, no source.
 */
export function lugStripM(areaMm2: number): Traced<number> {
  return traced(Math.max(0.006, 2.5 * Math.sqrt((4 * areaMm2) / Math.PI) * 1e-3), 'm', {
    rule: 'strip-length',
    formula: '2.5 * sqrt(4 * A / pi), at least 6 mm',
    citation: commonPractice,
    mark: 'cp',
    inputs: [['A', areaMm2, 'mm2']],
  });
}

/**
 * Strip length (m) for a crimp or a bare end whose makers are silent: 1.5 times the diameter of the copper as
 * one round, at least 6 mm. Common practice, no source.
 */
export function barrelStripM(areaMm2: number): Traced<number> {
  return traced(Math.max(0.006, 1.5 * Math.sqrt((4 * areaMm2) / Math.PI) * 1e-3), 'm', {
    rule: 'strip-length',
    formula: '1.5 * sqrt(4 * A / pi), at least 6 mm',
    citation: commonPractice,
    mark: 'cp',
    inputs: [['A', areaMm2, 'mm2']],
  });
}
