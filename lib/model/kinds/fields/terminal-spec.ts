import { z } from 'zod';
import { builders } from '../../audience.ts';
import { countFromOne, extent, quantity, quantityWithin, text, wireSize } from '../../fields.ts';
import { span } from '../../short-forms/short-form.ts';
import { jointSchema, panelSchema, studSchema, terminalRoleSchema } from '../../vocabulary.ts';
import { section } from '../../writing/field-text.ts';
import { signalVoltage, stripLength, tabWidth } from './bounds.ts';
import { speakerLevelField } from './speaker-level.ts';

/** One terminal of a part. */
export const terminalSpecSchema = z.strictObject({
  mark: builders(
    text('+12V').optional(),
    'What its maker printed beside it, where that is not its name here; `none` where nothing is printed, and drawings number it.',
    { example: '+12V', leftOut: 'its name is what is printed' },
  ),
  role: builders(
    terminalRoleSchema,
    'What the terminal is for. Which links fit it, which rules hold and where it is drawn follow from it.',
    { example: 'supply-positive' },
  ),
  panel: builders(
    panelSchema.optional(),
    'The panel that it lies on: an edge of the part before any turn, or the face away from the board.',
    { example: 'right', picture: 'panels', leftOut: 'the lower edge' },
  ),
  at: builders(
    quantity('length').optional(),
    'Where it lies along its panel: from the left end of an upper or lower edge, from the lower end of a left or right one.',
    { example: '5/8 in', picture: 'panels', leftOut: 'the middle of its panel' },
  ),
  joint: builders(
    jointSchema.default('plug'),
    'How a conductor is held at it. What goes on the end of the wire follows from it.',
    { example: 'set-screw' },
  ),
  takes: section(
    span(
      z.strictObject({
        from: builders(wireSize, 'The thinnest conductor.', { example: '8 AWG' }),
        to: builders(wireSize, 'The thickest conductor.', { example: '4 AWG' }),
      }),
    ).optional(),
    'The smallest and the largest conductor that its maker allows in it.',
  ),
  lead: builders(
    wireSize.optional(),
    'Of a lead that its maker supplies, or of the lead at a plug of the vehicle: the size of its conductor. The splice that joins a wire to it follows from it.',
    {
      example: '20 AWG',
      leftOut:
        'it counts as {lead-untold} AWG, on a feed or a ground as thick as its wire, and the wire list says so',
    },
  ),
  'lead-length': builders(
    extent.optional(),
    'How long that lead is, from the part to where a wire is joined to it.',
    { example: '24 in', leftOut: 'nothing is told of it' },
  ),
  stud: builders(studSchema.optional(), 'Size of its stud or bolt. The hole of a lug follows from it.', {
    example: 'M8',
  }),
  tab: builders(
    tabWidth.optional(),
    'Of a blade tab: how wide it is. A receptacle of that width goes on it, and no other.',
    { example: '6.3 mm', leftOut: 'no width is held against its receptacle' },
  ),
  torque: builders(
    quantityWithin('torque', { above: 0, most: 100 }).optional(),
    'What its maker asks its screw or nut to be tightened to.',
    { example: '4 N m' },
  ),
  strip: builders(stripLength.optional(), 'How much insulation is stripped for it.', { example: '5/8 in' }),
  conductors: builders(countFromOne.default(1), 'How many conductors its maker allows in it.'),
  ferrule: builders(
    z.enum(['required', 'allowed', 'no']).default('allowed'),
    'Whether its maker asks for a ferrule on a stranded conductor, allows one, or forbids it.',
    { example: 'allowed' },
  ),
  'ferrule-most': builders(
    wireSize.optional(),
    'The largest ferrule that its maker allows in it, by the conductor that it is named for, where that is told apart from bare conductors.',
    { example: '16 mm2', leftOut: 'a ferrule named above what it takes is tried in it before it is crimped' },
  ),
  current: builders(
    quantity('current').optional(),
    'The greatest current that it gives or carries: of a turn-on output, of a way of a block.',
    { example: '300 mA' },
  ),
  signal: builders(
    signalVoltage.optional(),
    'Of an output, its greatest clean voltage; of an input, the voltage for full output. RMS.',
    { example: '4 V' },
  ),
  'signal-range': section(
    span(
      z.strictObject({
        from: builders(signalVoltage.optional(), 'The least voltage that still gives full output.', {
          example: '0.25 V',
          leftOut: 'whether the source reaches full output is not held against it',
        }),
        to: builders(signalVoltage, 'The most that it takes without clipping.', { example: '6 V' }),
      }),
    ).optional(),
    'Of an input: from the least voltage for full output, gain fully up, to the most that it takes without clipping. RMS.',
  ),
  'speaker-level': speakerLevelField,
});
export type TerminalSpec = z.output<typeof terminalSpecSchema>;
export type TerminalSpecs = Readonly<Record<string, TerminalSpec>>;
