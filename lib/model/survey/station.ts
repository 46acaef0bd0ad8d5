import { vehicleSideSchema, zoneKindSchema } from '../vocabulary.ts';
import { type AskedColumn, type AskedTable, column } from './asked-table.ts';

/** A stop of the walk round a vehicle. */
export interface Station {
  readonly id: string;
  readonly title: string;
  readonly tables: readonly AskedTable[];
}

/** In which zone of the vehicle something is. */
export const zone = (example: string): AskedColumn => column('zone', 'zone', zoneKindSchema, example);
/** On which side of the vehicle something is. */
export const side = (example: string): AskedColumn => column('side', 'side', vehicleSideSchema, example);
