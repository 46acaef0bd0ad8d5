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
export type Holding = z.infer<typeof holdingSchema>;

/** How an input takes what arrives at it: `unknown` where figures are missing. */
export const inputVerdictSchema = z.enum(['within', 'too-low', 'too-high', 'unknown']);
export type InputVerdict = z.infer<typeof inputVerdictSchema>;

/** Sides of the vehicle, seen from the driver's seat looking forward. */
export const vehicleSideSchema = z.enum(['left', 'right', 'middle']);
export type VehicleSide = z.infer<typeof vehicleSideSchema>;

/** The side that counts for what the vehicle came with until somebody tells it. */
export const untoldSide: VehicleSide = 'middle';

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

/** Where a device loses too much: on its ground side alone, or on feed and ground together. */
export const lossSideSchema = z.enum(['ground', 'both']);
export type LossSide = z.infer<typeof lossSideSchema>;

/** Who brings a device that is none of the shop's. */
export const bringerSchema = z.enum(['customer']);

/** Layers of the order of work: what is done there, and the conductors that are laid one kind after the other. */
export const workLayerSchema = z.enum([
  'prepare',
  'board',
  'place',
  ...conductorRoleSchema.options,
  'dress',
  'run',
  'test',
  'set-up',
  'hand-over',
]);
export type WorkLayer = z.infer<typeof workLayerSchema>;

/** What is written for the mark of a terminal on which its maker printed none. */
export const unmarkedTerminal = 'none';

/** Which of the two conductors of a speaker one is. */
export const conductorSignSchema = z.enum(['+', '-']);
export type ConductorSign = z.infer<typeof conductorSignSchema>;

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
  'supplied-lead',
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
  'door',
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
export type FilterType = z.infer<typeof filterTypeSchema>;
/** The stop of a knob at which its OFF lies: fully counter-clockwise, or fully clockwise. */
export const offStopSchema = z.enum(['lowest', 'highest']);
export type OffStop = z.infer<typeof offStopSchema>;
/** Filters as they are called after whom they are called. */
export const filterNames = {
  butterworth: 'Butterworth',
  'linkwitz-riley': 'Linkwitz-Riley',
  bessel: 'Bessel',
} as const satisfies Record<FilterType, string>;
/** Slopes of 6 dB per octave each. */
export const filterOrder = z
  .int({ error: ({ input }) => orderFault(input) })
  .min(1)
  .max(8);

function orderFault(input: unknown): string {
  const [, slope] = (typeof input === 'string' && /^(\d+) ?dB\b/i.exec(input.trim())) || [];
  const order = Number(slope) / 6;
  const isOrder = Number.isInteger(order) && order >= 1 && order <= 8;
  return `counts slopes of 6 dB per octave: write ${isOrder ? order : 'a whole number, such as 2 for 12 dB per octave'}`;
}

/** Fuse forms; made ratings and interrupting currents stand in the tables. */
export const fuseFormSchema = z.enum(fuseFormIds);
export type FuseForm = z.infer<typeof fuseFormSchema>;

const onePerLink =
  'names one colour: leave it out, and plus and minus of a pair take two colours of the shelf; or write a link for each of the two, with a colour: or a wire: of its own';

/** Colours by the letters of IEC 60757; a stripe follows a slash, as in `WH/BK`. */
export const colourSchema = wireColour();
/** Of a link: a list of two would be those of a pair. */
export const linkColourSchema = wireColour(onePerLink);

function wireColour(ofList?: string) {
  return z
    .string({ error: ({ input }) => (Array.isArray(input) ? ofList : undefined) })
    .regex(
      /^(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|TQ|CLR)(\/(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|TQ))?$/,
      'is not a wire colour: write the letters of IEC 60757, such as RD, or WH/BK for white with a black stripe',
    )
    .meta({ examples: ['RD', 'WH/BK'] });
}

export const conductorMaterialSchema = z.enum(['copper', 'copper-clad-aluminium']);
export type ConductorMaterial = z.infer<typeof conductorMaterialSchema>;

export const studSchema = z.enum(['M4', 'M5', 'M6', 'M8', 'M10', 'M12']);
export type Stud = z.infer<typeof studSchema>;

