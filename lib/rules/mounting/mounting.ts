import type { WrittenValue } from '../../model/content/proposal.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { Advice } from '../../model/remark.ts';
import { boardOverPoints } from '../../plan/board/over-points.ts';
import { whyNotFixed } from '../../propose/laying/fixings.ts';
import { flowText } from '../../read/yaml/write-value.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn, listed } from '../words.ts';
import { holeCorner, holeEdge, holeOff, narrowWeb } from './board-holes.ts';
import { boardOf, boardSpot } from './board-spot.ts';
import { creeps, firstMode, retention } from './board-strength.ts';

/** Why each sound point of the space of a board was not taken for a fixing by itself. */
function pointsNotTaken({ job }: Case, board: string): readonly string[] {
  const own = job.boards.find(({ id }) => id === board);
  if (!own) return [];
  const { 'hole-edge': edge, 'hole-corner': corner } = job.rules;
  const length = lengthIn(job, boardSpot(board));
  return Object.entries(own.space['sound-points']).flatMap(([name, point]) => {
    const why = whyNotFixed(job, own.given, point);
    if (why === null) return [];
    const told = {
      behind: point.behind === 'unknown' ? 'nobody has looked behind it' : `${point.behind} behind it`,
      'not-under': `not under ${board}`,
      edge: `less than ${length(edge.value)} from an edge of ${board}`,
      corner: `less than ${length(corner.value)} from a corner of ${board}`,
    };
    return [`${name}, ${told[why]}`];
  });
}

/** What is to be written at a board so that sound points of its space hold it; null where no such place is known. */
function overPoints(
  { job, plan }: Case,
  board: string,
): { readonly remedy: string; readonly advice: readonly Advice[] } | null {
  const own = boardOf(job, board);
  const planned = plan.boards.find(({ id }) => id === board);
  // What has its place on a board would have to be given another one.
  const isPlaced = job.devices.some(({ given }) => given?.on === board && given.at !== undefined);
  if (!own || !planned || isPlaced) return null;
  const tallestM = Math.max(0, ...planned.placements.map(({ raisedM, heightM }) => raisedM + heightM));
  const over = boardOverPoints(job, own, tallestM);
  if (!over) return null;
  const text = (lengthM: number) => tapeText(lengthM, job.shop.units);
  const lines: readonly { readonly keys: readonly string[]; readonly value: WrittenValue }[] = [
    { keys: ['at'], value: { x: text(over.xM), y: text(over.yM) } },
    { keys: ['outline', 'rectangle'], value: { width: text(over.widthM), height: text(over.heightM) } },
    ...(over.spacerM > 0 ? [{ keys: ['spacer'], value: tapeText(over.spacerM, 'millimetre') }] : []),
  ];
  const written = lines.map(({ keys: [key, below], value }) =>
    below === undefined ? `${key}: ${flowText(value)}` : `${key}: { ${below}: ${flowText(value)} }`,
  );
  return {
    remedy: `write ${listed(written)} at ${board}: there ${listed(over.points)} hold it`,
    advice: [lines.map(({ keys, value }) => ({ ...boardSpot(board, ...keys), value }))],
  };
}

const heldByTrim: Rule = {
  id: 'held-by-trim',
  judge(about: Case) {
    return about.plan.boards.flatMap(({ id, space, fixings }): Verdict<'held-by-trim'>[] => {
      if (fixings.length > 0) return [];
      const points = pointsNotTaken(about, id);
      const over = overPoints(about, id);
      const none = points.length === 0 ? '' : `; no fixing is proposed at ${points.join('; ')}`;
      return [
        {
          level: 'stop',
          of: [id],
          message: `${id} has no fixing: trim and carpet alone would hold it in ${space}${none}`,
          remedy:
            points.length === 0
              ? `write fixings: at sound points of the space, at least three that are not in one line`
              : `${over === null ? '' : `${over.remedy}; or `}look behind those points, and write behind: nothing at each in the vehicle's file where that is so; or move ${id} over others; or write fixings: at points that you answer for, at least three that are not in one line`,
          ...(over !== null && { advice: over.advice }),
          ...boardSpot(id, 'fixings'),
        },
      ];
    });
  },
};

export const mountingRules: readonly Rule[] = [
  heldByTrim,
  narrowWeb,
  firstMode,
  retention,
  creeps,
  holeOff,
  holeEdge,
  holeCorner,
];
