import { describe, expect, it } from 'vitest';
import { turnOnSum } from '../../lib/audio/turn-on.ts';

const radio = { source: 'radio.REM', limitA: 0.3 };
const load = (item: string, currentA: number | null) => ({ item, currentA });

describe('the turn-on sum', () => {
  it('may be as large as the limit, and not larger', () => {
    const three = [load('amp-front', 0.1), load('amp-bass', 0.1), load('processor', 0.1)];
    expect(turnOnSum(radio, three)).toMatchObject({
      sumA: { value: 0.3 },
      marginA: { value: 0 },
      within: true,
    });
    expect(turnOnSum(radio, [...three, load('fan', 0.2)])).toMatchObject({
      sumA: { value: 0.5 },
      marginA: { value: -0.2 },
      within: false,
    });
  });

  it('names each load in its working', () => {
    const sum = turnOnSum(radio, [load('amp-front', 0.05)]);
    expect(sum).toMatchObject({
      sumA: { trace: { inputs: [{ name: 'amp-front', value: 0.05, unit: 'A' }] } },
    });
  });

  it.each([
    ['turn-on-drives-nothing', radio, []],
    ['turn-on-limit-unknown', { ...radio, limitA: null }, [load('amp', 0.1)]],
    ['turn-on-limit-unknown', { ...radio, limitA: 0 }, [load('amp', 0.1)]],
    ['turn-on-load-unknown', radio, [load('amp', null)]],
    ['turn-on-load-unknown', radio, [load('amp', -0.1)]],
  ] as const)('%s is named, never guessed', (fault, source, loads) => {
    expect(turnOnSum(source, loads)).toMatchObject({ fault });
  });

  it('names the field that is to be written', () => {
    expect(turnOnSum(radio, [load('amp', null)])).toMatchObject({
      remedy: expect.stringMatching(/^write turn-on-draw: under supply: /),
    });
    expect(turnOnSum({ ...radio, limitA: null }, [load('amp', 0.1)])).toMatchObject({
      remedy: expect.stringMatching(/^write current: /),
    });
  });

  it('names every load that is not known', () => {
    const fault = turnOnSum(radio, [load('amp', null), load('fan', 0.2), load('relay', null)]);
    expect(fault).toMatchObject({ of: ['amp', 'relay', 'radio.REM'] });
  });
});
