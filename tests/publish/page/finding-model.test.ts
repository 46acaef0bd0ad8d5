import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../lib/model/finding.ts';
import { findingGroups } from '../../../lib/publish/page/finding-model.ts';

const where = { file: 'a.yaml', line: 3, column: 5, path: '/links/feed' };
const finding = (more: Partial<Finding> = {}): Finding => ({
  rule: 'drop-over-limit',
  level: 'caution',
  where,
  related: ['amp'],
  message: 'amp loses 0.5 V',
  value: 0.5,
  limit: 0.4,
  unit: 'V',
  source: 'common practice, no source',
  remedy: 'a larger conductor',
  ...more,
});
const accepted = { by: 'P. T.', reason: 'never at rated power', value: '0.5 V', where };

describe('an accepted caution on the sheets', () => {
  test('stays among the cautions, with who, at which value and why', () => {
    const [group] = findingGroups([finding({ accepted })]);
    expect(group?.level).toBe('caution');
    expect(group?.findings[0]).toMatchObject({
      message: 'Amp loses 0.5 V.',
      figures: 'value 0.5 V, limit 0.4 V',
      accepted: 'Accepted by P. T. at 0.5 V: never at rated power.',
    });
  });

  test('is not told as one with the same that stands open', () => {
    const [group] = findingGroups([finding({ accepted }), finding({ related: ['other'] })]);
    expect(group?.findings.map((one) => one.accepted !== null)).toEqual([true, false]);
  });

  test('one that nobody accepted says nothing of it', () => {
    expect(findingGroups([finding()])[0]?.findings[0]?.accepted).toBeNull();
  });
});
