import { bodyId, linkEndOf } from '../../../model/content/resolved-job.ts';
import type { PlanWire } from '../../../model/plan/index.ts';
import { printed } from '../../../model/printed/index.ts';
import type { Work } from '../work.ts';

/** What the fixings of a board are tightened to, those of one torque together: `; f1 and f2 to 2.6 N m`. */
export function torquesText({ plan }: Work, board: string): string {
  const fixings = plan.boards.find(({ id }) => id === board)?.fixings ?? [];
  return byTorque(
    fixings.flatMap(({ id, torqueNm }) => (torqueNm === null ? [] : [[id, torqueNm] as const])),
  );
}

/** The same of the ground points of some wires. */
export function groundTorques(wires: readonly PlanWire[]): string {
  const ends = wires
    .flatMap(({ ends: both }) => both)
    .filter(({ terminal }) => linkEndOf(terminal).device === bodyId);
  const named = ends.flatMap(({ terminal, torqueNm }) =>
    torqueNm === undefined ? [] : [[linkEndOf(terminal).terminal, torqueNm] as const],
  );
  return byTorque(named);
}

function byTorque(named: readonly (readonly [string, number])[]): string {
  const told = new Map<string, string[]>();
  for (const [name, torqueNm] of named) {
    const text = printed('torque', torqueNm);
    const names = told.get(text) ?? [];
    told.set(text, names.includes(name) ? names : [...names, name]);
  }
  return [...told].map(([text, names]) => `; ${names.join(', ')} to ${text}`).join('');
}
