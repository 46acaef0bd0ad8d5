import { createHash } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Look, SeenFile } from '../../../lib/publish/serve/file-looks.ts';
import { LiveSite } from '../../../lib/publish/serve/live-site.ts';
import { scopeName } from '../../../lib/publish/serve/scopes.ts';
import { fileOf, folderOf } from '../../../lib/publish/site/addresses.ts';
import { FakeMaker, made, unread } from './fake-maker.ts';

function seen(path: string, text: string): SeenFile {
  return { path, digest: createHash('sha256').update(text).digest('hex'), text, fault: null };
}

/** A shop with the jobs `a` and `b`, with files of one's own. */
function look(own: Readonly<Record<string, string | null>> = {}, missing: readonly string[] = []): Look {
  const texts: Record<string, string | null> = {
    'content/shop.yaml': 'shop',
    'content/parts/p.yaml': 'parts',
    'content/vehicles/v.yaml': 'vehicle',
    'content/guides/g.md': 'guide',
    'content/jobs/a.yaml': 'job a: one two three',
    'content/jobs/b.yaml': 'job b',
    ...own,
  };
  const files = Object.entries(texts).flatMap(([path, text]) => (text === null ? [] : [seen(path, text)]));
  return { files: missing.length > 0 ? [] : files, missing };
}

let maker: FakeMaker;
let live: LiveSite;
const said: string[] = [];
const changed: string[] = [];
const open: string[] = [];
let builtBefore: Record<string, string> = {};

beforeEach(() => {
  maker = new FakeMaker();
  said.length = 0;
  changed.length = 0;
  open.length = 0;
  builtBefore = {};
  live = new LiveSite({
    maker,
    lastBuilt: async (file) => builtBefore[file] ?? null,
    say: (message) => said.push(message),
    onChange: (scope) => changed.push(scopeName(scope)),
    open: () => open,
  });
});

const a = '/jobs/a/';
const b = '/jobs/b/';
const settled = () => new Promise((resolve) => setTimeout(resolve, 5));
const textAt = async (address: string): Promise<string | null> =>
  /<main id="main">(.*)<\/main>/.exec((await live.shown(address, 5)).page?.html ?? '')?.[1] ?? null;

/** Every page by its address and by what its own job says. */
function byText(): void {
  maker.rule = ({ address, files }) => {
    const own = files.find(({ path }) => address.startsWith(path.replace(/^content(.*)\.yaml$/, '$1/')));
    return own?.text?.includes('bad')
      ? unread(own.path, 'is bad')
      : made(`${address} of ${own?.text ?? 'all'}`);
  };
}

