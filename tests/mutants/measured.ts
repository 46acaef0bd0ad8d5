import { existsSync, readFileSync, writeFileSync } from 'node:fs';

/** What came of the changes of one area in one folder. */
export interface Share {
  readonly area: string;
  readonly folder: string;
  /** Whether every change was tried, or those drawn. */
  readonly tried: 'every change' | 'drawn';
  readonly changes: number;
  readonly told: number;
}

export const percentTold = ({ changes, told }: Share): string => ((100 * told) / changes).toFixed(1);

const head = `# Changes that the tests tell

Written by \`npm run test:mutants\`, as each part of the code was tried last. What a change is, and which tests count,
stands under "Tests that bite" in DEVELOPERS.md; what changes nothing (\`equivalents.ts\`) is left out. A part of the code
without a row has not been tried.

| part of the code | folder | tried | changes | told | share |
|---|---|---|---|---|---|
`;

const lineOf = (share: Share): string =>
  `| ${share.area} | \`${share.folder}\` | ${share.tried} | ${share.changes} | ${share.told} | ${percentTold(share)} % |`;

/** Puts the shares that were measured into the table, in place of what stood there of the same part and folder. */
export function keepShares(file: string, measured: readonly Share[]): void {
  const before = existsSync(file) ? readFileSync(file, 'utf8').slice(head.length).split('\n') : [];
  const keyOf = (line: string) => line.split('|').slice(1, 3).join('|');
  const rows = new Map(before.filter((line) => line !== '').map((line) => [keyOf(line), line]));
  for (const share of measured) rows.set(keyOf(lineOf(share)), lineOf(share));
  const lines = [...rows.values()].toSorted((a, b) =>
    (a.split('|')[2] ?? '').localeCompare(b.split('|')[2] ?? ''),
  );
  writeFileSync(file, `${head}${lines.join('\n')}\n`);
}
