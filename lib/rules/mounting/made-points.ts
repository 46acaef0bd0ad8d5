import type { Vehicle } from '../../model/content/vehicle.ts';
import { groundBolts } from '../../plan/wiring/ground-bolts.ts';
import { groundSpot, spaceSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';

/** A point that nothing makes. */
interface Unmade extends Pick<Vehicle['grounds'][string], 'stud' | 'insert'> {
  readonly of: readonly string[];
  /** What it is called: `p1 of well`. */
  readonly called: string;
  readonly freeM: number | null;
  readonly where: Spot;
}

/** A sound point or a ground point that is not there yet, and that nothing of the catalogue makes. */
const pointNotMade: Rule = {
  id: 'point-not-made',
  judge(about) {
    return [...unmadeSoundPoints(about), ...unmadeGrounds(about)].map(
      ({ of, called, stud, insert, freeM, where }): Verdict<'point-not-made'> => {
        const length = lengthIn(about.job, where);
        const room = freeM === null ? '' : `, its length: at most ${length(freeM)}`;
        return {
          level: 'stop',
          of,
          message: `${called} is not there yet and takes ${stud}, and ${insert === 'rivet-nut' ? 'no rivet nut of the catalogue makes it' : 'what is welded or bolted through is not planned'}`,
          value: stud,
          remedy: `${insert === 'rivet-nut' ? '' : 'write insert: rivet-nut and '}add a rivet nut ${stud} to the catalogue, with its hole under pilot:${room}; where something takes the bolt already, take there: false out`,
          ...where,
        };
      },
    );
  },
};

function unmadeSoundPoints({ job, plan }: Case): readonly Unmade[] {
  return plan.boards.flatMap((planned): Unmade[] => {
    const board = job.boards.find(({ id }) => id === planned.id);
    if (!board) return [];
    return planned.fixings.flatMap(({ point, made }) => {
      const spot = board.space['sound-points'][point];
      if (!spot || !made || made.part !== null) return [];
      const { stud, insert } = spot;
      const where = spaceSpot(board, 'sound-points', point, 'there');
      const called = `${point} of ${board.spaceId}`;
      return [{ of: [point, board.id], called, stud, insert, freeM: made.freeM, where }];
    });
  });
}

/** Ground points that a wire of the job ends at. */
function unmadeGrounds({ job }: Case): readonly Unmade[] {
  return groundBolts(job).flatMap(({ point, made }): Unmade[] => {
    const spot = job.vehicle.grounds[point];
    if (!spot || made === null || made.part !== null) return [];
    const { stud, insert } = spot;
    const where = groundSpot(point, 'there');
    return [{ of: [point], called: `the ground point ${point}`, stud, insert, freeM: made.freeM, where }];
  });
}

export const madePointRules: readonly Rule[] = [pointNotMade];
