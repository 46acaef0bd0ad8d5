import { aboutContent } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A job of a customer of this name, or of nobody, with a note. */
const noted = (name: string | null, note: string) => () =>
  aboutContent(({ job }) => {
    if (name !== null) job.customer = { name };
    job.notes = [note];
  });

export const privateNameCases = {
  'word-of-name': {
    fires: [
      {
        name: 'the last name alone in a note',
        about: noted('Ada Specimen', 'Ask Specimen before the door is closed.'),
        level: 'caution',
        subject: 'demo',
        path: '/notes/0',
      },
      {
        name: 'with other accents',
        about: noted('Ada Sp\u00e9cimen', "Specimen's own partition."),
        level: 'caution',
        subject: 'demo',
        path: '/notes/0',
      },
      {
        name: 'four letters',
        about: noted('Ada Zyxw', 'For Zyxw.'),
        level: 'caution',
        subject: 'demo',
      },
    ],
    quiet: [
      { name: 'three letters', about: noted('Ada Zyx', 'For Zyx, and for Ada.') },
      { name: 'a word of every day', about: noted('Ada Wood', 'Drill into wood alone.') },
      { name: 'a word of the vehicle', about: noted('Ada Estate', 'The estate comes back.') },
      { name: 'a longer word that only begins so', about: noted('Ada Zyxw', 'The zyxworks.') },
      { name: 'a job of nobody', about: noted(null, 'For Zyxw.') },
    ],
  },
} as const satisfies RuleCases;
