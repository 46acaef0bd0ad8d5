import type { CornerName, Cut } from '../../model/outline.ts';
import type { BoardRemark } from '../remark.ts';
import { type Base, callable, cornerIndex, edgeIndex, measured } from '../shape/base.ts';
import type { Loop } from '../shape/bulge.ts';
import { distance, type Point } from '../shape/point.ts';
import { noSuchPlace, notPositive, tooLarge } from './cut-fault.ts';
import {
  type CornerFrame,
  chamferLoop,
  notchLoop,
  overcutM,
  roundingLoop,
  slotLoop,
  stepLoop,
  windowLoop,
} from './cut-loops.ts';

/** What a cut takes away. `open`: it starts at an edge, so that it reaches past it on purpose. */
export interface Removal {
  readonly cut: string;
  readonly loop: Loop;
  readonly open: boolean;
}

type Made = readonly Removal[] | BoardRemark;
type Kind = Exclude<Cut['cut'], 'hole'>;
type CutOf<K extends Kind> = Extract<Cut, { cut: K }>;

const makers: { readonly [K in Kind]: (base: Base, name: string, cut: CutOf<K>) => Made } = {
  corner: makeCorner,
  notch: makeNotch,
  step: makeStep,
  slot: makeSlot,
  window: makeWindow,
  'arc-corner': makeArcCorners,
};

function make<K extends Kind>(base: Base, name: string, kind: K, cut: CutOf<K>): Made {
  return makers[kind](base, name, cut);
}

/** What a cut takes out of the base shape, or what is wrong with it. */
export function removalsOf(base: Base, name: string, cut: Exclude<Cut, { cut: 'hole' }>): Made {
  const fault = sizeFault(name, cut);
  return fault ?? make(base, name, cut.cut, cut);
}

const sizes = ['dx', 'dy', 'radius', 'width', 'depth', 'length', 'height', 'diameter'] as const;

/** The first size of a cut that is not above zero. */
export function sizeFault(name: string, cut: Cut): BoardRemark | null {
  const held: Partial<Record<string, unknown>> = cut;
  for (const what of sizes) {
    const value = held[what];
    if (typeof value === 'number' && value <= 0) return notPositive(name, what, value);
  }
  return null;
}

function frameOf(base: Base, index: number): CornerFrame | null {
  const n = base.ring.length;
  const [at, before, after] = [index, index + n - 1, index + 1].map((i) => base.ring[i % n]);
  if (index < 0 || !at || !before || !after) return null;
  const [backM, aheadM] = [distance(at, before), distance(at, after)];
  return { at, back: unit(at, before, backM), ahead: unit(at, after, aheadM), backM, aheadM };
}

function unit(from: Point, to: Point, lengthM: number): Point {
  return { xM: (to.xM - from.xM) / lengthM, yM: (to.yM - from.yM) / lengthM };
}

