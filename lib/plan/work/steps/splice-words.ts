import type { PlanJoint, PlanWire } from '../../../model/plan/index.ts';
import { lengthText, type Work } from '../work.ts';

/** The joints of some wires, as the step tells in which their ends are made; empty where they have none. */
export function jointsText(work: Work, wires: readonly PlanWire[]): string {
  const joints = jointsOf(work, wires);
  if (joints.length === 0) return '';
  return `; first join ${joints.map((joint) => jointText(work, joint)).join(', ')}; sleeve closed over the insulation, both labelled`;
}

/** What is done with them. */
export function jointActs(work: Work, wires: readonly PlanWire[]): readonly string[] {
  return jointsOf(work, wires).map(({ id }) => `join:${id}`);
}

function jointsOf({ plan: { joints = [] } }: Work, wires: readonly PlanWire[]): readonly PlanJoint[] {
  return joints.filter(({ id }) => wires.some((wire) => wire.id === id));
}

function jointText(work: Work, { label, trunkLabel, terminal, distanceM, part }: PlanJoint): string {
  return `${label} to ${trunkLabel} ${lengthText(work, 'measured', distanceM)} before ${terminal} by ${part ?? 'a splice that takes both'}`;
}
