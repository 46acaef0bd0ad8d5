import type { Phrase } from '../../model/phrase.ts';
import { type BoardRemark, length, phrase } from '../remark.ts';
import { holeWebs } from './hole-webs.ts';
import type { BoardShape } from './outline.ts';
import { distance } from './point.ts';
import { sideOf } from './side-of.ts';
import { holeRooms, narrowestWeb, type Web } from './web.ts';
import { type WebGround, webWaysOut } from './web-ways-out.ts';

/** The figures that webs and holes are judged by, metres. */
export interface WebRules {
  readonly webGoodM: number;
  readonly webStopM: number;
  readonly holeToEdgeM: number;
  /** Only where the material splits at corners, such as fibreboard; 0 asks for nothing. */
  readonly holeToCornerM: number;
}

/** Webs too narrow and holes too near to an edge or a corner. `ground` tells what the space lets move; null: nothing known. */
export function outlineFaults(
  shape: BoardShape,
  rules: WebRules,
  ground: WebGround | null,
): readonly BoardRemark[] {
  return [...webFaults(shape, rules, ground), ...holeFaults(shape, rules, ground)];
}

function webFaults(shape: BoardShape, rules: WebRules, ground: WebGround | null): BoardRemark[] {
  const { web, value } = narrowestWeb(shape);
  if (!web || value >= rules.webGoodM - 1e-9) return [];
  // Holes that run into each other leave no web; the drill table tells them.
  const isHole = (name: string): boolean => shape.holes.some(({ id }) => id === name);
  if (value <= -1e-9 && web.between.every(isHole)) return [];
  const stop = value < rules.webStopM - 1e-9;
  const limit = stop ? rules.webStopM : rules.webGoodM;
  const names = namesOf(web, shape, ground);
  const more = moreWebs(shape, web, rules.webGoodM);
  const beside = more.flatMap(
    (one) => phrase`, ${besideText(one.widthM)} between ${otherNamesOf(one, web, shape, ground)}`,
  );
  const good = more.some(({ widthM }) => widthM >= limit - 1e-9)
    ? phrase`, and ${length('room-asked', rules.webGoodM)} is good`
    : '';
  return [
    {
      rule: 'narrow-web',
      level: stop ? 'stop' : 'caution',
      of: [...new Set([web, ...more].flatMap(({ between }) => between))],
      message:
        value < 0
          ? phrase`no board is left between ${names}, which run into each other by ${length('overlap', -value)}${beside}; ${length('room-asked', limit)} is needed${good}`
          : phrase`only ${length('room-free', value)} of board is left between ${names}${beside}; ${length('room-asked', limit)} is needed${good}`,
      value,
      limit,
      unit: 'm',
      remedy: webWaysOut(shape, web, stop ? [rules.webGoodM, rules.webStopM] : [rules.webGoodM], ground),
    },
  ];
}

/** The other webs of the holes that a web runs between which are less than good: they are told with it. */
function moreWebs(shape: BoardShape, web: Web, goodM: number): readonly Web[] {
  const own = shape.holes.filter(({ id }) => web.between.includes(id));
  const all = own.flatMap((hole) => holeWebs(shape, hole, goodM));
  return all.filter(({ to }) => [web.from, web.to].every((end) => distance(to, end) > 1e-6));
}

function besideText(widthM: number): Phrase {
  return widthM < 0 ? 'none' : phrase`${length('room-free', widthM)}`;
}

/** Between what another web of a hole lies; a hole that all of them have in common is not named again. */
function otherNamesOf(one: Web, web: Web, shape: BoardShape, ground: WebGround | null): string {
  const holes = shape.holes.filter(({ id }) => web.between.includes(id));
  return holes.length === 1 ? `it and ${farEndOf(one, shape, ground)}` : namesOf(one, shape, ground);
}

function holeRemedy(hole: string, ground: WebGround | null): string {
  const point = ground?.points.get(hole)?.point;
  return ground && point !== undefined
    ? `move ${ground.board} in ${ground.space} or make it larger, so that ${point} lies further in; or use another sound point`
    : 'move the hole inwards, or choose a smaller one';
}

/** What a web lies between: a fixing with its sound point, and on which side of a hole the edge is. */
function namesOf(web: Web, shape: BoardShape, ground: WebGround | null): string {
  const [one, other] = web.between;
  if (one === other) return `two stretches of ${one === 'edge' ? 'the edge' : one}`;
  return `${endName(one, ground)} and ${farEndOf(web, shape, ground)}`;
}

function endName(name: string, ground: WebGround | null): string {
  const point = ground?.points.get(name)?.point;
  return point === undefined ? name : `the fixing ${name} at ${point}`;
}

/** The second of what a web lies between. */
function farEndOf({ between: [one, other], from, to }: Web, { holes }: BoardShape, ground: WebGround | null) {
  const side = sideOf(from, to);
  const isHole = holes.some(({ id }) => id === one);
  return isHole && other === 'edge' && side !== null ? `the ${side} edge` : endName(other, ground);
}

function holeFaults(shape: BoardShape, rules: WebRules, ground: WebGround | null): BoardRemark[] {
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
          remedy: holeRemedy(hole, ground),
        },
      ];
    });
  });
}