/** The angle inside the board at a corner, radians; above pi where the corner turns inwards. */
function insideAngle({ back, ahead }: CornerFrame): number {
  const cross = ahead.xM * back.yM - ahead.yM * back.xM;
  const angle = Math.atan2(cross, ahead.xM * back.xM + ahead.yM * back.yM);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

function outwardCorner(base: Base, name: string, corner: CornerName | number): CornerFrame | BoardRemark {
  const frame = frameOf(base, cornerIndex(base, corner));
  if (!frame) return noSuchPlace(name, `corner ${corner}`, callable(base));
  if (insideAngle(frame) > Math.PI - 1e-6)
    return noSuchPlace(name, `outward corner ${corner}`, callable(base));
  return frame;
}

/** `dx` belongs to the edge nearer to level: the pair in the order back, ahead; or the edge that is too short. */
function legs(name: string, frame: CornerFrame, dxM: number, dyM: number): [number, number] | BoardRemark {
  const backIsLevel = Math.abs(frame.back.xM) >= Math.abs(frame.ahead.xM);
  const [backM, aheadM] = backIsLevel ? [dxM, dyM] : [dyM, dxM];
  const over =
    backM > frame.backM ? [backM, frame.backM] : aheadM > frame.aheadM ? [aheadM, frame.aheadM] : [];
  const [foundM, limitM] = over;
  if (foundM === undefined || limitM === undefined) return [backM, aheadM];
  return tooLarge('corner-cut-longer-than-edge', name, 'a side', foundM, limitM, 'the edge');
}

function makeCorner(base: Base, name: string, cut: CutOf<'corner'>): Made {
  const frame = outwardCorner(base, name, cut.corner);
  if ('rule' in frame) return frame;
  if (cut.radius !== undefined) return rounding(name, frame, cut.radius);
  const pair = legs(name, frame, cut.dx ?? 0, cut.dy ?? 0);
  return 'rule' in pair ? pair : [{ cut: name, loop: chamferLoop(frame, ...pair), open: true }];
}

function makeStep(base: Base, name: string, cut: CutOf<'step'>): Made {
  const frame = outwardCorner(base, name, cut.corner);
  if ('rule' in frame) return frame;
  const pair = legs(name, frame, cut.dx, cut.dy);
  return 'rule' in pair ? pair : [{ cut: name, loop: stepLoop(frame, ...pair), open: true }];
}

function rounding(name: string, frame: CornerFrame, radiusM: number): Made {
  const angle = insideAngle(frame);
  const tangentM = radiusM / Math.tan(angle / 2);
  const roomM = Math.min(frame.backM, frame.aheadM);
  if (tangentM > roomM + 1e-9)
    return tooLarge(
      'corner-radius-too-large',
      name,
      'a radius',
      radiusM,
      roomM * Math.tan(angle / 2),
      'its edges allow',
    );
  return [{ cut: name, loop: roundingLoop(frame, tangentM, angle), open: true }];
}

function makeArcCorners(base: Base, name: string, cut: CutOf<'arc-corner'>): Made {
  const all = base.ring.map((_, at) => at);
  const indexes = cut.corners?.map((corner) => cornerIndex(base, corner)) ?? all;
  const missing = cut.corners?.[indexes.indexOf(-1)];
  if (missing !== undefined) return noSuchPlace(name, `corner ${missing}`, callable(base));
  const made: Removal[] = [];
  for (const index of indexes) {
    const frame = frameOf(base, index);
    if (!frame || insideAngle(frame) > Math.PI - 1e-6) continue;
    const one = rounding(name, frame, cut.radius);
    if ('rule' in one) return one;
    made.push(...one);
  }
  return made;
}

const towards = {
  left: (p: Point) => -p.xM,
  right: (p: Point) => p.xM,
  bottom: (p: Point) => -p.yM,
  top: (p: Point) => p.yM,
} as const;

function makeNotch(base: Base, name: string, cut: CutOf<'notch'>): Made {
  const index = edgeIndex(base, cut.edge);
  const [a, b] = [base.ring[index], base.ring[(index + 1) % base.ring.length]];
  if (index < 0 || !a || !b) return noSuchPlace(name, `edge ${cut.edge}`, callable(base));
  const lengthM = distance(a, b);
  if (cut.width > lengthM + 1e-9)
    return tooLarge('notch-wider-than-edge', name, 'a width', cut.width, lengthM, 'the edge');
  const end = cut.from ?? (Math.abs(b.xM - a.xM) > 1e-9 ? 'left' : 'bottom');
  const lead = towards[end](a) - towards[end](b);
  if (Math.abs(lead) < 1e-9) return noSuchPlace(name, `${end} end on edge ${cut.edge}`, callable(base));
  const pastM = Math.max(-cut.offset, cut.offset + cut.width - lengthM);
  if (pastM > 1e-9)
    return tooLarge('notch-past-end-of-edge', name, 'a reach', lengthM + pastM, lengthM, 'the edge');
  const startM = lead > 0 ? cut.offset : lengthM - cut.offset - cut.width;
  const endM = startM + cut.width;
  const u = unit(a, b, lengthM);
  const loop = notchLoop(
    a,
    u,
    { xM: -u.yM, yM: u.xM },
    startM < 1e-9 ? -overcutM : startM,
    endM > lengthM - 1e-9 ? lengthM + overcutM : endM,
    cut.depth,
  );
  return [{ cut: name, loop, open: true }];
}

function makeSlot(base: Base, name: string, cut: CutOf<'slot'>): Made {
  if (cut.width > cut.length)
    return tooLarge('slot-wider-than-long', name, 'a width', cut.width, cut.length, 'its length');
  const centre = measured(base, cut.from, cut.x, cut.y);
  // A slot as wide as it is long is a round hole: keep its two straight sides apart by a hair.
  const lengthM = Math.max(cut.length, cut.width + 1e-7);
  return [{ cut: name, loop: slotLoop(centre, lengthM, cut.width, cut.turn ?? 0), open: false }];
}

function makeWindow(base: Base, name: string, cut: CutOf<'window'>): Made {
  const radiusM = cut.radius ?? 0;
  const mostM = Math.min(cut.width, cut.height) / 2;
  if (radiusM > mostM)
    return tooLarge('corner-radius-too-large', name, 'a radius', radiusM, mostM, 'half its smaller side');
  const near = measured(base, cut.from, cut.x, cut.y);
  const far = measured(base, cut.from, cut.x + cut.width, cut.y + cut.height);
  const lowerLeft = { xM: Math.min(near.xM, far.xM), yM: Math.min(near.yM, far.yM) };
  return [{ cut: name, loop: windowLoop(lowerLeft, cut.width, cut.height, radiusM), open: false }];
}
