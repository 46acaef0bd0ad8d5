/** A terminal in the map: on an edge of a cell, facing into it. */
export interface MapTerminal {
  readonly edge: number;
  readonly cell: number;
  /** Where it is along the edge (m). */
  readonly atM: number;
}

/** A wire as the map sees it: from a terminal to another, or off the board by any edge of one side. */
export interface MapWire {
  readonly from: MapTerminal;
  readonly to: MapTerminal | { readonly exitSide: number };
  readonly widthM: number;
  readonly bendRadiusM: number;
  /** What passing each edge costs this wire besides (m), where it found too little room before. */
  readonly avoidM: Float64Array;
}

/** What a way through the map costs, in metres of wire. */
export interface WayCosts {
  readonly crossingM: number;
  readonly bendM: number;
  /** For a bend, beside `bendM`: so many times its radius. */
  readonly bendRadii: number;
  /** For a bend that has no room for its radius. */
  readonly tightM: number;
  /** For going where no room is left, and for each metre that is lacking there. */
  readonly fullM: number;
  readonly lackM: number;
  /** Free room between a wire and what stands on the board (m). */
  readonly clearanceM: number;
}
