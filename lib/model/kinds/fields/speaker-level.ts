import { z } from 'zod';
import { builders } from '../../audience.ts';
import { section } from '../../writing/field-text.ts';
import { signalVoltage } from './bounds.ts';

/** What a line input takes of a speaker output, by a lead that its maker supplies. */
export const speakerLevelField = section(
  z
    .strictObject({
      to: builders(signalVoltage, 'The most that it takes without clipping. RMS.', { example: '12 V' }),
      senses: builders(
        z.boolean().default(false),
        'Whether the device turns itself on when it senses a speaker output there.',
        { example: true },
      ),
    })
    .optional(),
  'Of a line input that also takes speaker level, by a lead that its maker supplies with it. A job uses it so by `speaker-level:` of the device.',
  { leftOut: 'it takes line level alone' },
);
