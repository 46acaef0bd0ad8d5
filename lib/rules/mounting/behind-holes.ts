import type { Run } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { PlanRun } from '../../model/plan/index.ts';
import { groundBolts } from '../../plan/wiring/ground-bolts.ts';
import { countsHole, hasGrommet, isToDrill } from '../../plan/wiring/runs/way-holes.ts';
import { plannedRuns } from '../conductors/planned-runs.ts';
import { groundSpot, spaceSpot, stretchSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';
import { type BoardFixing, fixingsOf } from './board-fixings.ts';

const hazards: Readonly<Record<string, string>> = {
  tank: 'a tank',
  line: 'a fuel or brake line',
  airbag: 'an airbag',
};
const doubts: Readonly<Record<string, string>> = {
  wiring: 'wiring',
  unknown: 'something nobody has looked at',
};

/** A place that is drilled, with what lies behind it. */
interface Drilled extends Spot {
  readonly of: readonly string[];
  readonly behind: string;
}

/** Every drilled place: holes of the plan that go into the vehicle, the sound points that the fixings use, ground points that are made. */
function drilled({ job, plan }: Case): readonly Drilled[] {
  const holes = plan.boards.flatMap(({ id, holes: list }) =>
    list.flatMap((hole) =>
      hole.behind === null
        ? []
        : [{ of: [hole.of, `${id} hole ${hole.n}`, id], behind: hole.behind, path: pointer(['boards', id]) }],
    ),
  );
  const points = job.boards.flatMap(({ id, given, space }) =>
    Object.entries(given.fixings).flatMap(([name, { point }]) => {
      const behind = space['sound-points'][point]?.behind;
      if (behind === undefined) return [];
      return [{ of: [name, point, id], behind, path: pointer(['boards', id, 'fixings', name]) }];
    }),
  );
  const grounds = groundBolts(job).flatMap(({ point, made }) =>
    made === null ? [] : [{ of: [point], behind: made.behind, ...groundSpot(point) }],
  );
  const ways = plannedRuns({ job, plan }).flatMap(({ run, planned }) =>
    run.route.passes.flatMap((pass, at) => {
      if (!isToDrill(pass) || !countsHole(job.runs, run.id, besideAt(run, planned, at))) return [];
      return [
        {
          of: [`${run.id} at the ${pass.zone}`, run.id],
          behind: pass.behind,
          ...stretchSpot(run, at),
        },
      ];
    }),
  );
  return [
    ...points,
    ...grounds,
    ...ways,
    ...holes.filter(({ of }) => !points.some((point) => point.of[0] === of[0] && point.of[2] === of[2])),
  ];
}

/** The other runs through the hole in which a stretch begins: edges stand in the order of the stretches. */
function besideAt(run: Run, { grommets }: PlanRun, at: number): { readonly beside?: readonly string[] } {
  const before = run.route.passes.slice(0, at).filter(hasGrommet).length;
  return grommets[before] ?? {};
}

const behindHole: Rule = {
  id: 'hole-before-hazard',
  judge(about) {
    return drilled(about).flatMap(({ of, behind, ...where }): Verdict<'hole-before-hazard'>[] => {
      const hazard = hazards[behind];
      const what = hazard ?? doubts[behind];
      if (what === undefined) return [];
      return [
        {
          level: hazard === undefined ? 'caution' : 'stop',
          of,
          message: `behind the hole for ${of[0] ?? 'a fixing'} lies ${what}`,
          value: behind,
          remedy:
            hazard === undefined
              ? 'look behind the panel and write what is there before anything is drilled; drill with a stop on the bit'
              : 'use another fixing point, or another way for the wires',
          ...where,
        },
      ];
    });
  },
};

/** How far a fixing stands out behind the panel (m): its length less board and spacer; null where it has no length. */
function sticksThroughM({ plan }: Case, { board, part, spacerM }: BoardFixing): number | null {
  if (part.length === undefined) return null;
  const thicknessM = plan.boards.find(({ id }) => id === board.id)?.thicknessM ?? board.sheet.thickness;
  return part.length - thicknessM - spacerM;
}

const stickThrough: Rule = {
  id: 'fixing-too-long',
  judge(about) {
    return fixingsOf(about).flatMap((fixing): Verdict<'fixing-too-long'>[] => {
      const { board, id, point, spot, path } = fixing;
      const limit = spot['free-depth'];
      const value = sticksThroughM(about, fixing);
      if (limit === undefined || value === null || value <= limit + 1e-9) return [];
      const length = lengthIn(about.job, spaceSpot(board, 'sound-points', point));
      return [
        {
          level: 'stop',
          of: [id, point, board.id],
          message: `the fixing ${id} of ${board.id} reaches ${length(value)} past board and spacer, and ${length(limit)} are free behind ${point}${spot.behind === 'nothing' ? '' : ` (${spot.behind})`}`,
          value,
          limit,
          unit: 'm',
          remedy: 'use a shorter fixing or a higher spacer',
          path,
        },
      ];
    });
  },
};

export const behindHoleRules: readonly Rule[] = [behindHole, stickThrough];
