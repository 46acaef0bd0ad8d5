import { sheetIds } from '../sheets/index.ts';

/** A style sheet with the page of paper that each sheet of a job goes onto, behind its own rules: the same in every job. */
export function withSheetPages(style: string): string {
  const rules = sheetIds.map((id) => `  .sheet#${id} {\n    page: sheet-${id};\n  }`);
  return `${style}\n@media print {\n${rules.join('\n')}\n}\n`;
}
