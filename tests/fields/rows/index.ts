import type { Row } from '../row.ts';
import { jobRows } from './job.ts';
import { powerPartRows, sharedPartRows, soundPartRows, stockPartRows } from './parts.ts';
import { shopRows } from './shop.ts';
import { vehicleRows } from './vehicle.ts';

/** The whole table: for each field, what is written wrong there, and what tells it. */
export const rows: readonly Row[] = [
  ...jobRows,
  ...vehicleRows,
  ...shopRows,
  ...sharedPartRows,
  ...soundPartRows,
  ...powerPartRows,
  ...stockPartRows,
];
