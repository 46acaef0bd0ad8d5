import { afterAll, describe, expect, test } from 'vitest';
import { realEffects } from '../../lib/commands/effects.ts';
import { runCommand } from '../../lib/commands/run-command.ts';
import { planJsonSchema } from '../../lib/model/plan/index.ts';
import { misspelt, ShopFolder, stopped } from './shop-folder.ts';

const sound = new ShopFolder();
const withStop = new ShopFolder(stopped);
const withError = new ShopFolder(misspelt);
const withBoth = new ShopFolder(stopped);
withBoth.change('content/guides/gain.md', 'summary:', 'sumary:');
afterAll(() => {
  for (const folder of [sound, withStop, withError, withBoth]) folder.remove();
});

describe('check', () => {
  test('0 where nothing stops the job: findings to stdout, nothing to stderr', async () => {
    const { status, out, told } = await sound.run('check');
    expect(status).toBe(0);
    expect(out).toMatch(/caution: .*\n(?: {2}value .*\n)? {2}to do: .*\n {2}or accept it, .*\n {2}rule: /);
    expect(out).toMatch(/demo, revision A: draft; 0 stop, \d+ caution, \d+ note$/);
    expect(told).toBe('');
  });

  test('1 where a finding stops the job, with its place', async () => {
    const { status, out, told } = await withStop.run('check', 'demo');
    expect(status).toBe(1);
    expect(out).toMatch(/^content\/jobs\/demo\.yaml:\d+:\d+: stop: /m);
    expect(out).toMatch(/DRAFT, stopped; [1-9]\d* stop/);
    expect(told).toBe('');
  });

  test('2 where the input has errors, told on stderr', async () => {
    const { status, out, told } = await withError.run('check');
    expect(status).toBe(2);
    expect(told).toMatch(/^content\/jobs\/demo\.yaml:\d+:\d+: error: there is no terminal of amp "RME"/);
    expect(told).toMatch(/did you mean "REM"/);
    expect(out).toBe('');
  });

  test('2 where both are there, with the error told and the stop given out', async () => {
    const { status, out, told } = await withBoth.run('check');
    expect(status).toBe(2);
    expect(out).toMatch(/: stop: /);
    expect(told).toMatch(/^content\/guides\/gain\.md:\d+:\d+: error: /);
  });

  test('--json gives one document, and the same status', async () => {
    const stop = await withStop.run('check', '--json');
    const error = await withError.run('check', '--json');
    expect([stop.status, error.status]).toEqual([1, 2]);
    expect(JSON.parse(stop.out)).toMatchObject({
      problems: [],
      jobs: [{ id: 'demo', findings: expect.arrayContaining([expect.objectContaining({ level: 'stop' })]) }],
    });
    expect(JSON.parse(error.out)).toMatchObject({
      problems: [{ where: { file: 'content/jobs/demo.yaml' }, message: 'there is no terminal of amp "RME"' }],
      jobs: [],
    });
  });

  test('2 for a job that is not there', async () => {
    const { status, told } = await sound.run('check', 'dema');
    expect(status).toBe(2);
    expect(told).toMatch(/there is no job "dema"; did you mean "demo"\?/);
  });

  test('a job that is not there is told beside the errors of others', async () => {
    const { told } = await withError.run('check', 'other');
    expect(told).toMatch(/error: there is no terminal/);
    expect(told).toMatch(/there is no job "other"; known: demo/);
    expect((await withError.run('check', 'demo')).told).toMatch(/demo could not be read: mend the errors/);
  });

  test('2 in a folder without content', async () => {
    const empty = new ShopFolder();
    empty.remove();
    const { status, told } = await empty.run('check');
    expect(status).toBe(2);
    expect(told).toMatch(/there is no content\/shop\.yaml/);
  });
});

