import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../../lib/export/csv/csv-text.ts';
import { csvTables } from '../../../lib/export/exporters/csv.ts';
import { everyFinding } from '../../../lib/model/finding.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';

/** Rows by column title, read by csv-parse, strict on quotes and on the count of fields. */
function rowsOf(text: string): Record<string, string>[] {
  return parse(text, { columns: true, record_delimiter: '\r\n' });
}

function tableOf(name: keyof typeof csvTables, plan: BuildPlan = samplePlan()): Record<string, string>[] {
  return rowsOf(csvTables[name](plan));
}

describe('csv', () => {
  it('is read back field by field by csv-parse, whatever a text holds', () => {
    // A text that begins with an apostrophe could not be told from a guarded one.
    const text = fc.string({ unit: 'grapheme' }).filter((each) => !each.startsWith("'"));
    const fields = fc.array(fc.array(text, { minLength: 3, maxLength: 3 }), {
      minLength: 1,
    });
    fc.assert(
      fc.property(fields, (rows) => {
        const read: string[][] = parse(csvText(rows), { record_delimiter: '\r\n' });
        const plain = read.map((row) => row.map((field) => field.replace(/^'(?=[=+\-@\t\r])/, '')));
        expect(plain).toEqual(rows);
      }),
      { numRuns: 300, seed: 6 },
    );
  });

  it('lets no spreadsheet compute what a user wrote', () => {
    const attacks = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '=HYPERLINK("x","y")'];
    const [read = []]: string[][] = parse(csvText([attacks]), { record_delimiter: '\r\n' });
    expect(read).toEqual(attacks.map((text) => `'${text}`));
    expect(csvText([[-1.5]])).toBe('-1.5\r\n');
  });

  it('guards the texts of a plan: a wire label that looks like a formula', () => {
    const plan = samplePlan();
    const wires = plan.wires.map((wire) => ({ ...wire, label: '=P1' }));
    expect(tableOf('wires', { ...plan, wires })[0]?.label).toBe("'=P1");
  });

  it('calls a port that its maker left without a mark as the drawings do, in every table of wires', () => {
    const plan = samplePlan();
    const wire = plan.wires.find(({ from }) => plan.items.some(({ id }) => from.startsWith(`${id}.`)));
    if (!wire) throw new Error('The sample has wires between its items.');
    const [item, name = ''] = wire.from.split('.');
    const bare = { name, role: 'feed-out', shown: 'port 2', panel: null, atM: null } as const;
    const items = plan.items.map((one) => (one.id === item ? { ...one, terminals: [bare] } : one));
    const marked = { ...plan, items };
    const row = tableOf('wires', marked).find(({ wire: id }) => id === wire.id);
    expect([row?.from, row?.end_a]).toEqual([`${item} port 2`, `${item} port 2`]);
    const [conductor] = plan.power.conductors;
    if (!conductor) throw new Error('The sample has conductors.');
    const power = { ...plan.power, conductors: [{ ...conductor, from: wire.from }] };
    expect(tableOf('conductors', { ...marked, power })[0]?.from).toBe(`${item} port 2`);
    const accounted = plan.terminals.slice(0, 1).map((one) => ({ ...one, item: item ?? '', terminal: name }));
    expect(tableOf('terminals', { ...marked, terminals: accounted })[0]?.terminal).toBe('port 2');
  });

  it('writes every table of a plan with a row a thing', () => {
    const plan = samplePlan();
    const ours = plan.wires.filter(({ origin }) => origin === 'job');
    expect(tableOf('wires')).toHaveLength(plan.wires.length);
    expect(tableOf('fuses')).toHaveLength(plan.power.fuses.length);
    expect(tableOf('terminals')).toHaveLength(plan.terminals.length);
    expect(tableOf('presets')).toHaveLength(plan.controls.length);
    expect(tableOf('pick-list')).toHaveLength(plan.pick.length);
    expect(tableOf('order-of-work')).toHaveLength(plan.steps.length);
    expect(tableOf('measurements')).toHaveLength(plan.measurements.length);
    expect(tableOf('findings')).toHaveLength(everyFinding(plan.findings).length);
    expect(tableOf('drill')).toHaveLength(plan.boards.flatMap(({ holes }) => holes).length);
    expect(tableOf('labels')).toHaveLength(4 * ours.length);
  });

  it('writes a length as the shop reads it, and in metres beside', () => {
    const [hole] = tableOf('drill');
    // 25 mm is 0.984 in: to the nearest sixteenth 1 in (15.75 sixteenths).
    expect(hole).toMatchObject({ x: '1 in', x_m: '0.025', through: 'yes', depth: '', depth_m: '' });
    const metric = samplePlan();
    const [same] = tableOf('drill', { ...metric, shop: { ...metric.shop, units: 'millimetre' } });
    expect(same).toMatchObject({ x: '25 mm', x_m: '0.025' });
  });

  it('ends every line with CR LF and never writes a power of ten', () => {
    for (const text of Object.values(csvTables).map((table) => table(samplePlan()))) {
      expect(text.endsWith('\r\n')).toBe(true);
      expect(text).not.toMatch(/(^|,)-?\d+(\.\d+)?e[-+]?\d+(,|\r)/m);
    }
    expect(csvText([[1e-9, 1e21, Number.NaN]])).toBe('0.000000001,1000000000000000000000,\r\n');
  });
});
