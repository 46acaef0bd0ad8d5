import { z } from 'zod';
import { builders } from '../../audience.ts';
import { quantityWithin } from '../../fields.ts';

/** What is stripped for a terminal. */
export const stripLength = quantityWithin('length', { above: 0, most: 0.06 });
/** A blade tab that a receptacle is pushed on, across. */
export const tabWidth = quantityWithin('length', { least: 0.002, most: 0.01 });
const airGap = quantityWithin('length', { least: 0, most: 0.3 });
/** From the weakest line level to the outputs of the strongest source. */
export const signalVoltage = quantityWithin('voltage', { least: 0.01, most: 50 });
/** What a filter or a boost works at. */
export const audible = quantityWithin('frequency', { least: 5, most: 40_000 });
/** What a boost raises or takes back at most. */
export const boostLevel = quantityWithin('level', { least: -30, most: 30 });
/** Of an output: a meter of a device seldom reads below -100 dB. */
export const outputLevel = quantityWithin('level', { least: -120, most: 30 });

/** What a channel may be loaded with: a coil, or several together. */
export const speakerLoad = quantityWithin('resistance', { least: 0.25, most: 64 });

/** Output over input: above nothing, at most the whole. */
export const efficiency = quantityWithin('ratio', { above: 0, most: 1 });

/** The air that each edge asks for, and the face. */
export const edgeLengths = z.strictObject({
  left: builders(airGap.optional(), 'Air at the left edge.', { example: '1 in', picture: 'footprint' }),
  right: builders(airGap.optional(), 'Air at the right edge.', { example: '1 in', picture: 'footprint' }),
  top: builders(airGap.optional(), 'Air at the upper edge.', { example: '2 in', picture: 'footprint' }),
  bottom: builders(airGap.optional(), 'Air at the lower edge.', { example: '1 in', picture: 'footprint' }),
  face: builders(airGap.optional(), 'Air over it, away from the board.', { example: '1 1/2 in' }),
});
