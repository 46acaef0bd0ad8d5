import { freeToRingM } from '../../board/layout/free-to-wall.ts';
import { type Body, turnedSide, turns } from '../../board/layout/item.ts';
import type { Board, Device } from '../../model/content/resolved-job.ts';
import type { KeepClearKind, PlanBoard, PlanPlacement } from '../../model/plan/board.ts';
import type { Edge } from '../../model/vocabulary.ts';
import { boxRing } from '../../propose/laying/mounting-space.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceIdOf, deviceOf, deviceSpot, endsOf, spaceSpot, terminalSpecOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed, shortIn } from '../words.ts';

/** What stands before a side of a part once the board is in, and how much of its rooms is left. */
interface Before {
  readonly freeM: number;
  readonly what: string;
  /** False where nobody said whether a hand comes in there. */
  readonly certain: boolean;
}

/** A side of a part that asks for more room than it has in the vehicle. */
interface Short {
  readonly device: Device;
  readonly board: Board;
  readonly side: Edge;
  readonly needs: readonly { readonly kind: KeepClearKind; readonly depthM: number }[];
  readonly before: Before;
}

const words: Readonly<Record<KeepClearKind, string>> = {
  air: 'air',
  control: 'a hand',
  tool: 'a straight tool',
  connector: 'plugs and bends',
};

/** How high a board's mounting face stands over the plane of its space, metres. */
export function faceM({ fixings, thicknessM }: PlanBoard): number {
  return Math.max(0, ...fixings.map(({ spacerM }) => spacerM)) + thicknessM;
}

/** A placed part in the axes of its space, metres. */
export function bodyInSpace(board: PlanBoard, at: PlanPlacement): Body {
  const { xM, yM } = board.datumInSpace;
  const minZ = faceM(board) + at.raisedM;
  const [minX, minY] = [xM + at.xM, yM + at.yM];
  return { minX, minY, maxX: minX + at.widthM, maxY: minY + at.depthM, minZ, maxZ: minZ + at.heightM };
}

function nearest(board: Board, body: Body, side: Edge): Before {
  const bound = board.space.bounds[side];
  const outline = board.space.outline.map(([xM, yM]) => ({ xM, yM }));
  const wall: Before[] =
    bound === 'open'
      ? []
      : [
          {
            freeM: freeToRingM(body, side, outline),
            what: `the ${side} wall of ${board.spaceId}`,
            certain: bound === 'wall',
          },
        ];
  const obstacles = Object.entries(board.space.obstacles).flatMap(([id, one]): Before[] => {
    if (one['stands-out'] <= body.minZ + 1e-9) return [];
    const ring = boxRing(one.x, one.y, one.width, one.height);
    return [{ freeM: freeToRingM(body, side, ring), what: id, certain: true }];
  });
  return [...wall, ...obstacles].reduce((least, one) => (one.freeM < least.freeM ? one : least), {
    freeM: Infinity,
    what: '',
    certain: true,
  });
}

/** Sides of placed parts whose hands, tools or plugs lack room in the space. Air is weighed by the heat of the space. */
function shortSides({ job, plan }: Case): readonly Short[] {
  return job.boards.flatMap((board) => {
    const planned = plan.boards.find(({ id }) => id === board.id);
    return (planned?.placements ?? []).flatMap((at) => {
      const device = deviceOf(job, at.item);
      if (!planned || !device) return [];
      const body = bodyInSpace(planned, at);
      return (['left', 'right', 'top', 'bottom'] as const).flatMap((side): Short[] => {
        const rooms = at.keepClear.filter((room) => room.side === side && room.kind !== 'air');
        if (rooms.length === 0) return [];
        const before = nearest(board, body, side);
        const needs = rooms.filter(({ depthM }) => before.freeM < depthM - 1e-6);
        return needs.length > 0 ? [{ device, board, side, needs, before }] : [];
      });
    });
  });
}

const controlBeforeWall: Rule = {
  id: 'control-before-wall',
  judge(about) {
    return [...sideControls(about), ...faceControls(about)];
  },
};

function sideControls(about: Case): Verdict<'control-before-wall'>[] {
  const { job } = about;
  return shortSides(about).flatMap(({ device, board, side, needs, before }) => {
    const short = shortIn(job, spaceSpot(board), deviceSpot(job, device.id, 'at'));
    const control = needs.find(({ kind }) => kind === 'control');
    if (!control) return [];
    const { freeM, what, certain } = before;
    const others = needs.filter(({ kind }) => kind !== 'control').map(({ kind }) => words[kind]);
    const [free, asked] = short(freeM, control.depthM);
    return [
      {
        level: certain ? ('stop' as const) : ('caution' as const),
        of: [device.id, board.id],
        message: `once ${board.id} is in, ${free} are free on the ${side} of ${device.id} up to ${what}; a hand needs ${asked} to reach its controls${others.length > 0 ? ` (${listed(others)} lack room there too)` : ''}`,
        value: freeM,
        limit: control.depthM,
        unit: 'm',
        remedy: `turn or move ${device.id}, or move the board${certain ? '' : `; where a hand comes in there, write bounds: { ${side}: open } of ${board.spaceId} in the vehicle's file`}`,
        ...houseRule(job, 'tool-room-knob').from,
        ...deviceSpot(job, device.id, 'at'),
      },
    ];
  });
}

