import type { Vehicle } from '../../model/content/vehicle.ts';
import type { ShopSite } from './shop-site.ts';

/** The vehicles of a shop in the order in which pages list them: by id. */
export function vehiclesInOrder({ vehicles }: Pick<ShopSite, 'vehicles'>): Vehicle[] {
  return Object.values(vehicles).sort((a, b) => (a.id < b.id ? -1 : 1));
}
