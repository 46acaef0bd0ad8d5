import { z } from 'zod';
import { builders } from './audience.ts';
import { placeSchema } from './place.ts';
import { markSchema } from './trace.ts';

/** `stop` keeps the sheets of the job from being released; `caution` must be read; `note` is good to know. */
export const levelSchema = z.enum(['stop', 'caution', 'note']);
export type Level = z.infer<typeof levelSchema>;

/** The levels that ask for something to be done. */
export const actingLevelSchema = levelSchema.exclude(['note']);
export type ActingLevel = z.infer<typeof actingLevelSchema>;

/** A splice that would mend the file: replace the text from `start` to `end` (offsets) by `text`. */
const editSchema = z.object({
  file: builders(z.string()),
  start: builders(z.int().nonnegative()),
  end: builders(z.int().nonnegative()),
  text: builders(z.string()),
});

export type FileEdit = z.infer<typeof editSchema>;

/** A line that a remedy says to write: in which file, where in it (a JSON Pointer), and its value as YAML. */
const advisedLineSchema = z.object({
  file: builders(z.string()),
  path: builders(z.string()),
  text: builders(z.string()),
});
export type AdvisedLine = z.infer<typeof advisedLineSchema>;

const toldFindingSchema = z.object({
  /** The rule's id, such as `fuse-over-conductor`. */
  rule: builders(z.string()),
  level: builders(levelSchema),
  /** The given value that it is about, or the nearest given ancestor of a computed one. */
  where: placeSchema,
  /** Where else a figure stands that its value or its limit is: in a part, the vehicle's file, the shop's. */
  data: z.array(placeSchema).optional(),
  /** Ids of the devices, wires, fuses, boards, controls it is about, the first one the subject. */
  related: z.array(builders(z.string())),
  /** What is wrong, in the words of the trade, with numbers. Built from ids and measures only. */
  message: builders(z.string()),
  value: builders(z.union([z.number(), z.string()]).optional()),
  limit: builders(z.union([z.number(), z.string()]).optional()),
  unit: builders(z.string().optional()),
  /** Value and limit as some file has them, in its own unit, where they stand there: `3 ft` of 0.9144 m. */
  written: z
    .object({ value: builders(z.string().optional()), limit: builders(z.string().optional()) })
    .optional(),
  /** The published source of the rule, or `common practice, no source`. */
  source: builders(z.string()),
  mark: builders(markSchema.optional()),
  /** What to do about it. */
  remedy: builders(z.string()),
  /** Ways out of it as lines to write, each enough by itself. */
  advice: z.array(z.array(advisedLineSchema)).optional(),
  edit: editSchema.optional(),
  /** Of a caution that the job accepts at its present figures: by whom, why, at which value and limit, and where that is written. */
  accepted: z
    .object({
      by: builders(z.string()),
      reason: builders(z.string()),
      value: builders(z.string().optional()),
      limit: builders(z.string().optional()),
      where: placeSchema,
    })
    .optional(),
});

/** What a rule says of a job that could be read, but is wrong or doubtful. */
export const findingSchema = toldFindingSchema.extend({
  /** Findings that only follow from this one, none of them graver: with it they are mended too. */
  follows: z.array(toldFindingSchema).optional(),
});
export type Finding = z.infer<typeof findingSchema>;

/** Every finding of a list, each followed by those that only follow from it. */
export function everyFinding(findings: readonly Finding[]): readonly Finding[] {
  return findings.flatMap((finding) => [finding, ...(finding.follows ?? [])]);
}
