import { commonPractice, type Traced, traced } from '../model/trace.ts';

/** What moves the air of a space. */
export interface MovingAir {
  /** What a fan moves that the vehicle has, m3/s. */
  readonly thereM3S: number;
  /** What the makers of the fans that a job fits state together, with nothing before them and behind them, m3/s. */
  readonly statedM3S: number;
  /** What a fan moves in place, of what its maker states. */
  readonly delivers: number;
}

/** Air that is moved through a space, m3/s: what its own fan moves, and of fitted ones a share of what their makers state. */
export function movedAir({ thereM3S, statedM3S, delivers }: MovingAir): Traced<number> {
  if (statedM3S === 0)
    return traced(thereM3S, 'm3/s', {
      origin: 'given',
      rule: 'moved-air',
      citation: "the vehicle's data",
    });
  return traced(thereM3S + delivers * statedM3S, 'm3/s', {
    rule: 'moved-air',
    formula: 'Vthere + s Vfans',
    citation: commonPractice,
    mark: 'cp',
    inputs: [
      ['Vthere', thereM3S, 'm3/s'],
      ['s', delivers, ''],
      ['Vfans', statedM3S, 'm3/s'],
    ],
  });
}
