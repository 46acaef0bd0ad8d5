import { describe, expect, test } from 'vitest';
import { inJob } from '../../../read/problem-case.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { addParts, inParts, inShop } from '../../shop-changes.ts';

/** What the steps of the small job say of the wire of 16 AWG that is joined to the lead of a coil. */
function joinsTo(lead: string): string {
  const { plan } = smallPlan(
    inJob('  speaker: {', '  speaker: { size: 16 AWG,'),
    addParts(
      'red-16: { kind: wire, title: W, size: 16 AWG, insulation: 80 C, for: [speaker] }',
      'butt-14: { kind: terminal, title: B, form: butt-splice, takes: { from: 16 AWG, to: 14 AWG }, strip: 8 mm }',
    ),
    inShop('  large-60:', '  butt-14: { pieces: 20 }\n  large-60:'),
    inParts('C1+: { role: coil-positive }', `C1+: { role: coil-positive, joint: supplied-lead, ${lead} }`),
  );
  return plan.steps.map(({ text }) => text).join('\n');
}

// Common practice, no source.
describe('the step in which a wire is joined to a lead of a maker', () => {
  test('tells that a lead too thin for the splice is folded back, and nothing of it where it is not', () => {
    const folded = 'by butt-14, the lead stripped twice as far and folded back on itself';
    expect(joinsTo('lead: 18 AWG')).toContain(folded);
    expect(joinsTo('lead: 16 AWG')).toMatch(/join to the maker's own lead by butt-14: [^,;]+ at sub\.C1\+/);
  });

  test('names a mark that its maker printed, and none that is the name itself', () => {
    expect(joinsTo('lead: 16 AWG, mark: red')).toContain('at sub.C1+ (red)');
    expect(joinsTo('lead: 16 AWG, mark: C1+')).toMatch(/at sub\.C1\+(?! \()/);
  });
});
