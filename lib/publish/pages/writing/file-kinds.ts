import type { z } from 'zod';
import { frontMatterSchema } from '../../../model/content/guide.ts';
import { jobSchema } from '../../../model/content/job.ts';
import { shopSchema } from '../../../model/content/shop.ts';
import { vehicleSchema } from '../../../model/content/vehicle.ts';
import { isKindName, type KindName, kinds } from '../../../model/kinds/index.ts';
import { wholeExample } from '../../../model/writing/whole-example.ts';
import { sectionLines } from '../../../read/yaml/write-value.ts';

/** A kind of file, or of part, that the writing guide has a page for. */
export interface WrittenKind {
  /** Its part of the address. */
  readonly slug: string;
  readonly title: string;
  readonly summary: string;
  readonly file: string;
  readonly schema: z.ZodType;
  /** A whole one, as it may stand in its file; left out where the tutorial writes one. */
  readonly example?: () => string;
  readonly elsewhere?: readonly string[];
}

const files: readonly WrittenKind[] = [
  {
    slug: 'shop',
    title: 'The shop file',
    summary: 'Who the shop is, how it measures, what lies on its shelf.',
    file: 'content/shop.yaml',
    schema: shopSchema,
    elsewhere: ['rules'],
  },
  {
    slug: 'vehicle',
    title: 'A vehicle file',
    summary: 'Spaces, sound points, routes, ground points, places, and what the vehicle came with.',
    file: 'content/vehicles/<id>.yaml',
    schema: vehicleSchema,
  },
  {
    slug: 'job',
    title: 'A job file',
    summary:
      'What is built in, on which board, and what plays what. What it leaves out is proposed or computed.',
    file: 'content/jobs/<id>.yaml',
    schema: jobSchema,
  },
  {
    slug: 'guide',
    title: 'A guide',
    summary: 'A method of the shop, in Markdown below a few lines that name it.',
    file: 'content/guides/<id>.md',
    schema: frontMatterSchema,
  },
];

/** Every kind of file and of part, in the order of the index. */
export function writtenKinds(): readonly WrittenKind[] {
  return [...files, ...kindNames.map(partKind)];
}

const kindNames = Object.keys(kinds).filter(isKindName);

function partKind(kind: KindName): WrittenKind {
  const { plural, schema } = kinds[kind];
  return {
    slug: kind,
    title: `Parts: ${plural.toLowerCase()}`,
    summary: `How a part of the kind ${kind} is written.`,
    file: 'content/parts/<any>.yaml',
    schema,
    example: () => partText(kind),
  };
}

/** The text of a file with one part of a kind. */
export function partText(kind: KindName): string {
  const part = wholeExample(kind);
  return ['rackleaf: 1', 'parts:', `  my-${kind}:`, ...sectionLines(part, '    ')].join('\n');
}
