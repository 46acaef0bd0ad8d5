/**
 * House rules of boards where neither the shop nor a part's maker says otherwise. All are common practice
 * with no published source, except where a field says so. Metres, kilograms, hertz.
 */
export const boardDefaults = {
  /** Arcs are flattened so that no chord stands further than this from its arc. */
  flattenM: 0.00001,
  /** A web (material left between two openings, or an opening and the edge) that is good. */
  webGoodM: 0.025,
  /** A web below this stops the job. */
  webStopM: 0.012,
  /** Centre-free distance: rim of a drilled hole to the edge of the board. */
  holeToEdgeM: 0.012,
  /** Rim of a hole to a corner, in fibreboard. */
  holeToCornerM: 0.025,
  /** Free room at cooling fins. */
  finGapM: 0.0254,
  /** Free room in front of a fan. */
  fanGapM: 0.0508,
  /** Free room between any two parts. */
  partGapM: 0.0127,
  /** Room for signal plugs. */
  plugRoomM: 0.0508,
  /** Room to bend a power conductor. */
  powerBendM: 0.0762,
  /** Tool room in front of knobs. */
  knobRoomM: 0.0762,
  /** Straight tool room in front of set screws. */
  setScrewRoomM: 0.1524,
  /** Parts are this much larger than their data say. */
  partToleranceM: 0.003,
  /** Power and signal run at least this far apart where they run side by side. */
  powerToSignalM: 0.1524,
  /** Inside bend radius of a conductor, in outside diameters. */
  bendRadiusDiameters: 4,
  /** Free room between the board with its parts and the mounting space or an obstacle. */
  spaceClearanceM: 0.006,
  /** Lowest first natural frequency. */
  firstModeHz: 30,
  /** Forward acceleration that the fixings hold, in g (quoted from memory). */
  retentionG: 20,
} as const;

/** Standard acceleration of free fall, m/s2 (exact by definition, ISO 80000-3). */
export const standardGravity = 9.80665;
