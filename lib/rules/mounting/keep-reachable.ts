import { flatten } from '../../board/shape/bulge.ts';
import { flattenM } from '../../board/shape/flatten.ts';
import type { Ring } from '../../board/shape/point.ts';
import { difference, intersection, type Region, regionArea, regionOf } from '../../board/shape/region.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { boxRing } from '../../propose/laying/mounting-space.ts';
import { deviceSpot, spaceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn, listed, percent } from '../words.ts';
import { bodyInSpace, faceM } from './reach-in-space.ts';

type Area = Board['space']['keep-reachable'][string];

/** Something of a board that stands before the plane of its space: what it covers, and how high it stands. */
interface Cover {
  readonly id: string;
  readonly region: Region;
  readonly heightM: number;
}

/** The sheet with its windows and access holes open, then each part on it; in the axes of the space. */
function coversOf(board: PlanBoard): readonly Cover[] {
  const { xM: dx, yM: dy } = board.datumInSpace;
  const moved = (ring: Ring): Ring => ring.map(({ xM, yM }) => ({ xM: xM + dx, yM: yM + dy }));
  const round = ({ xM, yM, diameterM }: PlanBoard['holes'][number]): Ring =>
    flatten(
      [
        { xM: xM - diameterM / 2, yM, bulge: 1 },
        { xM: xM + diameterM / 2, yM, bulge: 1 },
      ],
      flattenM,
    );
  const open = [
    ...board.cutouts.map((loop) => flatten(loop, flattenM)),
    ...board.holes.filter(({ purpose, diameterM }) => purpose === 'access' && diameterM > 0).map(round),
  ].map((ring) => regionOf(moved(ring)));
  const outer = regionOf(moved(flatten(board.outline, flattenM)));
  const sheet: Cover = {
    id: board.id,
    region: open.length > 0 ? difference(outer, ...open) : outer,
    heightM: faceM(board) - board.thicknessM,
  };
  const parts = board.placements.map((at): Cover => {
    const { minX, minY, maxX, maxY, minZ } = bodyInSpace(board, at);
    return { id: at.item, region: regionOf(boxRing(minX, minY, maxX - minX, maxY - minY)), heightM: minZ };
  });
  return [sheet, ...parts];
}

/** What covers an area, the sheet first, and the share of the area that all of it takes. */
function covering(covers: readonly Cover[], { x, y, width, height, before }: Area) {
  const area = regionOf(boxRing(x, y, width, height));
  const over = covers
    .filter(({ heightM }) => heightM < before - 1e-9)
    .map((cover) => ({ ...cover, shared: intersection(area, cover.region) }))
    .filter(({ shared }) => regionArea(shared) > 1e-6);
  const free = over.length > 0 ? difference(area, ...over.map(({ region }) => region)) : area;
  return { over, share: 1 - regionArea(free) / regionArea(area) };
}

const areaCovered: Rule = {
  id: 'area-covered',
  judge(about) {
    return [...onBoards(about), ...inPlaces(about.job)];
  },
};

/** What a place lies over, once something of the job stands there. */
function inPlaces(job: Job): Verdict<'area-covered'>[] {
  const { vehicle, devices } = job;
  return Object.entries(vehicle.places).flatMap(([place, { 'lies-over': below }]) => {
    const here = devices.filter(({ origin, seat }) => origin === 'job' && seat === place);
    const [first] = here;
    if (!first) return [];
    const names = here.map(({ id }) => id);
    return Object.entries(below).map(([id, { must }]): Verdict<'area-covered'> => {
      return {
        level: must ? 'stop' : 'caution',
        of: [id, ...names, place],
        message: `${listed(names)} stand${names.length === 1 ? 's' : ''} in ${place}, which lies over ${id}: it ${must ? 'must' : 'should'} stay reachable`,
        remedy: `use another place, or one that leaves ${id} free`,
        ...deviceSpot(job, first.id, 'in'),
      };
    });
  });
}

function onBoards({ job, plan }: Case): Verdict<'area-covered'>[] {
  return job.boards.flatMap((board) => {
    const planned = plan.boards.find(({ id }) => id === board.id);
    const covers = planned ? coversOf(planned) : [];
    return Object.entries(board.space['keep-reachable']).flatMap(([id, area]): Verdict<'area-covered'>[] => {
      const { over, share } = covering(covers, area);
      const [first] = over;
      if (!first) return [];
      const isSheet = first.id === board.id;
      const length = lengthIn(job, spaceSpot(board, 'keep-reachable', id));
      const lowM = Math.min(...over.map(({ heightM }) => heightM));
      return [
        {
          level: area.must ? 'stop' : 'caution',
          of: [id, ...over.map((cover) => cover.id), board.id],
          message: `${listed(over.map((cover) => cover.id))} cover${over.length === 1 ? 's' : ''} ${percent(share)} of ${id} in ${board.spaceId}, which ${area.must ? 'must' : 'should'} stay reachable; ${length(area.before)} are needed before it, and ${length(lowM)} are left`,
          value: lowM,
          limit: area.before,
          unit: 'm',
          remedy: isSheet
            ? 'move the board, or cut a window or a notch over it'
            : `move ${listed(over.map((cover) => cover.id))} off it`,
          givesWayTo: ['no-place-for-board'],
          ...(isSheet ? { path: board.path } : deviceSpot(job, first.id, 'at')),
        },
      ];
    });
  });
}

export const keepReachableRules: readonly Rule[] = [areaCovered];
