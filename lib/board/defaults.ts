/** Arcs are flattened so that no chord stands further than this from its arc, metres. */
export const flattenM = 0.00001;

/** Standard acceleration of free fall, m/s2 (exact by definition, ISO 80000-3). */
export const standardGravity = 9.80665;
