import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { placeText } from '../../lib/model/place.ts';
import type { Problem } from '../../lib/model/problem.ts';
import { readContent } from '../../lib/read/read-content.ts';
import { jobsIn } from '../shops/shop-once.ts';
import { inJob, jobFile, partsFile, vehicleFile, withBoard } from './problem-case.ts';
import { smallShop, withoutMark } from './small-shop.ts';

describe('the files of a shop', () => {
  test('read without a problem', () => {
    expect(readContent(smallShop()).problems).toEqual([]);
    expect(readContent(smallShop(withBoard())).problems).toEqual([]);
  });

  test('are read the same where other tests read the shop once and the job anew', () => {
    const changes = [[], [withBoard()], [[vehicleFile, 'vehicle-load: 45 A', 'vehicle-load: 0 A']]] as const;
    for (const own of changes)
      for (const files of [smallShop(...own), smallShop(...own, inJob('to: amp.REM', 'to: amp.RME'))]) {
        const { jobs, problems } = readContent(files);
        const again = jobsIn(files);
        expect(again.problems).toEqual(problems);
        expect(again.jobs.map(({ file, devices, links }) => ({ file, devices, links }))).toEqual(
          jobs.map(({ file, devices, links }) => ({ file, devices, links })),
        );
      }
  });

  const problemsOf = (files: readonly SourceFile[]): readonly Problem[] => readContent(files).problems;

  test('a part id in two files is reported in the second, with the name of the first', () => {
    const again = {
      path: 'content/parts/more.yaml',
      text: 'rackleaf: 1\nparts:\n  large-60: { kind: fuse, title: Again, form: large-bolt-in, rating: 60 A }\n',
    };
    const content = readContent([...smallShop(), again]);
    expect(content.problems).toHaveLength(1);
    expect(content.problems[0]?.message).toBe(
      'part "large-60" is in content/parts/all.yaml already: an id names one thing',
    );
    expect(content.problems.map(({ where }) => placeText(where))).toEqual(['content/parts/more.yaml:3:3']);
    expect(content.parts['large-60']?.title).toBe('60 A');
  });

  test('a part that was renamed is told by its name of today, at each place that has the old one', () => {
    const files = smallShop().map(({ path, text }) => ({
      path,
      text: text
        .replace('large-60: { kind: fuse,', 'maxi-60: { kind: fuse, formerly: [large-60, fuse-60],')
        .replace('part: amp-a', 'part: big-amp')
        .replace(
          '  amp-a:\n    kind: amplifier',
          '  amp-mono:\n    formerly: [big-amp]\n    kind: amplifier',
        ),
    }));
    const told = readContent(files).problems.map(({ message, remedy }) => `${message}: ${remedy}`);
    expect(told).toEqual([
      'the part "big-amp" is called "amp-mono" now: write amp-mono',
      'the part "large-60" is called "maxi-60" now: write maxi-60',
    ]);
  });

  test('a former name leads to one part alone', () => {
    const files = smallShop().map(({ path, text }) => ({
      path,
      text: text
        .replace('large-60: { kind: fuse,', 'large-60: { kind: fuse, formerly: [large-80, old],')
        .replace('loom-a: { kind: covering,', 'loom-a: { kind: covering, formerly: [old, older],'),
    }));
    const told = readContent(files).problems.map(({ message, where }) => `${where.path} ${message}`);
    expect(told).toEqual([
      expect.stringMatching(/^\/parts\/large-60\/formerly\/0 "large-80" is a part of its own \(content/),
      expect.stringMatching(/^\/parts\/loom-a\/formerly\/0 "old" is a former name of large-60 already/),
    ]);
  });

  test('a missing shop.yaml is told, and what else could be read is still checked', () => {
    const { files, place } = withoutMark(
      smallShop(inJob('to: amp.REM', 'to: ^amp.RME')).filter(({ path }) => path !== 'content/shop.yaml'),
    );
    const content = readContent(files);
    expect(content.shop).toBeNull();
    expect(content.problems.map(({ message }) => message)).toEqual([
      'there is no terminal of amp "RME"',
      'there is no content/shop.yaml',
    ]);
    expect(content.problems.map(({ where }) => placeText(where))).toEqual([place, 'content/shop.yaml:1:1']);
    expect(content.problems[1]?.remedy).toMatch(/rackleaf new --shop/);
    expect(Object.keys(content.parts)).toContain('amp-a');
    expect(content.jobs).toEqual([]);
  });

  test('errors in several files are all reported in one run, in the order of the files', () => {
    const problems = problemsOf(
      smallShop(
        inJob('issued-on: 2026-03-14', 'issued-on: tomorrow'),
        [partsFile, 'rating: 150 A', 'rating: 150'],
        [partsFile, 'cold-cranking: 600 A', 'cold-cranking: 600 V'],
        [vehicleFile, 'title: Left sill', 'titel: Left sill'],
        ['content/shop.yaml', 'name: Test bench', 'nmae: Test bench'],
        ['content/guides/gain.md', 'summary:', 'sumary:'],
      ),
    );
    const files = new Set(problems.map(({ where }) => where.file));
    expect([...files]).toEqual([
      'content/guides/gain.md',
      'content/jobs/demo.yaml',
      'content/parts/all.yaml',
      'content/shop.yaml',
      'content/vehicles/wagon.yaml',
    ]);
    expect(problems.filter(({ where }) => where.file === partsFile)).toHaveLength(2);
  });

  test('a broken part does not hide errors elsewhere, nor make its own users look wrong', () => {
    const { files, place } = withoutMark(
      smallShop(inJob('covering: loom-a', 'covering: ^lom-a'), [
        partsFile,
        'supply: { type: regulated, fuse: 60 A,',
        'supply: { type: regulated, fuse: 60,',
      ]),
    );
    const problems = problemsOf(files);
    expect(problems.map(({ where }) => where.file)).toEqual([jobFile, partsFile]);
    expect(problems.map(({ where }) => placeText(where))).toContain(place);
  });

  test('a part that could not be read is not reported a second time as unknown', () => {
    const problems = problemsOf(smallShop([partsFile, 'rating: 150 A', 'rating: 150']));
    expect(problems.map(({ message }) => message)).toEqual([
      expect.stringMatching(/rating is a bare number/),
    ]);
  });

  test('parts of a file that is no YAML are not reported as unknown', () => {
    const problems = problemsOf(smallShop([partsFile, 'parts:\n', 'parts: [\n']));
    expect(problems.map(({ where }) => where.file)).toEqual([partsFile]);
  });

  test('a vehicle that could not be read is not reported a second time as unknown', () => {
    const problems = problemsOf(smallShop([vehicleFile, 'vehicle-load: 45 A', 'vehicle-load: 45']));
    expect(problems.map(({ where }) => where.file)).toEqual([vehicleFile]);
  });

  test('a device of an unknown part is told once, not at each of its links', () => {
    const problems = problemsOf(smallShop(inJob('part: amp-a', 'part: amp-aa')));
    expect(problems.map(({ message }) => message)).toEqual(['there is no part "amp-aa"']);
  });

  test('two jobs of one shop: the sound one is read though the other is not', () => {
    const [jobText = ''] = smallShop()
      .filter(({ path }) => path === jobFile)
      .map(({ text }) => text);
    const second = {
      path: 'content/jobs/other.yaml',
      text: jobText.replace('id: demo', 'id: other').replace('amp.REM', 'amp.RME'),
    };
    const content = readContent([...smallShop(), second]);
    expect(content.jobs.map(({ id }) => id)).toEqual(['demo']);
    expect(content.problems.map(({ where }) => where.file)).toEqual(['content/jobs/other.yaml']);
  });

  test('nothing at all is one problem, not an exception', () => {
    expect(readContent([]).problems).toHaveLength(1);
  });
});