/** Controls on the face of a part, where the front of the space is a wall, such as the underside of a seat. */
function faceControls({ job, plan }: Case): Verdict<'control-before-wall'>[] {
  const { value: limit, from } = houseRule(job, 'tool-room-knob');
  return job.boards.flatMap((board) => {
    const short = shortIn(job, spaceSpot(board));
    const planned = plan.boards.find(({ id }) => id === board.id);
    if (!planned || board.space.bounds.front !== 'wall') return [];
    return planned.placements.flatMap((at): Verdict<'control-before-wall'>[] => {
      const device = deviceOf(job, at.item);
      const reached = Object.values(device?.facts.controls ?? {}).some(
        ({ panel, form }) => panel === 'face' && form !== 'menu',
      );
      const value = planned.spaceDepthM - bodyInSpace(planned, at).maxZ;
      if (!reached || value >= limit - 1e-6) return [];
      const [free, asked] = short(Math.max(0, value), limit);
      return [
        {
          level: 'stop',
          of: [at.item, board.id],
          message: `once ${board.id} is in, ${free} are free before the face of ${at.item} up to the front of ${board.spaceId}; a hand needs ${asked} to reach its controls`,
          value,
          limit,
          unit: 'm',
          remedy: `use a part with its controls on an edge, or a place that is open in front; where a lid comes off for a hand, or the board comes out to be set, write bounds: { front: lid } of ${board.spaceId} in the vehicle's file: air is still held against it`,
          ...from,
          ...deviceSpot(job, at.item, 'at'),
        },
      ];
    });
  });
}

/**
 * What else helps: what is joined on the bench is tightened there; what comes from the vehicle is joined once the board is
 * in, where no tool gets at it.
 */
function onBenchText(about: Case, { device, board, side }: Short): string {
  const joined = joinedInPlace(about, device, board, side);
  return joined.length === 0
    ? 'or tighten it on the bench and lift the board with its wires on to tighten it again'
    : `${listed(joined)} ${joined.length === 1 ? 'is' : 'are'} joined there once ${board.id} is in, so that the bench is no way out: or bring ${joined.length === 1 ? 'it' : 'them'} to a joint or a distribution on the board that has room`;
}

/** Labels of the wires from off the board that end on a side of a part: the order of work joins them in the vehicle. */
function joinedInPlace({ job, plan }: Case, device: Device, board: Board, side: Edge): readonly string[] {
  const at = plan.boards.find(({ id }) => id === board.id)?.placements.find(({ item }) => item === device.id);
  const turn = turns.find((one) => one === at?.turnDeg) ?? 0;
  return plan.wires.flatMap((wire) => {
    const ends = endsOf(wire);
    const isHere = (end: string): boolean => {
      if (deviceIdOf(end) !== device.id) return false;
      const panel = terminalSpecOf(job, end)?.panel ?? 'bottom';
      return panel !== 'face' && turnedSide(panel, turn) === side;
    };
    const isOff = (end: string) => deviceOf(job, deviceIdOf(end))?.board !== board.id;
    return ends.some(isHere) && ends.some(isOff) ? [wire.label] : [];
  });
}

const toolBeforeWall: Rule = {
  id: 'tool-room-before-wall',
  judge(about) {
    const { job } = about;
    return shortSides(about).flatMap((short): Verdict<'tool-room-before-wall'>[] => {
      const { device, board, side, needs, before } = short;
      // With a control there the whole side is told once.
      if (needs.some(({ kind }) => kind === 'control')) return [];
      const [most] = needs.toSorted((a, b) => b.depthM - a.depthM);
      if (!most) return [];
      const told = shortIn(job, spaceSpot(board), deviceSpot(job, device.id, 'at'));
      // The least that is lacking tells how finely what is free has to be written.
      const nearest = Math.min(...needs.map(({ depthM }) => depthM));
      const [free] = told(before.freeM, nearest);
      const asked = needs.map(({ kind, depthM }) => {
        const [, needed] = told(before.freeM, depthM);
        return `${words[kind]} need${kind === 'tool' ? 's' : ''} ${needed}`;
      });
      return [
        {
          level: 'caution',
          of: [device.id, board.id],
          message: `once ${board.id} is in, ${free} are free on the ${side} of ${device.id} up to ${before.what}; ${listed(asked)}`,
          value: before.freeM,
          limit: most.depthM,
          unit: 'm',
          remedy: `turn or move ${device.id}; ${onBenchText(about, short)}${before.certain ? '' : `; where nothing is there, write bounds: { ${side}: open } of ${board.spaceId} in the vehicle's file`}`,
          ...deviceSpot(job, device.id, 'at'),
        },
      ];
    });
  },
};

export const reachInSpaceRules: readonly Rule[] = [controlBeforeWall, toolBeforeWall];
