import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { jobFile } from './trees.ts';

/** An edit as it is made to a text. */
interface Edit {
  readonly of: 'job' | 'shop';
  readonly found: RegExp;
  readonly put: string | ((found: string, ...parts: string[]) => string);
}

/** Edits that leave the board alone; a length is that of a ground lead to the body, which no board reads. */
const edits = {
  title: { of: 'job', found: /^title: .*$/m, put: 'title: "Another title"' },
  // An inch less: a sixteenth more turns a drafted size over, and with it the board.
  length: {
    of: 'job',
    found: /(to: body\.[\w-]+, length: )(\d+) in/,
    put: (_found, before = '', inches = '') => `${before}${Number(inches) - 1} in`,
  },
  filter: { of: 'job', found: /corner: (\d+) Hz/, put: 'corner: $1.5 Hz' },
  gain: { of: 'shop', found: /^rules:$/m, put: 'rules:\n  gain-overlap: 4 dB' },
  name: { of: 'job', found: /(part: [\w-]+, title: )([^,}]+)(?=[,}])/, put: '$1Other $2' },
  colour: { of: 'job', found: /(to: body\.[\w-]+, length: [^,}]+?) }/, put: '$1, colour: BK }' },
} as const satisfies Readonly<Record<string, Edit>>;

export type EditName = keyof typeof edits;

/** Makes an edit to a job, or to the house rules that it is worked by; false where there is nothing of the kind to edit. */
export async function editShop(shop: string, job: string, name: EditName): Promise<boolean> {
  const { of, found, put }: Edit = edits[name];
  const file = of === 'job' ? jobFile(shop, job) : join(shop, 'content/shop.yaml');
  const text = await readFile(file, 'utf8');
  const edited = typeof put === 'string' ? text.replace(found, put) : text.replace(found, put);
  if (edited === text) return false;
  await writeFile(file, edited);
  return true;
}
