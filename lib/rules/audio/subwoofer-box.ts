import type { Device, Job } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { commonPractice, type Source } from '../house-rule-of.ts';
import { deviceSpot, partSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { figure, lengthIn } from '../words.ts';

interface Pair {
  readonly sub: Device;
  readonly speaker: PartOf<'speaker'>;
  readonly box: Device;
  readonly enclosure: PartOf<'enclosure'>;
  /** What is left of the box for each subwoofer of its place. */
  readonly volumeM3: number;
}

/** Every subwoofer with the enclosure that stands in its place. */
function pairsOf(job: Job): readonly Pair[] {
  const subs = job.devices.flatMap((sub) =>
    sub.spec?.kind === 'speaker' && sub.spec.band === 'subwoofer' && sub.seat !== null
      ? [{ sub, speaker: sub.spec }]
      : [],
  );
  return subs.flatMap(({ sub, speaker }) => {
    const beside = subs.filter((other) => other.sub.seat === sub.seat).length;
    const boxes = job.devices.flatMap((box) =>
      box.spec?.kind === 'enclosure' && box.seat === sub.seat ? [{ box, enclosure: box.spec }] : [],
    );
    const [first] = boxes;
    if (!first) return [];
    const share = Math.max(1, beside / boxes.length);
    return [{ sub, speaker, ...first, volumeM3: first.enclosure.volume / share }];
  });
}

type Misfit = Pick<
  Verdict<'subwoofer-misfits-box'>,
  'level' | 'message' | 'value' | 'limit' | 'unit' | 'remedy'
> & {
  readonly from?: Source;
};

/** What does not fit, worst first; what the parts do not tell is not judged. */
function misfits(job: Job, pair: Pair): readonly Misfit[] {
  return [...holeMisfits(job, pair), ...depthMisfits(job, pair), ...volumeMisfits(pair)];
}

function holeMisfits(job: Job, { sub, speaker, box, enclosure }: Pair): readonly Misfit[] {
  const { opening } = enclosure;
  const cutOut = speaker['cut-out'];
  if (opening === undefined || cutOut === undefined) return [];
  const long = lengthIn(job, partSpot(job, sub.id), partSpot(job, box.id));
  const found = { value: opening, unit: 'm', remedy: 'use a box made for it, or cut the baffle anew' };
  if (opening < cutOut - 1e-9)
    return [
      {
        ...found,
        level: 'stop',
        limit: cutOut,
        message: `${sub.id} needs a hole of ${long(cutOut)}, and that of ${box.id} is ${long(opening)}`,
      },
    ];
  if (opening < speaker.size.width - 1e-9) return [];
  return [
    {
      ...found,
      level: 'stop',
      limit: speaker.size.width,
      message: `the hole of ${box.id}, ${long(opening)}, is as wide as the frame of ${sub.id}, ${long(speaker.size.width)}: nothing holds it`,
    },
  ];
}

function depthMisfits(job: Job, { sub, speaker, box, enclosure }: Pair): readonly Misfit[] {
  const free = enclosure['free-depth'];
  const depth = speaker.size.height;
  const behindM = job.rules['magnet-room'].value;
  if (free === undefined || free >= depth + behindM - 1e-9) return [];
  const long = lengthIn(job, partSpot(job, sub.id), partSpot(job, box.id));
  const fits = free > depth;
  return [
    {
      level: fits ? 'caution' : 'stop',
      value: free,
      limit: fits ? depth + behindM : depth,
      unit: 'm',
      message: `${sub.id} is ${long(depth)} deep, and behind the hole of ${box.id} ${long(free)} are free${fits ? `: ${long(behindM)} are wanted behind its magnet` : ''}`,
      remedy: 'put a ring under the frame, or use a deeper box',
      ...(fits && { from: commonPractice }),
    },
  ];
}

function volumeMisfits({ sub, speaker, box, enclosure, volumeM3 }: Pair): readonly Misfit[] {
  const wanted = speaker.boxes?.[enclosure.loading];
  if (!speaker.boxes || (wanted && volumeM3 >= wanted.from - 1e-9 && volumeM3 <= wanted.to + 1e-9)) return [];
  const litres = (m3: number) => `${figure(1000 * m3)} L`;
  const limit = wanted && (volumeM3 < wanted.from ? wanted.from : wanted.to);
  return [
    {
      level: 'caution',
      value: volumeM3,
      ...(limit !== undefined && { limit }),
      unit: 'm3',
      message: wanted
        ? `${box.id} gives ${sub.id} ${litres(volumeM3)}, and its maker asks for ${litres(wanted.from)} to ${litres(wanted.to)} in a ${enclosure.loading} box`
        : `${box.id} is ${enclosure.loading}, and the maker of ${sub.id} names no such box`,
      remedy: 'use another box, or another subwoofer',
    },
  ];
}

const misfit: Rule = {
  id: 'subwoofer-misfits-box',
  judge({ job }) {
    return pairsOf(job).flatMap((pair) =>
      misfits(job, pair).map(({ from, ...found }): Verdict<'subwoofer-misfits-box'> => {
        return { of: [pair.sub.id, pair.box.id], ...found, ...from, ...deviceSpot(job, pair.sub.id) };
      }),
    );
  },
};

export const subwooferBoxRules: readonly Rule[] = [misfit];
