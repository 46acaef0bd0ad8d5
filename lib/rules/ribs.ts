import { flatten } from '../board/bulge.ts';
import { ribFaults } from '../board/rib-check.ts';
import { openHoles, type RibGround } from '../board/rib-ground.ts';
import { pointer } from '../model/place.ts';
import type { PlanBoard, PlanRib } from '../model/plan/index.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { commonPractice, type Source } from './source.ts';
import { lengthIn } from './words.ts';

const ribPath = (board: PlanBoard, rib: PlanRib): string => pointer(['boards', board.id, 'ribs', rib.id]);
const ownGeometry: Source = { source: 'geometry of the board as written' };

/** What the ribs of a planned board keep off. */
function groundOf(board: PlanBoard): RibGround {
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
  };
}

/** One of the checks of where a rib runs, as a rule. */
function runRule(id: string, asks: string, levels: Rule['levels'], from: Source): Rule {
  return {
    id,
    asks,
    levels,
    ...from,
    judge: ({ plan }) =>
      plan.boards.flatMap((board) =>
        board.ribs.flatMap((rib) =>
          ribFaults(rib, groundOf(board), board.ribs)
            .filter(({ rule }) => rule === id)
            .map(({ rule: _, ...fault }): Verdict => {
              return { ...fault, of: [...fault.of, board.id], path: ribPath(board, rib) };
            }),
        ),
      ),
  };
}

const offBoard = runRule(
  'rib-off-board',
  'A rib lies on the board along its whole length, and over no cut-out.',
  ['stop'],
  ownGeometry,
);
const inTheWay = runRule(
  'rib-in-the-way',
  'A rib keeps off fixings and their spacers, open holes, parts on its face and other ribs.',
  ['stop', 'caution'],
  commonPractice,
);
const withoutRoom = runRule(
  'rib-without-room',
  'Between a rib and the panel behind, or the front of the space, are 6 mm.',
  ['stop', 'caution'],
  commonPractice,
);

/** What one rib lacks; each verdict under the rule that asks for it. */
function ribVerdicts(
  { plan }: Case,
  of: (board: PlanBoard, rib: PlanRib) => Omit<Verdict, 'of' | 'path'> | null,
): Verdict[] {
  return plan.boards.flatMap((board) =>
    board.ribs.flatMap((rib) => {
      const verdict = of(board, rib);
      return verdict ? [{ ...verdict, of: [rib.id, board.id], path: ribPath(board, rib) }] : [];
    }),
  );
}

const notMade: Rule = {
  id: 'rib-not-made',
  asks: 'The section of a rib is whole layers of its sheet, on edge or flat.',
  levels: ['stop'],
  ...ownGeometry,
  judge(about) {
    const length = lengthIn(about.job);
    return ribVerdicts(about, (_, { id, strips, sheet, thicknessM, widthM, heightM }) => {
      if (strips > 0) return null;
      return {
        level: 'stop',
        message: `the rib ${id}, ${length(widthM)} wide and ${length(heightM)} high, is no whole layers of ${sheet}, ${length(thicknessM)} thick`,
        value: widthM,
        limit: thicknessM,
        unit: 'm',
        remedy:
          'leave width out for one strip on its edge, or make the height whole layers for strips that lie flat',
        ...ownGeometry,
      };
    });
  },
};

const notFastened: Rule = {
  id: 'rib-not-fastened',
  asks: 'A rib has screws that bite 12 mm and stay inside it, and glue where it is glued.',
  levels: ['caution'],
  ...commonPractice,
  judge(about) {
    return ribVerdicts(about, (board, rib) => {
      const lacks = lackOf(board, rib);
      return lacks && { level: 'caution', ...lacks, ...commonPractice };
    });
  },
};

function lackOf(board: PlanBoard, rib: PlanRib): Pick<Verdict, 'message' | 'remedy'> | null {
  if (rib.screw === null)
    return {
      message: `no screw of the catalogue goes through ${board.id} and bites 12 mm in the rib ${rib.id} without coming out of it`,
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
