import { mostTold } from '../../like/rank-boards.ts';

/** What past boards are looked for: what a job has on its boards, or a space with the parts that are to go into it. */
export interface LikeWish {
  readonly job: string | null;
  readonly vehicle: string | null;
  readonly space: string | null;
  readonly parts: readonly string[];
  /** How many are told of each board. */
  readonly most: number;
  readonly json: boolean;
}

type Flags = Readonly<Record<string, string | boolean | undefined>>;

/** What a command line asks for; what is wrong with it where it asks for nothing, or for two things. */
export function readLikeWish(job: string | null, flags: Flags, parts: readonly string[]): LikeWish | string {
  const text = (name: string): string | null => {
    const flag = flags[name];
    return typeof flag === 'string' ? flag : null;
  };
  const [vehicle, space, most] = [text('vehicle'), text('space'), Number(text('most') ?? mostTold)];
  const isNamed = vehicle !== null || space !== null || parts.length > 0;
  if (!Number.isInteger(most) || most < 1) return 'like: --most takes a whole number from 1';
  if (job === null && !isNamed) return 'like: needs JOB, or --vehicle, --space and --part';
  if (job !== null && isNamed)
    return 'like: a job brings its space and its parts: leave out --vehicle, --space and --part';
  return { job, vehicle, space, parts, most, json: flags.json === true };
}
