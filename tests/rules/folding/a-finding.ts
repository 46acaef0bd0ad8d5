import type { Finding } from '../../../lib/model/finding.ts';

/** A finding of a rule about some subjects, as a rule would tell it. */
export const aFinding = (
  rule: Finding['rule'],
  related: readonly string[],
  more: Partial<Finding> = {},
): Finding => ({
  rule,
  level: 'stop',
  where: { file: 'job.yaml', line: 1, column: 1, path: '' },
  related: [...related],
  message: `${rule} of ${related.join(', ')}`,
  source: 'common practice, no source',
  remedy: 'mend it',
  ...more,
});
