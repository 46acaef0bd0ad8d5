import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { edgeProfiles, grainWays } from '../outline.ts';
import { ribFaces, ribJoints } from '../rib.ts';
import {
  chosenSchema,
  conductorRoleSchema,
  directionSchema,
  edgeSchema,
  jointPartSchema,
  ribFormSchema,
  riserFormSchema,
  sheetGrainSchema,
} from '../vocabulary.ts';

const number = builders(z.number());
const orNull = builders(z.number().nullable());
const name = builders(z.string());
const point = { xM: number, yM: number };

/** A corner of an outline; the bulge is the tangent of a quarter of the arc to the next corner. */
export const outlinePointSchema = z.object({ ...point, bulge: number });

export const holeSchema = z.object({
  n: builders(z.int()),
  ...point,
  diameterM: number,
  /** Null: right through. */
  depthM: orNull,
  /** The part of the screw that it is the pilot of; null for any other hole. */
  pilotFor: builders(z.string().nullable().default(null)),
  purpose: name,
  /** What the hole is for: an item, a fixing, a cut. */
  of: name,
  /** What lies behind it in the vehicle; null where the hole ends in the board. */
  behind: builders(z.string().nullable()),
});

/** What room beside an item is kept clear for. */
export const keepClearKinds = ['air', 'connector', 'control', 'tool'] as const;
export type KeepClearKind = (typeof keepClearKinds)[number];

/** Room that must stay clear in front of one side of an item, along the whole of that side. */
export const keepClearSchema = z.object({
  /** `connector`: for plugs, and for conductors to bend. `control`: for a hand. `tool`: straight, for set screws. */
  kind: builders(z.enum(keepClearKinds)),
  /** The side as it faces on the board, once the item is turned. */
  side: builders(edgeSchema),
  depthM: number,
});

export const planPlacementSchema = z.object({
  item: everyone(z.string()),
  /** Lower left corner of the turned footprint. */
  ...point,
  turnDeg: number,
  widthM: number,
  depthM: number,
  heightM: number,
  /** Height of its underside off the board. */
  raisedM: number,
  keepClear: z.array(keepClearSchema).default([]),
  chosen: builders(chosenSchema),
  score: builders(z.record(z.string(), z.number()).optional()),
});

/** One size of piece that is cut from the sheet of a board to lift something. */
export const riserPieceSchema = z.object({
  /** Board, what it carries, and its form: `board.amp-front.rail`. */
  id: name,
  carries: name,
  /** `rail`: laid flat in layers below two sides. `edge-rail`: a strip standing on its edge. `pad`: below a fixing. */
  form: builders(riserFormSchema),
  count: builders(z.int()),
  widthM: number,
  lengthM: number,
  thicknessM: number,
  /** Pieces that lie on each other at one place. */
  layers: builders(z.int()),
  /** From the shelf, at one place: spacers, washers, packing. */
  parts: z.array(z.object({ part: name, count: builders(z.int()) })).default([]),
  /** The height that all of it makes, and what nothing on the shelf fills. */
  makesM: number,
  packM: number,
  /** Hole for the fixing, through the middle; null where it is screwed through in place, or is not known. */
  holeM: orNull,
});

/** A stiffening rib as it is cut, fixed and counted. */
export const planRibSchema = z.object({
  id: name,
  face: builders(z.enum(ribFaces)),
  /** Its centre line, from the datum. */
  from: z.object(point),
  to: z.object(point),
  lengthM: number,
  /** Across it, and how far it stands out from the face. */
  widthM: number,
  heightM: number,
  joint: builders(z.enum(ribJoints)),
  sheet: name,
  material: name,
  thicknessM: number,
  sheetWidthM: number,
  sheetHeightM: number,
  sheetGrain: builders(sheetGrainSchema.nullable()),
  /** Strips that make its section: on edge beside each other, or flat on each other. None: that sheet does not make it. */
  form: builders(ribFormSchema),
  strips: builders(z.int()),
  cutWidthM: number,
  massKg: number,
  /** Room left between it and the panel behind, or the front of the space before it. */
  roomM: number,
  /** The screw that goes through the board into it, and how many; null where the catalogue has none that fits. */
  screw: z.object({ part: name, count: builders(z.int()), apartM: number }).nullable(),
  /** What it is glued with; null where it is not, or the catalogue has none. */
  glue: builders(z.string().nullable()),
  /** What it adds to the bending stiffness along its line; null where it can't be built so, and is not counted. */
  bendingNm2: orNull,
  /** Whether the job gives its ends, or they are as far apart as it is free. */
  ends: builders(chosenSchema),
});

export const planRouteSchema = z.object({
  wire: name,
  /** Every wire that lies on it, that one first: a pair or a cable runs together. */
  along: z.array(name),
  points: z.array(z.object(point)),
  lengthM: number,
  layer: builders(conductorRoleSchema),
  bends: builders(z.int()),
  /** Of all that lies on it together, and the radius that it is bent to at least; older plans lack both. */
  diameterM: orNull.optional(),
  bendRadiusM: orNull.optional(),
});

