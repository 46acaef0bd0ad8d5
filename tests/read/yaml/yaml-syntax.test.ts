import { expect, test } from 'vitest';
import { placeText } from '../../../lib/model/place.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';

test.each([
  ['a:\n\t- b\n', '2:1 a tab stands in the indentation'],
  ['a:\n  b: 1\n\tc: 2\n', '3:1 a tab stands in the indentation'],
  ['a:\n  b: 1\n c: 2\n', '3:2 the indentation does not fit'],
  ['a: "x\nb: 1\n', '2:1 the " that was opened in line 1 is not closed'],
  ['a: [1, 2\nb: 1\n', '2:1 the [ that was opened in line 1 is not closed: write ] at its end'],
  ['a: { b: [1, 2 }\n', '1:15 the [ that was opened in line 1 is closed by }: write ] before it'],
  ['a:\n  b { c: 1, d: 2 }\n', '2:14 a colon is missing between the name and its {'],
  ['a:\n  b: ?\n', '2:6 a ? can not stand for what is not known yet'],
  ['a: { b: ? }\n', '1:9 a ? can not stand for what is not known yet'],
  ['a:\n  - b: 1\n  c: 2\n', '3:3 the line above is an entry of a list, and this one a name'],
  ['a:\n  b: 1\n  - c: 2\n', '3:3 this line is an entry of a list, and the one above has a name'],
  ['# it\'s a [\na: "}"\nb: { c: 1\nd: 2\n', '4:1 the { that was opened in line 3 is not closed'],
  ['a: [[1] 2]\n', '1:9 a comma is missing'],
  ['a: [1,, 2]\n', '1:7 there is a comma too many'],
  ['a: @b\n', "1:4 a value can't begin with @"],
  ['a: b: c\n', '1:5 there is a second colon'],
  ['a: "x" y\n', '1:8 there is something after the closing quote'],
  ['a:1\nb: 2\n', '2:2 this does not belong'],
  ['- a\nb: c\n', '2:1 this does not belong'],
  ['a: "\\q"\n', '1:6 a \\ in double quotes'],
  ['a: \u0000\n', "1:4 there is a character that can't be printed"],
  [
    Buffer.from('\uFEFFrackleaf: 1\n', 'utf16le').toString('utf8'),
    '1:1 the file is saved in UTF-16: save it again in UTF-8',
  ],
  [Buffer.from('rackleaf: 1\n', 'utf16le').toString('utf8'), '1:1 the file is saved in UTF-16'],
  [
    Buffer.from('\uFEFFrackleaf: 1\n', 'utf16le').swap16().toString('utf8'),
    '1:1 the file is saved in UTF-16',
  ],
  [
    Buffer.from('rackleaf: 1\ntitle: Caf\u00e9\nnotes: 20 \u00b0C\n', 'latin1').toString('utf8'),
    '2:11 a letter here is no UTF-8: the file is saved in Latin-1 or Windows-1252',
  ],
  [`${'['.repeat(200)}`, '1:100 blocks are nested too deep'],
  ['a: |x\n  y\n', '1:5 after | or > nothing may follow'],
])('%j is refused in plain words', (source, expected) => {
  const { value, problems } = readYaml('job.yaml', source);
  const [first, ...others] = problems.map(({ where, message }) => `${placeText(where)} ${message}`);
  expect(value).toBeNull();
  expect(others).toEqual([]);
  expect(first).toContain(`job.yaml:${expected}`);
});
