import { pointer } from '../../model/place.ts';
import type { Direction } from '../../model/vocabulary.ts';
import { commonPractice, houseRule } from '../house-rule-of.ts';
import { deviceSpot, partOf } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';

const fibreboardWet: Rule = {
  id: 'fibreboard-in-wet-zone',
  judge({ job, plan }) {
    return job.boards.flatMap(({ id, space, spaceId, ...board }): Verdict<'fibreboard-in-wet-zone'>[] => {
      // Where the job leaves the sheet open, the plan knows it.
      const sheetId = plan.boards.find((one) => one.id === id)?.sheet ?? board.sheetId;
      const sheet = partOf(job, sheetId);
      if (!space.wet || sheet?.kind !== 'board-sheet') return [];
      if (sheet.material !== 'fibreboard' || sheet.sealed) return [];
      return [
        {
          level: 'caution',
          of: [id, spaceId, sheetId],
          message: `${id} is bare fibreboard in ${spaceId}, which gets wet: it swells and lets go of its screws`,
          remedy: 'seal every face and edge, holes too, or take plywood or polyethylene',
          path: pointer(['boards', id, 'sheet']),
        },
      ];
    });
  },
};

const raised: Rule = {
  id: 'board-low-in-wet-zone',
  judge({ job, plan }) {
    const { value: raiseM, from } = houseRule(job, 'wet-raise');
    return job.boards.flatMap(({ id, space, spaceId }): Verdict<'board-low-in-wet-zone'>[] => {
      const fixings = plan.boards.find((board) => board.id === id)?.fixings ?? [];
      if (!space.wet) return [];
      const low = fixings.filter(({ spacerM }) => spacerM < raiseM - 1e-9);
      const least = Math.min(...low.map(({ spacerM }) => spacerM));
      const path = pointer(['boards', id, 'fixings']);
      const length = lengthIn(job, { path });
      const loops = 'let every wire hang in a drip loop below its terminal, and keep the drain clear';
      if (low.length === 0)
        return [
          {
            level: 'note',
            of: [id, spaceId],
            message: `${id} is in ${spaceId}, which gets wet`,
            remedy: loops,
            ...commonPractice,
            path,
          },
        ];
      return [
        {
          level: 'caution',
          of: [id, ...low.map((fixing) => fixing.id)],
          message: `${id} stands ${length(least)} off its panel in ${spaceId}, which gets wet; ${length(raiseM)} is the least`,
          value: least,
          limit: raiseM,
          unit: 'm',
          remedy: `raise it on spacers; ${loops}`,
          ...from,
          path,
        },
      ];
    });
  },
};

type Vector = readonly [number, number, number];
/** Directions of the vehicle as vectors: x to the front, y to the left, z up (ISO 8855). */
const vectors: Readonly<Record<Direction, Vector>> = {
  front: [1, 0, 0],
  rear: [-1, 0, 0],
  left: [0, 1, 0],
  right: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
};

/** True where the mounting side of a plane looks down: the cross product of its right and its upward points down. */
export function looksDown(right: Direction, upward: Direction): boolean {
  const [a, b] = [vectors[right], vectors[upward]];
  return a[0] * b[1] - a[1] * b[0] < 0;
}

const upsideDown: Rule = {
  id: 'amplifier-upside-down',
  judge({ job }) {
    return job.devices.flatMap(({ id, spec, board }): Verdict<'amplifier-upside-down'>[] => {
      const own = job.boards.find((one) => one.id === board);
      if (spec?.kind !== 'amplifier' || !own || !looksDown(own.space.right, own.space.upward)) return [];
      return [
        {
          level: 'caution',
          of: [id, own.id],
          message: `${id} hangs upside down on ${own.id}: its heat stays inside it`,
          remedy: 'mount the board with its face up or upright, or add a fan that the maker allows',
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

export const wetZoneRules: readonly Rule[] = [fibreboardWet, raised, upsideDown];
