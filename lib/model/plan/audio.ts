import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import {
  factoryEqualisingSchema,
  filterPassSchema,
  filterTypeSchema,
  inputVerdictSchema,
  outputFactSchema,
  outputFormSchema,
  polaritySchema,
  toneStateSchema,
} from '../vocabulary.ts';

const number = builders(z.number());
const orNull = builders(z.number().nullable());
const name = builders(z.string());

export const planFilterSchema = z.object({
  /** Terminal or pair that it stands before. */
  where: name,
  /** The packet tells which tones a speaker is given. */
  pass: everyone(filterPassSchema),
  type: builders(filterTypeSchema),
  order: number,
  cornerHz: everyone(z.number()),
  /** True of a passive one in a lead or a crossover, at which nothing is set. */
  inLead: builders(z.boolean().optional()),
});

/** An equaliser band or a boost in the path; null where its centre or its shape is not known. */
export const planPeakSchema = z.object({ where: name, centreHz: orNull, gainDb: number, q: orNull });

/** What one coil gets: for sure, and at most by the ratings of the amplifier. */
const coilPowerSchema = z.object({ coil: name, speaker: name, powerW: number, greatestPowerW: number });

/** One way of wiring the coils of a channel. */
export const planWiringSchema = z.object({
  text: name,
  loadOhm: number,
  mayDrive: builders(z.boolean()),
  powerW: orNull,
  coils: z.array(coilPowerSchema),
  /** Greatest over least power of a coil: 1 where all get the same. */
  unevenness: number,
  /** True for the way that the job is linked. */
  chosen: builders(z.boolean()),
});

/** The gain of a channel: what it is set for, and how far from clipping that is. RMS voltages at the terminals. */
export const planGainSchema = z.object({
  targetPowerW: number,
  targetV: number,
  clipV: number,
  toneMarginDb: number,
  fullScaleMarginDb: number,
  /** Level of the recorded tone against full scale. */
  toneLevelDb: number,
  overlapDb: number,
  /** Level of the path at the tone against its highest after commissioning; a plan of before has none. */
  pathDb: builders(z.number().optional()),
  /** How equalising and boosts stand while the gain is set. */
  state: builders(toneStateSchema.optional()),
});

export const planChannelSchema = z.object({
  /** `amp-front.1`, or `amp-front.1+2` bridged. */
  id: name,
  amplifier: name,
  positive: name,
  negative: name,
  bridgedWith: builders(z.string().optional()),
  /** Null where nothing is wired to it, or where the coils can't be reduced to one load. */
  loadOhm: orNull,
  /** What each single output sees: half the load where two are bridged. */
  outputLoadOhm: orNull,
  minimumOhm: number,
  /** The least that it sees over the heard band, where a filter in a lead lets a speaker in beside the others. */
  least: z.object({ ohm: number, atHz: number }).optional(),
  /** Null where the load is not known. */
  mayDrive: builders(z.boolean().nullable()),
  dcResistanceOhm: z.object({ fromOhm: number, toOhm: number }).nullable(),
  powerW: orNull,
  gainVoltageV: orNull,
  gain: planGainSchema.nullable(),
  toneHz: number,
  filters: z.array(planFilterSchema),
  /** Equalising and boosts in its path after commissioning. */
  peaks: z.array(planPeakSchema).default([]),
  /** How far below its full gain its speakers are to play, and the controls that set it. */
  level: z.object({ db: number, by: z.array(name) }).optional(),
  /** What turns its polarity over before it, such as `amp.PHASE`, where anything does; two of them cancel. */
  turnedBy: z.array(name).optional(),
  /** Ids of the speakers that it drives. */
  speakers: z.array(name),
  /** How the coils are joined, in words. */
  wiring: name,
  coils: z.array(coilPowerSchema),
  /** Ways of wiring the same coils: those that the amplifier may drive first, most power first; the chosen one is among them. */
  wirings: z.array(planWiringSchema),
  /** How many ways there are in all; null where there are too many to count. */
  wiringsInAll: orNull,
  wireLossDb: orNull,
  /** Load over what stands in series with it, at the speaker; null where no wire is known. */
  damping: orNull,
  /** How far its wire puts it below the channel of the same band that loses least. */
  belowDb: orNull,
  /** Level of its filters at each of the curves' frequencies; empty where it has none. */
  levelsDb: z.array(everyone(z.number())),
});

