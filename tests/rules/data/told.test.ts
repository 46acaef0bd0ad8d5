import { describe, expect, test } from 'vitest';
import type { PartPromise } from '../../../lib/model/content/promised.ts';
import { promisedText } from '../../../lib/rules/data/promised.ts';
import { withWritten } from '../../../lib/rules/data-places.ts';
import { partSpot } from '../../../lib/rules/look-up.ts';
import { counted } from '../../../lib/rules/words.ts';
import { about, aboutContent, entry, partIn } from '../case.ts';
import type { Written } from '../content.ts';
import { aFinding } from '../folding/a-finding.ts';
import { found } from '../found.ts';

const doubted = (change: (content: Written) => void) =>
  found('part-data-unlikely', aboutContent(change)).map(({ path }) => path);

describe('figures of a part that are unlikely', () => {
  test('stand at their own place, in a bridge too', () => {
    const told = doubted((content) => {
      partIn(content, 'two-channel', 'amplifier').bridges = {
        '1+2': {
          ...{ positive: 'CH1+', negative: 'CH2-', input: 'IN1', minimum: '5 ohm' },
          powers: [{ load: '4 ohm', power: '150 W' }],
        },
      };
    });
    expect(told).toContain('/parts/two-channel/bridges/1+2/powers/0/load');
  });

  // 600 A of cold cranking: more than that flows into a dead short.
  test('are those of a battery that gives less into a short than to a starter', () => {
    const short = (current: string) =>
      doubted((content) => {
        partIn(content, 'agm', 'battery')['short-circuit'] = current;
      });
    expect(short('599 A')).toEqual(['/parts/agm/short-circuit']);
    expect(short('600 A')).toEqual([]);
    expect(short('5000 A')).toEqual([]);
  });

  // Behind 25.5 mohm, 600 A take 15.3 V of a battery of 24 V, one and a half times what it may lose.
  test('are those of a battery behind which its cold cranking cannot be drawn, by its own voltage', () => {
    const behind = (resistance: string, voltage: '12 V' | '24 V') =>
      doubted((content) => {
        Object.assign(partIn(content, 'agm', 'battery'), { resistance, voltage });
      });
    expect(behind('12 mohm', '12 V')).toEqual([]);
    expect(behind('13 mohm', '12 V')).toEqual(['/parts/agm/resistance']);
    expect(behind('25 mohm', '24 V')).toEqual([]);
    expect(behind('26 mohm', '24 V')).toEqual(['/parts/agm/resistance']);
  });

  test('are those of a subsonic filter above 120 Hz, of no other filter, and of none whose corner nobody tells', () => {
    const filtered = (filter: object) =>
      doubted((content) => {
        const { controls } = partIn(content, 'two-channel', 'amplifier');
        Object.assign(entry(controls ?? {}, 'GAIN'), { filter });
      });
    const range = { from: '20 Hz', to: '121 Hz' };
    expect(filtered({ pass: 'subsonic', range })).toEqual(['/parts/two-channel/controls/GAIN/filter']);
    expect(filtered({ pass: 'subsonic', range: { ...range, to: '120 Hz' } })).toEqual([]);
    expect(filtered({ pass: 'low-pass', range })).toEqual([]);
    expect(filtered({ pass: 'subsonic' })).toEqual([]);
  });
});

describe('what lies on the shelf for other jobs', () => {
  const promise = (pieces: number): PartPromise => ({
    ...{ unit: 'piece', to: [{ job: 'side-well', revision: 'B', quantity: 4 }], over: 0, uncutM: [] },
    ...{ pieces, reelsM: [], offCutsM: {}, sheets: {} },
  });
  const told = (pieces: number) =>
    promisedText({ promised: { lug: promise(pieces) } }, 'lug', (n) => counted(n, 'piece'));

  test('is told as not counted, and not at all where nothing of it lies there', () => {
    expect(told(4)).toBe('; 4 pieces promised to side-well revision B not counted');
    expect(told(0)).toBe('');
    expect(promisedText({ promised: {} }, 'lug', String)).toBe('');
  });
});

describe('where a figure is written', () => {
  test('of a device that is no part of the catalogue, the device itself', () => {
    const { job } = about();
    expect(partSpot(job, 'amp', 'size')).toEqual({ path: '/parts/two-channel/size', file: 'part' });
    expect(partSpot(job, 'body', 'size').path).not.toMatch(/parts/);
  });

  test('of a board, its own entry in the job, with its space and its sheet', () => {
    const { job } = aboutContent((content) => {
      entry(entry(content.job.boards, 'main').fixings, 'a').spacer = '13 mm';
    });
    const written = (related: string, value: number) =>
      withWritten(aFinding('board-low-in-wet-zone', [related], { value, unit: 'm' }), job).written?.value;
    expect(written('main', 0.013)).toBe('13 mm');
    expect(written('main', 0.012)).toBe('12 mm');
    expect(written('main', 0.2)).toBe('200 mm');
    expect(written('amp', 0.013)).toBeUndefined();
  });
});
