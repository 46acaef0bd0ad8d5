import { describe, expect, test } from 'vitest';
import { readContent } from '../../lib/read/read-content.ts';
import { expectProblem, type ProblemCase, partsFile } from './problem-case.ts';
import { type Change, smallShop } from './small-shop.ts';

const inParts = (found: string, instead: string): Change => [partsFile, found, instead];
const block = 'OUT1: { from: IN, fuse-form: maxi-blade }\n    terminals:\n';
const relay = (terminals: string): Change =>
  inParts(
    '  lead-a:\n',
    `  relay-a:
    kind: relay
    title: Relay
    size: { width: 30 mm, depth: 30 mm, height: 50 mm }
    mass: 50 g
    coil-current: 150 mA
    contact-current: 30 A
    suppression: diode
    ^terminals: { ${terminals} }
  lead-a:
`,
  );
const coil = "'86': { role: relay-coil }, '85': { role: relay-coil }";

const isolator = (pullsIn: string, terminals: string): Change =>
  inParts(
    '  lead-a:\n',
    `  isolator-a:
    kind: isolating-relay
    title: Isolating relay
    size: { width: 60 mm, depth: 60 mm, height: 50 mm }
    mass: 300 g
    pulls-in: ${pullsIn}
    coil-current: 800 mA
    continuous-current: 100 A
    suppression: diode
    ^terminals: { A: { role: relay-contact }, B: { role: relay-contact }${terminals} }
  lead-a:
`,
  );

// The network has one branch from the one terminal to the other: with none of a role the part would drop out of it
// without a word, with two of them one would.
const cases: readonly ProblemCase[] = [
  {
    name: 'an isolating relay that pulls in by a coil that it does not have',
    changes: [isolator('coil', ', GND: { role: supply-negative }')],
    says: /isolator-a pulls in by its coil, needs 2 terminals with role: relay-coil and has 0/,
  },
  {
    name: 'an isolating relay that sees a voltage against nothing',
    changes: [isolator('charging-voltage', `, ${coil}`)],
    says: /pulls in by the charging voltage, needs one terminal with role: supply-negative and has 0/,
  },
  {
    name: 'an amplifier without a ground terminal',
    changes: [
      inParts(
        '    terminals:\n      B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }\n      GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }\n',
        '    ^terminals:\n      B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }\n',
      ),
    ],
    says: /amp-a needs one terminal with role: supply-negative and has 0/,
    remedy: /write one terminal with role: supply-negative/,
  },
  {
    name: 'a source unit with two supplies',
    changes: [
      inParts(
        '    terminals:\n      B+: { role: supply-positive }\n',
        '    ^terminals:\n      B+: { role: supply-positive }\n      ACC: { role: supply-positive }\n',
      ),
    ],
    says: /radio-a has 2 terminals with role: supply-positive, but only 1 can be computed/,
    remedy: /keep one/,
  },
  {
    name: 'a battery with two positive posts',
    changes: [
      inParts(
        '    terminals:\n      POS:',
        '    ^terminals:\n      AUX: { role: source-positive, joint: stud, stud: M8 }\n      POS:',
      ),
    ],
    says: /battery-a has 2 terminals with role: source-positive/,
  },
  {
    name: 'a fuse holder with two ways in',
    changes: [
      inParts(
        '    terminals:\n      IN: { role: feed-in, joint: stud, stud: M8,',
        '    ^terminals:\n      IN2: { role: feed-in }\n      IN: { role: feed-in, joint: stud, stud: M8,',
      ),
    ],
    says: /holder-a has 2 terminals with role: feed-in/,
  },
  {
    name: 'a relay with a break contact beside the make contact',
    changes: [
      relay(
        `${coil}, '30': { role: relay-contact }, '87': { role: relay-contact }, 87a: { role: relay-contact }`,
      ),
    ],
    says: /relay-a has 3 terminals with role: relay-contact/,
    remedy: /the two of the make contact/,
  },
  {
    name: 'a relay without a coil',
    changes: [relay("'30': { role: relay-contact }, '87': { role: relay-contact }")],
    says: /relay-a needs 2 terminals with role: relay-coil and has 0/,
  },
  {
    name: 'a fused way that is no terminal',
    changes: [inParts('      OUT1: { from: IN, fuse', '      OUTX: ^{ from: IN, fuse')],
    says: /no terminal of block-a "OUTX"/,
    remedy: /OUT1/,
  },
  {
    name: 'a fused way from nowhere',
    changes: [inParts('OUT1: { from: IN, fuse', 'OUT1: { from: ^INN, fuse')],
    says: /no terminal of block-a "INN"/,
    remedy: /IN/,
  },
  {
    name: 'a fused way that begins at itself',
    changes: [inParts('OUT1: { from: IN, fuse', 'OUT1: { from: ^OUT1, fuse')],
    says: /the fused way OUT1 begins at OUT1, which is a fused way itself/,
    remedy: /terminal of the bar/,
  },
  {
    name: 'feeds and grounds on one bar',
    changes: [inParts(block, `${block}      ^G1: { role: ground-bar }\n`)],
    says: /block-a has feeds \(IN\) and grounds \(G1\) on one bar: that is a short/,
    remedy: /one for the grounds/,
  },
  {
    name: 'a channel whose output is no terminal',
    changes: [inParts('{ positive: CH1+,', '{ positive: ^CH9+,')],
    says: /no terminal of amp-a "CH9\+"/,
  },
  {
    name: 'a channel whose input is no terminal',
    changes: [inParts('input: IN1,', 'input: ^IN9,')],
    says: /no terminal of amp-a "IN9"/,
  },
  {
    name: 'a bridge of a channel that is not there',
    changes: [
      inParts(
        '    terminals:\n      B+: { role: supply-positive, joint: set-screw,',
        "    bridges: { '1+2': ^{ positive: CH1+, negative: CH1-, input: IN1, minimum: 4 ohm, powers: [{ load: 4 ohm, power: 500 W }] } }\n    terminals:\n      B+: { role: supply-positive, joint: set-screw,",
      ),
    ],
    says: /no channel of amp-a "2"/,
  },
  {
    name: 'a coil whose end is no terminal',
    changes: [inParts('{ positive: C1+,', '{ positive: ^C9+,')],
    says: /no terminal of woofer-a "C9\+"/,
  },
];

describe('a part that could not be computed by its terminals is told where it stands', () => {
  test.each(cases)('$name', expectProblem);

  test('no job is planned with it, and what uses it is not told as well', () => {
    const { jobs, problems, parts } = readContent(smallShop(inParts('input: IN1,', 'input: IN9,')));
    expect(jobs).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(Object.keys(parts)).not.toContain('amp-a');
  });

  test('the parts of the small shop have what they need', () => {
    expect(readContent(smallShop()).problems).toEqual([]);
  });
});
