import type { Job } from '../../model/content/resolved-job.ts';
import { type FittedFan, fittedFans } from '../../plan/power/fans.ts';
import { deviceSpot, spaceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { m3hMoved } from './air-words.ts';
import { fitFan } from './cooler-space.ts';

/**
 * A fan that the vehicle's file counts on, and that nothing says to be there: no device of the job is it, so that it has
 * no supply, no fuse and no step.
 */
const fanNotFitted: Rule = {
  id: 'fan-not-fitted',
  judge({ job }) {
    const fans = fittedFans(job);
    const boards = job.boards.filter(({ spaceId }, at, all) => isFirst(all, spaceId, at));
    return boards.flatMap((board): Verdict<'fan-not-fitted'>[] => {
      const { spaceId, space } = board;
      const { fan } = space;
      if (!fan || fan.there || fan.air === 0 || fans.some((one) => one.space === spaceId)) return [];
      return [
        {
          level: 'stop',
          of: [spaceId],
          message: `the air of ${spaceId} is counted with a fan of ${m3hMoved(fan.air)}: nothing says that the vehicle has it, and no device of the job is one, so that its supply, its fuse and its steps are not planned`,
          remedy: `${fitFan(job, spaceId, fan.air)}; or, where the vehicle has it with its supply and its fuse, write there: true beside air: under fan:`,
          ...spaceSpot(board, 'fan'),
        },
      ];
    });
  },
};

function isFirst(all: Job['boards'], space: string, at: number): boolean {
  return all.findIndex(({ spaceId }) => spaceId === space) === at;
}

/** A fan of the job that moves the air of no space with a board: its air is counted nowhere. */
const fanCoolsNothing: Rule = {
  id: 'fan-cools-nothing',
  judge({ job }) {
    const spaces = [...new Set(job.boards.map(({ spaceId }) => spaceId))];
    const isIdle = ({ space }: FittedFan) => space === null || !spaces.includes(space);
    return fittedFans(job)
      .filter(isIdle)
      .map(({ item, space }): Verdict<'fan-cools-nothing'> => {
        return {
          level: 'caution',
          of: [item],
          message:
            space === null
              ? `nothing tells which space the fan ${item} moves the air of, and its air is counted in none`
              : `the fan ${item} moves the air of ${space}, where the job has no board: it is counted nowhere`,
          remedy: `write cools: with the space of a board${spaces.length > 0 ? `: ${spaces.join(' or ')}` : ''}, or take the fan out`,
          ...deviceSpot(job, item, 'cools'),
        };
      });
  },
};

export const fanRules: readonly Rule[] = [fanNotFitted, fanCoolsNothing];
