import { z } from 'zod';
import { fuseFormIds } from './tables/fuse-forms.ts';

/** Edges of a footprint or of a board, seen from the mounting side, before any turn. */
export const edgeSchema = z.enum(['left', 'right', 'top', 'bottom']);
export type Edge = z.infer<typeof edgeSchema>;

/** Where a panel of a part lies: on one of its edges, or on the face away from the board. */
export const panelSchema = z.enum(['left', 'right', 'top', 'bottom', 'face']);
export type Panel = z.infer<typeof panelSchema>;

/** What holds a part on a board beside screws through its own holes. */
export const holdingSchema = z.enum(['strap', 'bracket', 'clamp', 'tape', 'hook-and-loop']);

/** Sides of the vehicle, seen from the driver's seat looking forward. */
export const vehicleSideSchema = z.enum(['left', 'right', 'middle']);
export type VehicleSide = z.infer<typeof vehicleSideSchema>;

/** Directions in the vehicle, for the arrows on drawings. */
export const directionSchema = z.enum(['front', 'rear', 'left', 'right', 'up', 'down']);
export type Direction = z.infer<typeof directionSchema>;

/** What a terminal of a part is for. */
export const terminalRoleSchema = z.enum([
  'source-positive',
  'source-negative',
  'supply-positive',
  'supply-negative',
  'feed-in',
  'feed-out',
  'ground-bar',
  'body',
  'turn-on-in',
  'turn-on-out',
  'signal-in',
  'signal-out',
  'speaker-out-positive',
  'speaker-out-negative',
  'speaker-in-positive',
  'speaker-in-negative',
  'coil-positive',
  'coil-negative',
  'control-line',
  'sense',
  'relay-coil',
  'relay-contact',
]);
export type TerminalRole = z.infer<typeof terminalRoleSchema>;

/** What a conductor carries. Decides its layer on the board, its line type and its place in the order of work. */
export const conductorRoleSchema = z.enum(['power', 'ground', 'speaker', 'signal', 'turn-on', 'control']);
export type ConductorRole = z.infer<typeof conductorRoleSchema>;

/** How a conductor is held at a terminal. */
export const jointSchema = z.enum([
  'set-screw',
  'stud',
  'screw-clamp',
  'blade-tab',
  'plug',
  'phono',
  'binding-post',
  'post-clamp',
  'body-bolt',
  'solder',
]);
export type Joint = z.infer<typeof jointSchema>;

/** Kinds of zone that a run passes. Their ambients are house rules. */
export const zoneKindSchema = z.enum([
  'engine-bay',
  'near-exhaust',
  'bulkhead',
  'sill',
  'under-carpet',
  'cabin',
  'in-sight',
  'dash-top',
  'cargo',
  'roof',
  'underbody',
]);
export type ZoneKind = z.infer<typeof zoneKindSchema>;

/** How a device draws current as its voltage falls. */
export const supplyTypeSchema = z.enum(['regulated', 'unregulated', 'constant-current', 'resistance']);
export type SupplyType = z.infer<typeof supplyTypeSchema>;

/** What a filter lets through; a subsonic filter is a high-pass below the band of a subwoofer. */
export const filterPassSchema = z.enum(['high-pass', 'low-pass', 'subsonic']);
export type FilterPass = z.infer<typeof filterPassSchema>;
export const filterTypeSchema = z.enum(['butterworth', 'linkwitz-riley', 'bessel']);
/** Slopes of 6 dB per octave each. */
export const filterOrder = z.int().min(1).max(8);

/** Fuse forms; made ratings and interrupting currents stand in the tables. */
export const fuseFormSchema = z.enum(fuseFormIds);
export type FuseForm = z.infer<typeof fuseFormSchema>;

/** Colours by the letters of IEC 60757; a stripe follows a slash, as in `WH/BK`. */
export const colourSchema = z
  .string()
  .regex(
    /^(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|TQ|CLR)(\/(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|TQ))?$/,
    'is not a wire colour: write the letters of IEC 60757, such as RD, or WH/BK for white with a black stripe',
  )
  .meta({ examples: ['RD', 'WH/BK'] });

export const conductorMaterialSchema = z.enum(['copper', 'copper-clad-aluminium']);
export type ConductorMaterial = z.infer<typeof conductorMaterialSchema>;

export const studSchema = z.enum(['M4', 'M5', 'M6', 'M8', 'M10', 'M12']);
export type Stud = z.infer<typeof studSchema>;
