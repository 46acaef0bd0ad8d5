import type { z } from 'zod';
import type { JobBoard } from '../../model/content/job.ts';
import { boardSchema, fixingSchema } from '../../model/content/job-board.ts';
import { outlineSchema } from '../../model/outline.ts';
import type { DraftBoard } from './draft-terms.ts';

const shapeSchema = boardSchema.pick({ at: true, outline: true, spacer: true });

/** Outline, place and spacers of a board as a job file has them. */
export type ShapeText = z.input<typeof shapeSchema>;

/** A board of a shape that is proposed; its spacers stand under the fixings that do not say one. */
export function shaped(given: DraftBoard, value: ShapeText): DraftBoard {
  const shape = shapeSchema.parse(value);
  const { spacer } = shape;
  const fixings = Object.entries(given.fixings).map(([name, fixing]) => {
    return [name, spacer === undefined ? fixing : { spacer, ...fixing }] as const;
  });
  return { ...given, ...shape, fixings: Object.fromEntries(fixings) };
}

/** A board with one more fixing, on the spacer of the board where it does not say one. */
export function fixedBy(given: DraftBoard, id: string, value: unknown): DraftBoard {
  const fixing = {
    ...(given.spacer !== undefined && { spacer: given.spacer }),
    ...fixingSchema.parse(value),
  };
  return { ...given, fixings: { ...given.fixings, [id]: fixing } };
}

const noOutline = { rectangle: { width: '1 in', height: '1 in' } };

/** Boards with an outline each: one that none could be proposed for, which was asked, has a mark in its place. */
export function outlined(boards: Readonly<Record<string, DraftBoard>>): Record<string, JobBoard> {
  return Object.fromEntries(
    Object.entries(boards).map(([id, board]) => {
      return [id, { ...board, outline: board.outline ?? outlineSchema.parse(noOutline) }];
    }),
  );
}
