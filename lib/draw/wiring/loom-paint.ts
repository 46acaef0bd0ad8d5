import type { PlanBoard } from '../../model/plan/index.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import { directionOf, distanceMm } from '../bent-line.ts';
import { drawBase, drawItemOutline, isWhole, itemsOf } from '../board/board-base.ts';
import { clippedLine, pointIn } from '../board/clip.ts';
import { exitMargins } from '../board/exits.ts';
import { bodiesOf, letterOutside } from '../board/item-lettering.ts';
import type { ItemOnBoard } from '../board/item-on-board.ts';
import { letterMiddle } from '../board/item-title.ts';
import { placeDirectionArrows } from '../board/place-arrows.ts';
import type { BoardScene, Margins } from '../board/scaled-sheet.ts';
import { drawConductor } from '../conductor-line.ts';
import { anchorAt } from '../lettering/label-candidates.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { lines, types } from '../line-styles.ts';
import { at, grown, type PaperPoint } from '../paper.ts';
import { drawArrowHead, drawLine, type Parent } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { drawRoleStrip, roleStripHeightMm, type StripEntry } from '../role-strip.ts';
import { onPaper, type ScaleRatio } from '../sheet/scale.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import { type LoomStretch, type LoomWay, loomsOf } from './looms.ts';
import { isOnLayer, wiringLayers } from './wiring-layers.ts';

/** One line of the overview for each layer, in the line of its leading role. */
const layerEntries = wiringLayers.flatMap(({ name, roles: [role] }): StripEntry[] =>
  role ? [{ role, name: `${name.charAt(0).toUpperCase()}${name.slice(1)}` }] : [],
);

/** Room round a board for the key of the overview and the surroundings. */
export function loomMargins(metrics: TextMetrics, board: PlanBoard, ratio: ScaleRatio): Margins {
  const own = exitMargins({ metrics }, board, [], ratio, types.terminal);
  return { ...own, top: own.top + roleStripHeightMm(metrics, layerEntries, 172) + 1 };
}

/** Draws the looms of a board, layer by layer, as single lines with the counts of their conductors. */
export function paintLooms(drawing: Drawing, scene: BoardScene): string[] {
  const { plan, board, clip, room } = scene;
  const items = itemsOf(scene);
  drawBase(drawing, scene, lines.pale);
  const group = openGroup(drawing, drawing.svg, 'items');
  for (const item of items)
    drawItemOutline(openSubject(drawing, group, item.item.id), scene, item, items, lines.paleItem);
  const loomGroup = openGroup(drawing, drawing.svg, 'looms');
  const counts = wiringLayers.flatMap((layer): TextLabel[] => {
    const role = layer.roles[0];
    const wiresOf = (id: string): number => {
      const along = board.routes.find(({ wire }) => wire === id)?.along ?? [];
      return plan.wires.filter((wire) => along.includes(wire.id) && isOnLayer(layer, wire)).length;
    };
    const own = board.routes.filter(({ wire }) => wiresOf(wire) > 0);
    if (role === undefined || own.length === 0) return [];
    const looms = loomsOf(own);
    const told = longestOfEach(looms.stretches);
    paintExits(drawing, loomGroup, scene, looms.ways);
    return looms.stretches.flatMap((stretch, nth) => {
      const all = stretch.routes.reduce((sum, id) => sum + wiresOf(id), 0);
      const count = told.has(stretch) && all > 1 ? all : null;
      return paintStretch(drawing, loomGroup, scene, { stretch, role, count, id: `${layer.id} ${nth}` });
    });
  });
  const lettered = items.map((item) => letterName(drawing, group, scene, item));
  const shownLayers = layerEntries.filter(({ role }) =>
    board.routes.some(({ layer }) => sameLayer(layer, role)),
  );
  drawRoleStrip(drawing, drawing.svg, room, shownLayers);
  const arrows = placeDirectionArrows(drawing, board, room, { mirrored: false, caption: null });
  const labels = [...letterOutside(drawing, scene, items, lettered, (name) => [name]), ...counts];
  const labelGroup = openGroup(drawing, drawing.svg, 'labels');
  const shown = clip === null ? labels : labels.filter(({ anchors }) => anchors.length > 0);
  return [...arrows, ...drawLabels(drawing, labelGroup, shown, room, bodiesOf(items))];
}

