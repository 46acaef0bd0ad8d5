import fc from 'fast-check';
import type { SampleShape } from './sample-shape.ts';

/** Made-up jobs of every size that a shop may meet. */
export const arbitraryShape: fc.Arbitrary<SampleShape> = fc.record({
  amplifiers: fc.array(fc.integer({ min: 1, max: 8 }), { minLength: 1, maxLength: 3 }),
  processor: fc.boolean(),
  secondBattery: fc.boolean(),
  boardWidthM: fc.double({ min: 0.3, max: 1.6, noNaN: true }),
  boardHeightM: fc.double({ min: 0.25, max: 0.8, noNaN: true }),
  paper: fc.constantFrom('letter', 'a4'),
  units: fc.constantFrom('inch', 'millimetre'),
  released: fc.boolean(),
  unsolved: fc.boolean(),
  longNames: fc.boolean(),
});
