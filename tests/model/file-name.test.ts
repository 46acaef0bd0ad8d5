import { posix, win32 } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileId, revision } from '../../lib/model/fields.ts';
import { fileNameFault, onAnyDisk } from '../../lib/model/file-name.ts';

/** Examples of "Naming Files, Paths, and Namespaces" (Microsoft), and their neighbours that are fine. */
describe('the name of a file', () => {
  it.each(['con', 'CON', 'prn', 'aux', 'nul', 'com1', 'COM9', 'lpt1', 'com¹', 'NUL.txt', 'con.plan'])(
    'is not one that Windows keeps: %s',
    (name) => {
      expect(fileNameFault(name)).toMatch(/Windows keeps/);
    },
  );

  it.each(['console', 'con-1', 'auxiliary', 'com10', 'lpt', 'com', 'a-con', 'null'])('may be %s', (name) => {
    expect(fileNameFault(name)).toBeNull();
  });

  it.each(['a/b', 'a\\b', 'a:b', '1:2', 'a*', 'a?', '"a"', '<a', 'a>', 'a|b', 'a\tb', 'a\nb', 'a\0'])(
    'has no letter that some system refuses: %j',
    (name) => {
      expect(fileNameFault(name)).toMatch(/can not be the name of a file/);
    },
  );

  it.each(['a.', 'a ', '.', '..', ' a', '.a'])('has no dot or blank at an end: %j', (name) => {
    expect(fileNameFault(name)).toMatch(/beginning or end/);
  });

  it('stays one name within its folder by the rules of Windows and of the others, whatever is written', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (name) => {
        if (name === '' || fileNameFault(name) !== null) return;
        for (const rules of [win32, posix]) {
          expect(rules.basename(rules.join('content', 'jobs', name))).toBe(name);
          expect(rules.dirname(rules.join('content', 'jobs', name))).toBe(rules.join('content', 'jobs'));
        }
      }),
    );
  });

  it('is one for names that differ by case alone', () => {
    expect(onAnyDisk('Rev-A')).toBe(onAnyDisk('rev-a'));
    expect(onAnyDisk('é')).toBe(onAnyDisk('e\u0301'));
    expect(onAnyDisk('a')).not.toBe(onAnyDisk('b'));
  });
});

describe('what a file is called by', () => {
  it('is an id that every system takes', () => {
    expect(fileId.safeParse('amp-four').success).toBe(true);
    for (const name of ['nul', 'lpt3', 'Amp', 'a b'])
      expect(fileId.safeParse(name).success, name).toBe(false);
  });

  it('is a revision of letters that every system takes', () => {
    for (const name of ['A', 'b', '2.1', '2026-03', 'A 2']) expect(revision.parse(name)).toBe(name);
    for (const name of ['A/1', 'con', '1:2', 'A.', '..', ''])
      expect(revision.safeParse(name).success, name).toBe(false);
  });
});
