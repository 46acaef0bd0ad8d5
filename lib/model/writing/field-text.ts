import { z } from 'zod';
import type { GuidePicture } from './guide-pictures.ts';

/** What a file may say: plain data. */
export type Written = z.core.util.JSONType;

/** What the writing guide and the editors say of a field. Figures of house rules stand as their names in braces. */
export interface FieldText {
  /** What it means, in plain sentences: `Air that is free at each edge, {gap-fins} at fins.` */
  readonly says: string;
  /** As it may stand behind the colon, as plain data. Left out: the example of its schema, or of the fields in it. */
  readonly example?: Written;
  /** A name as its writer may choose it, where the field holds values by their names. */
  readonly name?: string;
  /** What holds where the field is left out, where its schema gives no default. */
  readonly leftOut?: string;
  /** The picture that shows where it is measured from, and which way. */
  readonly picture?: GuidePicture;
  /** True for what is of one job alone, one vehicle on one day: a job that is begun like another does not take it over. */
  readonly ofOneJob?: true;
}
export type FieldMore = Omit<FieldText, 'says'>;

const texts = z.registry<FieldText>();

/** Says what a field means that holds others: an object, a list, a set of named values. Apply it last, as an audience. */
export function section<S extends z.ZodType>(schema: S, says: string, more: FieldMore = {}): S {
  return withText(schema.clone(), says, more);
}

/** Writes down what a field means. For the helpers of audiences: the schema has to be the field's own copy. */
export function withText<S extends z.ZodType>(own: S, says: string, more: FieldMore): S {
  texts.add(own, { says, ...more });
  return own;
}

/** What was said of a field; null where nothing was. */
export function fieldText(schema: z.ZodType): FieldText | null {
  return texts.get(schema) ?? null;
}
