/** Standard acceleration of free fall, m/s2 (exact by definition, ISO 80000-3). */
export const standardGravity = 9.80665;
