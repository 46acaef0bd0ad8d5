import type { ReadJob } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import { freeTexts } from '../../read/private/free-texts.ts';
import { wordsOf } from '../../read/private/words.ts';
import { lookedForIn } from '../../read/private-leaks.ts';
import type { Rule } from '../rule.ts';
import { listed } from '../words.ts';

const wordOfName: Rule = {
  id: 'word-of-name',
  judge({ job }) {
    const { name } = job.file.customer;
    const words = name === undefined ? [] : lookedForIn(name.reveal(), wordsOfShop(job));
    if (words.length === 0) return [];
    const proposed = job.proposals.map(({ path }) => pointer(path));
    const found = freeTexts(job.file)
      .filter(({ text }) => wordsOf(text).some((word) => words.includes(word)))
      .map(({ path }) => pointer(path))
      .filter((path) => !proposed.some((one) => path === one || path.startsWith(`${one}/`)));
    const [path] = found;
    if (path === undefined) return [];
    const lines = [...new Set(found.map((one) => job.place(one).line))];
    return [
      {
        level: 'caution',
        of: [job.id],
        message: `a word of the customer's name stands in ${listed(lines.map((line) => `line ${line}`))} of the job: it is printed and indexed`,
        value: String(found.length),
        remedy: 'take it out where it means the customer; where it is another word, accept it',
        path,
      },
    ];
  },
};

/** Words of the shop's own parts and of the vehicle: where they stand in a job, they mean these. */
function wordsOfShop({ parts, vehicle }: ReadJob): ReadonlySet<string> {
  const titles = Object.entries(parts).flatMap(([id, { title }]) => [id, title]);
  return new Set([vehicle.id, vehicle.title, ...titles].flatMap(wordsOf));
}

export const privateNameRules: readonly Rule[] = [wordOfName];