describe('plan', () => {
  test('--json gives the whole plan document and nothing else', async () => {
    const { status, out, told } = await sound.run('plan', 'demo', '--json');
    expect(status).toBe(0);
    expect(told).toBe('');
    expect(JSON.parse(out)).toMatchObject({
      rackleaf: 1,
      job: { id: 'demo' },
      power: { fuses: [{ id: 'main-fuse' }] },
    });
    expect(out).not.toMatch(/Specimen|555 0199|QZX/);
  });

  test('without --json it is one line', async () => {
    const { status, out } = await sound.run('plan', 'demo');
    expect(status).toBe(0);
    expect(out).toMatch(/^demo, revision A: draft; 0 stop/);
  });

  test('of a job that is stopped it tells what to mend first, and where the rest is', async () => {
    const { out } = await withStop.run('plan', 'demo');
    const checked = await withStop.run('check', 'demo');
    expect(out).toMatch(/^demo, revision A: DRAFT, stopped; \d+ stop/);
    const [, first = ''] = /^mend first: (content\/\S+: stop: .*)$/m.exec(out) ?? [];
    expect(first).not.toBe('');
    expect(checked.out.startsWith(first)).toBe(true);
    expect(out).toMatch(/^all findings: rackleaf check demo$/m);
  });

  test('1 on a stop, 2 on an error, 2 for no job and for an unknown one', async () => {
    expect((await withStop.run('plan', 'demo', '--json')).status).toBe(1);
    expect((await withError.run('plan', 'demo')).status).toBe(2);
    expect((await withBoth.run('plan', 'demo')).status).toBe(2);
    expect(await sound.run('plan')).toMatchObject({
      status: 2,
      out: '',
      told: expect.stringMatching(/needs a job/),
    });
    expect(await sound.run('plan', 'nobody')).toMatchObject({ status: 2, out: '' });
  });

  test('--schema gives the JSON Schema of the document', async () => {
    const { status, out } = await sound.run('plan', '--schema');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toEqual(planJsonSchema());
  });
});

describe('the command line', () => {
  const commands = ['build', 'serve', 'check', 'plan', 'release', 'new', 'export', 'bench'];

  test('with nothing or --help it gives the help of all commands', async () => {
    for (const line of [[], ['--help'], ['help']]) {
      const { status, out, told } = await sound.run(...line);
      expect(status).toBe(0);
      expect(told).toBe('');
      for (const command of commands) expect(out).toContain(`rackleaf ${command}`);
      expect(out).toMatch(/Exit status: 0 done; 1 a job has a stop finding; 2 the input has errors; 3 /);
    }
  });

  test.each(commands)('%s --help tells of it without doing it', async (command) => {
    const { status, out, told } = await withError.run(command, '--help');
    expect(status).toBe(0);
    expect(out).toMatch(new RegExp(`^rackleaf ${command}`));
    expect(told).toBe('');
  });

  test.each([
    [['chekc'], /there is no command "chekc"; did you mean "check"/],
    [['frobnicate'], /there is no command "frobnicate"/],
    [['check', '--jsn'], /check: there is no --jsn; did you mean --json\?/],
    [['release', 'demo', '--fast'], /release: there is no --fast; it takes --help/],
    [['plan', 'demo', '--json=yes'], /plan: --json takes no value/],
    [['check', 'demo', 'more'], /does not know what to do with "more"/],
    [['build', 'demo'], /does not know what to do with "demo"/],
    [['build', '--audience', 'everyone'], /bench, customer, shop/],
    [['build', '--audience'], /build: --audience needs a value/],
    [['serve', '--port', 'eighty'], /--port takes a whole number/],
    [['serve', '--port', '70000'], /--port takes a whole number/],
    [['release'], /needs JOB/],
  ] as const)('%j is refused with status 2', async (line, says) => {
    const { status, out, told } = await sound.run(...line);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(told).toMatch(says);
    expect(told).not.toMatch(/^\s+at /m);
  });

  test('3 where something outside fails, with its cause and without a stack', async () => {
    const told: string[] = [];
    const status = await runCommand(['check'], sound.root, {
      ...realEffects(sound.root),
      tell: (text) => told.push(text),
      readContent: () => Promise.reject(new Error('reading', { cause: new Error('the disk is gone') })),
    });
    expect(status).toBe(3);
    expect(told.join('\n')).toMatch(/reading\n.*the disk is gone/);
    expect(told.join('\n')).not.toMatch(/^\s+at /m);
  });
});
