import { hasFields } from '../../../model/content/proposal.ts';
import { flowText, scalarText } from '../../../read/yaml/write-value.ts';
import { blockText, type Named } from '../yaml-text.ts';
import type { JobFields } from './for-space.ts';

/** What stands at the head of a job that is begun like another. */
export interface LikeHead {
  readonly id: string;
  readonly title: string;
  readonly issuedOn: string;
  readonly vehicle: string;
  readonly space: string | null;
}

/** How far the values of a section are opened out, a value a line. */
const depths: Readonly<Record<string, number>> = { devices: 2, boards: 3 };

/** The text of a job that is begun like another: its head, what is to be told anew as comments, and what it takes over. */
export function likeText(head: LikeHead, fields: JobFields, remarks: readonly string[]): string {
  const sections = Object.entries(fields).filter(
    ([, value]) => !hasFields(value) || Object.keys(value).length > 0,
  );
  return `rackleaf: 1
id: ${head.id}
title: ${JSON.stringify(head.title)}
revision: A
revisions:
  - { revision: A, date: ${head.issuedOn}, what: First issue }
status: draft
issued-on: ${head.issuedOn}
vehicle: ${head.vehicle}
${head.space === null ? '' : `space: ${head.space}\n`}
${remarks.flatMap((remark) => wrapped(remark)).join('\n')}

${sections.map(([name, value]) => sectionText(name, value)).join('\n')}`;
}

function sectionText(name: string, value: JobFields[string]): string {
  if (!hasFields(value)) return `${scalarText(name)}: ${flowText(value)}\n`;
  const section: Named = { [name]: value };
  return blockText(section, depths[name] ?? 2);
}

/** A comment of lines that are not too long. */
function wrapped(text: string): string[] {
  const lines: string[] = [];
  let line = '#';
  for (const word of text.split(/\s+/)) {
    if (line.length + 1 + word.length > mostColumns && line !== '#') {
      lines.push(line);
      line = '#  ';
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}

/** A line of a comment is no longer, where its words allow it. */
const mostColumns = 110;
