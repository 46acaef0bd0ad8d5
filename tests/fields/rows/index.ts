import type { Row } from '../row.ts';
import { jobRows } from './job.ts';

/** The whole table: for each field, what is written wrong there, and what tells it. */
export const rows: readonly Row[] = [...jobRows];
