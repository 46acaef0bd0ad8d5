import { describe, expect, test } from 'vitest';
import { changed, linksOf } from '../links-of.ts';
import { shortText } from '../short-shop.ts';

/** What the guide says of the choice of ports: left before right, in the order in which the part lists them. */
describe('ports are taken in the order of the part, the left side first', () => {
  const five = linksOf(shortText('under-seat-five'));

  test('channels: the subwoofer on the strongest, then group by group in the order of the file', () => {
    expect(five.links).toMatchObject({
      'to-front-left': 'amp.CH1 front-left.C1',
      'to-front-right': 'amp.CH2 front-right.C1',
      'to-rear-left': 'amp.CH3 rear-left.C1',
      'to-rear-right': 'amp.CH4 rear-right.C1',
      'to-sub': 'amp.CH5 sub.C1',
    });
  });

  test('whichever way round the places of a group are written', () => {
    const turned = linksOf(
      changed('under-seat-five', ['[left-door, right-door]', '[right-door, left-door]']),
    );
    expect(turned.links).toEqual(five.links);
  });

  test('and the group that is written first takes the first channels', () => {
    const [front, rear] = [
      '  front: { part: coaxial-65, in: [left-door, right-door] }\n',
      '  rear: { part: coaxial-525, in: [left-rear, right-rear] }\n',
    ];
    const { links } = linksOf(changed('under-seat-five', [`${front}${rear}`, `${rear}${front}`]));
    expect(links).toMatchObject({
      'to-rear-left': 'amp.CH1 rear-left.C1',
      'to-front-right': 'amp.CH4 front-right.C1',
      // The source goes by rows, whatever the channels.
      'in-rear-left': 'source-unit.OUT3 amp.IN1',
      'in-front-right': 'source-unit.OUT2 amp.IN4',
    });
  });

  test('outputs of the source: front, rear, bass, left before right', () => {
    expect(five.links).toMatchObject({
      'in-front-left': 'source-unit.OUT1 amp.IN1',
      'in-front-right': 'source-unit.OUT2 amp.IN2',
      'in-rear-left': 'source-unit.OUT3 amp.IN3',
      'in-rear-right': 'source-unit.OUT4 amp.IN4',
      'in-sub-left': 'source-unit.OUT5 amp.IN5',
      'in-sub-right': 'source-unit.OUT6 amp.IN6',
    });
  });

  test('a processor takes the pairs in turn, and feeds the amplifiers channel by channel', () => {
    const { links } = linksOf(shortText('estate-side-well'));
    const at = (device: string, end: 0 | 1) =>
      Object.values(links)
        .map((ends) => ends.split(' '))
        .filter((ends) => ends[end]?.startsWith(device))
        .toSorted((a, b) => ((a[end] ?? '') < (b[end] ?? '') ? -1 : 1));
    const inputs = at('dsp.HL', 1);
    expect(inputs.length).toBeGreaterThan(0);
    // Speaker outputs SP1 to SP4 of the source to its inputs of the same number.
    for (const [from = '', to = ''] of inputs) expect(to.at(-1)).toBe(from.at(-1));
    const numbers = at('dsp.OUT', 0).map(([, to = '']) => to);
    expect(numbers).toEqual(numbers.toSorted((a, b) => ofAmplifier(a) - ofAmplifier(b)));
  });
});

/** Amplifiers in the order of the file, their inputs by number. */
function ofAmplifier(end: string): number {
  const order = ['amp', 'amp-front', 'amp-sub'].indexOf(end.split('.')[0] ?? '');
  return 100 * order + Number(/\d+$/.exec(end)?.[0] ?? 0);
}
