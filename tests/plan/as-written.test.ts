import { describe, expect, test } from 'vitest';
import { lengthAskedIn, lengthIn, lengthsIn } from '../../lib/plan/as-written.ts';
import { smallShop } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';
import { inShop } from './shop-changes.ts';

const job = jobOf(smallShop(inShop('stock:', 'rules:\n  space-clearance: 9 mm\nstock:')));
const tail = { path: '/links/tail' };

describe('a length in a message', () => {
  test('that stands where the message is about is told as it was written there', () => {
    expect(lengthIn(job, tail)(6 * 0.0254)).toBe('6 in (152 mm)');
    expect(lengthIn(job, { path: '/links/speaker' })(3 * 12 * 0.0254)).toBe('3 ft (914 mm)');
  });

  test('that the shop set for itself is told as it stands there, whatever else is', () => {
    expect(lengthIn(job, tail)(0.009)).toMatch(/^9 mm \(/);
    expect(lengthIn(job)(0.0091)).toMatch(/ in \(9\.1 mm\)$/);
  });

  test('is told in the system of the first that stands there, else in that of the shop', () => {
    const inVehicle = { path: '/routes/left-sill', file: 'vehicle' } as const;
    expect(lengthIn(job, tail)(0.5)).toMatch(/^\d.* in \(500 mm\)$/);
    expect(lengthIn(job, inVehicle)(0.6)).toMatch(/^600 mm \(.* in\)$/);
    expect(lengthIn(job)(0.6)).toMatch(/^\d.* in \(600 mm\)$/);
  });

  test('that is less than half of the finest sixteenth is told in millimetres alone, and none at all as none', () => {
    expect(lengthIn(job)(0.0004)).toBe('0.4 mm');
    expect(lengthIn(job)(0)).toMatch(/^0 in \(0 mm\)$/);
    expect(lengthIn(job)(Number.POSITIVE_INFINITY)).toBe('an unknown length');
  });

  test('that is asked for at least is never told for less', () => {
    expect(lengthAskedIn(job)(0.1001)).toContain('(101 mm)');
    expect(lengthsIn(job)('room-free', 0.1009)).toContain('(100 mm)');
  });
});
