import { describe, expect, it } from 'vitest';
import { type PairCircuit, unbridgedPairs } from '../../../lib/audio/load/unbridged-pairs.ts';

const output = (nth: number) => ({ channel: `amp.${nth}`, positive: `amp.${nth}+`, negative: `amp.${nth}-` });
const coil = (name: string) => ({ coil: name, speaker: 'sub', positive: `${name}+`, negative: `${name}-` });

/** Four channels, of which the first two and the last two bridge, with links written as `amp.1+ a+`. */
function pairs(coils: readonly string[], ...links: readonly string[]) {
  const circuit: PairCircuit = {
    amplifier: 'amp',
    outputs: [1, 2, 3, 4].map(output),
    bridges: [
      { channel: 'amp.1+2', positive: 'amp.1+', negative: 'amp.2-' },
      { channel: 'amp.3+4', positive: 'amp.3+', negative: 'amp.4-' },
    ],
    coils: coils.map(coil),
    joins: links.map((link) => {
      const [from = '', to = ''] = link.split(' ');
      return [from, to] as const;
    }),
  };
  return unbridgedPairs(circuit).map(({ channels, terminals, fault }) => ({ channels, terminals, fault }));
}

describe('a load between two channels', () => {
  it.each([
    ['channels of two bridges', 'amp.1+ a+', 'a- amp.4-', ['amp.1', 'amp.4']],
    ['the inner terminals of a bridge', 'amp.2+ a+', 'a- amp.1-', ['amp.1', 'amp.2']],
    ['two positives', 'amp.3+ a+', 'a- amp.4+', ['amp.3', 'amp.4']],
    ['two negatives', 'amp.3- a+', 'a- amp.4-', ['amp.3', 'amp.4']],
  ])('is no bridge: %s', (_, plus, minus, channels) => {
    const [found, ...more] = pairs(['a'], plus, minus);
    expect(more).toEqual([]);
    expect(found?.channels).toEqual(channels);
    expect(found?.fault.message).toContain('amp bridges amp.1+ and amp.2-, or amp.3+ and amp.4- alone');
  });

  it('is told once with all the coils between the two', () => {
    const found = pairs(['a', 'b'], 'amp.1+ a+', 'a- b+', 'b- amp.3-');
    expect(found).toHaveLength(1);
    expect(found[0]?.fault.of).toEqual(['amp.1', 'amp.3', 'sub', 'a', 'b', 'amp.1+', 'amp.3-']);
  });

  it('is told of each load, however others hang on the same outputs', () => {
    const crossed = pairs(['a', 'b'], 'amp.1+ a+', 'a- amp.4-', 'amp.3+ b+', 'b- amp.2-');
    expect(crossed.map(({ terminals }) => terminals)).toEqual([
      ['amp.1+', 'amp.4-'],
      ['amp.2-', 'amp.3+'],
    ]);
    const beside = pairs(['a', 'b'], 'amp.1+ a+', 'a- amp.3-', 'amp.3+ b+', 'b- amp.3-');
    expect(beside.map(({ fault }) => fault.of)).toEqual([['amp.1', 'amp.3', 'sub', 'a', 'amp.1+', 'amp.3-']]);
  });

  it.each([
    ['a bridge', ['amp.1+ a+', 'a- amp.2-']],
    ['a bridge the other way round', ['amp.2- a+', 'a- amp.1+']],
    ['a channel by itself', ['amp.1+ a+', 'a- amp.1-']],
    ['one end alone', ['amp.1+ a+']],
    ['three outputs, which is another fault', ['amp.1+ a+', 'a- amp.1-', 'a- amp.3-']],
  ])('is not told of: %s', (_, links) => {
    expect(pairs(['a'], ...links)).toEqual([]);
  });
});
