import { bodyId, linkEndOf } from '../../../model/content/resolved-job.ts';
import type { PlanWire } from '../../../model/plan/index.ts';
import { printed } from '../../../model/printed/index.ts';
import type { GroundBolt } from '../../wiring/ground-bolts.ts';
import type { Work } from '../work.ts';

/** What the fixings of a board are tightened to, those of one torque together: `; f1 and f2 to 2.6 N m`. */
export function torquesText({ plan }: Work, board: string): string {
  const fixings = plan.boards.find(({ id }) => id === board)?.fixings ?? [];
  return byTorque(
    fixings.flatMap(({ id, torqueNm }) => (torqueNm === null ? [] : [[id, torqueNm] as const])),
  );
}

/**
 * What the ground points of some wires are bolted down with, and to what torque, those alike together:
 * `; rear with bolt-m8-25 and washer-m8-serrated, to 25 N m`.
 */
export function groundTorques(
  { groundBolts }: Pick<Work, 'groundBolts'>,
  wires: readonly PlanWire[],
): string {
  const ends = wires
    .flatMap(({ ends: both }) => both)
    .filter(({ terminal }) => linkEndOf(terminal).device === bodyId);
  const named = ends.flatMap(({ terminal, torqueNm }) =>
    torqueNm === undefined ? [] : [[linkEndOf(terminal).terminal, torqueNm] as const],
  );
  const points = new Set(ends.map(({ terminal }) => linkEndOf(terminal).terminal));
  const used = groundBolts.filter(({ point }) => points.has(point));
  const fastened = [...new Set(used.map(fastenedWith))].map((text) => {
    const alike = used.filter((bolt) => fastenedWith(bolt) === text).map(({ point }) => point);
    return `; ${alike.join(', ')} with ${text}`;
  });
  return `${fastened.join('')}${byTorque(named)}`;
}

/** Bolt or nut, and washer, of a ground point; what the catalogue lacks is on the order list. */
function fastenedWith({ by, own, stud, bolt, nut, washer }: GroundBolt): string {
  const aBolt = bolt ?? `a bolt ${stud} that is to be ordered`;
  const aNut = nut ?? `a nut ${stud} that is to be ordered`;
  const fetched = {
    bolt: aBolt,
    nut: `${aNut} over the stud`,
    'bolt-and-nut': `${aBolt}, ${aNut} behind the panel`,
  };
  const ownOne = by === 'nut' ? "the vehicle's own nut" : "the vehicle's own bolt";
  return `${own ? ownOne : fetched[by]} and ${washer ?? `a serrated washer ${stud} that is to be ordered`}`;
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
