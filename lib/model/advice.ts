import { z } from 'zod';
import { builders } from './audience.ts';

/** A line that a remedy says to write: in which file, where in it, and its value as YAML. */
export const advisedLineSchema = z.object({
  file: builders(z.string()),
  /** A JSON Pointer into the file. */
  path: builders(z.string()),
  text: builders(z.string()),
});
export type AdvisedLine = z.infer<typeof advisedLineSchema>;
