import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { problemText } from '../../lib/model/problem.ts';
import { readContent } from '../../lib/read/read-content.ts';
import { expectProblem, inJob, type ProblemCase, withBoard } from './problem-case.ts';
import { smallShop } from './small-shop.ts';

// The customer of the small shop: Ada Specimen, 555 0199, QZX 471.
const leaks: readonly ProblemCase[] = [
  {
    name: 'the name in the title',
    changes: [inJob('title: One amplifier', "title: ^Ada Specimen's amplifier")],
    says: /holds the customer's name/,
    remedy: /take it out/,
  },
  {
    name: 'the plate in a note, written otherwise',
    changes: [inJob('- The second output stays in its bag.', '- ^Bring qzx-471 round the back.')],
    says: /holds the customer's plate/,
  },
  {
    name: 'the plate run together in a title of a device',
    changes: [inJob('title: Bass amplifier', 'title: ^Amplifier QZX471')],
    says: /holds the customer's plate/,
  },
  {
    name: 'the plate in letters of another width',
    changes: [inJob('title: One amplifier', 'title: ^Board of \uff31\uff3a\uff38 \uff14\uff17\uff11')],
    says: /holds the customer's plate/,
  },
  {
    name: 'the name with accents that it has not, and with a sign that nobody sees',
    changes: [inJob('title: One amplifier', 'title: ^Board of Ada Sp\u00e9ci\u00adm\u00e8n')],
    says: /holds the customer's name/,
  },
  {
    name: 'the name without the accents that it has',
    changes: [
      inJob('name: Ada Specimen', 'name: Ada Sp\u00e9cim\u00e8n'),
      inJob('title: One amplifier', 'title: ^Board of Ada Specimen'),
    ],
    says: /holds the customer's name/,
  },
  {
    name: 'the name in the title of a board',
    changes: [withBoard('sheet: ply-a', 'title: ^Board of Ada Specimen\n    sheet: ply-a')],
    says: /holds the customer's name/,
  },
  {
    name: 'the name with the last one first, joined by a hyphen',
    changes: [inJob('title: One amplifier', 'title: ^Board of SPECIMEN-Ada')],
    says: /holds the customer's name/,
  },
  {
    name: 'the name in other letters of the same sound',
    changes: [
      inJob('name: Ada Specimen', 'name: Ada M\u00fc\u00dfig'),
      inJob('title: One amplifier', 'title: ^Board of Ada Muessig'),
    ],
    says: /holds the customer's name/,
  },
  {
    name: 'the number behind what another country dials before it',
    changes: [inJob('radio.OUT2: one channel is used', 'radio.OUT2: ^ask +1 (555) 01-99')],
    says: /holds the customer's contact/,
  },
  {
    name: 'the name beside who drew it',
    changes: [inJob('status: draft', 'drawn-by: ^Ada Specimen\nstatus: draft')],
    says: /holds the customer's name/,
  },
  {
    name: 'the plate on a label',
    changes: [inJob('OUT, to: amp.B+ }', 'OUT, to: amp.B+, label: ^QZX471 }')],
    says: /holds the customer's plate/,
  },
  {
    name: 'the name in why a device comes after another',
    changes: [
      inJob(
        'title: Bass amplifier',
        'title: Bass amplifier\n    after: { main-fuse: ^Ada Specimen asks for it }',
      ),
    ],
    says: /holds the customer's name/,
  },
  {
    name: 'the number in a reason to leave a terminal open',
    changes: [inJob('radio.OUT2: one channel is used', 'radio.OUT2: ^ask 555-0199')],
    says: /holds the customer's contact/,
  },
  {
    name: 'the plate in what the owner is told',
    changes: [
      inJob(
        'status: draft',
        'hand-over: { functions-changed: [^The sensors of QZX 471 sound late.] }\nstatus: draft',
      ),
    ],
    says: /holds the customer's plate/,
  },
  {
    name: 'the name in the reason of an accepted caution',
    changes: [
      inJob(
        'status: draft',
        'accepted: [{ finding: ground-drop, of: amp, reason: ^Ada Specimen asked for it, by: P. T. }]\nstatus: draft',
      ),
    ],
    says: /holds the customer's name/,
  },
  {
    name: 'the number beside who accepted a caution',
    changes: [
      inJob(
        'status: draft',
        'accepted: [{ finding: ground-drop, of: amp, reason: by telephone, by: ^555 0199 }]\nstatus: draft',
      ),
    ],
    says: /holds the customer's contact/,
  },
  {
    name: 'the name in the id of a run',
    changes: [
      inJob(
        'control: { route: right-sill, links: [turn-on] }',
        'ada-specimen-run: ^{ route: right-sill, links: [turn-on] }',
      ),
    ],
    says: /holds the customer's name/,
  },
  {
    name: 'the VIN in what a revision changed',
    changes: [
      inJob('plate: QZX 471', 'plate: QZX 471\n  vin: "ZZZ0000000X000123"'),
      inJob(
        'status: draft',
        'revisions: [{ revision: A, date: 2026-03-14, what: ^for ZZZ0000000X000123 }]\nstatus: draft',
      ),
    ],
    says: /holds the customer's vin/,
  },
];

describe('a private value in what is printed', () => {
  test.each(leaks)('$name', (leak) => {
    expectProblem(leak);
    const told = readContent(
      smallShop(
        ...leak.changes.map(([file, found, instead]) => [file, found, instead.replace('^', '')] as const),
      ),
    )
      .problems.map(problemText)
      .join('\n');
    expect(told).not.toMatch(/specimen|ada\b|0199|471|ZZZ0000/i);
  });

  test('an initial and a last name that only stand near each other are let through', () => {
    const changes = [
      inJob('name: Ada Specimen', 'name: A. Specimen'),
      inJob('title: One amplifier', 'title: Specimen asked for it'),
    ];
    expect(readContent(smallShop(...changes)).problems).toEqual([]);
  });

  test('words that a private value only begins like are let through', () => {
    const changes = [inJob('title: One amplifier', 'title: Adapters behind 4712 plates')];
    expect(readContent(smallShop(...changes)).problems).toEqual([]);
  });

  test('no form of a plate in a title gets through, and none is repeated', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^[A-Z]{3}$/),
        fc.stringMatching(/^[0-9]{3}$/),
        fc.constantFrom(' ', '-', '', '.', ' / '),
        fc.boolean(),
        (letters, digits, between, lower) => {
          const written = `${letters}${between}${digits}`;
          const title = `Amplifier for ${lower ? written.toLowerCase() : written} at noon`;
          const { problems } = readContent(
            smallShop(
              inJob('plate: QZX 471', `plate: "${letters} ${digits}"`),
              inJob('title: One amplifier', `title: "${title}"`),
            ),
          );
          expect(problems).toHaveLength(1);
          const told = problems.map(problemText).join('\n');
          expect(told.toUpperCase()).not.toContain(letters + digits);
          expect(told).not.toContain(digits);
        },
      ),
      { numRuns: 40 },
    );
  });
});
