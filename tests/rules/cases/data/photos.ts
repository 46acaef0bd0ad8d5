import { aboutContent } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** One photo of the job with these fields. */
const photo = (fields: Readonly<Record<string, unknown>>) => () =>
  aboutContent(({ job }) => {
    job.photos = {
      front: { file: 'front.jpg', on: ['packet', 'sheets'], shows: 'The amplifier', ...fields },
    };
  });

export const photoCases = {
  // WCAG 2.2, 1.1.1: what is no text has a text in its place.
  'photo-without-words': {
    fires: [
      {
        name: 'nothing is said of it',
        about: photo({ device: 'amp', shows: undefined }),
        level: 'note',
        subject: 'photos.front',
        path: '/photos/front',
      },
    ],
    quiet: [{ name: 'it says what is seen', about: photo({ device: 'amp' }) }],
  },
  'photo-of-nothing': {
    fires: [
      {
        name: 'a device that is not there',
        about: photo({ device: 'amplifier' }),
        level: 'caution',
        subject: 'photos.front',
        path: '/photos/front/device',
        says: /device amplifier, which is not there/,
      },
      {
        name: 'a step that is not there',
        about: photo({ step: 'place-roof' }),
        level: 'caution',
        subject: 'photos.front',
        path: '/photos/front/step',
      },
      {
        name: 'a place that is not there',
        about: photo({ place: 'roof' }),
        level: 'caution',
        subject: 'photos.front',
        path: '/photos/front/place',
      },
      {
        name: 'nothing is named',
        about: photo({}),
        level: 'caution',
        subject: 'photos.front',
        path: '/photos/front',
        says: /of no step, device or place/,
      },
      {
        name: 'two things are named',
        about: photo({ device: 'amp', place: 'door' }),
        level: 'caution',
        subject: 'photos.front',
        says: /at once/,
      },
    ],
    quiet: [
      { name: 'a device of the job', about: photo({ device: 'amp' }) },
      { name: 'a place of the vehicle', about: photo({ place: 'door' }) },
    ],
  },
} as const satisfies RuleCases;
