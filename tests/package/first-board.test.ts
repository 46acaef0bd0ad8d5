import { afterAll, expect, test } from 'vitest';
import { firstBoard } from '../../lib/publish/pages/writing/first-board.ts';
import { EmptyFolder, type Ran } from '../commands/shop-folder.ts';

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
function typed(line: string): Promise<Ran> {
  const [npx, tool, ...words] = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(
    ([, quoted, plain]) => quoted ?? plain ?? '',
  );
  expect([npx, tool]).toEqual(['npx', 'rackleaf']);
  return folder.run(...words);
}

function write({ file, line, text }: Block): void {
  if (line === null) {
    folder.write(file, text);
    return;
  }
  const lines = folder.read(file).split('\n');
  lines[line - 1] = text.trimEnd();
  folder.write(file, lines.join('\n'));
}

const folder = new EmptyFolder();
afterAll(() => folder.remove());

test('the tutorial, typed block by block into an empty folder, ends with a built job', {
  timeout: 1_200_000,
}, async () => {
  const blocks = blocksOf(firstBoard().body);
  expect(blocks.map(({ kind }) => kind)).toEqual([
    'sh',
    'yaml',
    'sh',
    'yaml',
    'yaml',
    'sh',
    'text',
    'yaml',
    'sh',
    'sh',
  ]);
  const answers: Ran[] = [];
  const said = (ran: Ran | undefined): string => `${ran?.out}\n${ran?.told}`;
  for (const block of blocks) {
    if (block.kind === 'yaml') write(block);
    if (block.kind === 'sh') answers.push(await typed(block.text.trim()));
    if (block.kind === 'text') expect(said(answers.at(-1))).toContain(block.text.trim());
  }
  const [begun, asked, slip, mended, built] = answers;
  expect(begun?.status, said(begun)).toBe(0);
  expect(asked?.status, said(asked)).toBe(0);
  expect(slip?.status, said(slip)).toBe(2);
  expect(said(slip).match(/: error: /g), said(slip)).toHaveLength(1);
  expect(mended?.status, said(mended)).toBe(0);
  expect(said(mended)).toMatch(/my-first, revision A: draft; 0 stop/);
  expect(built?.status, said(built)).toBe(0);
  expect(folder.read('dist/jobs/my-first/index.html')).toContain('One bass amplifier under the left seat');
  const lines = blocks.filter(({ kind }) => kind !== 'text').flatMap(({ text }) => text.trim().split('\n'));
  expect(lines.length).toBeLessThanOrEqual(130);
});
