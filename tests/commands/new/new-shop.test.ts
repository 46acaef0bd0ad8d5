import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { ruleText } from '../../../lib/commands/new/shop-skeleton.ts';
import { runCommand } from '../../../lib/commands/run-command.ts';
import { houseRuleDefinition, houseRuleNames } from '../../../lib/model/house-rules.ts';
import { projectFolder } from '../../../lib/publish/site/templates.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { readHouseRules } from '../../../lib/read/read-house-rules.ts';
import { casesOf } from '../../long-run.ts';
import { EmptyFolder } from '../shop-folder.ts';
import { Typed } from './typed.ts';

/** What `check --json` prints, as far as it is looked at here. */
interface Checked {
  readonly problems: readonly unknown[];
  readonly jobs: readonly {
    readonly id: string;
    readonly findings: readonly { readonly rule: string; readonly related: readonly string[] }[];
  }[];
}

/** Runs a command line on a disk that is full after so many files. */
function cutShort(cut: EmptyFolder, files: number, ...line: readonly string[]) {
  let left = files;
  const full = { ...realEffects(cut.root), out: () => undefined, tell: () => undefined };
  const write = (path: string, text: string | Uint8Array) => {
    left -= 1;
    return left < 0
      ? Promise.reject(Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' }))
      : full.write(path, text);
  };
  return runCommand(line, cut.root, { ...full, write });
}

const folder = new EmptyFolder();
const metric = new EmptyFolder();
afterAll(() => {
  folder.remove();
  metric.remove();
});

describe('new --shop', () => {
  beforeAll(async () => {
    const { status, out } = await folder.run('new', '--shop', '--title', 'Quay Sound');
    expect([status, out]).toEqual([0, 'content/shop.yaml']);
  });

  test('makes a shop whose one job is planned with nothing to do but to count the shelf and to order the equipment itself', async () => {
    const { status, out, told } = await folder.run('check', '--json');
    expect([status, told]).toEqual([0, '']);
    const { jobs, problems }: Checked = JSON.parse(out);
    expect([jobs.map(({ id }) => id), problems]).toEqual([['first-job'], []]);
    expect(jobs[0]?.findings.map(({ rule, related: [of] }) => `${rule} ${of}`).sort()).toEqual([
      'stock-not-counted birch-12',
      'to-order amp-five',
    ]);
  });

  test('says on every sheet of that job that the vehicle is invented', async () => {
    expect((await folder.run('build')).status).toBe(0);
    const page = readFileSync(join(folder.root, 'dist/jobs/first-job/index.html'), 'utf8');
    expect(page).toContain('Every figure of this vehicle is invented');
    expect(page).toContain('Quay Sound');
  });

  test('takes the parts and the guides of the demo shop as they are, and nothing else of it', () => {
    const names = (root: string) =>
      readdirSync(join(root, 'content'), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map(({ parentPath, name }) => join(parentPath, name).slice(root.length));
    const demo = names(projectFolder.replace(/[\\/]$/, '')).filter((name) => /parts|guides/.test(name));
    const own = ['jobs/first-job', 'shop', 'vehicles/first-vehicle'].map((name) =>
      join('/content', `${name}.yaml`),
    );
    expect(names(folder.root).sort()).toEqual([...demo, ...own].sort());
  });

  test('makes neither vehicle nor job where none is wanted, and still reads', async () => {
    const bare = new EmptyFolder();
    const { status, told } = await bare.answered(new Typed('Quay Sound', 'inch', 'no', ''), 'new', 'shop');
    expect([status, told]).toEqual([0, expect.stringContaining('parts that are invented, and the guides')]);
    const names = readdirSync(join(bare.root, 'content'));
    expect(names.toSorted()).toEqual(['guides', 'parts', 'shop.yaml']);
    expect((await bare.run('check')).status).toBe(0);
    bare.remove();
  });

  test('counts what is told of its shelf, one line a thing', async () => {
    const counted = new EmptyFolder();
    const { status, told } = await counted.run(
      ...['new', 'shop', '--title', 'Quay Sound', '--samples', 'no'],
      ...['--thing', 'large bolt-in fuse 80 A x4', '--thing', 'power wire 2 AWG red 105 C 30 ft'],
    );
    expect([status, told]).toEqual([
      0,
      expect.stringMatching(/new: power-wire-2-awg-red-105-c\n[\s\S]*next: rackleaf build$/),
    ]);
    const { shop, problems } = readContent(await realEffects(counted.root).readContent());
    expect(problems).toEqual([]);
    expect(shop?.stock).toMatchObject({
      'fuse-large-80': { pieces: 4 },
      // 30 ft of 0.3048 m.
      'power-wire-2-awg-red-105-c': { reels: [expect.closeTo(9.144, 9)] },
    });
    counted.remove();
    const wrong = new EmptyFolder();
    const refused = await wrong.run('new', 'shop', '--title', 'Quay Sound', '--thing', 'ring lug 4 AWG x10');
    expect([refused.status, refused.told]).toEqual([2, expect.stringContaining('lacks stud')]);
    // What was told is kept for the command that mends it, and no shop is begun.
    expect(readdirSync(wrong.root)).toEqual(['.rackleaf']);
    const mended = await wrong.run('new', 'shop', '--thing', 'ring lug 4 AWG M8 x10');
    expect([mended.status, wrong.read('content/shop.yaml')]).toEqual([
      0,
      expect.stringContaining('Quay Sound'),
    ]);
    wrong.remove();
  });

  test("a first job of the shop's own needs no more than its name", async () => {
    const { status, out } = await folder.run('new', 'second-job');
    expect([status, out]).toEqual([0, 'content/jobs/second-job.yaml']);
    expect(folder.read('content/jobs/second-job.yaml')).toContain(
      'vehicle: first-vehicle\nspace: under-left-seat\n',
    );
  });

  test('touches nothing where there is a shop already', async () => {
    const before = folder.read('content/shop.yaml');
    const { status, told } = await folder.run('new', '--shop');
    expect(status).toBe(2);
    expect(told).toMatch(/there is a shop here already: content\//);
    expect(folder.read('content/shop.yaml')).toBe(before);
  });

  test.each([
    [['new', '--shop', 'job'], /a shop takes no name "job"/],
    [['new', 'shop', '--vehicle', 'van'], /--vehicle does not go with new shop/],
    [['new', 'shop', '--units', 'yard'], /--units "yard": "yard" is not one of them; known: inch, mm/],
    [['new', 'shop', '--units', 'mm', '--units', 'inch'], /--units may be given once/],
    [['new', 'job'], /there is no vehicle: rackleaf new vehicle writes one/],
    [['new'], /say what/],
  ])('refuses %j', async (line, message) => {
    const empty = new EmptyFolder();
    const { status, told } = await empty.run(...line);
    expect(status).toBe(2);
    expect(told).toMatch(message);
    expect(readdirSync(empty.root)).toEqual([]);
    empty.remove();
  });

  test('keeps what was answered where the person breaks off, and the next try goes on from there', async () => {
    const cut = new EmptyFolder();
    const broken = await cut.answered(new Typed('Quay Sound'), 'new', 'shop');
    expect([broken.status, broken.out]).toEqual([2, '']);
    expect(broken.told).toMatch(/no shop is made; \.rackleaf\/drafts\/shop\.json keeps the answers/);
    const second = new Typed('mm', '', '');
    const whole = await cut.answered(second, 'new', 'shop');
    expect([whole.status, second.refused, second.count]).toEqual([0, [], 3]);
    expect(cut.read('content/shop.yaml')).toMatch(/name: "Quay Sound"[\s\S]*^units: millimetre$/m);
    expect(readdirSync(join(cut.root, '.rackleaf/drafts'))).toEqual([]);
    cut.remove();
  });

  test('goes on where it was cut short, at whichever file', async () => {
    const line = ['new', '--shop', '--title', 'Quay Sound'];
    const contentOf = (one: EmptyFolder) => realEffects(one.root).readContent();
    const whole = (await contentOf(folder)).filter(({ path }) => !/second-job/.test(path));
    const stops = casesOf([...whole.keys()], (stop) => stop % 15 === 1 || stop === whole.length - 1);
    for (const stop of stops) {
      const cut = new EmptyFolder();
      expect(await cutShort(cut, stop, ...line)).toBe(3);
      const begun = await contentOf(cut);
      expect(begun).toHaveLength(stop);
      expect((await cut.run(...line)).status).toBe(0);
      expect(await contentOf(cut), `cut at ${stop}`).toEqual(whole);
      cut.remove();
    }
  });

  test('goes on beside what someone wrote meanwhile, and leaves it as it is', async () => {
    const cut = new EmptyFolder();
    await cutShort(cut, 40, 'new', '--shop');
    const counted = `${cut.read('content/parts/amplifiers.yaml')}# Counted.\n`;
    cut.write('content/parts/amplifiers.yaml', counted);
    cut.write('content/guides/own.md', '# As we do it\n');
    expect((await cut.run('new', '--shop')).status).toBe(0);
    expect(cut.read('content/parts/amplifiers.yaml')).toBe(counted);
    expect(cut.read('content/guides/own.md')).toBe('# As we do it\n');
    expect(cut.read('content/parts/wire.yaml')).toBe(folder.read('content/parts/wire.yaml'));
    expect(cut.read('content/shop.yaml')).toContain('name: "Your shop"');
    cut.remove();
  });

  test('is not begun over what someone wrote', async () => {
    const written = new EmptyFolder();
    written.write('content/guides/own.md', 'As we do it.');
    const { status, told } = await written.run('new', '--shop');
    expect(status).toBe(2);
    expect(told).toContain('there is a shop here already: content/guides/own.md');
    expect(readdirSync(join(written.root, 'content'))).toEqual(['guides']);
    written.remove();
  });

  test('writes millimetres and A4 for a shop that measures so', async () => {
    expect((await metric.run('new', '--shop', '--units', 'mm')).status).toBe(0);
    const text = metric.read('content/shop.yaml');
    expect(text).toMatch(/^units: millimetre$/m);
    expect(text).toMatch(/^paper: a4$/m);
    const files = await realEffects(metric.root).readContent();
    expect(readContent(files).problems).toEqual([]);
  });
});

describe('the house rules in a new shop file', () => {
  test.each(['inch', 'millimetre'] as const)(
    'say, taken as they stand (%s), what holds without them',
    (units) => {
      const text = `rackleaf: 1\nname: x\nrules:\n${houseRuleNames.map((name) => `  ${ruleText(name, units)}`).join('\n')}\n`;
      const { shop, problems } = readContent([{ path: 'content/shop.yaml', text }]);
      expect(problems).toEqual([]);
      const rules = readHouseRules(shop?.rules ?? {});
      for (const name of houseRuleNames) {
        expect(rules[name].given, name).toBe(true);
        const { value } = houseRuleDefinition(name);
        expect(rules[name].value, name).toBeCloseTo(value, 12);
      }
    },
  );

  test('are written as people write them', () => {
    expect(ruleText('lug-resistance', 'inch')).toBe(
      'lug-resistance: 0.2 mohm # Resistance of a crimped lug (cp)',
    );
    expect(ruleText('ground-lead', 'inch')).toMatch(/^ground-lead: 18 in # /);
    expect(ruleText('ground-lead', 'millimetre')).toMatch(/^ground-lead: 457.2 mm # /);
  });
});
