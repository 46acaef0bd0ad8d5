import { z } from 'zod';
import { builders } from '../audience.ts';

const number = builders(z.number());
const orNull = builders(z.number().nullable());
const name = builders(z.string());

export const planFilterSchema = z.object({
  /** Terminal or pair that it stands before. */
  where: name,
  pass: builders(z.enum(['high-pass', 'low-pass', 'subsonic'])),
  type: builders(z.enum(['butterworth', 'linkwitz-riley', 'bessel'])),
  order: number,
  cornerHz: number,
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
  minimumOhm: number,
  dcResistanceOhm: z.object({ fromOhm: number, toOhm: number }).nullable(),
  powerW: orNull,
  gainVoltageV: orNull,
  toneHz: number,
  filters: z.array(planFilterSchema),
  /** Ids of the speakers that it drives. */
  speakers: z.array(name),
  /** How the coils are joined, in words. */
  wiring: name,
  wireLossDb: orNull,
});

export const planSpeakerSchema = z.object({
  id: name,
  delayMs: orNull,
  polarity: builders(z.enum(['normal', 'reversed', 'unwired'])),
  distanceM: orNull,
  channel: builders(z.string().nullable()),
  powerW: orNull,
});

export const planAudioSchema = z.object({
  channels: z.array(planChannelSchema),
  speakers: z.array(planSpeakerSchema),
});

export type PlanAudio = z.output<typeof planAudioSchema>;
export type PlanChannel = z.output<typeof planChannelSchema>;
export type PlanSpeaker = z.output<typeof planSpeakerSchema>;
export type PlanFilter = z.output<typeof planFilterSchema>;
