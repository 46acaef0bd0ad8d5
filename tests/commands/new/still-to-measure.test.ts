import { describe, expect, test } from 'vitest';
import { stillToMeasure } from '../../../lib/commands/new/vehicle/still-to-measure.ts';
import { vehicleSchema } from '../../../lib/model/content/vehicle.ts';
import { demoContent } from '../../plan/demo.ts';

const { parts, vehicles } = demoContent();
const deep = vehicleSchema.shape.places.unwrap().valueType.partial().parse({ depth: '40 mm' });
const [vehicle] = Object.values(vehicles);
if (!vehicle) throw new Error('The demo has a vehicle.');

type Place = (typeof vehicle.places)[string];

/** What is told of one place. */
const toldOf = (place: Partial<Place>) => {
  const any: Place = {
    title: 'Left kick panel',
    zone: 'cabin',
    side: 'left',
    opening: 'there',
    'lies-over': {},
  };
  const places = { 'left-kick-panel': { ...any, ...place } };
  return stillToMeasure({ ...vehicle, places }, parts).filter(
    (one) => one.includes('left-kick-panel') && !one.includes('a way to'),
  );
};

describe('a tape must still tell', () => {
  test('how far a place lies whose row of seats is told, and how deep it is', () => {
    expect(toldOf({ zone: 'cabin', row: 'front' })).toEqual([
      'tape: free depth and distance from the head of the listener of left-kick-panel',
    ]);
  });

  test('no distance of the place of a filter, and no depth in the engine bay', () => {
    expect(toldOf({ zone: 'cabin', ...deep })).toEqual([]);
    expect(toldOf({ zone: 'engine-bay' })).toEqual([]);
  });

  test('no openings of a space of which the walk told none', () => {
    const spaces = Object.fromEntries(
      Object.entries(vehicle.spaces).map(([id, space]) => [id, { ...space, openings: [] }]),
    );
    expect(stillToMeasure({ ...vehicle, spaces }, parts).join('\n')).not.toContain('openings');
  });
});
