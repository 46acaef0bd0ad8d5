import type { PlanBoard } from '../../../model/plan/index.ts';
import { printedBit } from '../../../model/printed/holes.ts';
import { minutesFor, type Step, step, type Work } from '../work.ts';

type ToMake = Pick<PlanBoard['fixings'][number], 'point' | 'made'>;

/** Points that are not there yet, by what they are made with: `drill 9 mm and set rivet-nut-m6 at a and b`. */
function madeText({ tape }: Work, fixings: readonly ToMake[]): string {
  const sets = new Map<string, string[]>();
  for (const { point, made } of fixings) {
    if (!made) continue;
    const how =
      made.part === null || made.holeM === null
        ? 'with a part that is still to be chosen, make'
        : `drill ${printedBit(made.holeM, 'clearance', tape.system)} and set ${made.part} at`;
    sets.set(how, [...(sets.get(how) ?? []), point]);
  }
  return [...sets].map(([how, points]) => `${how} ${points.join(', ')}`).join('; ');
}

const lookFirst =
  'First look and feel behind each: no tank, no line, no airbag, no wiring. Drill with a stop on the bit, take the burr off';
const drilling = ['drill', 'depth stop', 'rivet nut setter', 'eye protection'];
const batteryOff = [{ step: 'battery-off', why: 'nothing is drilled into a vehicle with the battery on' }];

/** Points that a job makes are drilled with the battery off, and before the board hides them. */
export function pointSteps(work: Work): Step[] {
  return work.plan.boards.flatMap((board): Step[] => {
    const made = board.fixings.filter((fixing) => fixing.made);
    if (made.length === 0) return [];
    return [
      step(`points-${board.id}`, batteryOff, {
        layer: 'board',
        place: 'vehicle',
        by: 'vehicle',
        text: `Make the points of ${board.id} that are not there yet, at the places of the table "Points to make in ${board.space}": ${madeText(work, made)}. ${lookFirst}, paint the bare edge, and set a nut in sealer where the far side of its panel is open to the weather`,
        tools: [...drilling, 'touch-up paint', 'sealer'],
        minutes: minutesFor(work, 'drill-hole', made.length),
        acts: [`points:${board.id}`],
        proof:
          'Each thread takes its bolt by hand; no nut turns in its hole; the board, laid on, meets every point',
      }),
    ];
  });
}

/** Ground points that a job makes are drilled with the battery off, and before anything is grounded. */
export function groundPointSteps(work: Work): Step[] {
  const made = work.groundBolts.filter((bolt) => bolt.made !== null);
  if (made.length === 0) return [];
  const toMake = made.map((bolt) => ({ point: bolt.point, ...(bolt.made && { made: bolt.made }) }));
  return [
    step('ground-points', batteryOff, {
      layer: 'ground',
      place: 'vehicle',
      by: 'vehicle',
      text: `Make the ground points that are not there yet: ${madeText(work, toMake)}. ${lookFirst}; the metal stays bare under the lug`,
      tools: drilling,
      minutes: minutesFor(work, 'drill-hole', made.length),
      acts: made.map(({ point }) => `ground-point:${point}`),
      proof: 'Each thread takes its bolt by hand; no nut turns in its hole',
    }),
  ];
}
