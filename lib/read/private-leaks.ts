import type { WrittenJob } from '../model/content/job.ts';
import type { Report } from './report.ts';

/** A text that is printed or stands in an address, and where the job has it. */
interface Printed {
  readonly path: readonly string[];
  readonly text: string;
}

/**
 * Looks for private values of the customer in what is printed, indexed or stands in an address. The message
 * does not repeat the value.
 */
export function privateLeaks(job: WrittenJob, report: Report): void {
  const secrets = Object.entries(job.customer).flatMap(([field, value]) =>
    value === undefined ? [] : secretsOf(field, value.reveal()),
  );
  for (const { path, text } of printedTexts(job)) {
    const words = wordsOf(text);
    const leak = secrets.find((secret) => contains(words, secret.words));
    if (leak)
      report.at(
        path,
        `this text holds the customer's ${leak.field}, which is private`,
        'take it out: it would be printed and indexed',
      );
  }
}

interface Secret {
  readonly field: string;
  readonly words: readonly string[];
}

/** The whole value; of a name, each longer word as well. */
function secretsOf(field: string, value: string): Secret[] {
  const words = wordsOf(value);
  if (words.join('').length < 3) return [];
  const whole: Secret = { field, words };
  if (field !== 'name') return [whole];
  return [
    whole,
    ...words.filter((word) => word.length >= 4).map((word): Secret => ({ field, words: [word] })),
  ];
}

/** Words as they sound: without accents, in letters of one width, and without signs that no eye sees. */
function wordsOf(text: string): string[] {
  const plain = text.normalize('NFKD').replace(/[\p{M}\p{Cf}]/gu, '');
  return plain.toLocaleLowerCase('en').match(/[\p{L}\p{N}]+/gu) ?? [];
}

function contains(words: readonly string[], secret: readonly string[]): boolean {
  return (
    words.some((_, start) => secret.every((word, index) => words[start + index] === word)) ||
    words.join('').includes(longJoin(secret))
  );
}

/** Plates and VINs are found with other spacing too; short words only as words. */
function longJoin(secret: readonly string[]): string {
  const joined = secret.join('');
  return joined.length >= 6 ? joined : '\u0000';
}

function printedTexts(job: WrittenJob): Printed[] {
  const ids = (key: 'devices' | 'links' | 'boards' | 'runs' | 'cables'): Printed[] =>
    Object.keys(job[key] ?? {}).map((name) => ({ path: [key, name], text: name }));
  return [
    { path: ['id'], text: job.id },
    { path: ['title'], text: job.title },
    ...ids('devices'),
    ...ids('links'),
    ...ids('boards'),
    ...ids('runs'),
    ...ids('cables'),
    ...titlesAndReasons(job),
    ...handOverTexts(job),
    ...photoTexts(job),
    ...job.notes.map((text, index): Printed => ({ path: ['notes', String(index)], text })),
    ...job.revisions.map(
      (revision, index): Printed => ({ path: ['revisions', String(index), 'what'], text: revision.what }),
    ),
    ...job.accepted.flatMap(({ of, value = '', limit = '', reason, by }, index): Printed[] =>
      Object.entries({ of, value, limit, reason, by }).map(([name, text]) => ({
        path: ['accepted', String(index), name],
        text,
      })),
    ),
    ...Object.entries(job['left-open']).map(([name, text]): Printed => ({ path: ['left-open', name], text })),
  ];
}

function titlesAndReasons({ devices, boards, links = {} }: WrittenJob): Printed[] {
  const own = Object.entries(devices).flatMap(([name, { title = '', reversed = '', after }]): Printed[] => [
    { path: ['devices', name, 'title'], text: title },
    { path: ['devices', name, 'reversed'], text: reversed },
    ...Object.entries(after).map(([of, text]): Printed => ({ path: ['devices', name, 'after', of], text })),
  ]);
  const ofBoards = Object.entries(boards).map(
    ([name, { title = '' }]): Printed => ({ path: ['boards', name, 'title'], text: title }),
  );
  const ofLinks = Object.entries(links).map(
    ([name, { label = '' }]): Printed => ({ path: ['links', name, 'label'], text: label }),
  );
  return [...own, ...ofBoards, ...ofLinks];
}

function handOverTexts({ 'hand-over': told }: WrittenJob): Printed[] {
  const changed = told['functions-changed'].map(
    (text, index): Printed => ({ path: ['hand-over', 'functions-changed', String(index)], text }),
  );
  const levels = (['highest-volume', 'highest-bass'] as const).map(
    (field): Printed => ({ path: ['hand-over', field], text: told[field] ?? '' }),
  );
  return [...changed, ...levels];
}

function photoTexts({ photos }: WrittenJob): Printed[] {
  return Object.entries(photos).flatMap(([name, { shows = '' }]): Printed[] => [
    { path: ['photos', name], text: name },
    { path: ['photos', name, 'shows'], text: shows },
  ]);
}
