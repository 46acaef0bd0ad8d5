import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { changed, linksOf, shopWith } from '../links-of.ts';
import { shop } from '../short-shop.ts';

const powers =
  '1..4: { output: CH1..4, input: IN1..4, minimum: 2 ohm, powers: { 4 ohm: 55 W, 2 ohm: 85 W } }';
const lowPass =
  'filter: { type: butterworth, order: 4, pass: low-pass, range: 40 Hz to 250 Hz },\n        safe: 80 Hz }';
/** The five-channel amplifier with a low-pass on its last channel that may be turned off. */
const switchable = shopWith(
  'amplifiers.yaml',
  lowPass,
  lowPass.replace('250 Hz }', '250 Hz, off: highest }').replace('80 Hz', 'OFF'),
);
/** The five-channel amplifier with channels 3 and 4 stronger than 1 and 2. */
const unlike = shopWith(
  'amplifiers.yaml',
  powers,
  `1..2: { output: CH1..2, input: IN1..2, minimum: 2 ohm, powers: { 4 ohm: 55 W } }
      3..4: { output: CH3..4, input: IN3..4, minimum: 2 ohm, powers: { 4 ohm: 75 W } }`,
);

/** An active front, its tweeters listed before its woofers. */
function activeFront(files: readonly SourceFile[], channels = '') {
  const text = changed(
    'under-seat-five',
    [
      '  front: { part: coaxial-65, in: [left-door, right-door] }\n',
      `  tweeters: { part: tweeter-25, in: [left-door, right-door]${channels} }\n`,
    ],
    [
      '  rear: { part: coaxial-525, in: [left-rear, right-rear] }\n',
      '  woofers: { part: midbass-65, in: [left-door, right-door] }\n',
    ],
    [
      '  amp: { part: amp-five, on: board }\n',
      '  amp: { part: amp-five, on: board }\n  dsp: { part: processor-ten, on: board }\n',
    ],
  );
  return linksOf(text, files);
}

describe('channels of an amplifier that nothing tells apart go to groups in the order of the job', () => {
  test.each([
    ['beside one for bass alone', shop],
    ['beside a stronger one that the subwoofer has', switchable],
  ])('%s', (_, files) => {
    const { links, proposed } = activeFront(files);
    expect(links).toMatchObject({
      'to-tweeters-left': 'amp.CH1 tweeters-left.C1',
      'to-tweeters-right': 'amp.CH2 tweeters-right.C1',
      'to-woofers-left': 'amp.CH3 woofers-left.C1',
      'to-woofers-right': 'amp.CH4 woofers-right.C1',
      'to-sub': 'amp.CH5 sub.C1',
    });
    expect(proposed('to-woofers-left')?.reason).toMatch(
      /the left one on the lower number; groups in the order of the job: channels: at a group says otherwise/,
    );
  });

  test('the stronger ones to the group that plays lowest', () => {
    const { links, proposed } = activeFront(unlike);
    expect(links).toMatchObject({
      'to-tweeters-left': 'amp.CH1 tweeters-left.C1',
      'to-woofers-left': 'amp.CH3 woofers-left.C1',
    });
    const turned = activeFront(unlike.map(turnedPowers));
    expect(turned.links).toMatchObject({
      'to-tweeters-left': 'amp.CH3 tweeters-left.C1',
      'to-woofers-left': 'amp.CH1 woofers-left.C1',
    });
    for (const one of [proposed, turned.proposed])
      expect(one('to-woofers-left')?.reason).toMatch(/the strongest to the group that plays lowest/);
  });

  test('as channels: says, and the others on what is left', () => {
    const { links, proposed } = activeFront(switchable, ', channels: 3..4');
    expect(links).toMatchObject({
      'to-tweeters-left': 'amp.CH3 tweeters-left.C1',
      'to-woofers-left': 'amp.CH1 woofers-left.C1',
    });
    expect(proposed('to-tweeters-left')?.reason).toMatch(/^as channels: says/);
    // One group alone is left to deal to: no order is told.
    expect(proposed('to-woofers-left')?.reason).not.toMatch(/order of the job/);
  });
});

/** The same shop with the power of the two pairs of channels exchanged. */
function turnedPowers({ path, text }: SourceFile): SourceFile {
  const pairs = (first: string, second: string) =>
    `1..2: { output: CH1..2, input: IN1..2, minimum: 2 ohm, powers: { 4 ohm: ${first} } }
      3..4: { output: CH3..4, input: IN3..4, minimum: 2 ohm, powers: { 4 ohm: ${second} } }`;
  return { path, text: text.replace(pairs('55 W', '75 W'), pairs('75 W', '55 W')) };
}
