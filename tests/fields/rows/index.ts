import type { Row } from '../row.ts';
import { boardRows, reachRows } from './board.ts';
import { jobRows } from './job.ts';
import { powerPartRows } from './parts-power.ts';
import { sharedPartRows } from './parts-shared.ts';
import { soundPartRows } from './parts-sound.ts';
import { stockPartRows } from './parts-stock.ts';
import { shopRows } from './shop.ts';
import { shortFormRows } from './short-forms.ts';
import { shortJobRows } from './short-job.ts';
import { vehicleRows } from './vehicle.ts';

/** The whole table: for each field, what is written wrong there, and what tells it. */
export const rows: readonly Row[] = [
  ...jobRows,
  ...boardRows,
  ...vehicleRows,
  ...reachRows,
  ...shortJobRows,
  ...shortFormRows,
  ...shopRows,
  ...sharedPartRows,
  ...soundPartRows,
  ...powerPartRows,
  ...stockPartRows,
];
