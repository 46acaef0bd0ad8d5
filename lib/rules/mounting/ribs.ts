import { flatten } from '../../board/shape/bulge.ts';
import { type RibRemark, ribFaults } from '../../board/strength/rib-check.ts';
import { openHoles, type RibLimits } from '../../board/strength/rib-limits.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { FindingId } from '../../model/findings/index.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import { pointer } from '../../model/place.ts';
import type { PlanBoard, PlanRib } from '../../model/plan/index.ts';
import { boardLengths, type InWords, inWords } from '../../plan/board/remark-words.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';

const ribPath = (board: PlanBoard, rib: PlanRib): string => pointer(['boards', board.id, 'ribs', rib.id]);

/** What the ribs of a planned board keep off. */
function groundOf(board: PlanBoard, rules: HouseRules): RibLimits {
  const [outer = [], ...openings] = [board.outline, ...board.cutouts].map((loop) => flatten(loop, 0.00002));
  const ribs = new Set(board.ribs.map(({ id }) => id));
  const holeOf = (id: string) => board.holes.find(({ of, purpose }) => of === id && purpose === 'fixing');
  return {
    region: [{ outer, openings }],
    fixings: board.fixings.map(({ id, xM, yM, spacerM }) => {
      return { id, xM, yM, spacerM, holeM: holeOf(id)?.diameterM ?? 0 };
    }),
    holes: openHoles(board.holes.filter(({ of }) => !ribs.has(of))),
    parts: board.placements.map(({ item, xM, yM, widthM, depthM, raisedM }) => {
      return { id: item, box: { minX: xM, minY: yM, maxX: xM + widthM, maxY: yM + depthM }, raisedM };
    }),
    obstacles: [],
    standoffM: Math.max(0, ...board.fixings.map(({ spacerM }) => spacerM)),
    thicknessM: board.thicknessM,
    depthM: board.spaceDepthM,
    clearanceM: rules['rib-clearance'].value,
    padM: rules['spacer-pad'].value,
  };
}

/** What one of the checks of where a rib runs found, rib by rib. */
function runVerdicts<Fault extends RibRemark>(
  { job, plan }: Case,
  isOwn: (fault: RibRemark) => fault is Fault,
): (Omit<InWords<Fault>, 'rule'> & Spot)[] {
  return plan.boards.flatMap((board) =>
    board.ribs.flatMap((rib) => {
      const where = { path: ribPath(board, rib) };
      const write = boardLengths(job, board.id, where);
      return ribFaults(rib, groundOf(board, job.rules), board.ribs)
        .filter(isOwn)
        .map((fault) => {
          const { rule: _, ...told } = inWords(fault, write);
          return { ...told, of: [...fault.of, board.id], ...where };
        });
    }),
  );
}

const offBoard: Rule = {
  id: 'rib-off-board',
  judge: (about) => runVerdicts(about, (fault) => fault.rule === 'rib-off-board'),
};

const inTheWay: Rule = {
  id: 'rib-in-the-way',
  judge: (about) => runVerdicts(about, (fault) => fault.rule === 'rib-in-the-way'),
};

const withoutRoom: Rule = {
  id: 'rib-without-room',
  judge: (about) => runVerdicts(about, (fault) => fault.rule === 'rib-without-room'),
};

/** What one rib lacks; each verdict under the rule that asks for it. */
function ribVerdicts<Id extends FindingId>(
  { plan }: Case,
  of: (board: PlanBoard, rib: PlanRib) => Omit<Verdict<Id>, 'of' | 'path'> | null,
): Verdict<Id>[] {
  return plan.boards.flatMap((board) =>
    board.ribs.flatMap((rib) => {
      const verdict = of(board, rib);
      return verdict ? [{ ...verdict, of: [rib.id, board.id], path: ribPath(board, rib) }] : [];
    }),
  );
}

const notMade: Rule = {
  id: 'rib-not-made',
  judge(about) {
    return ribVerdicts(about, (board, { id, strips, sheet, thicknessM, widthM, heightM }) => {
      if (strips > 0) return null;
      const length = lengthIn(
        about.job,
        { path: pointer(['boards', board.id, 'ribs', id]) },
        { path: pointer(['parts', sheet]), file: 'part' },
      );
      return {
        level: 'stop',
        message: `the rib ${id}, ${length(widthM)} wide and ${length(heightM)} high, is no whole layers of ${sheet}, ${length(thicknessM)} thick`,
        value: widthM,
        limit: thicknessM,
        unit: 'm',
        remedy:
          'leave width out for one strip on its edge, or make the height whole layers for strips that lie flat',
      };
    });
  },
};

const notFastened: Rule = {
  id: 'rib-not-fastened',
  judge(about) {
    return ribVerdicts(about, (board, rib) => {
      const lacks = lackOf(about.job, board, rib);
      return lacks && { level: 'caution', ...lacks };
    });
  },
};

function lackOf(
  job: Job,
  board: PlanBoard,
  rib: PlanRib,
): Pick<Verdict<'rib-not-fastened'>, 'message' | 'remedy'> | null {
  if (rib.screw === null)
    return {
      message: `no screw of the catalogue goes through ${board.id} and bites ${lengthIn(job)(job.rules['rib-screw-bite'].value)} in the rib ${rib.id} without coming out of it`,
      remedy: 'add a longer wood screw to the catalogue, make the rib higher, or fasten it by other means',
    };
  if (rib.joint !== 'glued') return null;
  if (board.material === 'polyethylene' || rib.material === 'polyethylene')
    return {
      message: `glue does not hold the rib ${rib.id} on ${board.id}: polyethylene takes none; it counts as screwed`,
      remedy: 'write joint: screwed',
    };
  if (rib.glue === null)
    return {
      message: `the rib ${rib.id} is glued, and the catalogue has no glue`,
      remedy: 'add a fixing of the form adhesive to the catalogue, or write joint: screwed',
    };
  return null;
}

export const ribRules: readonly Rule[] = [offBoard, inTheWay, withoutRoom, notMade, notFastened];
