import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { instead, linksOf } from '../links-of.ts';
import { shortText } from '../short-shop.ts';
import { speakerShop } from '../speaker-level-shop.ts';

const channels =
  '1..4: { output: CH1..4, input: IN1..4, minimum: 2 ohm, powers: { 4 ohm: 75 W, 2 ohm: 100 W } }';
const inputs =
  'IN1..4: { role: signal-in, panel: left, at: 1/2 in, pitch: 1/2 in, joint: phono, signal: 4 V,\n        signal-range: 0.25 V to 6 V }';
const high =
  'HIGH1..4: { role: speaker-in, panel: left, at: 5 in, pitch: 3 mm, joint: supplied-lead, lead: 20 AWG, signal-range: 0.8 V to 20 V }';
const lineOut =
  'LINE-L, LINE-R: { role: signal-out, panel: left, at: 4 in, pitch: 1/2 in, joint: phono, signal: 5 V }';

/** The four-channel amplifier with inputs of speaker level at its channels, and line outputs. */
function shopOf(outputs = lineOut, tap = ''): readonly SourceFile[] {
  const passes =
    tap === ''
      ? ''
      : `passes: { LINE-L: { of: { HIGH1: 0.25 }, tap: ${tap} }, LINE-R: { of: { HIGH2: 0.25 }, tap: ${tap} } }\n    `;
  return speakerShop(
    [
      `${channels}\n    bridges:\n      1+2, 3+4: { positive: [CH1+, CH3+], negative: [CH2-, CH4-], input: [IN1, IN3]`,
      `${channels}\n    bridges:\n      1+2, 3+4: { positive: [CH1+, CH3+], negative: [CH2-, CH4-], input: [HIGH1, HIGH3]`,
    ],
    [`      ${channels}`, `      ${channels.replace('IN1..4', 'HIGH1..4')}`],
    [
      `CH1..4: { role: speaker-out, panel: right, at: 2 3/4 in, pitch: 7/16 in, joint: set-screw,\n        takes: 18 AWG to 12 AWG, torque: 1.2 N m, strip: 3/8 in }\n      ${inputs}\n    controls:`,
      `CH1..4: { role: speaker-out, panel: right, at: 2 3/4 in, pitch: 7/16 in, joint: set-screw,\n        takes: 18 AWG to 12 AWG, torque: 1.2 N m, strip: 3/8 in }\n      ${high}\n      ${outputs}\n    ${passes}controls:`,
    ],
  );
}

const amplifiers = (more = '') =>
  [
    [
      '  amp: { part: amp-five, on: board }\n',
      `  amp: { part: amp-four, on: board }\n  bass: { part: amp-mono-400, on: board${more} }\n`,
    ],
    ['in: [left-door, right-door]', 'in: [left-door, right-door], driven-by: amp'],
    ['in: [left-rear, right-rear]', 'in: [left-rear, right-rear], driven-by: amp'],
    ['in: cargo-floor', 'in: cargo-floor, driven-by: bass'],
  ].reduce((text, [from = '', to = '']) => instead(text, from, to), shortText('under-seat-five'));

describe('an amplifier with line inputs alone beside one that takes speaker level', () => {
  const { links, problems, job, proposed } = linksOf(amplifiers(), shopOf());

  test('plays from the line outputs of that one, left from left and right from right', () => {
    expect(problems).toEqual([]);
    expect(links).toMatchObject({
      'in-sub-left': 'amp.LINE-L bass.IN1',
      'in-sub-right': 'amp.LINE-R bass.IN2',
      'in-front-left': 'source-unit.SP1 amp.HIGH1',
    });
    expect(proposed('in-sub-left')).toMatchObject({
      rule: 'inputs',
      reason: expect.stringMatching(/^amp passes its signal on by LINE-L and LINE-R/),
    });
  });

  test('has the two in one lead of the catalogue', () => {
    const written = job?.file.links ?? {};
    expect([written['in-sub-left']?.conductors, written['in-sub-right']?.conductors]).toEqual([
      ['left'],
      ['right'],
    ]);
    expect(written['in-sub-left']?.cable).toBe(written['in-sub-right']?.cable);
    expect(job?.file.cables[written['in-sub-left']?.cable ?? '']?.part).toMatch(/^lead-phono-/);
  });

  test('does so too where the part tells that it is taken ahead of gain and filters, and unasked never behind them', () => {
    expect(linksOf(amplifiers(), shopOf(lineOut, 'inputs')).links['in-sub-left']).toBe('amp.LINE-L bass.IN1');
    const behind = linksOf(amplifiers(), shopOf(lineOut, 'filters'));
    expect(behind.links['in-sub-left']).toBeUndefined();
    expect(behind.problems.join('\n')).toMatch(
      /bass takes line level only; to play from the line outputs of amp, write links: \{ line-left: \{ from: amp\.LINE-L, to: bass\.IN1 \}, line-right: \{ from: amp\.LINE-R, to: bass\.IN2 \} \}; else add a processor/,
    );
    const asked = linksOf(amplifiers(', driven-by: amp'), shopOf(lineOut, 'filters'));
    expect(asked.problems).toEqual([]);
    expect(asked.links['in-sub-right']).toBe('amp.LINE-R bass.IN2');
  });

  test('is asked for where two could feed it, with the line to write', () => {
    const two = instead(amplifiers(), '  bass:', '  other: { part: amp-four, on: board }\n  bass:').replace(
      'right-rear], driven-by: amp }',
      'right-rear], driven-by: other }',
    );
    expect(linksOf(two, shopOf()).problems.join('\n')).toMatch(
      /bass could play from the line outputs of amp or other; write driven-by: with one of them at bass/,
    );
  });

  test('is asked for a processor alone where no amplifier has a line output', () => {
    const none = linksOf(
      amplifiers(),
      shopOf('AUX: { role: control-line, panel: left, at: 4 in, joint: plug }'),
    );
    expect(none.problems.join('\n')).toMatch(/takes line level only; add a processor/);
  });
});

describe('an amplifier that the job says is driven by another one', () => {
  test('is refused where that one has no line output, and where the two would drive each other', () => {
    const bare = shopOf('AUX: { role: control-line, panel: left, at: 4 in, joint: plug }');
    expect(linksOf(amplifiers(', driven-by: amp'), bare).problems.join('\n')).toMatch(
      /amp is an amplifier, which drives no amplifier/,
    );
    const ring = amplifiers(', driven-by: amp').replace(
      'amp: { part: amp-four, on: board }',
      'amp: { part: amp-four, on: board, driven-by: bass }',
    );
    expect(linksOf(ring, shopOf()).problems.join('\n')).toMatch(
      /amp is an amplifier, which drives no amplifier/,
    );
  });
});

describe('line links that the job writes without a conductor', () => {
  const written = (more = '', sides = ['LINE-L', 'LINE-R']) =>
    `${amplifiers()}links:\n  a: { from: amp.${sides[0]}, to: bass.IN1${more} }\n  b: { from: amp.${sides[1]}, to: bass.IN2${more} }\n`;
  const laid = (text: string) => {
    const { job, problems } = linksOf(text, shopOf());
    expect(problems).toEqual([]);
    return ['a', 'b'].map((id) => job?.file.links[id]?.conductors);
  };

  test('lie in one lead, each by its side', () => {
    expect(laid(written())).toEqual([['left'], ['right']]);
    expect(laid(written('', ['LINE-R', 'LINE-L']))).toEqual([['right'], ['left']]);
  });

  test('stay as they are where more of them is written', () => {
    expect(laid(written(', length: 2 ft'))).toEqual([undefined, undefined]);
  });
});
