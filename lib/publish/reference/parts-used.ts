import type { BuildPlan } from '../../model/plan/index.ts';

/** Ids of the catalogue parts that a plan uses in any way. */
export function partsOf(plan: BuildPlan): ReadonlySet<string> {
  const used = [
    ...plan.items.map((item) => item.part),
    ...[...plan.pick, ...(plan.pickBeyond?.inPlace ?? [])].map(({ part }) => part),
    ...plan.boards.map((board) => board.sheet),
    ...plan.wires.map((wire) => wire.part),
    ...plan.cables.map((cable) => cable.part),
    ...plan.power.fuses.map((fuse) => fuse.part),
  ];
  return new Set(used.filter((part) => part !== null));
}
