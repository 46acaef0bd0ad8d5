import { type Fault, faultOf, positiveFault } from '../../model/fault.ts';
import { type Mark, type Traced, traced } from '../../model/trace.ts';

/**
 * Insulation wall (m) of single-core road-vehicle cable by area up to `upToMm2`: nominal thick wall of ISO 6722-1,
 * from memory. Cable sold for audio is often thicker: the part's own diameter goes before this.
 */
const walls: readonly { readonly upToMm2: number; readonly wallM: number }[] = [
  { upToMm2: 1.5, wallM: 0.0006 },
  { upToMm2: 2.5, wallM: 0.0007 },
  { upToMm2: 6, wallM: 0.0008 },
  { upToMm2: 16, wallM: 0.001 },
  { upToMm2: 35, wallM: 0.0013 },
  { upToMm2: 70, wallM: 0.0015 },
  { upToMm2: Number.POSITIVE_INFINITY, wallM: 0.0016 },
];

/** Share of a stranded conductor's round that is copper: seven strands in a circle fill 7/9 of it. */
const strandFill = 7 / 9;

/**
 * Outside diameter (m) of a conductor whose part does not state it: D = sqrt(4 A / (pi f)) + 2 w, with the fill
 * f = 7/9 of concentric strands and the wall w of ISO 6722-1 (from memory). Fault on an area not above zero.
 */
export function outsideDiameterM(areaMm2: number): Traced<number> | Fault {
  const bad = positiveFault({ area: areaMm2 });
  if (bad) return bad;
  const wallM = walls.find(({ upToMm2 }) => areaMm2 <= upToMm2)?.wallM ?? 0.0016;
  const coreM = Math.sqrt((4 * areaMm2) / (Math.PI * strandFill)) * 1e-3;
  return traced(coreM + 2 * wallM, 'm', {
    origin: 'assumed',
    rule: 'conductor-diameter',
    formula: 'D = sqrt(4 * A / (pi * f)) + 2 * w',
    citation: 'circle geometry; wall: ISO 6722-1, thick wall',
    mark: 'mem',
    inputs: [
      ['A', areaMm2, 'mm2'],
      ['f', strandFill, ''],
      ['w', wallM, 'm'],
    ],
  });
}

/** Equal circles in a circle need at most this many times d * sqrt(n) for three and more (tight at n = 3). */
const looseness = 1.25;

/**
 * Diameter (m) of a round bundle of wires: D = 1.25 * sqrt(sum of d^2), never less than the two thickest side by
 * side. Known densest packings of 3 and more equal circles in a circle need 1.12 to 1.25 times d * sqrt(n), so the
 * bundle is not thicker than this when laid with care. Fault on an empty bundle or a diameter not above zero.
 */
export function bundleDiameterM(diametersM: readonly number[]): Traced<number> | Fault {
  const [thickest = 0, second = 0] = diametersM.toSorted((a, b) => b - a);
  const bad = positiveFault(Object.fromEntries(diametersM.map((d, k) => [`diameter ${k + 1}`, d])));
  if (bad) return bad;
  if (thickest === 0)
    return faultOf('bundle-empty', ['diameters'], 'a bundle without wires has no diameter', 'name its wires');
  const squares = diametersM.reduce((sum, d) => sum + d * d, 0);
  const roundM = diametersM.length < 3 ? 0 : looseness * Math.sqrt(squares);
  const mark: Mark = 'cp';
  return traced(Math.max(thickest + second, roundM), 'm', {
    rule: 'bundle-diameter',
    formula: 'D = the larger of d1 + d2 and, from three wires up, 1.25 * sqrt(sum of d^2)',
    citation: 'packing of circles in a circle; allowance: common practice, no source',
    mark,
    inputs: [
      ['n', diametersM.length, ''],
      ['d1', thickest, 'm'],
      ['d2', second, 'm'],
      ['sum of d^2', squares, 'm2'],
    ],
  });
}
