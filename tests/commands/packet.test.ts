import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { handOverLacks } from '../../lib/publish/packet/packet-lacks.ts';
import { planKept } from '../plan/plan-kept.ts';
import { jobOf } from '../plan/plan-small-shop.ts';
import { smallShop } from '../read/small-shop.ts';
import { ShopFolder, stopped } from './shop-folder.ts';

const draft = new ShopFolder();
const withStop = new ShopFolder(stopped);
const installed = new ShopFolder();
afterAll(() => {
  for (const folder of [draft, withStop, installed]) folder.remove();
});

/** Every line of the record that has a limit, read as predicted or just at it. */
function readings(): string {
  const { plan } = planKept(jobOf(smallShop()));
  const units: Readonly<Record<string, string>> = {
    ohm: 'ohm',
    V: 'V',
    mV: 'mV',
    A: 'A',
    ms: 'ms',
    Hz: 'Hz',
  };
  return plan.measurements
    .filter(({ least, greatest }) => least !== null || greatest !== null)
    .map(({ id, predicted, least, greatest, unit }) => {
      const value = predicted ?? greatest ?? least ?? 0;
      return `  ${id}: ${value.toFixed(6)} ${units[unit] ?? unit}`;
    })
    .join('\n');
}

describe('build --audience customer', () => {
  test('ends with 1 where a packet is refused, and says why', async () => {
    const { status, told } = await draft.run('build', '--audience', 'customer');
    expect(status).toBe(1);
    expect(told).toContain('demo: no packet is made: The job is still a draft.');
  });

  test('ends with 1 with a stop too', async () => {
    const { status, told } = await withStop.run('build', '--audience', 'customer');
    expect(status).toBe(1);
    expect(told).toContain('A fault that stops the job is still to be mended.');
  });
});

describe('export --format packet', () => {
  test('is refused for a draft: it says why, writes nothing and ends with 1', async () => {
    const { status, out, told } = await draft.run('export', 'demo', '--format', 'packet', '--to', 'out');
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(told).toContain('demo: no packet is made: The job is still a draft.');
    expect(told).toMatch(
      /demo: no packet is made: \d+ readings? of the record (is|are) still to be taken\. battery-rest/,
    );
    expect(existsSync(join(draft.root, 'out'))).toBe(false);
  });

  test('is refused with a stop', async () => {
    const { status, told } = await withStop.run('export', 'demo', '--format', 'packet');
    expect(status).toBe(1);
    expect(told).toContain('A fault that stops the job is still to be mended.');
  });

  test('is refused by `rackleaf packet` too, and nothing is written', async () => {
    const { status, out, told } = await draft.run('packet', 'demo', '--to', 'out');
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(told).toContain('demo: no packet is made: The job is still a draft.');
    expect(existsSync(join(draft.root, 'out'))).toBe(false);
  });

  test('is no part of what is written where no format is asked for', async () => {
    const { out, told } = await draft.run('export', 'demo', '--format', 'csv', '--to', 'tables');
    expect(out).not.toContain('packet');
    expect(told).not.toContain('packet');
  });

  test('is made of an installed job whose record is read, and of it alone', async () => {
    installed.change('content/jobs/demo.yaml', 'status: draft', 'status: installed');
    installed.write(
      'content/jobs/demo.yaml',
      `${installed.read('content/jobs/demo.yaml')}\nas-built:\n${readings()}\n`,
    );
    const { status, out, told } = await installed.run('export', 'demo', '--format', 'packet', '--to', 'out');
    expect(told).toBe('');
    expect(status).toBe(0);
    expect(out).toBe('out/demo-A-packet.pdf');
  });

  test('`rackleaf packet` writes it as one HTML file and as PDF, and tells where', async () => {
    const { status, out, told } = await installed.run('packet', 'demo', '--to', 'out');
    expect(told).toBe('');
    expect(status).toBe(0);
    expect(out).toBe('out/demo-A-packet.html\nout/demo-A-packet.pdf');
    expect(installed.read('out/demo-A-packet.html')).toContain('Content-Security-Policy');
    const json = await installed.run('packet', 'demo', '--to', 'out', '--json');
    expect(JSON.parse(json.out)).toEqual({
      job: 'demo',
      files: ['out/demo-A-packet.html', 'out/demo-A-packet.pdf'],
    });
  });

  test('a site for the customer is then built with it, and ends with 0', async () => {
    const { status, told } = await installed.run('build', '--audience', 'customer');
    expect(told).not.toContain('no packet');
    expect(status).toBe(0);
  });

  test('is refused once one reading is out of its limit', async () => {
    const job = installed.read('content/jobs/demo.yaml');
    installed.write('content/jobs/demo.yaml', job.replace(/battery-rest: [\d.]+ V/, 'battery-rest: 11.9 V'));
    const { status, told } = await installed.run('export', 'demo', '--format', 'packet', '--to', 'out');
    expect(status).toBe(1);
    expect(told).toContain('1 reading lies outside the limits. battery-rest');
    const site = await installed.run('build', '--audience', 'customer');
    expect(site.status).toBe(1);
    expect(site.told).toContain('1 reading lies outside the limits. battery-rest');
  });
});

test('the lines that a packet waits for are those with a limit', () => {
  const { plan } = planKept(jobOf(smallShop()));
  const [lack] = handOverLacks({ ...plan, job: { ...plan.job, status: 'installed' }, findings: [] });
  const limited = plan.measurements.filter(({ least, greatest }) => least !== null || greatest !== null);
  expect(lack?.lines).toEqual(limited.map(({ id }) => id));
});
