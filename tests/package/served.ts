import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout } from 'node:timers/promises';
import { onTestFinished } from 'vitest';

const atWork = 503;

/** A server in a process of its own. */
export interface ServedFolder {
  readonly url: string;
  /** The status of a page once it is made: until then the server answers that it is at work. */
  status(path: string): Promise<number>;
  /** Ends it as a person does, and waits until the process is gone: its exit status, null where it had to be killed. */
  end(): Promise<number | null>;
}

/** Starts `rackleaf serve` in a folder; `command` is what Node is started with. */
export async function serveIn(folder: string, command: readonly string[]): Promise<ServedFolder> {
  const server = spawn(process.execPath, [...command, 'serve', '--port', '0'], { cwd: folder });
  // A test that fails leaves no server behind.
  onTestFinished(() => void server.kill('SIGKILL'));
  const url = await addressOf(server);
  return {
    url,
    status: async (path) => {
      for (;;) {
        const { status } = await fetch(`${url}${path}`);
        if (status !== atWork) return status;
        await setTimeout(200);
      }
    },
    end: async () => {
      const gone = once(server, 'exit');
      server.kill('SIGINT');
      const [status]: (number | null)[] = await gone;
      return status ?? null;
    },
  };
}

/** The address that it tells. Rejects with all that it told where it ends before. */
function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let told = '';
    const hear = (chunk: Buffer): void => {
      told += chunk.toString();
      const [address] = /http:\/\/127\.0\.0\.1:\d+\//.exec(told) ?? [];
      if (address !== undefined) resolve(address);
    };
    server.stdout?.on('data', hear);
    server.stderr?.on('data', hear);
    server.once('exit', () => reject(new Error(told)));
  });
}
