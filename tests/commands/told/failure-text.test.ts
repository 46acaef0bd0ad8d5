import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { runCommand } from '../../../lib/commands/run-command.ts';
import { failureText } from '../../../lib/commands/told/failure-text.ts';
import { ShopWithOwnStore } from '../shop-folder.ts';

const shop = new ShopWithOwnStore();
afterAll(() => shop.remove());

/** An error as the system gives it. */
function refusal(code: string, path: string): Error {
  return Object.assign(new Error(`${code}: refused, write '${path}'`), { code, path });
}

describe('what could not be done', () => {
  test('is told with what helps where the system refused, however deep that lies', () => {
    const error = new Error('The site was not built; the last good one is untouched.', {
      cause: new Error('A page was not written.', { cause: refusal('ENOSPC', '/shop/.rackleaf/page.html') }),
    });
    expect(failureText(error)).toBe(
      [
        'The site was not built; the last good one is untouched.',
        'A page was not written.',
        'the disk is full: /shop/.rackleaf/page.html',
        '  to do: make room, then try again',
      ].join('\n'),
    );
  });

  test('asks for a report where it is a bug of ours', () => {
    const text = failureText(new Error('A page has no address.', { cause: new Error('of null') }));
    expect(text).toMatch(/should not have happened/);
    expect(text).toContain('  A page has no address.\n  of null\n');
    expect(failureText(refusal('EUNHEARDOF', 'x'))).toMatch(/report/);
  });

  test('ends a command with 3, and not with a report of a bug', async () => {
    const told: string[] = [];
    const status = await runCommand(['new', 'job-two'], shop.root, {
      ...realEffects(shop.root),
      tell: (text) => told.push(text),
      write: () => Promise.reject(refusal('ENOSPC', 'content/jobs/job-two.yaml')),
    });
    expect(status).toBe(3);
    // What would have been written stands first, so that nothing that was answered is lost.
    expect(told.join('\n')).toMatch(/^the disk is full: /m);
    expect(told.join('\n')).not.toMatch(/report/);
  });

  test('is a folder that can not be made where a file stands in its way', async () => {
    const blocked = new ShopWithOwnStore();
    writeFileSync(join(blocked.root, '.rackleaf'), '');
    const { status, told } = await blocked.run('build');
    blocked.remove();
    expect(status).toBe(3);
    expect(told).toMatch(/a file stands where a folder is needed: .*\.rackleaf/);
  });
});
