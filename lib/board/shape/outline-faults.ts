import { type BoardRemark, length, phrase } from '../remark.ts';
import type { BoardShape } from './outline.ts';
import { holeRooms, narrowestWeb } from './web.ts';

/** The figures that webs and holes are judged by, metres. */
export interface WebRules {
  readonly webGoodM: number;
  readonly webStopM: number;
  readonly holeToEdgeM: number;
  /** Only where the material splits at corners, such as fibreboard; 0 asks for nothing. */
  readonly holeToCornerM: number;
}

/** Webs too narrow and holes too near to an edge or a corner. */
export function outlineFaults(shape: BoardShape, rules: WebRules): readonly BoardRemark[] {
  return [...webFaults(shape, rules), ...holeFaults(shape, rules)];
}

function webFaults(shape: BoardShape, rules: WebRules): BoardRemark[] {
  const { web, value } = narrowestWeb(shape);
  if (!web || value >= rules.webGoodM - 1e-9) return [];
  // Holes that run into each other leave no web; the drill table tells them.
  const isHole = (name: string): boolean => shape.holes.some(({ id }) => id === name);
  if (value <= -1e-9 && web.between.every(isHole)) return [];
  const stop = value < rules.webStopM - 1e-9;
  const limit = stop ? rules.webStopM : rules.webGoodM;
  const names = web.between.join(' and ');
  return [
    {
      rule: 'narrow-web',
      level: stop ? 'stop' : 'caution',
      of: [...web.between],
      message:
        value < 0
          ? phrase`no board is left between ${names}, which run into each other by ${length('overlap', -value)}; ${length('room-asked', limit)} is needed`
          : phrase`only ${length('room-free', value)} of board is left between ${names}; ${length('room-asked', limit)} is needed`,
      value,
      limit,
      unit: 'm',
      remedy: 'move one of the two, or make it smaller',
    },
  ];
}

function holeFaults(shape: BoardShape, rules: WebRules): BoardRemark[] {
  return holeRooms(shape).flatMap(({ hole, toEdgeM, toCornerM }) => {
    const checks = [
      ['hole-near-edge', 'edge', toEdgeM, rules.holeToEdgeM],
      ['hole-near-corner', 'corner', toCornerM, rules.holeToCornerM],
    ] as const;
    // The drill table tells what stands past the edge.
    if (toEdgeM < -1e-9) return [];
    return checks.flatMap(([rule, what, value, limit]): BoardRemark[] => {
      if (value >= limit - 1e-9) return [];
      return [
        {
          rule,
          level: 'caution',
          of: [hole],
          message: phrase`${hole}: its rim is ${length('room-free', value)} from the nearest ${what}; ${length('room-asked', limit)} is needed`,
          value,
          limit,
          unit: 'm',
          remedy: 'move the hole inwards, or choose a smaller one',
        },
      ];
    });
  });
}
