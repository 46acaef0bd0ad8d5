import { describe, expect, it } from 'vitest';
import { survey } from '../../../../lib/publish/sheets/survey.ts';
import { coveringPieces, dressTable } from '../../../../lib/publish/sheets/wires/run-dress.ts';
import { namesOf } from '../../../../lib/publish/words/plan-names.ts';
import { writerFor } from '../../../../lib/publish/words/written.ts';
import { smallPlan } from '../../../plan/plan-small-shop.ts';
import { inJob, partsFile, vehicleFile } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';

const edge: Change = [
  vehicleFile,
  '{ zone: engine-bay, length: 500 mm }, { zone: sill, length: 3 m }',
  '{ zone: engine-bay, length: 500 mm }, { zone: bulkhead, length: 100 mm, edge: true, through-hole: 25 mm }, { zone: sill, length: 3 m }, { zone: in-sight, length: 1 m }',
];
const dressing: Change = [
  partsFile,
  '  bolt-a:',
  `  grommet-a: { kind: grommet, title: "Grommet 16", hole: 25 mm, bore: 16 mm, panel: 2 mm }
  sleeve-a: { kind: covering, title: Sleeve, form: braided-sleeve, bore: 16 mm, withstands: 125 C }
  tie-a: { kind: fixing, title: Tie, form: tie, length: 300 mm, withstands: 105 C }
  bolt-a:`,
];
const open = inJob(', covering: loom-a }', ' }');

describe('the dress of a run through the vehicle', () => {
  const { plan } = smallPlan(edge, dressing, open);
  const table = dressTable(plan, namesOf(plan), writerFor(plan.shop));
  const power = (table?.rows ?? [])
    .slice(0, 4)
    .map(({ cells }) =>
      cells.map(({ text, beside }) => (beside === undefined ? text : `${text}: ${beside}`)),
    );

  it('tells zone by zone what covers it and why: against wear and heat, for looks, or bare', () => {
    expect(power.map(([zone, , covering]) => [zone, covering])).toEqual([
      ['Engine bay', expect.stringMatching(/^loom-a|^Loom: against heat and wear at 85 C/)],
      ['Bulkhead', expect.stringMatching(/heat and wear/)],
      ['Sill', expect.stringMatching(/^bare, none needed/)],
      ['In sight', expect.stringMatching(/for looks, since it is seen/)],
    ]);
  });

  it('has a grommet at the sharp edge, which the pick list counts', () => {
    expect(power.map(([, , , , grommet]) => grommet !== '')).toEqual([false, true, false, false]);
    expect(plan.pick.find(({ part }) => part === 'grommet-a')?.quantity).toBe(1);
  });

  // Common practice, no source: a tie each 12 in, 0.3048 m, one each spacing begun.
  it('has ties or clips at the spacing of the house', () => {
    expect(power.map(([, , , ties = '']) => Number.parseInt(ties, 10))).toEqual([2, 1, 10, 4]);
  });

  it('cuts its coverings as wire is cut: one piece where stretches follow one another', () => {
    expect(coveringPieces(plan).map(({ part, lengthM }) => [part, lengthM])).toEqual([
      ['loom-a', 0.6],
      ['sleeve-a', 1],
    ]);
    expect(plan.pick.find(({ part }) => part === 'sleeve-a')).toMatchObject({ quantity: 1, unit: 'm' });
  });
});

/** A way with two stretches of one zone, of which the second begins with the vehicle's own grommet. */
const sleeve = (bore: string): Change => [
  vehicleFile,
  '{ zone: engine-bay, length: 500 mm }, { zone: sill, length: 3 m }',
  `{ zone: cabin, length: 500 mm }, { zone: cabin, length: 100 mm, own-grommet: true${bore} }, { zone: sill, length: 3 m }`,
];

describe('a grommet in the second of two stretches of one zone', () => {
  const seen = (bore: string) => {
    const { plan } = smallPlan(sleeve(bore), open);
    const dress = dressTable(plan, namesOf(plan), writerFor(plan.shop));
    const measures = survey.model(plan)?.measures;
    return {
      dress: (dress?.rows ?? []).slice(0, 3).map(({ cells }) => cells[4]?.text),
      measures: (measures?.rows ?? []).map(({ cells }) => `${cells[0]?.text}: ${cells[1]?.text}`),
      step: plan.steps.find(({ id }) => id === 'run-power')?.text,
    };
  };

  it('stands beside the stretch that it was written to', () => {
    expect(seen(', through-hole: 40 mm').dress).toEqual(['', expect.stringContaining("vehicle's own"), '']);
  });

  it('whose bore nobody measured says so there, among the measures and where the wire is laid', () => {
    const { dress, measures, step } = seen('');
    expect(dress).toEqual(['', "the vehicle's own, bore not measured", '']);
    expect(measures).toContain("2. bore of the vehicle's own grommet there: not measured");
    expect(step).toMatch(/measure the bore of the vehicle's own grommet at cabin first/);
  });
});
