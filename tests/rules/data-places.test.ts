import { describe, expect, test } from 'vitest';
import type { Finding } from '../../lib/model/finding.ts';
import { findingFigures, isFigure } from '../../lib/model/finding-text.ts';
import { withData, withWritten } from '../../lib/rules/data-places.ts';
import { entry, jobOf, partIn } from './case.ts';
import { written } from './content.ts';

const job = () => {
  const content = written();
  Object.assign(content.shop, { rules: { 'ground-lead': '18 in' } });
  Object.assign(entry(content.vehicle.places, 'door'), { depth: '57 mm' });
  Object.assign(partIn(content, 'tweeter', 'speaker'), {
    size: { width: '100 mm', depth: '100 mm', height: '2 1/4 in' },
  });
  entry(content.job.links, 'board-ground').length = '3 ft';
  return jobOf(content);
};

const finding = (more: Partial<Finding>): Finding => ({
  rule: 'some-rule',
  level: 'caution',
  where: { file: 'job.yaml', line: 1, column: 1, path: '/devices/tweeter/in' },
  related: [],
  message: '',
  source: '',
  remedy: '',
  ...more,
});

const dataOf = (more: Partial<Finding>) =>
  (withData(finding(more), job()).data ?? []).map(({ file, path }) => `${file} ${path}`);

describe('a finding names where the figures stand that it rests on', () => {
  test('in a part and in the vehicle, in whichever unit they were written', () => {
    const related = ['tweeter', 'door'];
    expect(dataOf({ value: 0.05715, limit: 0.057, unit: 'm', related })).toEqual([
      'parts.yaml /parts/tweeter/size/height',
      'vehicle.yaml /places/door/depth',
    ]);
  });

  test('in a link, and in the house rules of the shop', () => {
    expect(dataOf({ value: 0.9144, limit: 0.4572, unit: 'm', related: ['board-ground'] })).toEqual([
      'job.yaml /links/board-ground/length',
      'shop.yaml /rules/ground-lead',
    ]);
  });

  test('of an amplifier that a channel of it is told by', () => {
    expect(dataOf({ value: 65, limit: 60, unit: 'A', related: ['amp.1'] })).toEqual([
      'parts.yaml /parts/two-channel/supply/fuse',
    ]);
  });

  test('what a device is given itself decides: a like figure of its part is chance', () => {
    const about = (fuse: string | undefined) => {
      const content = written();
      entry(content.job.devices, 'main-fuse').fuse = fuse;
      const where = { file: 'job.yaml', line: 1, column: 1, path: '/devices/main-fuse/fuse' };
      return withData(finding({ value: 250, unit: 'A', related: ['main-fuse'], where }), jobOf(content)).data;
    };
    expect(partIn(written(), 'holder', 'fuse-holder').current).toBe('250 A');
    expect(about('250 A')).toBeUndefined();
    expect(about(undefined)).toEqual([expect.objectContaining({ path: '/parts/holder/current' })]);
  });

  test('of several outputs with one figure that of the output that is named', () => {
    const content = written();
    const outputs = { SP1: { 'clean-voltage': '8.2 V' }, SP2: { 'clean-voltage': '8.2 V' } };
    Object.assign(content.vehicle.fitted, { head: { part: 'radio', zone: 'cabin', outputs } });
    const found = (id: string) =>
      withData(finding({ value: 8.2, unit: 'V', related: [id] }), jobOf(content)).data?.map(
        ({ path }) => path,
      );
    expect(found('head.SP2')).toEqual(['/fitted/head/outputs/SP2/clean-voltage']);
    expect(found('head')).toBeUndefined();
  });

  test.each<[string, Partial<Finding>]>([
    [
      'a figure that stands twice in a part is not guessed at',
      { value: 0.1, unit: 'm', related: ['tweeter'] },
    ],
    ['a figure of another dimension', { value: 60, unit: 'V', related: ['amp'] }],
    ['a figure that was computed', { value: 0.0571, unit: 'm', related: ['tweeter', 'door'] }],
    ['a text', { value: 'GAIN', related: ['amp'] }],
    [
      'its own place',
      {
        value: 0.057,
        unit: 'm',
        related: ['door'],
        where: { file: 'vehicle.yaml', line: 1, column: 1, path: '/places/door/depth' },
      },
    ],
  ])('and nothing else: %s', (_, more) => {
    expect(dataOf(more)).toEqual([]);
  });
});

describe('a finding tells its figures as they are written', () => {
  const figuresOf = (more: Partial<Finding>) => findingFigures(withWritten(finding(more), job()));

  test('in the unit of the file that has them', () => {
    const related = ['board-ground'];
    expect(figuresOf({ value: 0.9144, limit: 0.4572, unit: 'm', related })).toEqual({
      value: '3 ft',
      limit: '18 in',
    });
    expect(figuresOf({ value: 0.057, unit: 'm', related: ['door'] })).toEqual({ value: '57 mm' });
  });

  test('else a length in millimetres, and nothing else otherwise than it was computed', () => {
    const related = ['board-ground'];
    expect(figuresOf({ value: 0.9145, limit: 0.4572, unit: 'm', related })).toEqual({
      value: '914.5 mm',
      limit: '18 in',
    });
    expect(figuresOf({ value: -0.0034, limit: 12.192, unit: 'm' })).toEqual({
      value: '-3.4 mm',
      limit: '12.2 m',
    });
    expect(figuresOf({ value: 0.9144, limit: 0.4572, unit: 'V', related })).toEqual({
      value: '0.9144 V',
      limit: '0.4572 V',
    });
  });

  test('so that an acceptance that copies them is read as the same', () => {
    const one = finding({ value: 0.9144, limit: 0.4574, unit: 'm', related: ['board-ground'] });
    const { value = '', limit = '' } = findingFigures(withWritten(one, job()));
    expect(isFigure(value, 0.9144, 'm', 0.4574)).toBe(true);
    expect(isFigure(limit, 0.4574, 'm', 0.9144)).toBe(true);
  });
});