function sameLayer(a: ConductorRole, b: ConductorRole): boolean {
  return wiringLayers.some(({ roles }) => roles.includes(a) && roles.includes(b));
}

function letterName(drawing: Drawing, parent: Parent, scene: BoardScene, onBoard: ItemOnBoard) {
  if (!isWhole(scene, onBoard)) return { onBoard, outside: [], named: true };
  const group = openSubject(drawing, parent, onBoard.item.id);
  const named = letterMiddle(drawing, group, grown(onBoard.box, -0.6), shortName(onBoard.item));
  return { onBoard, outside: [], named };
}

/** Of the stretches with the same routes the longest, where their count is told. */
function longestOfEach(stretches: readonly LoomStretch[]): ReadonlySet<LoomStretch> {
  const lengthM = ({ from, to }: LoomStretch): number =>
    Math.abs(to.xM - from.xM) + Math.abs(to.yM - from.yM);
  const longest = new Map<string, LoomStretch>();
  for (const stretch of stretches) {
    const known = longest.get(stretch.routes.join('|'));
    if (!known || lengthM(stretch) > lengthM(known)) longest.set(stretch.routes.join('|'), stretch);
  }
  return new Set(longest.values());
}

interface DrawnStretch {
  readonly stretch: LoomStretch;
  readonly role: ConductorRole;
  /** Null where it is told on a longer stretch of the same loom, or where one conductor lies by itself. */
  readonly count: number | null;
  readonly id: string;
}

/** A stretch shorter than this has no room for its count: the next one tells it. */
const leastMm = 6;

/** Draws a stretch in the line of its layer, with an oblique stroke and a label of its count where it is long enough. */
function paintStretch(
  drawing: Drawing,
  parent: Parent,
  { view, clip }: BoardScene,
  { stretch, role, count, id }: DrawnStretch,
): TextLabel[] {
  const group = openSubject(drawing, parent, stretch.routes[0] ?? id);
  const pieces = clippedLine([onPaper(view, stretch.from), onPaper(view, stretch.to)], clip);
  return pieces.flatMap(([from, to], nth): TextLabel[] => {
    if (!from || !to) return [];
    drawConductor(group, [from, to], role);
    const along = directionOf(from, to);
    if (count === null || !along || distanceMm(from, to) < leastMm) return [];
    const middle = at((from.xMm + to.xMm) / 2, (from.yMm + to.yMm) / 2);
    drawLine(group, obliqueStroke(middle, along), lines.part);
    const anchors = [anchorAt(middle)];
    const own = [stretch.routes[0] ?? id];
    return [
      {
        id: `${id} ${nth}`,
        lines: [String(count)],
        type: types.terminal,
        anchors,
        own,
        subject: own[0] ?? id,
      },
    ];
  });
}

/** The stroke across a single line that stands for several conductors (IEC 60617, mem). */
function obliqueStroke({ xMm, yMm }: PaperPoint, along: PaperPoint): PaperPoint[] {
  const reach = 1.3;
  const [ux, uy] = [(along.xMm - along.yMm) * 0.7, (along.xMm + along.yMm) * 0.7];
  return [at(xMm - ux * reach, yMm - uy * reach), at(xMm + ux * reach, yMm + uy * reach)];
}

/** Arrow heads where looms leave the board. */
function paintExits(drawing: Drawing, parent: Parent, scene: BoardScene, ways: readonly LoomWay[]): void {
  for (const { wire, edge, xM, yM } of scene.board.exits) {
    const points = ways.find(({ route }) => route === wire)?.points ?? [];
    const [leaves] = [points[0], points.at(-1)]
      .flatMap((place) => place ?? [])
      .toSorted((a, b) => Math.hypot(a.xM - xM, a.yM - yM) - Math.hypot(b.xM - xM, b.yM - yM));
    const out = outwards[edge];
    if (!leaves || !out) continue;
    const point = onPaper(scene.view, leaves);
    if (!pointIn(point, scene.clip)) continue;
    const tip = at(point.xMm + out.xMm * exitMm, point.yMm + out.yMm * exitMm);
    const group = openSubject(drawing, parent, wire);
    drawLine(group, [point, tip], lines.leader);
    drawArrowHead(group, tip, point);
  }
}

const exitMm = 4;
const outwards: Readonly<Record<string, PaperPoint>> = {
  left: at(-1, 0),
  right: at(1, 0),
  top: at(0, -1),
  bottom: at(0, 1),
};
