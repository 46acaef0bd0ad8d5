import { afterAll, describe, expect, test } from 'vitest';
import { readRow } from '../../../lib/commands/new/ask/rows.ts';
import { coilsTold } from '../../../lib/commands/new/job/coils-told.ts';
import { sourceName } from '../../../lib/commands/new/vehicle/vehicle-file.ts';
import { fuseFormField } from '../../../lib/model/kinds/fields/fuse-form.ts';
import { column } from '../../../lib/model/survey/asked-table.ts';
import { demoContent } from '../../plan/demo.ts';
import { ShopFolder } from '../shop-folder.ts';
import { Typed } from './typed.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());
const { parts } = demoContent();

describe('beside what is asked', () => {
  // Two coils of 2 ohm: 1 ohm in parallel, 4 ohm in series, by Ohm's law.
  test('a speaker of two coils is told with the loads that join them otherwise', () => {
    const answers = {
      device: ['amp, amp-five'],
      speaker: ['front, coaxial-65, left-door', 'sub, subwoofer-10-dual-2, cargo-floor, box-a, amp'],
    };
    const told = coilsTold(answers, parts);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^how the 2 coils of sub are joined is proposed/);
    expect(told[0]).toContain('loads: { "5": 1 ohm } for all in parallel, 4 ohm for all in series');
  });

  test('a source whose part is still to be written is the one that no heavy cable goes to', () => {
    const fitted = [
      'battery, battery-new, engine-bay, left',
      'alternator, alternator-180, engine-bay, right',
      'radio, radio-new, cabin, middle',
    ];
    expect(sourceName({ fitted }, parts)).toBeNull();
    const cable = ['battery.NEG, body.engine, 2 AWG, 20 in'];
    expect(sourceName({ fitted, cable }, parts)).toBe('radio');
  });

  test('the cables of an alternator and a battery are asked by their terminals', async () => {
    const person = new Typed(
      ...['Van', '', ''],
      ...['battery, battery-a, engine-bay, left', ''],
      ...['post, engine-bay, left, M8', ''],
    );
    await shop.answered(person, 'new', 'vehicle', 'van-asked');
    expect(person.said.join('\n')).toMatch(
      /One line each: battery\.\S+ to a ground point, such as body\.post/,
    );
  });

  // The word for the body: common practice, no source.
  test('a fuse is taken by the word of the trade, and written by that of the file', () => {
    const row = readRow([column('form', 'form', fuseFormField, 'small-bolt-in')], 'mini ANL');
    expect(row).toMatchObject({ cells: { form: 'small-bolt-in' } });
  });

  test('flags that lack something are told where all of them are listed', async () => {
    const { told } = await shop.run('new', 'part', 'nothing', '--kind', 'fuse');
    expect(told).toContain('rackleaf new part --flags lists every flag');
  });
});