export const planSpeakerSchema = z.object({
  id: name,
  /** As it is set: where speakers share an output, half-way between what they ask for. */
  delayMs: everyone(z.number().nullable()),
  /** Whole samples of the processor. */
  delaySamples: orNull,
  /** As wired; opposed where its coils push against each other. */
  polarity: builders(z.enum(['normal', 'reversed', 'opposed', 'unwired'])),
  /** Coils that are wired the other way round; a plan of before does not name them. */
  reversedCoils: z.array(name).optional(),
  /** As mounted: a cone that is turned round moves the other way. */
  mounted: builders(polaritySchema),
  /** Why it is meant to be wired reversed; null where it is not. */
  reversedWhy: builders(z.string().nullable()),
  distanceM: orNull,
  channel: builders(z.string().nullable()),
  /** What its channel gives it; null where a passive crossover stands between, which shares it out by frequency. */
  powerW: orNull,
  /** What the way of a passive crossover that it hangs on lets through; left out where it hangs on none. */
  passive: z.array(planFilterSchema).optional(),
});

/** The one delay of speakers that hang on one output and ask for different ones. */
export const planSharedDelaySchema = z.object({
  /** Outputs that it is set at: of the processor, or the channel where none is before it. */
  outputs: z.array(name),
  delayMs: number,
  delaySamples: number,
  /** How far each speaker is off what it asks for, in time and in the way of the sound: above zero it comes late. */
  off: z.array(z.object({ speaker: name, askedMs: number, offMs: number, offM: number })),
});

/** One input on the way of the signal, and what arrives there. */
export const planInputSchema = z.object({
  input: name,
  output: name,
  wire: name,
  level: builders(z.enum(['high', 'low'])),
  /** Greatest clean voltage of the output. */
  sourceV: orNull,
  /** The rated power that it follows from, where nobody measured or stated it. */
  sourceRated: z.object({ powerW: number, loadOhm: number }).optional(),
  /** Least voltage for full output, and the most that the input takes. */
  leastV: orNull,
  greatestV: orNull,
  headroomDb: orNull,
  reserveDb: orNull,
  verdict: builders(inputVerdictSchema),
});

/** What one output of the source that came with the vehicle gives; null where it is not known. */
export const planOutputSchema = z.object({
  /** `source-unit.SP1`. */
  id: name,
  item: name,
  /** Terminals of the job's devices that it is linked to. */
  feeds: z.array(name),
  form: builders(outputFormSchema.nullable()),
  fromHz: orNull,
  toHz: orNull,
  polarity: builders(polaritySchema.nullable()),
  cleanVoltageV: orNull,
  offsetV: orNull,
  equalising: builders(factoryEqualisingSchema.nullable()),
  loadSensing: builders(z.boolean().nullable()),
  noiseCancelling: builders(z.boolean().nullable()),
  chimes: builders(z.boolean().nullable()),
  /** What has to be found out before the plan stands; empty for an output that feeds nothing. */
  missing: builders(z.array(outputFactSchema)),
});

/** The sum of the ways that hand over to each other, each taken as flat, equally loud and in time. */
export const planSumSchema = z.object({
  /** The channel that plays highest. */
  id: name,
  /** From the highest down. */
  channels: z.array(name),
  levelsDb: z.array(number),
  /** Where one way hands over to the next: the level of the sum there, and of the louder of the two alone. */
  handovers: z.array(
    z.object({ upper: name, lower: name, frequencyHz: number, sumDb: number, louderDb: number }),
  ),
});

export const planAudioSchema = z.object({
  channels: z.array(planChannelSchema),
  speakers: z.array(planSpeakerSchema),
  sharedDelays: z.array(planSharedDelaySchema).default([]),
  inputs: z.array(planInputSchema),
  outputs: z.array(planOutputSchema),
  /** Sampled responses for drawing: the frequencies of every `levelsDb`, six an octave, and the sums. */
  curves: z.object({ frequenciesHz: z.array(everyone(z.number())), sums: z.array(planSumSchema) }),
});

export type PlanAudio = z.output<typeof planAudioSchema>;
export type PlanChannel = z.output<typeof planChannelSchema>;
export type PlanSpeaker = z.output<typeof planSpeakerSchema>;
export type PlanSharedDelay = z.output<typeof planSharedDelaySchema>;
export type PlanFilter = z.output<typeof planFilterSchema>;
export type PlanPeak = z.output<typeof planPeakSchema>;
export type PlanWiring = z.output<typeof planWiringSchema>;
export type PlanGain = z.output<typeof planGainSchema>;
export type PlanInput = z.output<typeof planInputSchema>;
export type PlanOutput = z.output<typeof planOutputSchema>;
export type PlanSum = z.output<typeof planSumSchema>;
