import { expect, test } from 'vitest';
import { awgSize } from '../../../../lib/model/quantity/wire-size.ts';
import { entersPorts, fitsPorts } from '../../../../lib/plan/power/sizing/ports-fit.ts';
import { type Change, smallShop } from '../../../read/small-shop.ts';
import { byId, jobOf } from '../../plan-small-shop.ts';
import { addParts } from '../../shop-changes.ts';

// The feed of the small shop leads from a holder that takes 1/0 AWG into an amplifier that takes 4 AWG.
const reducer = addParts(
  'reducer-0: { kind: terminal, title: Reducer, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG }',
);
const four = awgSize('4').areaMm2;

function at(areaMm2: number, ...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const feed = byId(job.links, 'feed');
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  return { fits: fitsPorts(job, feed, areaMm2), enters: entersPorts(job, devices, feed, areaMm2) };
}

test('the narrower of both ports bounds a size, areas within a tenth of a per cent being the same', () => {
  expect(at(four)).toEqual({ fits: true, enters: true });
  expect(at(four * 1.0009)).toEqual({ fits: true, enters: true });
  expect(at(four * 1.002)).toEqual({ fits: false, enters: false });
});

test('a reducer brings its size in, which as it is would not fit', () => {
  const area = awgSize('1/0').areaMm2;
  expect(at(area)).toEqual({ fits: false, enters: false });
  expect(at(area, reducer)).toEqual({ fits: false, enters: true });
});

test('a stud takes any size', () => {
  const job = jobOf(smallShop());
  const tail = byId(job.links, 'tail');
  expect(fitsPorts(job, { ...tail, to: tail.from }, 1000)).toBe(true);
});
