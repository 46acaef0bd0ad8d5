import type { Audience } from '../../model/audience.ts';
import { type JobFile, jobSchema } from '../../model/content/job.ts';
import { Private } from '../../model/private.ts';
import { type Fact, fact } from '../sheets/table.ts';
import { visibleTo } from './visible-to.ts';

const names = {
  name: 'Customer',
  contact: 'Contact',
  plate: 'Plate',
  vin: 'VIN',
  'key-location': 'Keys',
  price: 'Price',
} as const satisfies Record<keyof JobFile['customer'], string>;

/**
 * The private values of a job that an audience may see, as the cover and the packet print them. This is the one place of
 * the site where private values are told.
 */
export function customerFacts(customer: JobFile['customer'], audience: Audience): Fact[] {
  const seen = new Map<string, unknown>(
    Object.entries(visibleTo(jobSchema.shape.customer, customer, audience) ?? {}),
  );
  return Object.entries(names).flatMap(([key, name]) => {
    const value = seen.get(key);
    return value instanceof Private ? [fact(name, value.reveal())] : [];
  });
}
