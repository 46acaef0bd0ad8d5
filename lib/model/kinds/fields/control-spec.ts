import { z } from 'zod';
import { builders } from '../../audience.ts';
import { positiveNumber, quantity, text } from '../../fields.ts';
import { names, shortened, span } from '../../short-forms/short-form.ts';
import {
  filterOrder,
  filterPassSchema,
  filterTypeSchema,
  offStopSchema,
  panelSchema,
} from '../../vocabulary.ts';
import { section } from '../../writing/field-text.ts';
import { audible, boostLevel, outputLevel } from './bounds.ts';

/** The filter that a control sets. Its shape by type and order; a knob that only moves the corner of a switch has none. */
const controlFilterSchema = z.strictObject({
  type: builders(filterTypeSchema.optional(), 'The shape of the filter.', { example: 'butterworth' }),
  order: builders(filterOrder.optional(), 'Its order: 1 is 6 dB per octave, 4 is 24 dB per octave.', {
    example: 2,
  }),
  passes: section(
    z.record(z.string(), builders(filterPassSchema)).optional(),
    'Of a switch: what each of its positions passes. A position that is not named lets everything through.',
    { name: 'HPF' },
  ),
  corner: builders(
    audible.optional(),
    'Of a switch without a knob for it: the frequency at which it always cuts.',
    { example: '80 Hz' },
  ),
  pass: builders(
    filterPassSchema.optional(),
    'Of a knob with a filter of its own, which is always in the path: what it passes.',
    { example: 'low-pass' },
  ),
  range: section(
    span(
      z.strictObject({
        from: builders(audible, 'The lowest corner.', { example: '50 Hz' }),
        to: builders(audible, 'The highest corner.', { example: '250 Hz' }),
      }),
    ).optional(),
    'Of a knob: its corner at one stop, and at the other.',
  ),
  off: builders(
    offStopSchema.optional(),
    'Of a knob with a filter of its own whose turn ends in OFF: the stop at which it lies there, `lowest` fully counter-clockwise, `highest` fully clockwise. Its state is then written OFF.',
    { example: 'highest', leftOut: 'it always filters' },
  ),
});

/** How far the level of an output goes. */
const controlLevelSchema = z.strictObject({
  range: section(
    span(
      z.strictObject({
        from: builders(outputLevel, 'The lowest level above silence.', { example: '-12 dB' }),
        to: builders(outputLevel, 'The highest level.', { example: '0 dB' }),
      }),
    ),
    'How far it goes. What a group of speakers is to play at lies within it.',
  ),
});

/** What a boost control raises: the level about one frequency. */
const controlBoostSchema = z.strictObject({
  centre: builders(audible, 'The frequency about which it raises the level.', { example: '45 Hz' }),
  range: section(
    span(
      z.strictObject({
        from: builders(boostLevel, 'At its lower stop.', { example: '0 dB' }),
        to: builders(boostLevel, 'At its upper stop.', { example: '12 dB' }),
      }),
    ),
    'What it raises, from one stop to the other.',
  ),
  q: builders(positiveNumber.optional(), 'Its sharpness, as its maker gives it.', { example: 1.4 }),
});

/** One knob, switch or slide of a part. */
export const controlSpecSchema = shortened(
  z.strictObject({
    what: builders(
      z.enum([
        'gain',
        'level',
        'crossover-mode',
        'crossover',
        'boost',
        'input-mode',
        'phase',
        'subsonic',
        'turn-on-mode',
        'ground-mode',
        'other',
      ]),
      'What the control does: `gain` is set with a meter, `level` is that of outputs in dB, as in the menu of a processor.',
      { example: 'gain' },
    ),
    form: builders(z.enum(['knob', 'switch', 'slide', 'menu']), 'What a hand finds there.', {
      example: 'knob',
    }),
    panel: builders(
      panelSchema,
      'The panel that it lies on: an edge of the part before any turn, or the face away from the board.',
      { example: 'left', picture: 'panels' },
    ),
    at: builders(quantity('length').optional(), 'Where it lies along its panel, measured as terminals are.', {
      example: '4 5/8 in',
      picture: 'panels',
    }),
    positions: builders(
      z.array(text('LPF')).optional(),
      'The positions of a switch, in the order in which the panel presents them.',
      { example: ['FULL', 'HPF', 'LPF'] },
    ),
    automatic: builders(
      z.array(text('AUTO')).optional(),
      'Of a switch for the turn-on: its positions in which the device turns itself on, by signal or by offset.',
      { example: ['AUTO'] },
    ),
    hears: section(
      z.record(z.string(), builders(names(z.array(text('IN1')).min(1)))).optional(),
      'Of a switch for inputs: the inputs that it lets through in each of its positions, by terminal or pair.',
      {
        name: 'LINE',
        example: { LINE: ['IN1', 'IN2'], HIGH: ['HIGH1', 'HIGH2'] },
        leftOut:
          'where a part takes both line and speaker level, LINE, LOW and RCA hear its line inputs, HIGH and SPEAKER those for speaker level',
      },
    ),
    reverses: builders(
      z.array(text('180')).optional(),
      'Of a switch for the phase: its positions in which it turns the polarity over.',
      { example: ['180'], leftOut: 'the position 180; of two others the one that is not safe' },
    ),
    safe: builders(
      text('fully counter-clockwise'),
      'The state in which nothing can come to harm at first power-up.',
      { example: 'fully counter-clockwise' },
    ),
    why: builders(
      text('no signal passes until the gain is set with a meter'),
      'Why that state is the safe one. It is printed beside the preset.',
      { example: 'no signal passes until the gain is set with a meter' },
    ),
    channels: builders(
      names(z.array(text('1')).min(1)).optional(),
      'Names of the channels of its amplifier that it acts on; of another device, of its outputs.',
      { example: ['1', '2'], leftOut: 'all of them' },
    ),
    filter: section(
      controlFilterSchema.optional(),
      'The filter that it sets. A knob that only moves the corner of a switch gives its range alone. What no control and no `filter-orders:` tells of, the part does not make.',
      { example: { range: { from: '50 Hz', to: '250 Hz' } } },
    ),
    boost: section(controlBoostSchema.optional(), 'What a boost control raises.'),
    level: section(controlLevelSchema.optional(), 'Of a level control: how far it goes.', {
      example: { range: { from: '-12 dB', to: '0 dB' } },
    }),
    final: builders(
      text('OPEN').optional(),
      'Its state after commissioning, where neither a reading nor a filter of the job decides.',
      { example: 'OPEN' },
    ),
  }),
  { form: 'control' },
);
export type ControlSpec = z.output<typeof controlSpecSchema>;
export type ControlSpecs = Readonly<Record<string, ControlSpec>>;