export const planBoardSchema = z.object({
  /** The customer sees the picture of the finished board: what it is called, and which parts stand on it. */
  id: everyone(z.string()),
  title: everyone(z.string()),
  space: name,
  spaceTitle: name,
  sheet: name,
  /** Whether the job gives the sheet, or leaves it open. */
  sheetChosen: builders(chosenSchema.default('given')),
  /** Size of the stock sheet that it is cut from. */
  sheetWidthM: number,
  sheetHeightM: number,
  material: name,
  thicknessM: number,
  /** Along which side of the stock sheet the grain of its face runs; null where it has none. */
  sheetGrain: builders(sheetGrainSchema.nullable().default(null)),
  /** Which way the grain has to run on the board; null for either. */
  grain: builders(z.enum(grainWays).nullable().default(null)),
  /** Whether the job writes it, or the stiffness of the board relies on it; null where it is open. */
  grainChosen: builders(chosenSchema.nullable().default(null)),
  /** How its edges are worked; null where they are left as sawn. Its size in metres, where it has one. */
  edgeProfile: z
    .object({ kind: builders(z.enum(edgeProfiles)), sizeM: orNull })
    .nullable()
    .default(null),
  outline: z.array(outlinePointSchema),
  cutouts: z.array(z.array(outlinePointSchema)),
  holes: z.array(holeSchema),
  areaM2: number,
  /** Mass of the bare board with its ribs, and of all that it carries. */
  massKg: number,
  loadedMassKg: number,
  centroid: z.object(point),
  /** Smallest upright rectangle round the outline. */
  widthM: number,
  heightM: number,
  narrowestWebM: orNull,
  sagM: orNull,
  firstModeHz: orNull,
  retentionG: orNull,
  /** Sag once its sheet has crept; null of a sheet that does not. */
  sagCreptM: orNull.default(null),
  /** Where the datum corner stands in the space, and the space itself, in the same axes. */
  datumInSpace: z.object(point),
  spaceOutline: z.array(z.object(point)),
  spaceDepthM: number,
  /** What the board takes of it, and of what: the part or rib that asks for most, none on a bare board. Older plans lack it. */
  depth: z
    .object({
      of: name.nullable(),
      spacerM: number,
      raisedM: number,
      heightM: number,
      roomM: number,
      totalM: number,
    })
    .optional(),
  obstacles: z.array(z.object({ id: name, ...point, widthM: number, heightM: number, standsOutM: number })),
  right: builders(directionSchema),
  upward: builders(directionSchema),
  fixings: z.array(
    z.object({
      id: name,
      ...point,
      part: name,
      point: name,
      spacerM: number,
      /** What it is tightened to, and what sets that limit; null where neither its maker nor its thread tells. */
      torqueNm: orNull.default(null),
      torqueBy: builders(jointPartSchema.nullable().default(null)),
      /** What makes its point where that is not there yet, the hole for it, and what lies behind. */
      made: z.object({ part: name.nullable(), holeM: orNull, behind: name, freeM: orNull }).optional(),
    }),
  ),
  placements: z.array(planPlacementSchema),
  /** What lifts items and the board itself, cut from the same sheet. */
  pieces: z.array(riserPieceSchema).default([]),
  ribs: z.array(planRibSchema).default([]),
  routes: z.array(planRouteSchema),
  crossings: builders(z.int()),
  /** Crossings of the first way to lay all wires, and the paths that were searched for to come to the last one. */
  firstCrossings: builders(z.int().default(0)),
  pathSearches: builders(z.int().default(0)),
  /**
   * The layouts that the search found, best first: fewer wires without a way, then fewer that don't reach, then fewer
   * cautions go before a lower score. The placements are those of the first one.
   */
  proposals: z.array(
    z.object({
      total: number,
      score: builders(z.record(z.string(), z.number())),
      wired: z.object({ wiresWithoutWay: number, wiresTooShort: number, cautions: number }).optional(),
      placements: z.array(z.object({ item: name, ...point, turnDeg: number })),
    }),
  ),
  /** Layouts that the search looked at; 0 where every place was given. */
  evaluations: builders(z.int()),
  /** Where wires leave the board, by wire. */
  exits: z.array(z.object({ wire: name, edge: name, ...point })),
});

/** An off-cut of a sheet on the shelf that pieces may be cut from; its sides as those of the whole sheet. */
export const planOffCutSchema = z.object({
  name,
  sheet: name,
  widthM: number,
  heightM: number,
  quantity: builders(z.int()),
});

export type PlanOffCut = z.output<typeof planOffCutSchema>;
export type PlanBoard = z.output<typeof planBoardSchema>;
export type PlanPlacement = z.output<typeof planPlacementSchema>;
export type KeepClear = z.output<typeof keepClearSchema>;
export type PlanRiserPiece = z.output<typeof riserPieceSchema>;
export type PlanRib = z.output<typeof planRibSchema>;
export type PlanRoute = z.output<typeof planRouteSchema>;
export type PlanHole = z.output<typeof holeSchema>;
export type OutlinePoint = z.output<typeof outlinePointSchema>;