/** Whether the job says it, or the plan chose it. */
export const chosenSchema = z.enum(['given', 'computed']);
export type Chosen = z.infer<typeof chosenSchema>;

/** Who brings a thing: the job, or the vehicle as it came. */
export const originSchema = z.enum(['job', 'vehicle']);
export type Origin = z.infer<typeof originSchema>;

/** Where a piece of work is done. */
export const workPlaceSchema = z.enum(['board', 'vehicle', 'both']);
export type WorkPlace = z.infer<typeof workPlaceSchema>;

/** Which way round a speaker, a coil or an output is. */
export const polaritySchema = z.enum(['normal', 'reversed']);
export type Polarity = z.infer<typeof polaritySchema>;

/** How an output of a factory radio carries its sound. */
export const outputFormSchema = z.enum(['analogue', 'digital']);

/** What a factory radio does to the tone of an output. */
export const factoryEqualisingSchema = z.enum(['none', 'fixed', 'moves-with-level']);

/** What has to be known of an output before anything is joined to it. */
export const outputFactSchema = z.enum([
  'bandwidth',
  'polarity',
  'greatest clean voltage',
  'direct-current offset',
  'equalising that moves with the level',
  'load sensing',
  'noise cancelling',
  'chimes',
]);
export type OutputFact = z.infer<typeof outputFactSchema>;

/** In which state of the equalising a gain is set. */
export const toneStateSchema = z.enum(['as-loaded', 'equalising-flat']);
export type ToneState = z.infer<typeof toneStateSchema>;

/** What takes up the kick of a relay's coil. */
export const suppressionSchema = z.enum(['diode', 'resistor', 'none']);

/** What cools a side of a device. */
export const coolingSchema = z.enum(['fins', 'fan']);

/** Along which side of a stock sheet its grain runs. */
export const sheetGrainSchema = z.enum(['width', 'height']);

/** How a piece of sheet raises what lies on it: flat rails, a rail on its edge, a pad below a fixing. */
export const riserFormSchema = z.enum(['rail', 'edge-rail', 'pad']);
export type RiserForm = z.infer<typeof riserFormSchema>;

/** How the strips of a rib lie. */
export const ribFormSchema = z.enum(['on-edge', 'flat']);
export type RibForm = z.infer<typeof ribFormSchema>;

/** The part of a fixing's joint that gives first. */
export const jointPartSchema = z.enum(['bolt', 'insert', 'board']);
export type JointPart = z.infer<typeof jointPartSchema>;

/** How a shop measures, and what it prints on. */
export const unitsSchema = z.enum(['inch', 'millimetre']);
export type Units = z.infer<typeof unitsSchema>;
export const paperSchema = z.enum(['letter', 'a4']);
/** A larger sheet, for a drawing that the usual one can't take as a whole. */
export const largerPaperSchema = z.enum(['tabloid', 'a3']);

/** How far a job is. */
export const jobStatusSchema = z.enum(['draft', 'released', 'installed', 'superseded']);

/** The pairs of outputs of a source, in the order in which they are numbered where nothing tells what one carries. */
export const signalPairSchema = z.enum(['front', 'rear', 'bass']);
export type SignalPair = z.infer<typeof signalPairSchema>;

/** What one output of a source carries. */
export const carriedSchema = z.enum([
  'front-left',
  'front-right',
  'rear-left',
  'rear-right',
  'bass-left',
  'bass-right',
]);
export type Carried = z.infer<typeof carriedSchema>;

/** Rows of seats. */
export const rowSchema = z.enum(['front', 'rear']);
export type Row = z.infer<typeof rowSchema>;

/** How what lies on the shelf is counted: by the piece, or by the metre that is cut from a reel. */
export const shelfUnitSchema = z.enum(['piece', 'm']);
export type ShelfUnit = z.output<typeof shelfUnitSchema>;

/** What an end is given whose ferrule turns out too wide: nothing, or a pin adapter where it must not go in bare. */
export const ifTooWideSchema = z.enum(['bare', 'pin-adapter']);
export type IfTooWide = z.infer<typeof ifTooWideSchema>;
