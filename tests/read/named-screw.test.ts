import { describe, test } from 'vitest';
import { expectProblem, type ProblemCase, partsFile, withBoard } from './problem-case.ts';
import type { Change } from './small-shop.ts';

const screws: Change = [
  partsFile,
  '  loom-a:',
  [
    '  bolt-5: { kind: fixing, title: Bolt, form: bolt, thread: M6, clearance: 6.6 mm }',
    '  bare: { kind: fixing, title: Bare, form: wood-screw, length: 16 mm }',
    '  loom-a:',
  ].join('\n'),
];
const named = (screw: string): readonly Change[] => [
  screws,
  withBoard('    sheet: ply-a\n', `    sheet: ply-a\n    screw: ^${screw}\n`),
];

const cases: readonly ProblemCase[] = [
  {
    name: 'a bolt',
    changes: named('bolt-5'),
    says: /"bolt-5" is no wood screw but a bolt/,
    remedy: /form wood-screw/,
  },
  {
    name: 'a screw without its holes',
    changes: named('bare'),
    says: /"bare" tells no pilot/,
    remedy: /write pilot: and clearance:/,
  },
  { name: 'none of the catalogue', changes: named('scrw-6'), says: /there is no part "scrw-6"/ },
];

describe('a screw that a job names for the parts of a board', () => {
  test.each(cases)('can not be $name', (one) => expectProblem(one));
});
