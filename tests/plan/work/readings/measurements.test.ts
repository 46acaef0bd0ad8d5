import { describe, expect, it } from 'vitest';
import { explainReading } from '../../../../lib/plan/work/readings/explain-reading.ts';
import type { Prediction, ReadingKind } from '../../../../lib/plan/work/readings/readings.ts';
import { byId, partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { planned, remarksOf } from '../../planned.ts';

const readings = (asBuilt: Record<string, string>) =>
  planned(({ job }) => {
    job['as-built'] = asBuilt;
  });

describe('a reading beside its prediction', () => {
  it('agrees within its limits, differs outside, and is open where it was not taken', () => {
    const { plan } = readings({ 'battery-rest': '12.5 V', 'battery-charging': '12.9 V' });
    expect(byId(plan.measurements, 'battery-rest')).toMatchObject({ state: 'agrees', explanation: null });
    expect(byId(plan.measurements, 'battery-charging')).toMatchObject({ state: 'differs', asBuilt: 12.9 });
    expect(byId(plan.measurements, 'battery-charging').explanation).toMatch(/alternator/);
    expect(byId(plan.measurements, 'amp.1.gain').state).toBe('open');
  });

  // Common practice, no source: a lead battery that has stood reads 12.4 to 13.0 V.
  it.each([
    ['12.3 V', 'differs', /charge and test the battery/],
    ['12.4 V', 'agrees', null],
    ['13 V', 'agrees', null],
    ['13.1 V', 'differs', /not at rest: something charges it/],
  ])('of a battery at rest: %s %s', (reading, state, explanation) => {
    const line = byId(readings({ 'battery-rest': reading }).plan.measurements, 'battery-rest');
    expect(line.state).toBe(state);
    if (explanation === null) expect(line.explanation).toBeNull();
    else expect(line.explanation).toMatch(explanation);
  });

  // As it was read in the vehicle; else what the alternator is set to; else what the powers are rated at (common practice).
  it('while the battery is charged is predicted as the vehicle charges', () => {
    const line = (change: Parameters<typeof planned>[0]) =>
      byId(planned(change).plan.measurements, 'battery-charging');
    const set = (value: object) => (content: Written) =>
      Object.assign(partIn(content, 'generator', 'alternator'), value);
    const read = ({ vehicle }: Written) => {
      vehicle['charging-voltage'] = '14.2 V';
    };
    expect(line(() => {})).toMatchObject({ predicted: 14.4, least: 13.5, greatest: 14.8 });
    expect(line(set({ 'set-point': '14.1 V' }))).toMatchObject({ predicted: 14.1, least: 13.5 });
    expect(line(read)).toMatchObject({ predicted: 14.2, least: 13.5, greatest: 14.8 });
    const both = (content: Written) => {
      read(content);
      set({ 'set-point': '14.1 V' })(content);
    };
    expect(line(both).predicted).toBe(14.2);
    // One that varies holds any voltage of its range: none is predicted.
    const varies = line(set({ 'variable-voltage': true }));
    expect(varies).toMatchObject({ predicted: null, least: 12.2, greatest: 15 });
  });

  it('of half the resistance points at coils in parallel', () => {
    const { plan } = readings({ 'amp.2.dc-resistance': '1.6 ohm' });
    expect(byId(plan.measurements, 'amp.2.dc-resistance').explanation).toMatch(/half .* parallel/);
  });

  it('of noise is held against a limit, and its place in the order tells where it comes in', () => {
    const { plan } = readings({ 'amp.noise-shorted': '0.5 mV', 'amp.noise-running': '0.02 V' });
    const [shorted, running] = ['amp.noise-shorted', 'amp.noise-running'].map((id) =>
      byId(plan.measurements, id),
    );
    expect(shorted).toMatchObject({ state: 'agrees', greatest: 2, unit: 'mV' });
    expect(running).toMatchObject({ state: 'differs', asBuilt: 20, greatest: 6 });
    expect(running?.explanation).toMatch(/from the source or its leads/);
    for (const one of plan.measurements.filter(({ id }) => id.includes('.noise-')))
      expect(one.greatest, one.id).toBeGreaterThan(0);
  });

  it('in another unit, or of no line, is told and not compared', () => {
    const read = readings({ 'battery-rest': '12.5 A', 'battery-mood': '12.5 V' });
    expect(byId(read.plan.measurements, 'battery-rest').state).toBe('open');
    expect(remarksOf(read, 'as-built-unit')[0]?.of).toEqual(['battery-rest']);
    expect(remarksOf(read, 'as-built-unknown')[0]?.of).toEqual(['battery-mood']);
  });

  it('is taken once, at a time of its own: every line has one', () => {
    const { plan } = planned();
    expect(new Set(plan.measurements.map(({ id }) => id)).size).toBe(plan.measurements.length);
    const measured = plan.steps.flatMap(({ acts }) => acts.filter((act) => act.startsWith('measure:')));
    expect(measured.toSorted()).toEqual(plan.measurements.map(({ id }) => `measure:${id}`).toSorted());
  });
});

const line = (kind: ReadingKind, id: string, predicted: number, tolerance: number): Prediction => ({
  id,
  kind,
  what: id,
  predicted,
  unit: 'V',
  least: predicted - tolerance,
  greatest: predicted + tolerance,
  figures: [],
  when: 'power',
});
const explained = (one: Prediction, reading: number, differing: readonly string[] = []) =>
  explainReading({ line: one, reading, differing: new Set(differing), jointV: 0.05 });

describe('a difference is explained', () => {
  const ground = line('ground-drop', 'amp.ground-drop.music', 0.05, 0.02);
  const supply = line('supply', 'amp.voltage.music', 13.4, 0.3);
  const plug = line('resistance', 'amp.1.dc-resistance', 3.2, 0.2);

  it('by the joint where a ground drop is three times the prediction, by the lead where it is less', () => {
    expect(explained(ground, 0.15)).toMatch(/points at the joint/);
    expect(explained(ground, 0.08)).toMatch(/ground lead/);
    expect(explained(ground, 0.01)).toMatch(/less current/);
  });

  it('by the charging where the voltage is low at idle with the drops as predicted, by the drop where that differs', () => {
    expect(explained(supply, 12.4)).toMatch(/charging/);
    expect(explained(supply, 12.4, ['amp.ground-drop.music'])).toMatch(/mend that first/);
    expect(explained(supply, 12.4, ['amp.ground-drop.rated-power'])).toMatch(/charging/);
  });

  it.each([
    [0.05, /short/],
    [0.8, /quarter/],
    [1.6, /half/],
    [6.4, /double/],
    [12.8, /four times/],
    [900, /open/],
    [4.2, /another speaker/],
  ])('by how the coils are joined where a plug of 3.2 ohm reads %s ohm', (reading, says) => {
    expect(explained(plug, reading)).toMatch(says);
  });
});
