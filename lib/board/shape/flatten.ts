/** Arcs are flattened so that no chord stands further than this from its arc, metres. */
export const flattenM = 0.00001;
