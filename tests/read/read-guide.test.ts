import { describe, expect, test } from 'vitest';
import { placeText } from '../../lib/model/place.ts';
import { readGuide } from '../../lib/read/read-guide.ts';

const read = (text: string) => readGuide({ path: 'content/guides/gain.md', text });

describe('a guide', () => {
  test('has its front matter and its body', () => {
    const { value, problems } = read('---\ntitle: Gain\nsummary: With a meter.\n---\n# Steps\n---\nEnd\n');
    expect(problems).toEqual([]);
    expect(value).toEqual({
      slug: 'gain',
      title: 'Gain',
      summary: 'With a meter.',
      body: '# Steps\n---\nEnd\n',
    });
  });

  test('lines may end as they do on another system', () => {
    const guide = '---\ntitle: Gain\nsummary: Now.\n---\n# Body\n\nText\n';
    const elsewhere = `\uFEFF${guide.replaceAll('\n', '\r\n')}`;
    expect(read(elsewhere)).toEqual(read(guide));
    expect(read(guide).value?.body).toBe('# Body\n\nText\n');
  });

  test.each(['Gain Setting', 'Gain', 'con'])('the name of its file is its address: not %s', (name) => {
    const { value, problems } = readGuide({
      path: `content/guides/${name}.md`,
      text: '---\ntitle: Gain\nsummary: Now.\n---\nBody\n',
    });
    expect(value).toBeNull();
    expect(problems.map(({ message }) => message).join()).toContain(`the name of the file, "${name}", is`);
  });

  test.each(['', '# Gain\n', '---\ntitle: Gain\n', 'title: Gain\n---\nBody\n'])(
    'without front matter: %j',
    (text) => {
      const { value, problems } = read(text);
      expect(value).toBeNull();
      expect(problems.map(({ where }) => placeText(where))).toEqual(['content/guides/gain.md:1:1']);
      expect(problems[0]?.message).toBe('the guide has no front matter');
      expect(problems[0]?.expected).toMatch(/title and summary/);
    },
  );

  test('in another encoding is told so at the first letter that shows it', () => {
    const latin = Buffer.from('---\ntitle: Caf\u00e9\nsummary: Now.\n---\nBody\n', 'latin1').toString('utf8');
    const { value, problems } = read(latin);
    expect(value).toBeNull();
    expect(problems.map(({ where }) => placeText(where))).toEqual(['content/guides/gain.md:2:11']);
    expect(problems[0]?.message).toMatch(/Latin-1.*save it again in UTF-8/);
  });

  test('a wrong value in the front matter is told at its line in the file', () => {
    const { value, problems } = read('---\ntitle: Gain\nsummary: 12\n---\nBody\n');
    expect(value).toBeNull();
    expect(problems.map(({ where }) => placeText(where))).toEqual(['content/guides/gain.md:3:10']);
  });

  test('a fault of YAML in the front matter is told at its line in the file', () => {
    const { problems } = read('---\ntitle: Gain\nsummary: "open\n---\nBody\n');
    expect(problems).toHaveLength(1);
    expect(problems[0]?.where.line).toBeGreaterThanOrEqual(3);
  });

  test('a name in braces that no house rule has is told where it stands', () => {
    const { value, problems } = read(
      '---\ntitle: Gain\nsummary: Now.\n---\nOk: {ground-lead}\nNo: {ground-leed}\n',
    );
    expect(value?.body).toBe('Ok: {ground-lead}\nNo: {ground-leed}\n');
    expect(problems.map(({ where }) => placeText(where))).toEqual(['content/guides/gain.md:6:5']);
    expect(problems[0]?.message).toBe('there is no house rule "ground-leed"');
    expect(problems[0]?.remedy).toBe('did you mean "ground-lead"?');
  });

  test('braces with anything else between them are text', () => {
    expect(read('---\ntitle: Gain\nsummary: Now.\n---\n`{ gain: 3 dB }` {A1}\n').problems).toEqual([]);
  });
});
