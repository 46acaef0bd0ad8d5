import { type Traced, traced } from '../../model/trace.ts';
import type { JointPart } from '../../model/vocabulary.ts';

/** A board held by a bolt through it, over a spacer or none, in an insert of the vehicle. */
export interface FixingJoint {
  /** Nominal diameter of the thread, and of the hole in the board. */
  readonly threadM: number;
  readonly holeM: number;
  /** Across the face that the head or its washer bears on. */
  readonly headM: number;
  /** Height of the spacer, and across its end faces. */
  readonly spacerM: number;
  readonly spacerFaceM: number;
  /** What the bolt and the insert hold, N; null for an insert that takes as much as its bolt. */
  readonly boltN: number;
  readonly insertN: number | null;
  readonly sheet: JointSheet;
}

/** The sheet of a board as a joint bears on it. */
export interface JointSheet {
  readonly thicknessM: number;
  /** Stress at which it is crushed, below a washer or beside a shank, Pa. */
  readonly crushingPa: number;
  /** Stress at which a washer is punched through it, Pa. */
  readonly shearPa: number;
}

/** What a joint holds along and across its bolt, N, and what gives first. */
export interface JointStrength {
  readonly pullOutN: number;
  readonly pullBy: JointPart;
  readonly shearN: number;
  readonly shearBy: JointPart;
}

/** Area of the ring that a washer bears on, m2; 0 for one that passes through its hole. */
export function ringM2(outerM: number, holeM: number): number {
  return (Math.PI / 4) * Math.max(0, outerM ** 2 - holeM ** 2);
}

/**
 * What a joint holds: the least of bolt, insert and board. Pulled, the board gives where the washer crushes it (stress
 * times its ring; EN 1995-1-1, 8.5.2) or is punched through it (stress times the rim, pi D t); across, where the shank
 * crushes the side of its hole (stress times d t).
 */
export function jointStrength({ threadM, holeM, headM, boltN, insertN, sheet }: FixingJoint): JointStrength {
  const { thicknessM, crushingPa, shearPa } = sheet;
  const pulledN = Math.min(crushingPa * ringM2(headM, holeM), shearPa * Math.PI * headM * thicknessM);
  const acrossN = crushingPa * threadM * thicknessM;
  const [pullBy, pullOutN] = least(boltN, insertN, pulledN);
  const [shearBy, shearN] = least(boltN, insertN, acrossN);
  return { pullOutN, pullBy, shearN, shearBy };
}

function least(bolt: number, insert: number | null, board: number): readonly [JointPart, number] {
  const held: readonly (readonly [JointPart, number])[] = [
    ['bolt', bolt],
    ...(insert === null ? [] : [['insert', insert] as const]),
    ['board', board],
  ];
  return held.reduce((weakest, one) => (one[1] < weakest[1] ? one : weakest));
}

/** What a torque is held against. */
export interface TorqueLimits {
  /** Of the bolt or stud, and of the insert that it goes into, N m; null where that sets no limit. */
  readonly boltNm: number;
  readonly insertNm: number | null;
  /** Of the least face that bears on wood or plastic; left out where none does. */
  readonly face?: {
    readonly areaM2: number;
    /** Stress that the sheet bears for good, Pa. */
    readonly bearsPa: number;
    readonly threadM: number;
    /** Torque over preload and diameter. */
    readonly nutFactor: number;
  };
}

/**
 * Torque of a fixing, N m: the least of bolt, insert and what the material bears below its washer, T = K F d with the
 * preload F = bearing stress x area (textbooks of machine design, torque of a bolt).
 */
export function jointTorque(limits: TorqueLimits): {
  readonly torqueNm: Traced<number>;
  readonly by: JointPart;
} {
  const { boltNm, insertNm, face } = limits;
  const faceNm = face && face.nutFactor * face.bearsPa * face.areaM2 * face.threadM;
  const [by, value] = least(boltNm, insertNm, faceNm ?? Number.POSITIVE_INFINITY);
  const torqueNm = traced(value, 'N m', {
    rule: 'fixing-torque',
    formula: `least of bolt${insertNm === null ? '' : ', insert'}${face ? ', K s A d below the washer' : ''}`,
    citation: 'T = K F d, textbooks of machine design; limits: common practice, no source',
    mark: 'cp',
    inputs: [
      ['bolt', boltNm, 'N m'],
      ...(insertNm === null ? [] : [['insert', insertNm, 'N m'] as const]),
      ...(face
        ? [
            ['K', face.nutFactor, ''] as const,
            ['s', face.bearsPa, 'Pa'] as const,
            ['A', face.areaM2, 'm2'] as const,
            ['d', face.threadM, 'm'] as const,
          ]
        : []),
    ],
  });
  return { torqueNm, by };
}
