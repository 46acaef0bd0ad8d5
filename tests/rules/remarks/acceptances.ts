import type { Finding } from '../../../lib/model/finding.ts';
import { acceptanceRemarks } from '../../../lib/rules/accepted.ts';
import { fires, quiet, type RemarkCases } from '../remark-case.ts';

/** What is said of an acceptance of half a volt at the amplifier, where this is found; none of `null`. */
const where = (found: Partial<Finding> | null) => () => {
  const finding: Finding = {
    rule: 'drop-over-limit',
    level: 'caution',
    where: { file: 'job.yaml', line: 1, column: 1, path: '' },
    related: ['amp'],
    message: 'half a volt is lost',
    value: 0.5,
    limit: 0.4,
    unit: 'V',
    source: 'common practice, no source',
    remedy: 'a larger conductor',
    ...found,
  };
  const seen = { value: '0.5 V', limit: '0.4 V' };
  const accepted = { finding: 'drop-over-limit', of: 'amp', ...seen, reason: 'seen', by: 'P. T.' };
  return acceptanceRemarks(found === null ? [] : [finding], [accepted]).map(({ remark }) => remark);
};

const asSeen = quiet('the value that was seen', where({}));

/** What a job accepts, held against what is found. The design's own principle: a stop is never printed away. */
export const acceptanceRemarksCases = {
  'acceptance-of-stop': {
    fires: [fires('a stop', 'caution', 'amp', where({ level: 'stop' }), /can't be accepted/)],
    quiet: [asSeen],
  },
  'acceptance-outdated': {
    fires: [
      fires('a tenth of a volt more', 'note', 'amp', where({ value: 0.6 }), /at 0\.5 V, and is 0\.6 V now/),
      fires(
        'a tenth of a volt less allowed',
        'note',
        'amp',
        where({ limit: 0.3 }),
        /against a limit of 0\.4 V, and its limit is 0\.3 V now/,
      ),
      fires('no value any more', 'note', 'amp', where({ value: undefined }), /tells no value/),
    ],
    quiet: [asSeen, quiet('nothing found', where(null))],
  },
  'acceptance-pointless': {
    fires: [
      fires('nothing found', 'note', 'amp', where(null), /not found any more/),
      fires('another subject', 'note', 'amp', where({ related: ['dsp'] })),
      fires('a note', 'note', 'amp', where({ level: 'note' }), /only a note/),
    ],
    quiet: [asSeen, quiet('another value', where({ value: 0.6 }))],
  },
} satisfies RemarkCases;
