import { describe, expect, test } from 'vitest';
import { houseRuleNames } from '../../../lib/model/house-rules.ts';
import { ruleFigure, rulesNamed, ruleValues, withRules } from '../../../lib/model/printed/rule-figures.ts';
import type { LengthStyle } from '../../../lib/model/quantity/length-text.ts';

const inches: LengthStyle = { system: 'inch', fraction: 16 };
const millimetres: LengthStyle = { system: 'mm', fraction: 16 };

describe('the figure of a house rule', () => {
  test.each([
    ['ground-lead', 0.4572, '18 in', '457.2 mm'],
    ['ground-lead', 0.3, '300 mm', '300 mm'],
    ['hole-edge', 0.0127, '1/2 in', '12.7 mm'],
    ['web-limit', 0.012, '12 mm', '12 mm'],
    ['kerf', 0.00321, '1/8 in (3.2 mm)', '3.2 mm (1/8 in)'],
  ] as const)('%s of %f m is %s, or %s', (name, value, inInches, inMillimetres) => {
    expect(ruleFigure(name, value, inches)).toBe(inInches);
    expect(ruleFigure(name, value, millimetres)).toBe(inMillimetres);
  });

  test.each([
    ['ground-drop-limit', 0.2, '0.2 V'],
    ['joint-drop-limit', 0.05, '50 mV'],
    ['key-off-draw', 0.05, '50 mA'],
    ['first-power-limit', 3, '3 A'],
    ['drop-limit', 0.035, '3.5 %'],
    ['fuse-margin', 1.25, '1.25'],
    ['tone-others', 1000, '1 kHz'],
    ['tone-bass', 50, '50 Hz'],
    ['key-off-wait', 1800, '30 min'],
    ['delay-tolerance', 0.00003, '0.03 ms'],
    ['insulation-unmarked', 60, '60 C'],
    ['retorque-days', 30, '30'],
    ['speaker-loss', 0.5, '0.5 dB'],
  ] as const)('%s of %f is %s', (name, value, figure) => {
    expect(ruleFigure(name, value, inches)).toBe(figure);
  });
});

test('a text tells the figures of the shop, and the defaults of what it leaves alone', () => {
  const values = ruleValues({ 'ground-lead': 0.3048 });
  expect(withRules('At most {ground-lead}, and {joint-drop-limit} at a joint.', values, inches)).toBe(
    'At most 12 in, and 50 mV at a joint.',
  );
  expect(withRules('{no-rule} { gain: 3 dB }', values, inches)).toBe('{no-rule} { gain: 3 dB }');
});

test('every house rule has a figure that its own change shows', () => {
  const values = ruleValues({});
  for (const name of houseRuleNames)
    expect(ruleFigure(name, values[name] * 1.5 + 0.01, inches), name).not.toBe(
      ruleFigure(name, values[name], inches),
    );
});

test('names in braces are found with their places', () => {
  expect(rulesNamed('a {ground-lead} b {web-good}')).toEqual([
    { name: 'ground-lead', at: 2 },
    { name: 'web-good', at: 18 },
  ]);
});
