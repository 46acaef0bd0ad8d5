import { modeLimitText } from '../../board/strength/stiffness.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { houseRule } from '../house-rule-of.ts';
import type { Rule, Verdict } from '../rule.ts';
import { gees, kilograms, lengthIn, modeHertz } from '../words.ts';
import { boardOf, boardSpot } from './board-spot.ts';

/**
 * First natural frequency (Hz) of a board: the lower of what the plan gives and of f = 15.8 / sqrt(sag in mm), the
 * sag of one mass on a spring under its own weight (sqrt(g / sag) / (2 pi)), so that both rules agree.
 */
export function lowestModeHz({ firstModeHz, sagM }: Pick<PlanBoard, 'firstModeHz' | 'sagM'>): number | null {
  const fromSag = sagM !== null && sagM > 0 ? [15.8 / Math.sqrt(sagM * 1000)] : [];
  const known = [...(firstModeHz === null ? [] : [firstModeHz]), ...fromSag];
  return known.length === 0 ? null : Math.min(...known);
}

export const firstMode: Rule = {
  id: 'first-mode-low',
  judge({ job, plan }) {
    const least = houseRule(job, 'first-mode');
    const bass = houseRule(job, 'first-mode-bass');
    const length = lengthIn(job);
    return plan.boards.flatMap((board): Verdict<'first-mode-low'>[] => {
      const value = lowestModeHz(board);
      const beside = boardOf(job, board.id)?.space['beside-subwoofer'] ?? false;
      const verdict = {
        of: [board.id],
        remedy: 'use a thicker or stiffer sheet, add a rib, or a fixing near the heaviest part',
        ...boardSpot(board.id),
      };
      if (value === null)
        return board.fixings.length === 0
          ? []
          : [
              {
                ...verdict,
                level: 'note',
                message: `the stiffness of ${board.id} on its fixings is not known`,
                remedy: 'press on the middle of the loaded board: it must not give under a thumb',
                ...least.from,
              },
            ];
      const stops = value < least.value - 1e-9;
      if (!stops && !(beside && value < bass.value - 1e-9)) return [];
      const { value: limit, from } = stops ? least : bass;
      const sag = board.sagM === null ? '' : `, it sags ${length(board.sagM)}`;
      return [
        {
          ...verdict,
          level: stops ? 'stop' : 'caution',
          message: `the first natural frequency of ${board.id} is ${modeHertz(value)}${sag}; ${modeLimitText({ leastHz: least.value, wantedHz: beside ? Math.max(least.value, bass.value) : least.value })}`,
          value,
          limit,
          unit: 'Hz',
          ...from,
        },
      ];
    });
  },
};

export const retention: Rule = {
  id: 'retention-low',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'retention');
    return plan.boards.flatMap((board): Verdict<'retention-low'>[] => {
      const { id, retentionG, fixings, loadedMassKg } = board;
      if (fixings.length === 0 || (retentionG !== null && retentionG >= limit)) return [];
      const known = retentionG !== null;
      return [
        {
          level: known ? 'caution' : 'note',
          of: [id, ...fixings.map((fixing) => fixing.id)],
          message: known
            ? `the fixings of ${id} hold ${gees(retentionG)} of its ${kilograms(loadedMassKg)}; ${gees(limit)} is asked for`
            : `what the fixings of ${id} hold is not known; ${gees(limit)} of its ${kilograms(loadedMassKg)} is asked for`,
          ...(known && { value: retentionG }),
          limit,
          unit: 'g',
          remedy: known
            ? 'add fixings, or stronger ones, on sound points'
            : 'write holds: in the part of each fixing, and insert: welded at a point that is no rivet nut',
          ...from,
          ...boardSpot(id, 'fixings'),
        },
      ];
    });
  },
};

export const creeps: Rule = {
  id: 'board-creeps',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'sag-creep');
    return plan.boards.flatMap(({ id, sheet, sagCreptM }): Verdict<'board-creeps'>[] => {
      if (sagCreptM === null || sagCreptM <= limit + 1e-9) return [];
      const length = lengthIn(job, boardSpot(id));
      return [
        {
          level: 'caution',
          of: [id, sheet],
          message: `${id} lies, and ${sheet} goes on bending under load: it comes to sag ${length(sagCreptM)}; ${length(limit)} is the most`,
          ...{ value: sagCreptM, limit, unit: 'm' },
          remedy: 'take plywood or aluminium, a thicker sheet, or a fixing near the heaviest part',
          ...from,
          ...boardSpot(id, 'sheet'),
        },
      ];
    });
  },
};
