import { describe, expect, test } from 'vitest';
import type { JobAccepted } from '../../lib/model/content/job.ts';
import type { Finding } from '../../lib/model/finding.ts';
import { isStopped } from '../../lib/model/plan/index.ts';
import type { JoinedRemark } from '../../lib/model/remark.ts';
import { judge } from '../../lib/rules/index.ts';
import { about } from './case.ts';

/** What a job finds that notices one thing, and accepts another or the same. */
function found(remark: Partial<JoinedRemark>, ...accepted: readonly Partial<JobAccepted>[]): Finding[] {
  const { job, plan } = about();
  const acceptances = accepted.map((one) => ({
    finding: 'air-gap-short',
    of: 'amp',
    value: '20 mm',
    limit: '25.4 mm',
    reason: 'the fan blows across',
    by: 'P. T.',
    ...one,
  }));
  const noticed = {
    rule: 'air-gap-short',
    level: 'caution',
    of: ['amp', 'dsp'],
    message: 'too near',
  } as const;
  const figures = { value: 0.02, limit: 0.0254, unit: 'm', remedy: 'move it' };
  return judge({ ...job, file: { ...job.file, accepted: acceptances } }, plan, [
    { remark: { ...noticed, ...figures, ...remark }, path: '/devices/amp' },
  ]);
}

const ids = (findings: readonly Finding[]) => findings.map(({ rule, level }) => `${level} ${rule}`);

describe('a caution that the job accepts', () => {
  test('stays on the list, with who accepted it, why, at which value and where', () => {
    const [finding, ...others] = found({}, {});
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ level: 'caution', rule: 'air-gap-short', value: 0.02 });
    expect(finding?.accepted).toEqual({
      by: 'P. T.',
      reason: 'the fan blows across',
      value: '20 mm',
      limit: '25.4 mm',
      where: expect.objectContaining({ path: '/accepted/0' }),
    });
  });

  test('opens again when its value changes, up or down, and its acceptance says so', () => {
    for (const value of [0.0194, 0.0206]) {
      const findings = found({ value }, {});
      expect(ids(findings)).toEqual(['caution air-gap-short', 'note acceptance-outdated']);
      expect(findings[0]?.accepted).toBeUndefined();
      expect(findings[1]?.message).toMatch(/was accepted at 20 mm, and is (19\.4|20\.6) mm now/);
      expect(findings[1]?.where.path).toBe('/accepted/0');
    }
  });

  test('opens again when its limit changes, up or down, and its acceptance says so', () => {
    for (const limit of [0.0247, 0.0261]) {
      const findings = found({ limit }, {});
      expect(ids(findings)).toEqual(['caution air-gap-short', 'note acceptance-outdated']);
      expect(findings[0]?.accepted).toBeUndefined();
      expect(findings[1]?.message).toMatch(
        /was accepted against a limit of 25\.4 mm, and its limit is 2(4\.7|6\.1) mm now/,
      );
      expect(findings[1]?.remedy).toMatch(/value: 20 mm and limit: 2(4\.7|6\.1) mm/);
    }
  });

  test('asks for the limit that was seen, and for none where none is told', () => {
    const findings = found({}, { limit: undefined });
    expect(findings[0]?.accepted).toBeUndefined();
    expect(findings[1]?.message).toMatch(/without the limit that was seen, 25\.4 mm/);
    expect(found({ limit: undefined }, { limit: undefined })[0]?.accepted).toBeDefined();
    expect(found({ limit: undefined }, {})[0]?.accepted).toBeUndefined();
  });

  test('holds to the last digit that was written', () => {
    expect(found({ value: 0.0201 }, {})[0]?.accepted).toBeDefined();
    expect(found({ value: 0.0201 }, { value: '20.0 mm' })[0]?.accepted).toBeUndefined();
  });

  test('asks for the value that was seen', () => {
    const findings = found({}, { value: undefined });
    expect(findings[0]?.accepted).toBeUndefined();
    expect(findings[1]?.message).toMatch(/without the value that was seen, 20 mm/);
    expect(findings[1]?.remedy).toMatch(/value: 20 mm/);
  });

  test('that tells no value is accepted without one, and with none alone', () => {
    const silent = { value: undefined, limit: undefined, unit: undefined };
    expect(found(silent, { value: undefined, limit: undefined })[0]?.accepted).toBeDefined();
    const findings = found(silent, {});
    expect(ids(findings)).toEqual(['caution air-gap-short', 'note acceptance-outdated']);
  });

  test('of another subject, or another finding, stays open', () => {
    for (const other of [{ of: 'dsp' }, { finding: 'hole-near-edge' }]) {
      const findings = found({}, other);
      expect(ids(findings)).toEqual(['caution air-gap-short', 'note acceptance-pointless']);
      expect(findings[0]?.accepted).toBeUndefined();
    }
  });

  test('once for each value: one of two is open still', () => {
    const findings = found({}, { value: '30 mm' }, {});
    expect(findings[0]?.accepted?.where.path).toBe('/accepted/1');
  });
});

describe('what can not be accepted', () => {
  test('a stop stays one, and the acceptance is told', () => {
    const findings = found({ level: 'stop', rule: 'fuse-over-ceiling' }, { finding: 'fuse-over-ceiling' });
    expect(ids(findings)).toEqual(['stop fuse-over-ceiling', 'caution acceptance-of-stop']);
    expect(findings.every(({ accepted }) => accepted === undefined)).toBe(true);
    expect(isStopped({ findings })).toBe(true);
  });

  test('a note needs none', () => {
    const findings = found(
      { level: 'note', rule: 'acceptance-pointless' },
      { finding: 'acceptance-pointless' },
    );
    expect(findings.map(({ message }) => message).join()).toMatch(/is only a note/);
  });

  test('what is not found is accepted for nothing', () => {
    const { job, plan } = about();
    const one = { finding: 'air-gap-short', of: 'amp', reason: 'it was so', by: 'P. T.' };
    const findings = judge({ ...job, file: { ...job.file, accepted: [one] } }, plan, []);
    expect(ids(findings)).toEqual(['note acceptance-pointless']);
    expect(findings[0]?.message).toBe('air-gap-short of amp is accepted, but is not found any more');
  });
});
