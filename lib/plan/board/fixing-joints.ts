import type { SpacerStack } from '../../board/layout/raising/spacer-stack.ts';
import {
  type FixingJoint,
  type JointSheet,
  jointStrength,
  jointTorque,
  ringM2,
} from '../../board/strength/fixing-joint.ts';
import type { RatedFixing } from '../../board/strength/retention.ts';
import { threadM } from '../../board/strength/screw-thread.ts';
import type { Board, Job, SheetPart } from '../../model/content/resolved-job.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import { standardGravity } from '../../model/quantity/gravity.ts';
import type { Traced } from '../../model/trace.ts';
import type { JointPart, Stud } from '../../model/vocabulary.ts';
import { insertTorque, studTorque } from '../bolt-torque.ts';
import type { BoardFixing } from './board-shape.ts';

/** A fixing of a board as a joint: what it holds, and what it is tightened to. */
export interface PlannedJoint {
  readonly id: string;
  /** Null where what its bolt or its insert holds is not known. */
  readonly rated: RatedFixing | null;
  /** Null for a screw in wood, over a bush of rubber, and where nothing tells what its bolt or its insert takes. */
  readonly tight: { readonly torqueNm: Traced<number>; readonly by: JointPart } | null;
}

/** The joints of a board's fixings over their stacks of spacers. */
export function fixingJoints(
  job: Job,
  board: Board,
  fixings: readonly BoardFixing[],
  stacks: ReadonlyMap<string, SpacerStack>,
): PlannedJoint[] {
  return fixings.map((fixing): PlannedJoint => {
    const { id, xM, yM, part, spacerM } = fixing;
    const point = board.space['sound-points'][fixing.point];
    const thread = (part.thread && threadM(part.thread)) || (part.clearance ?? 0) / 1.1;
    if (!point || thread === 0) return { id, rated: null, tight: null };
    const joint = {
      ...{ threadM: thread, holeM: part.clearance ?? thread, spacerM },
      headM: part['bears-on'] ?? 2 * thread,
      spacerFaceM: spacerFaceM(job, stacks.get(id), thread),
      sheet: jointSheet(board.sheet, job.rules),
    };
    const boltN = (part.holds ?? 0) * standardGravity;
    const insertN = point.insert === 'welded' ? null : insertHoldsN(job.rules, point.stud);
    const known = boltN > 0 && insertN !== undefined;
    const strength = known ? jointStrength({ ...joint, boltN, insertN }) : null;
    const spacer = spacerM > 0 ? { spacer: { heightM: spacerM, faceM: joint.spacerFaceM } } : {};
    return {
      id,
      rated: strength ? { id, xM, yM, ...strength, ...spacer } : null,
      // Rubber gives way below a torque: the joint has no preload to reckon with.
      tight: onRubber(job.parts, stacks.get(id)) ? null : tightened(job, board, fixing, point, joint),
    };
  });
}

/** True for a stack with a bush of rubber in it. */
function onRubber(parts: Job['parts'], stack: SpacerStack | undefined): boolean {
  return (stack?.parts ?? []).some(({ part }) => {
    const spec = parts[part];
    return spec?.kind === 'fixing' && spec.form === 'rubber-bush';
  });
}

/** Load that a rivet nut holds, N; a larger one counts as M8, of a smaller one it is not known. */
function insertHoldsN(rules: HouseRules, stud: Stud): number | undefined {
  if (stud === 'M4' || stud === 'M5') return undefined;
  return rules[stud === 'M6' ? 'rivet-nut-holds-m6' : 'rivet-nut-holds-m8'].value * standardGravity;
}

/** Across the narrowest end face in a stack: of its parts as they tell, else twice the thread; of layers of sheet, their pad. */
function spacerFaceM(
  { parts, rules }: Pick<Job, 'parts' | 'rules'>,
  stack: SpacerStack | undefined,
  thread: number,
): number {
  if (!stack) return 2 * thread;
  const faces = stack.parts.map(({ part }) => {
    const spec = parts[part];
    return (spec?.kind === 'fixing' ? spec['bears-on'] : undefined) ?? 2 * thread;
  });
  return Math.min(rules['spacer-pad'].value, ...faces);
}

type SheetClass = 'wood' | 'plastic' | 'metal';

function classOf({ material }: SheetPart): SheetClass {
  if (material === 'birch-plywood' || material === 'fibreboard') return 'wood';
  return material === 'aluminium' ? 'metal' : 'plastic';
}

/** A sheet as its fixings bear on it; where its part is silent, by the house rules of its class. */
function jointSheet(part: SheetPart, rules: HouseRules): JointSheet {
  const kind = classOf(part);
  return {
    thicknessM: part.thickness,
    crushingPa: part.crushing ?? rules[`crushing-${kind}`].value,
    shearPa: part['shear-strength'] ?? rules[`shear-${kind}`].value,
  };
}

/** Stress that a sheet bears for good, Pa: of plastic no more than creep leaves of its stiffness. */
function lastingPa(part: SheetPart, crushingPa: number, rules: HouseRules): number {
  const left = (part['long-term-modulus'] ?? part.modulus) / part.modulus;
  const share = rules['bearing-lasting'].value;
  return crushingPa * (classOf(part) === 'plastic' ? Math.min(share, left) : share);
}

function tightened(
  { rules }: Pick<Job, 'rules'>,
  { sheet: part }: Board,
  { part: bolt }: BoardFixing,
  { stud, insert }: Board['space']['sound-points'][string],
  { threadM: d, holeM, headM, spacerM, spacerFaceM: faceM, sheet }: Omit<FixingJoint, 'boltN' | 'insertN'>,
): PlannedJoint['tight'] {
  const boltNm = bolt.torque ?? studTorque(rules, bolt.thread ?? '');
  const insertNm = insert === 'welded' ? null : insertTorque(rules, stud);
  if (bolt.form === 'wood-screw' || boltNm === null || insertNm === undefined) return null;
  if (classOf(part) === 'metal') return jointTorque({ boltNm, insertNm });
  const rings = [headM, ...(spacerM > 0 ? [faceM] : [])].map((outerM) => ringM2(outerM, holeM));
  const face = {
    areaM2: Math.min(...rings),
    bearsPa: lastingPa(part, sheet.crushingPa, rules),
    ...{ threadM: d, nutFactor: rules['nut-factor'].value },
  };
  return jointTorque({ boltNm, insertNm, face });
}
