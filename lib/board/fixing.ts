import type { Traced } from '../model/trace.ts';
import { boardDefaults } from './defaults.ts';
import { type BoardFault, commonPractice, mmText } from './fault.ts';
import { inSpace, type Pose } from './fit.ts';
import { computed, input } from './measure.ts';
import { distance, insideRing, type Point, pointToRing, type Ring } from './point.ts';

/** A screw, bolt or rivet nut that holds the board to the vehicle; metres from the board's datum. */
export interface Fixing extends Point {
  readonly id: string;
  /** Shank. */
  readonly diameterM: number;
  /** Length under the head. */
  readonly lengthM: number;
  /** What one holds in its point, in newtons: pulled out, and across. */
  readonly pullOutN?: number;
  readonly shearN?: number;
}

/** Sound metal or a factory thread that a fixing may hold in, in the mounting space. */
export interface SoundPoint extends Point {
  readonly id: string;
}

/** What is behind the back plane of the space, and how far behind it. */
export interface Behind {
  readonly id: string;
  readonly kind: 'tank' | 'line' | 'airbag' | 'wiring' | 'clear' | 'other';
  readonly outline: Ring;
  readonly distanceM: number;
}

/** A fixing and the sound point nearest to it; null where the vehicle has none. */
export interface Seat {
  readonly fixing: string;
  readonly soundPoint: string | null;
  readonly distanceM: Traced<number> | null;
}

/** The nearest sound point of every fixing, and the fixings that hold in none. */
export function seatFixings(
  fixings: readonly Fixing[],
  soundPoints: readonly SoundPoint[],
  pose: Pose,
  limitM: number = boardDefaults.soundPointM,
): { readonly seats: readonly Seat[]; readonly faults: readonly BoardFault[] } {
  const seats = fixings.map((fixing) => seatOf(fixing, soundPoints, pose));
  const faults = seats
    .filter(({ distanceM }) => !distanceM || distanceM.value > limitM + 1e-9)
    .map((seat) => unsound(seat, limitM));
  return { seats, faults };
}

function seatOf(fixing: Fixing, soundPoints: readonly SoundPoint[], pose: Pose): Seat {
  const at = inSpace(fixing, pose);
  const [nearest] = soundPoints.toSorted((a, b) => distance(a, at) - distance(b, at) || compare(a.id, b.id));
  if (!nearest) return { fixing: fixing.id, soundPoint: null, distanceM: null };
  const distanceM = computed(
    distance(nearest, at),
    'm',
    {
      rule: 'fixing-seat',
      formula: 'distance from the fixing to the sound point',
      citation: 'plane geometry',
    },
    [
      input('sound point', nearest.id, ''),
      input('fixing x', at.xM, 'm'),
      input('fixing y', at.yM, 'm'),
      input('point x', nearest.xM, 'm'),
      input('point y', nearest.yM, 'm'),
    ],
  );
  return { fixing: fixing.id, soundPoint: nearest.id, distanceM };
}

/** Order of ids that is the same on every machine. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function unsound({ fixing, soundPoint, distanceM }: Seat, limitM: number): BoardFault {
  const found = distanceM ? { value: distanceM.value, limit: limitM, unit: 'm' } : {};
  return {
    rule: 'fixing-not-on-sound-point',
    level: 'stop',
    of: [fixing, ...(soundPoint ? [soundPoint] : [])],
    message: distanceM
      ? `${fixing} is ${mmText(distanceM.value)} from the nearest sound point, ${soundPoint}; ${mmText(limitM)} is allowed`
      : `${fixing}: the vehicle lists no sound point that it could hold in`,
    remedy: 'move the fixing to a sound point; trim or carpet alone holds nothing',
    ...found,
    ...commonPractice,
  };
}

/** A hole that is drilled on into the vehicle: `reachM` is how far the drill or the fastener goes past the back plane. */
export interface ThroughHole extends Point {
  readonly id: string;
  readonly diameterM: number;
  readonly reachM: number;
}

/** How far a fixing sticks through the back plane: its length less board and standoff, metres. */
export function stickThroughM(fixing: Fixing, boardThicknessM: number, standoffM: number): Traced<number> {
  return computed(
    Math.max(0, fixing.lengthM - boardThicknessM - standoffM),
    'm',
    { rule: 'stick-through', formula: 'length - board - standoff', citation: 'plain arithmetic' },
    [
      input('length', fixing.lengthM, 'm'),
      input('board', boardThicknessM, 'm'),
      input('standoff', standoffM, 'm'),
    ],
  );
}

/** What lies behind one hole; `roomM` is what is left between the tip and it. */
export interface BehindHole {
  readonly hole: string;
  readonly behind: readonly { readonly id: string; readonly kind: Behind['kind']; readonly roomM: number }[];
  /** False where nothing was surveyed behind the hole: not the same as clear. */
  readonly surveyed: boolean;
}

const neverDrill: readonly Behind['kind'][] = ['tank', 'line', 'airbag'];

/**
 * What lies behind each hole, within `marginM` of its rim. A tank, a line or an airbag stops the job at any
 * distance behind; anything else where the tip reaches it; a place that nobody surveyed is a caution.
 */
export function behindHoles(
  holes: readonly ThroughHole[],
  behind: readonly Behind[],
  pose: Pose,
  marginM = 0.01,
): { readonly holes: readonly BehindHole[]; readonly faults: readonly BoardFault[] } {
  const found = holes.map((hole) => behindHole(hole, behind, pose, marginM));
  return { holes: found, faults: found.flatMap(behindFaults) };
}

function behindHole(hole: ThroughHole, behind: readonly Behind[], pose: Pose, marginM: number): BehindHole {
  const at = inSpace(hole, pose);
  const reach = hole.diameterM / 2 + marginM;
  const hit = behind
    .filter(({ outline }) => insideRing(at, outline) || pointToRing(at, outline) < reach)
    .map(({ id, kind, distanceM }) => ({ id, kind, roomM: distanceM - hole.reachM }));
  return { hole: hole.id, behind: hit, surveyed: hit.length > 0 };
}

function behindFaults({ hole, behind, surveyed }: BehindHole): BoardFault[] {
  const base = { value: 0, limit: 0, unit: 'm', ...commonPractice } as const;
  if (!surveyed)
    return [
      {
        rule: 'behind-hole-unknown',
        level: 'caution',
        of: [hole],
        message: `${hole}: nothing is written about what lies behind it`,
        remedy: 'look behind the panel before drilling, and write down what is there',
        ...commonPractice,
      },
    ];
  return behind.flatMap(({ id, kind, roomM }): BoardFault[] => {
    const never = neverDrill.includes(kind);
    if (kind === 'clear' ? roomM >= 0 : !never && roomM > 0) return [];
    return [
      {
        ...base,
        rule: 'behind-hole',
        level: 'stop',
        of: [hole, id],
        value: roomM,
        message: never
          ? `${hole}: a ${kind} (${id}) lies behind it, ${mmText(roomM)} from the tip`
          : `${hole}: the tip reaches ${mmText(-roomM)} too far, into ${id}`,
        remedy: never
          ? 'move the fixing; never drill in front of a tank, a line or an airbag'
          : 'use a shorter fastener or a depth stop',
      },
    ];
  });
}
