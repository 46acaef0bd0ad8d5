import { quantityWithin } from './fields.ts';

/** The share of its charge at which the reserve of a battery ends. */
export const reserveEnd = quantityWithin('ratio', { above: 0, most: 0.95 });
