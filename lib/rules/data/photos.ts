import { type JobPhoto, namedOn, type PhotoSubject } from '../../model/content/job-photo.ts';
import { pointer } from '../../model/place.ts';
import type { Case, Rule, Verdict } from '../rule.ts';

const withoutWords: Rule = {
  id: 'photo-without-words',
  judge({ job }) {
    return Object.entries(job.file.photos).flatMap(([id, { shows }]): Verdict<'photo-without-words'>[] =>
      shows !== undefined
        ? []
        : [
            {
              level: 'note',
              of: [`photos.${id}`],
              message: `${id} does not say what is seen on it: who can not see it is told nothing`,
              remedy: 'say under shows: what is seen, in a sentence',
              path: pointer(['photos', id]),
            },
          ],
    );
  },
};

const ofNothing: Rule = {
  id: 'photo-of-nothing',
  judge(about) {
    return Object.entries(about.job.file.photos).flatMap(([id, photo]): Verdict<'photo-of-nothing'>[] => {
      const fault = faultOf(photo, about);
      if (fault === null) return [];
      return [
        {
          level: 'caution',
          of: [`photos.${id}`],
          message: `${id} ${fault.says}: it stands behind all steps, and beside nothing`,
          remedy: 'name one step of the order of work, one device, or one place of the vehicle',
          path: pointer(['photos', id, ...(fault.field === null ? [] : [fault.field])]),
        },
      ];
    });
  },
};

interface PhotoOfNothing {
  readonly says: string;
  /** The field that it stands in; null where it is the number of them. */
  readonly field: PhotoSubject | null;
}

function faultOf(photo: JobPhoto, { job, plan }: Case): PhotoOfNothing | null {
  const named = namedOn(photo);
  const [of] = named;
  if (of === undefined) return { says: 'is of no step, device or place', field: null };
  if (named.length > 1)
    return { says: `is of a ${named.map(({ kind }) => kind).join(' and of a ')} at once`, field: null };
  const known: Readonly<Record<PhotoSubject, () => readonly string[]>> = {
    step: () => plan.steps.map(({ id }) => id),
    device: () => job.devices.map(({ id }) => id),
    place: () => Object.keys(job.vehicle.places),
  };
  const { kind, id } = of;
  return known[kind]().includes(id) ? null : { says: `is of ${kind} ${id}, which is not there`, field: kind };
}

export const photoRules: readonly Rule[] = [withoutWords, ofNothing];
