import { z } from 'zod';
import { builders } from './audience.ts';
import { placeSchema } from './place.ts';

/** `cp`: common practice, no source. `mem`: quoted from memory, to be confirmed before relying on it. */
export const markSchema = z.enum(['cp', 'mem']);
export type Mark = z.infer<typeof markSchema>;

/** The citation of what the trade does without a published source. */
export const commonPractice = 'common practice, no source';

/** How a value came about: the job or a part says it, it was computed, or a rule assumed it. */
export const valueOriginSchema = z.enum(['given', 'computed', 'assumed']);
export type ValueOrigin = z.infer<typeof valueOriginSchema>;

const inputSchema = z.object({
  /** What the formula calls it, such as `L`. */
  name: builders(z.string()),
  value: builders(z.union([z.number(), z.string()])),
  /** SI unit, empty for a pure number or a text. */
  unit: builders(z.string()),
  /** The id of the trace that this input has of its own. */
  trace: builders(z.string().optional()),
});

/** How one number came about, so that a reader can redo it by hand. */
export const traceSchema = z.object({
  origin: builders(valueOriginSchema),
  value: builders(z.union([z.number(), z.string()])),
  unit: builders(z.string()),
  /** The rule's id, such as `conductor-drop`. */
  rule: builders(z.string()),
  /** The formula in plain writing, with the names of the inputs. */
  formula: builders(z.string().optional()),
  citation: builders(z.string()),
  mark: builders(markSchema.optional()),
  inputs: z.array(inputSchema),
  where: placeSchema.optional(),
});
export type Trace = z.infer<typeof traceSchema>;
export type TraceInput = z.infer<typeof inputSchema>;

/** A value together with its trace: what every computation returns. */
export interface Traced<T> {
  readonly value: T;
  readonly trace: Trace;
}

/** One input of a formula: the name that the formula uses, its value, its SI unit; the trace that it has of its own. */
export type Figure = readonly [name: string, value: number | string, unit?: string, trace?: string];

/** What a computation says of its result; `computed` where it says nothing of its origin. */
export type Working = Omit<Trace, 'origin' | 'value' | 'unit' | 'inputs'> & {
  readonly origin?: Trace['origin'];
  readonly inputs?: readonly Figure[];
};

/** A value together with the working by which a reader can redo it. */
export function traced<T extends number | string>(value: T, unit: string, working: Working): Traced<T> {
  const { origin = 'computed', inputs = [], ...rest } = working;
  return { value, trace: { origin, value, unit, ...rest, inputs: inputs.map(traceInput) } };
}

function traceInput([name, value, unit = '', trace]: Figure): TraceInput {
  return { name, value, unit, ...(trace !== undefined && { trace }) };
}
