import { describe, test } from 'vitest';
import { expectProblem, inJob, type ProblemCase } from '../problem-case.ts';

/** A second woofer whose link is joined as written. */
const second = (joint: string) => [
  inJob(
    '  sub: { part: woofer-a, in: boot }\n',
    '  sub: { part: woofer-a, in: boot }\n  sub-b: { part: woofer-a, in: boot }\n',
  ),
  inJob(
    '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n',
    `  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n  speaker-b: { from: amp.CH1, to: sub-b.C1, length: 3 ft, joint: ${joint} }\n`,
  ),
];

const cases: readonly ProblemCase[] = [
  {
    name: 'to a link that there is not',
    changes: second('{ with: ^speakr }'),
    says: /speakr/,
    remedy: /speaker/,
  },
  {
    name: 'to a link at another port',
    changes: second('{ with: ^turn-on }'),
    says: /speaker-b shares no terminal with "turn-on"/,
    remedy: /name the link that enters the same terminal/,
  },
  {
    name: 'by a part that is no splice',
    changes: second('{ with: speaker, part: ^bolt-a }'),
    says: /bolt-a is no splice/,
    remedy: /form: butt-splice or solder-sleeve/,
  },
  {
    name: 'of a feed',
    changes: [
      inJob(
        '  feed: { from: main-fuse.OUT, to: amp.B+ }\n',
        '  feed: { from: main-fuse.OUT, to: amp.B+ }\n  feed-b: { from: main-fuse.OUT, to: amp.REM, length: 3 ft }\n  feed-c: { from: main-fuse.OUT, to: amp.B+, length: 3 ft, joint: ^{ with: feed } }\n',
      ),
    ],
    says: /feed-c is a feed: it is not joined to another before a port/,
    remedy: /part it at a distribution part/,
  },
  {
    name: 'of a line lead',
    changes: [
      inJob(
        '  speaker: {',
        '  signal-b: { from: radio.OUT1, to: amp.IN1, length: 3 ft, joint: ^{ with: signal } }\n  speaker: {',
      ),
    ],
    says: /radio\.OUT1 takes a plug: a line lead is parted by a Y-lead/,
    remedy: /y-lead: true/,
  },
];

describe('a joint before a port', () => {
  test.each(cases)('$name', expectProblem);
});
