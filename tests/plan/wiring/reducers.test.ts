import { describe, expect, test } from 'vitest';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { reducerFor, takesReducer } from '../../../lib/plan/wiring/reducers.ts';
import { smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { addParts } from '../shop-changes.ts';

const reducer = (id: string, takes: string, pin: string, more = '') =>
  `${id}: { kind: terminal, title: Reducer, form: reducer, takes: { from: ${takes}, to: ${takes} }, pin: ${pin}${more} }`;
const partsWith = (...lines: readonly string[]) => jobOf(smallShop(addParts(...lines))).parts;
const port = (from: string, to: string, joint: 'set-screw' | 'screw-clamp' | 'stud' = 'set-screw') => {
  return { joint, takes: { from: awgSize(from), to: awgSize(to) } };
};
const mm2 = (awg: string) => awgSize(awg).areaMm2;

describe('a reducer', () => {
  const parts = partsWith(
    reducer('r0', '1/0 AWG', '4 AWG'),
    reducer('r2', '2 AWG', '8 AWG', ', strip: 12 mm'),
  );

  test('brings a conductor that is too thick into a port that takes its pin', () => {
    expect(reducerFor(parts, mm2('1/0'), port('8', '4'))).toMatchObject({
      part: 'r0',
      pin: { label: '4 AWG' },
      stripM: null,
    });
    expect(reducerFor(parts, mm2('2'), port('8', '4'))).toMatchObject({ part: 'r2', stripM: 0.012 });
  });

  test('is none for a conductor that goes in by itself, areas within a tenth of a per cent being the same', () => {
    expect(reducerFor(parts, mm2('4'), port('8', '4'))).toBeNull();
    expect(reducerFor(parts, mm2('1/0'), port('8', '1/0'))).toBeNull();
    expect(reducerFor(parts, mm2('1/0') * 1.0009, port('8', '1/0'))).toBeNull();
  });

  test('must be made for the conductor, neither thinner nor thicker', () => {
    expect(reducerFor(parts, mm2('1'), port('8', '4'))).toBeNull();
    expect(reducerFor(parts, mm2('2/0'), port('8', '4'))).toBeNull();
    expect(reducerFor(parts, mm2('1/0') * 0.9995, port('8', '4'))?.part).toBe('r0');
    expect(reducerFor(parts, mm2('1/0') * 1.0005, port('8', '4'))?.part).toBe('r0');
  });

  test('must have a pin that the port takes, neither too thick nor too thin', () => {
    expect(reducerFor(parts, mm2('1/0'), port('10', '6'))).toBeNull();
    expect(reducerFor(parts, mm2('2'), port('6', '4'))).toBeNull();
    expect(reducerFor(parts, mm2('2'), port('8', '6'))?.part).toBe('r2');
  });

  test('goes into a joint that clamps, and into no other', () => {
    expect(reducerFor(parts, mm2('1/0'), port('8', '4', 'screw-clamp'))?.part).toBe('r0');
    expect(reducerFor(parts, mm2('1/0'), port('8', '4', 'stud'))).toBeNull();
    expect(reducerFor(parts, mm2('1/0'), undefined)).toBeNull();
    expect(reducerFor(parts, mm2('1/0'), { joint: 'set-screw' })).toBeNull();
    expect([takesReducer('set-screw'), takesReducer('screw-clamp'), takesReducer('stud')]).toEqual([
      true,
      true,
      false,
    ]);
  });

  test('is the one with the thickest pin of several, then the first by name', () => {
    const several = partsWith(
      reducer('c', '1/0 AWG', '8 AWG'),
      reducer('b', '1/0 AWG', '4 AWG'),
      reducer('a', '1/0 AWG', '4 AWG'),
      reducer('d', '1/0 AWG', '6 AWG'),
    );
    expect(reducerFor(several, mm2('1/0'), port('8', '4'))?.part).toBe('a');
    expect(reducerFor(several, mm2('1/0'), port('8', '6'))?.part).toBe('d');
  });
});
