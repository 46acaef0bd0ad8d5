import type { BuildPlan, PlanWire } from '../../model/plan/index.ts';
import { terminalWords } from '../../model/plan/shown-names.ts';

/** One label of one end of a wire: every end gets two, one to wrap on each side of the joint or as a spare. */
export interface WireLabel {
  readonly wire: string;
  readonly label: string;
  readonly end: 'A' | 'B';
  readonly copy: 1 | 2;
  /** Terminal where this end goes, and the one at the far end. */
  readonly here: string;
  readonly there: string;
  readonly size: string;
  readonly colour: string;
  readonly role: PlanWire['role'];
}

/** The labels of all wires that are laid, end A then end B of each, two of each. What the vehicle came with has none. */
export function labelRows(plan: Pick<BuildPlan, 'wires' | 'items'>): WireLabel[] {
  const terminal = terminalWords(plan);
  return plan.wires
    .filter(({ origin }) => origin === 'job')
    .flatMap((wire) => {
      const { id, label, ends, size, colour, role } = wire;
      const [a, b] = ends;
      const shared = { wire: id, label: label || id, size: size.label, colour: colour ?? '', role };
      return [
        { ...shared, end: 'A', here: terminal(a.terminal), there: terminal(b.terminal) } as const,
        { ...shared, end: 'B', here: terminal(b.terminal), there: terminal(a.terminal) } as const,
      ];
    })
    .flatMap((one) => [
      { ...one, copy: 1 },
      { ...one, copy: 2 },
    ]);
}
