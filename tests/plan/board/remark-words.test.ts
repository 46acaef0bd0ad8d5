import { describe, expect, test } from 'vitest';
import type { JoinedRemark } from '../../../lib/model/remark.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { inShop } from '../shop-changes.ts';

const outline = 'rectangle: { width: 500 mm, height: 300 mm }';
const cutFrom = (size: string, cut: string): Change =>
  withBoard(outline, `rectangle: ${size}, cuts: [{ cut: ${cut} }]`);
const inInches = '{ width: 20 in, height: 12 in }';
const inMm = '{ width: 500 mm, height: 300 mm }';
const ampAt = (at: string): Change =>
  inJob('title: Bass amplifier\n    in: boot', `title: Bass amplifier\n    on: main\n    at: ${at}`);

function told(rule: JoinedRemark['rule'], ...changes: readonly Change[]): string {
  return smallPlan(...changes).remarks.find((one) => one.rule === rule)?.message ?? 'nothing';
}

// The small shop reads inches; 25.4 mm to the inch (NIST SP 811), its tape is told to 1/16 in.
describe('what is remarked about a board', () => {
  test('tells what was written as it was written, and what follows from it in the same system', () => {
    const cut = 'notch, edge: top, offset: 0 in, width: 21 in, depth: 1 in';
    expect(told('notch-wider-than-edge', cutFrom(inInches, cut))).toBe(
      'notch-1: a width of 21 in (534 mm) is more than the edge, 20 in (508 mm), by 1 in (25.4 mm)',
    );
    const inOther = 'notch, edge: top, offset: 0 mm, width: 600 mm, depth: 20 mm';
    // 23.62 in told up, 19.69 in told down.
    expect(told('notch-wider-than-edge', cutFrom(inMm, inOther))).toBe(
      'notch-1: a width of 600 mm (23 5/8 in) is more than the edge, 500 mm (19 5/8 in), by 100 mm (3 15/16 in)',
    );
  });

  // A rim 0.45 in, 11.43 mm, from the edge: 7/16 in and 11.4 mm are surely there.
  test('tells a house rule as the shop set it, and no room as wider than it is', () => {
    const cut = 'hole, x: 0.65 in, y: 6 in, diameter: 0.4 in, purpose: wire';
    const rule = inShop('# House rules keep their defaults.\n', 'rules: { hole-edge: 0.5 in }\n');
    expect(told('hole-near-edge', cutFrom(inInches, cut), rule)).toBe(
      'hole-1: its rim is 7/16 in (11.4 mm) from the nearest edge; 0.5 in (12.7 mm) is needed',
    );
  });

  // An amplifier 100 mm wide at 420 mm of 500 mm; at 17 in of 20 in it is 0.937 in out.
  test('tells an overlap in the system of the place, and never as less', () => {
    expect(told('item-outside-board', withBoard(), ampAt('{ x: 420 mm, y: 100 mm }'))).toBe(
      'amp reaches 20 mm (13/16 in) out of the board',
    );
    const board = withBoard(outline, `rectangle: ${inInches}`);
    expect(told('item-outside-board', board, ampAt('{ x: 17 in, y: 4 in }'))).toBe(
      'amp reaches 15/16 in (23.8 mm) out of the board',
    );
  });

  test('tells a length finer than the tape in millimetres alone', () => {
    expect(told('item-outside-board', withBoard(), ampAt('{ x: 400.3 mm, y: 100 mm }'))).toBe(
      'amp reaches 0.3 mm out of the board',
    );
  });

  test('tells a wire that is too short as it was written', () => {
    const short = inJob(
      'from: amp.GND, to: body.cargo, length: 12 in',
      'from: amp.GND, to: body.cargo, length: 2 in',
    );
    expect(told('length-short-of-way', withBoard(), ampAt('{ x: 200 mm, y: 110 mm }'), short)).toMatch(
      /^ground is 2 in \(50\.8 mm\) long, but its way on the board alone is [\d /]+ in \(\d+ mm\)$/,
    );
  });
});
