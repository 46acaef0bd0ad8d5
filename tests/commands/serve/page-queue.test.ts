import { beforeEach, describe, expect, it } from 'vitest';
import { PageQueue } from '../../../lib/commands/serve/page-queue.ts';

const begun: string[] = [];
const ends = new Map<string, () => void>();
const awaited = new Set<string>();
let queue: PageQueue<string, string>;

beforeEach(() => {
  begun.length = 0;
  ends.clear();
  awaited.clear();
  queue = new PageQueue((name, signal) => {
    begun.push(name);
    return new Promise((resolve, reject) => {
      ends.set(name, () => resolve(`made ${name}`));
      signal.addEventListener('abort', () => reject(signal.reason));
    });
  }, 2);
});

const put = (name: string, signal: AbortSignal = new AbortController().signal) =>
  queue.do(name, { signal, isAwaited: () => awaited.has(name) });
const settled = () => new Promise((resolve) => setImmediate(resolve));
const end = async (name: string) => {
  ends.get(name)?.();
  await settled();
};

describe('a queue of pages', () => {
  it('makes ahead one after another, and keeps a worker for what a reader waits for', async () => {
    const made = put('a');
    void put('b');
    expect(begun).toEqual(['a']);
    awaited.add('c');
    void put('c');
    expect(begun).toEqual(['a', 'c']);
    await end('a');
    expect(await made).toBe('made a');
    expect(begun).toEqual(['a', 'c']);
    await end('c');
    expect(begun).toEqual(['a', 'c', 'b']);
  });

  it('takes first what a reader waits for, also where that began later', async () => {
    for (const name of ['a', 'b', 'c']) void put(name);
    awaited.add('c');
    queue.handOut();
    expect(begun).toEqual(['a', 'c']);
    await end('c');
    await end('a');
    expect(begun).toEqual(['a', 'c', 'b']);
  });

  it('drops what is out of date before it begins, and goes on after what is ended at work', async () => {
    const [first, second] = [new AbortController(), new AbortController()];
    const lost = [put('a', first.signal), put('b', second.signal)].map((one) => one.catch(() => 'ended'));
    void put('c');
    second.abort();
    first.abort();
    expect(await Promise.all(lost)).toEqual(['ended', 'ended']);
    await settled();
    expect(begun).toEqual(['a', 'c']);
  });

  it('goes on after a fault', async () => {
    queue = new PageQueue(async (name) => {
      begun.push(name);
      if (name === 'a') throw new Error('a fault');
      return name;
    }, 2);
    await expect(put('a')).rejects.toThrow('a fault');
    expect(await put('b')).toBe('b');
  });

  it('is idle once all is made, and what waits for that may give up', async () => {
    const control = new AbortController();
    await expect(queue.idle(control.signal)).resolves.toBeUndefined();
    void put('a');
    void put('b');
    let isIdle = false;
    void queue.idle(control.signal).then(() => {
      isIdle = true;
    });
    const given = new AbortController();
    const up = queue.idle(given.signal);
    given.abort();
    await expect(up).rejects.toBe(given.signal.reason);
    await end('a');
    expect(isIdle).toBe(false);
    await end('b');
    expect(isIdle).toBe(true);
  });
});
