import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { firstBoard } from '../../lib/publish/pages/writing/first-board.ts';
import { run } from './npm.ts';

const cli = fileURLToPath(new URL('../../lib/cli.ts', import.meta.url));
const tsx = import.meta.resolve('tsx');

/** One block of the tutorial, as it stands in it. */
interface Block {
  readonly kind: string;
  /** The file that it is typed into, and the line where it takes the place of one. */
  readonly file: string;
  readonly line: number | null;
  readonly text: string;
}

function blocksOf(markdown: string): Block[] {
  return [...markdown.matchAll(/^```(\w+) ?(\S*)\n([\s\S]*?)^```$/gm)].map(
    ([, kind = '', place = '', text = '']) => {
      const [file = '', line] = place.split(':');
      return { kind, file, line: line === undefined ? null : Number(line), text };
    },
  );
}

/** Runs a line as it is typed, with the tool of this tree in the place of the installed one. */
async function typed(folder: string, line: string) {
  const [npx, tool, ...words] = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(
    ([, quoted, plain]) => quoted ?? plain ?? '',
  );
  expect([npx, tool]).toEqual(['npx', 'rackleaf']);
  const { status, out, told } = await run(folder, process.execPath, '--import', tsx, cli, ...words);
  return { status, said: `${out}\n${told}` };
}

async function write(folder: string, { file, line, text }: Block): Promise<void> {
  const path = join(folder, file);
  await mkdir(dirname(path), { recursive: true });
  if (line === null) return writeFile(path, text);
  const lines = (await readFile(path, 'utf8')).split('\n');
  lines[line - 1] = text.trimEnd();
  await writeFile(path, lines.join('\n'));
}

const folder = await mkdtemp(join(tmpdir(), 'first-board-'));
afterAll(() => rm(folder, { recursive: true, force: true }));

test('the tutorial, typed block by block into an empty folder, ends with a built job', {
  timeout: 1_200_000,
}, async () => {
  const blocks = blocksOf(firstBoard().body);
  expect(blocks.map(({ kind }) => kind)).toEqual([
    'sh',
    'yaml',
    'yaml',
    'yaml',
    'sh',
    'text',
    'yaml',
    'sh',
    'sh',
  ]);
  const answers: Awaited<ReturnType<typeof typed>>[] = [];
  for (const block of blocks) {
    if (block.kind === 'yaml') await write(folder, block);
    if (block.kind === 'sh') answers.push(await typed(folder, block.text.trim()));
    if (block.kind === 'text') expect(answers.at(-1)?.said).toContain(block.text.trim());
  }
  const [begun, slip, mended, built] = answers;
  expect(begun?.status, begun?.said).toBe(0);
  expect(slip?.status, slip?.said).toBe(2);
  expect(slip?.said.match(/: error: /g), slip?.said).toHaveLength(1);
  expect(mended?.status, mended?.said).toBe(0);
  expect(mended?.said).toMatch(/my-first, revision A: draft; 0 stop/);
  expect(built?.status, built?.said).toBe(0);
  expect(await readFile(join(folder, 'dist/jobs/my-first/index.html'), 'utf8')).toContain(
    'One bass amplifier under the left seat',
  );
  const lines = blocks.filter(({ kind }) => kind !== 'text').flatMap(({ text }) => text.trim().split('\n'));
  expect(lines.length).toBeLessThanOrEqual(130);
});