describe('a live site', () => {
  it('makes the page of each job from the files of that job alone', async () => {
    live.take(look({ 'content/jobs/a/A.plan.json': '{}' }), 'l');
    const paths = maker.last(a).wish.files.map(({ path }) => path);
    expect(paths).toContain('content/jobs/a/A.plan.json');
    expect(paths).toContain('content/parts/p.yaml');
    expect(paths).not.toContain('content/jobs/b.yaml');
    expect(paths).not.toContain('content/guides/g.md');
  });

  it('is planning until a page is made, and current from then on', async () => {
    live.take(look(), 'l');
    expect(live.standing(a)).toMatchObject({ isCurrent: false, work: 'planning', made: '' });
    maker.last(a).answer(made('first'));
    await settled();
    expect(live.standing(a)).toMatchObject({ isCurrent: true, work: null, troubles: [] });
    expect(await textAt(a)).toBe('first');
    expect(changed).toContain('job a');
  });

  it('makes anew only what a save can have changed', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    const before = maker.wished.length;
    live.take(look({ 'content/jobs/a.yaml': 'job a: changed' }), 'l');
    await settled();
    expect(maker.wished.slice(before).map(({ wish }) => wish.address)).toEqual([a]);
    expect(live.standing(b).isCurrent).toBe(true);
  });

  it('makes every job anew when a part, the shop or a layout changed', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    const before = maker.wished.length;
    live.take(look({ 'content/parts/p.yaml': 'other parts' }), 'l');
    await settled();
    live.take(look({ 'content/parts/p.yaml': 'other parts' }), 'other layouts');
    await settled();
    expect(maker.wished.slice(before).map(({ wish }) => wish.address)).toEqual([a, b, a, b]);
  });

  it('shows the page before it as not current while a save is planned', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    maker.rule = null;
    live.take(look({ 'content/jobs/a.yaml': 'job a: changed' }), 'l');
    expect(await textAt(a)).toBe('/jobs/a/ of job a: one two three');
    const { made: shown } = live.standing(a);
    expect(live.standing(a)).toMatchObject({ isCurrent: false, work: 'planning' });
    maker.last(a).answer(made('second'));
    await settled();
    expect(live.standing(a).isCurrent).toBe(true);
    expect(live.standing(a).made).not.toBe(shown);
  });

  it('ends the work for a save that a later one took the place of, and leaves the rest at work', async () => {
    live.take(look(), 'l');
    const [ofA, ofB] = [maker.last(a), maker.last(b)];
    live.take(look({ 'content/jobs/a.yaml': 'job a: changed' }), 'l');
    expect([ofA.options.signal.aborted, ofB.options.signal.aborted]).toEqual([true, false]);
    maker.last(a).answer(made('second'));
    ofA.answer(made('first'));
    ofB.answer(made('of b'));
    await settled();
    expect(await textAt(a)).toBe('second');
    expect(live.standing(b).isCurrent).toBe(true);
  });

  it('keeps the last good page over an error of its own job, and no other', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    live.take(look({ 'content/jobs/a.yaml': 'bad' }), 'l');
    await settled();
    expect(await textAt(a)).toBe('/jobs/a/ of job a: one two three');
    const { isCurrent, work, troubles } = live.standing(a);
    expect({ isCurrent, work }).toEqual({ isCurrent: false, work: null });
    expect(troubles.join('\n')).toContain('content/jobs/a.yaml:3:9: error: is bad');
    expect(live.standing(b)).toMatchObject({ isCurrent: true, troubles: [] });
    expect(said.filter((one) => one.includes('is bad'))).toHaveLength(1);
    expect(live.hasErrors).toBe(true);
  });

  it('is current again once the error is mended, and says it again when it comes back', async () => {
    byText();
    for (const text of ['fine', 'bad', 'fine', 'bad', 'fine']) {
      live.take(look({ 'content/jobs/a.yaml': text }), 'l');
      await settled();
    }
    expect(live.standing(a)).toMatchObject({ isCurrent: true, troubles: [] });
    expect(said.filter((one) => one.includes('is bad'))).toHaveLength(2);
    expect(live.hasErrors).toBe(false);
  });

  it('makes the last good state of a page that nobody had opened before the error', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    live.take(look({ 'content/jobs/a.yaml': 'bad' }), 'l');
    await settled();
    const worksheet = await live.shown(`${a}worksheet/`, 50);
    expect(worksheet.page?.html).toContain('/jobs/a/worksheet/ of job a: one two three');
    expect(worksheet.standing.isCurrent).toBe(false);
    expect(worksheet.standing.troubles).not.toEqual([]);
  });

  it('shows the page that was built last where none was good since it began', async () => {
    byText();
    builtBefore = { [fileOf(a)]: '<html>built</html>', [`${folderOf(a)}drawings/one.svg`]: '<svg/>' };
    live.take(look({ 'content/jobs/a.yaml': 'bad' }), 'l');
    await settled();
    const { page, standing, isAbsent } = await live.shown(a, 5);
    expect([page?.html, standing.isCurrent, isAbsent]).toEqual(['<html>built</html>', false, false]);
    expect(await live.fileBeside(a, 'drawings/one.svg', 5)).toBe('<svg/>');
  });

  it('gives the files beside a page as it shows the page, and none that it does not have', async () => {
    const files = [{ path: 'drawings/one.svg', text: '<svg/>' }];
    maker.rule = () => ({ state: 'made', html: '<html></html>', files, problems: [] });
    live.take(look(), 'l');
    await settled();
    expect(await live.fileBeside(a, 'drawings/one.svg', 50)).toBe('<svg/>');
    expect(await live.fileBeside(a, 'drawings/two.svg', 50)).toBeNull();
    expect(await live.fileBeside('/jobs/nobody/', 'drawings/one.svg', 50)).toBeNull();
  });

  it('shows the errors alone where no good page ever was, and never as a page that is not there', async () => {
    byText();
    live.take(look({ 'content/jobs/a.yaml': 'bad' }), 'l');
    await settled();
    const { page, standing, isAbsent } = await live.shown(a, 5);
    expect([page, isAbsent]).toEqual([null, false]);
    expect(standing.troubles.join()).toContain('is bad');
  });

  it('knows an address at which there is nothing', async () => {
    maker.rule = ({ address }) => (address === a ? made('a') : { state: 'absent', problems: [] });
    live.take(look(), 'l');
    await settled();
    expect((await live.shown('/jobs/nobody/', 5)).isAbsent).toBe(true);
    expect((await live.shown('/jobs/a/Z/', 50)).isAbsent).toBe(true);
    expect((await live.shown(a, 5)).isAbsent).toBe(false);
  });

  it('keeps the page of a job whose file went away, and says so', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    live.take(look({ 'content/jobs/a.yaml': null }), 'l');
    await settled();
    expect(await textAt(a)).toContain('job a');
    expect(live.standing(a).troubles.join()).toContain('content/jobs/a.yaml is not there any more');
    expect(live.standing(a).isCurrent).toBe(false);
    live.take(look(), 'l');
    await settled();
    expect(live.standing(a).isCurrent).toBe(true);
  });

  it('tells a folder that vanished as that, on every page, and comes back with it', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    live.take(look({}, ['content']), 'l');
    await settled();
    for (const address of [a, b, '/']) {
      expect(live.standing(address).isCurrent).toBe(false);
      expect(live.standing(address).troubles.join()).toContain('content/ is not there');
    }
    expect(await textAt(a)).toContain('job a');
    live.take(look(), 'l');
    await settled();
    expect([live.standing(a).isCurrent, live.hasErrors]).toEqual([true, false]);
  });

  it('tells a file that was saved only in part by what it held before', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    maker.rule = ({ address }) =>
      address === a ? unread('content/jobs/a.yaml', 'links is missing') : made(address);
    live.take(look({ 'content/jobs/a.yaml': 'job a: one' }), 'l');
    await settled();
    expect(live.standing(a).troubles[0]).toContain('content/jobs/a.yaml:1:1: error: the file ends here');
    live.take(look({ 'content/jobs/a.yaml': 'job a: two' }), 'l');
    await settled();
    expect(live.standing(a).troubles[0]).toContain('links is missing');
  });

  it('does not plan from a file that is no text, and names its line', async () => {
    byText();
    const broken: SeenFile = {
      path: 'content/jobs/a.yaml',
      digest: 'x',
      text: null,
      fault: { line: 7, message: 'is no text' },
    };
    const { files } = look({ 'content/jobs/a.yaml': null });
    live.take({ files: [...files, broken], missing: [] }, 'l');
    await settled();
    expect(maker.wished.map(({ wish }) => wish.address)).toEqual([b]);
    expect(live.standing(a).troubles).toEqual(['content/jobs/a.yaml:7:1: error: is no text']);
  });

  it('says that a file is still being written, on the pages that are made from it', async () => {
    byText();
    open.push(a, b);
    live.take(look(), 'l');
    await settled();
    changed.length = 0;
    live.takeWriting(['content/jobs/a.yaml']);
    expect(live.standing(a)).toMatchObject({ isCurrent: false, work: 'writing' });
    expect(live.standing(b)).toMatchObject({ isCurrent: true, work: null });
    live.takeWriting([]);
    expect(live.standing(a).isCurrent).toBe(true);
    expect(changed).toEqual(['job a', 'job a']);
  });

  it('takes a fault of the program as that of one job, with its name', async () => {
    byText();
    live.take(look(), 'l');
    await settled();
    maker.rule = ({ address }) => {
      if (address === a) throw new Error('a plan failed');
      return made(address);
    };
    live.take(look({ 'content/parts/p.yaml': 'other' }), 'l');
    await settled();
    expect(live.standing(a).troubles.join()).toMatch(
      /content\/jobs\/a\.yaml: .*no fault of what is written.*a plan failed/s,
    );
    expect(await textAt(a)).toContain('job a');
    expect(live.standing(b).isCurrent).toBe(true);
  });

  it('makes lists once every job is planned, and says there which they leave out', async () => {
    live.take(look(), 'l');
    const shown = live.shown('/jobs/', 5);
    expect((await shown).page).toBeNull();
    expect(maker.wished.map(({ wish }) => wish.address)).toEqual([a, b]);
    maker.last(a).answer(unread('content/jobs/a.yaml', 'is bad'));
    maker.last(b).answer(made('b'));
    await settled();
    const all = unread('content/jobs/a.yaml', 'is bad');
    maker.last('/jobs/').answer({ ...made('list'), problems: all.problems });
    await settled();
    expect(live.standing('/jobs/')).toMatchObject({ isCurrent: true, missing: ['a'] });
    expect(live.standing('/jobs/').troubles.join()).toContain('is bad');
  });

  it('makes a page that a reader waits for before what is made ahead', async () => {
    live.take(look(), 'l');
    expect(maker.last(a).options.isAwaited()).toBe(false);
    void live.shown(a, 50);
    expect(maker.last(a).options.isAwaited()).toBe(true);
    expect(maker.last(b).options.isAwaited()).toBe(false);
    open.push(b);
    expect(maker.last(b).options.isAwaited()).toBe(true);
  });

  it('makes a page that is open in a browser anew, whichever it is', async () => {
    byText();
    open.push('/jobs/a/worksheet/');
    live.take(look(), 'l');
    await settled();
    live.take(look({ 'content/jobs/a.yaml': 'job a: changed' }), 'l');
    await settled();
    expect(maker.wished.filter(({ wish }) => wish.address === '/jobs/a/worksheet/')).toHaveLength(2);
    expect(live.standing('/jobs/a/worksheet/').isCurrent).toBe(true);
  });
});
