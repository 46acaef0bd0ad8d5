import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { id, text } from '../fields.ts';
import { section } from '../writing/field-text.ts';

/** What of a job a photo may be of: each has a field of its name. */
export const photoSubjects = ['step', 'device', 'place'] as const;
export type PhotoSubject = (typeof photoSubjects)[number];

/** Where a photo is shown. */
export const photoUses = ['packet', 'sheets'] as const;

/** A photo of a job: a file in the folder of the job, and what of the job it is of. */
export const photoSchema = z.strictObject({
  file: builders(
    text('main-fuse.jpg'),
    'The file, which lies in the folder of the job, `content/jobs/<id>/`: JPEG, PNG or WebP.',
    { example: 'main-fuse.jpg' },
  ),
  shows: everyone(
    text('The main fuse on the inner wing, beside the battery').optional(),
    'What is seen on it, for who can not see it. It stands below the photo too.',
    {
      example: 'The main fuse on the inner wing, beside the battery',
      leftOut: 'a finding asks for it',
    },
  ),
  step: builders(text('place-board').optional(), 'The step of the order of work that it is of.', {
    example: 'place-board',
  }),
  device: builders(id.optional(), 'Or the device that it is of.', { example: 'main-fuse' }),
  place: builders(id.optional(), 'Or the place in the vehicle that it is of.', { example: 'battery-side' }),
  on: section(
    z
      .array(
        builders(z.enum(photoUses), 'The packet of the owner, or the sheets of the bench.', {
          example: 'packet',
        }),
      )
      .min(1, 'is shown nowhere; write packet, sheets or both, or take the photo out')
      .default(['packet', 'sheets']),
    'Who sees it: the owner in the packet, who builds on the sheets, or both.',
    { example: ['packet', 'sheets'] },
  ),
});
export type JobPhoto = z.output<typeof photoSchema>;

/** What of the job a photo is of. */
export interface PhotoOf {
  readonly kind: PhotoSubject;
  readonly id: string;
}

/** All that a photo says it is of: one thing, where it is written as it should be. */
export function namedOn(photo: Pick<JobPhoto, PhotoSubject>): PhotoOf[] {
  return photoSubjects.flatMap((kind) => {
    const id = photo[kind];
    return id === undefined ? [] : [{ kind, id }];
  });
}
