import { expect, test } from 'vitest';
import { readContent } from '../../../lib/read/read-content.ts';

/** What is told of one control of a part. */
function told(control: string): readonly string[] {
  const text = `rackleaf: 1\nparts:\n  own:\n    kind: level-control\n    title: Knob\n    size: { width: 2 in, depth: 2 in, height: 1 in }\n    mass: 0.1 kg\n    terminals: { LINE: { role: control-line } }\n    controls:\n      BOOST: ${control}\n`;
  return readContent([{ path: 'content/parts/own.yaml', text }])
    .problems.filter(({ where }) => where.path.includes('BOOST'))
    .map(({ message }) => message);
}

test('a name that one section beside it has is told with that section as a whole, which then reads', () => {
  const [message = '', ...others] = told('{ what: boost, panel: face, centre: 45 Hz }');
  expect(others).toEqual([]);
  const [, form] =
    /^centre is not a known name in BOOST; centre: stands inside boost:, such as (boost: \{ .* \})$/.exec(
      message,
    ) ?? [];
  expect(form).toMatch(/centre: 45 Hz, range: \{ from: .* dB, to: 12 dB \}/);
  expect(told(`{ what: boost, panel: face, ${form} }`)).toEqual([]);
});

test('a name that several sections have is told with all known ones', () => {
  expect(told('{ what: boost, panel: face, range: 0 dB to 12 dB }')).toEqual([
    'range is not a known name in BOOST',
  ]);
});
