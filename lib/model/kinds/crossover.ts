import { z } from 'zod';
import { builders } from '../audience.ts';
import { playedBandField } from '../content/played-band.ts';
import { quantityWithin } from '../fields.ts';
import { rows } from '../short-forms/short-form.ts';
import { filterOrder } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import { speakerLoad } from './fields/bounds.ts';
import { equipmentBase } from './fields/equipment.ts';
import { equipmentKind, kindField } from './kind.ts';

/** A passive crossover: it stands between a channel and the speakers of its set, and parts the band among them. */
export const crossoverSchema = z.strictObject({
  kind: kindField('crossover'),
  ...equipmentBase,
  ways: section(
    rows(
      z.record(
        z.string(),
        builders(playedBandField, 'The band that it lets through to the speaker at these terminals.', {
          example: 'from 3 kHz',
        }),
      ),
    ),
    'What it gives at each pair of its outputs, by what the two names of the pair share.',
    { name: 'T', example: { W: 'up to 3 kHz', T: 'from 3 kHz' } },
  ),
  order: builders(
    filterOrder.default(1),
    'How steep its filters are: 1 is 6 dB per octave, 2 is 12 dB per octave.',
    { example: 2, leftOut: '1, the flattest, which counts on it least' },
  ),
  load: builders(
    speakerLoad,
    'The load that the amplifier sees at its input, with the speakers of its set at its outputs. Of a filter in the lead of one speaker, what it is in the band that it lets through.',
    { example: '4 ohm' },
  ),
  power: builders(
    quantityWithin('power', { above: 0, most: 20_000 }),
    'Power that it, with the speakers of its set, may take for long.',
    { example: '90 W' },
  ),
});

/** A filter in the lead of one speaker: from where it lets through, and how steep. */
export interface InLineFilter {
  readonly fromHz: number;
  readonly order: number;
}

/** What a crossover is that only keeps bass from one speaker; null for one that parts the band of its channel. */
export function inLineFilter({
  ways,
  order,
}: Pick<z.output<typeof crossoverSchema>, 'ways' | 'order'>): InLineFilter | null {
  const [only, second] = Object.values(ways);
  if (only?.fromHz === undefined || only.toHz !== undefined || second) return null;
  return { fromHz: only.fromHz, order };
}

/** It stands between coils and an amplifier, in no way of the 12 V network. */
export const crossover = equipmentKind('Passive crossovers', crossoverSchema, () => []);
