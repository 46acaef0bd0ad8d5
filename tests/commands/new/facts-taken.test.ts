import { describe, expect, test } from 'vitest';
import { takesField } from '../../../lib/commands/new/part/part-columns.ts';
import { fieldsOf } from '../../../lib/commands/new/part/part-text.ts';
import { passedFault } from '../../../lib/commands/new/part/passed-fields.ts';
import { faultBy } from '../../../lib/model/fields.ts';

test('line outputs pass on one input each, of several rows those of all', () => {
  const pass = ['LINE-L LINE-R, IN-FL IN-FR, 1, inputs', 'LINE-L LINE-R, HIGH-FL HIGH-FR, 0.25, inputs'];
  expect(fieldsOf('amplifier', 'pass', { pass })).toEqual({
    passes: {
      'LINE-L': { of: { 'IN-FL': 1, 'HIGH-FL': 0.25 }, tap: 'inputs' },
      'LINE-R': { of: { 'IN-FR': 1, 'HIGH-FR': 0.25 }, tap: 'inputs' },
    },
  });
  expect(passedFault({ outputs: 'A B', inputs: 'IN1 IN2' })).toBeNull();
  expect(passedFault({ outputs: 'A B', inputs: 'IN1' })).toMatch(/names 2 outputs and 1 inputs/);
});

const turnOnOut = (takes: string, joint = 'set-screw') =>
  fieldsOf('amplifier', 'terminal', {
    terminal: [`REM-OUT, turn-on-out, bottom, 59 mm, , ${joint}, ${takes}, 0.5 N m, 7 mm`],
  }).terminals;

describe('what a turn-on output takes and what it gives, in one cell', () => {
  test.each([
    ['22 AWG to 16 AWG 0.2 A', { takes: '22 AWG to 16 AWG', current: '0.2 A' }],
    ['0.2 A; 22 AWG to 16 AWG', { takes: '22 AWG to 16 AWG', current: '0.2 A' }],
    ['up to 16 AWG and 200 mA', { takes: '24 AWG to 16 AWG', current: '200 mA' }],
    ['0.2 A', { current: '0.2 A' }],
    ['22 AWG to 16 AWG', { takes: '22 AWG to 16 AWG' }],
  ])('%s', (written, told) => {
    expect(faultBy(takesField, written)).toBeNull();
    expect(turnOnOut(written)).toMatchObject({ 'REM-OUT': told });
  });

  test('of a lead that its maker supplies by its size and length', () => {
    expect(turnOnOut('20 AWG 300 mm 0.2 A', 'supplied-lead')).toMatchObject({
      'REM-OUT': { lead: '20 AWG', 'lead-length': '300 mm', current: '0.2 A' },
    });
  });

  test.each(['22 AWG to 16 AWG 0 A', '22 AWG to sixteen AWG 0.2 A'])('%s is refused', (written) => {
    expect(faultBy(takesField, written)).not.toBeNull();
  });
});
