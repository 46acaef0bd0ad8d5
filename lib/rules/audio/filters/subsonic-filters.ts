import { guardsFrom, subsonicCorner } from '../../../audio/filter/subsonic-corner.ts';
import type { Job } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import type { PlanChannel } from '../../../model/plan/index.ts';
import { deviceOf, deviceSpot } from '../../look-up.ts';
import type { Case, Rule, Verdict } from '../../rule.ts';
import { hertz, listed, percent } from '../../words.ts';
import { speakersOf } from '../speakers-of-channel.ts';
import { toFilter } from './filter-makers.ts';

/** Channels of a subwoofer in a vented enclosure: one that stands in the same place, or any where places do not tell. */
function ventedChannels(about: Case) {
  const { job } = about;
  const { channels } = about.plan.audio;
  const boxes = job.devices.flatMap(({ id, spec, seat }) =>
    spec?.kind === 'enclosure' && spec.loading !== 'sealed' ? [{ id, spec, seat }] : [],
  );
  return channels.flatMap((channel) => {
    const bass = speakersOf(about, channel).filter(({ spec }) => spec.band === 'subwoofer');
    const seats = bass.map(({ id }) => deviceOf(job, id)?.seat ?? null);
    const sealed = job.devices.some(
      ({ spec, seat }) => spec?.kind === 'enclosure' && spec.loading === 'sealed' && seats.includes(seat),
    );
    const box = boxes.find(({ seat }) => seats.includes(seat)) ?? (sealed ? undefined : boxes[0]);
    return bass.length === 0 || box === undefined ? [] : [{ channel, box, bass }];
  });
}

/** The subsonic filter or high-pass of a channel that cuts first, where it stands high enough to guard a cone. */
function guarding({ filters }: PlanChannel, tuning: number | undefined): boolean {
  const corners = filters.filter(({ pass }) => pass !== 'low-pass').map(({ cornerHz }) => cornerHz);
  return corners.some((cornerHz) => tuning === undefined || cornerHz >= guardsFrom * tuning - 1e-9);
}

/** Where a subsonic filter belongs, of the tuning of its box. */
function belongs({ rules }: Pick<Job, 'rules'>) {
  return { from: rules['subsonic-from'].value, to: rules['subsonic-to'].value };
}

/** The same at a tuning: `28 Hz to 32 Hz`. */
function subsonicAt(job: Pick<Job, 'rules'>, box: string, tuning: number): string {
  const corner = subsonicCorner(box, tuning, belongs(job));
  if (isFault(corner)) return 'the corner that its tuning asks for';
  return `${hertz(corner.fromHz.value)} to ${hertz(corner.toHz.value)}`;
}

const withoutSubsonic: Rule = {
  id: 'ported-without-subsonic',
  judge(about) {
    const { job } = about;
    return ventedChannels(about).flatMap(({ channel, box, bass }): Verdict<'ported-without-subsonic'>[] => {
      const { tuning } = box.spec;
      if (guarding(channel, tuning)) return [];
      const [low] = channel.filters
        .filter(({ pass }) => pass !== 'low-pass')
        .toSorted((a, b) => b.cornerHz - a.cornerHz);
      const lacking = low
        ? `with a ${low.pass === 'subsonic' ? 'subsonic filter' : low.pass} at ${hertz(low.cornerHz)}, too low to guard it`
        : 'without a subsonic filter';
      const at =
        tuning === undefined
          ? `at ${percent(belongs(job).from)} to ${percent(belongs(job).to)} of the tuning of the box`
          : `at ${subsonicAt(job, box.id, tuning)}`;
      return [
        {
          level: 'caution',
          of: [channel.id, box.id, ...bass.map(({ id }) => id)],
          message: `${channel.id} drives ${listed(bass.map(({ id }) => id))} in the ${box.spec.loading} enclosure ${box.id} ${lacking}: below its tuning the box does not hold the cone`,
          remedy: toFilter(job, channel, 'subsonic', {
            reachesHz: guardsFrom * (tuning ?? 0),
            belongs: `${at}, 24 dB per octave`,
            ...(tuning !== undefined && {
              at: { fromHz: belongs(job).from * tuning, toHz: belongs(job).to * tuning },
            }),
          }),
          ...deviceSpot(job, channel.amplifier, 'filters'),
        },
      ];
    });
  },
};

const subsonicOff: Rule = {
  id: 'subsonic-off-tuning',
  judge(about) {
    const { job } = about;
    return ventedChannels(about).flatMap(({ channel, box }) => {
      const { tuning } = box.spec;
      if (tuning === undefined || !guarding(channel, tuning)) return [];
      // One that stands lower does not guard the cone, and takes nothing either.
      const [highest] = channel.filters
        .filter(({ pass }) => pass === 'subsonic')
        .toSorted((a, b) => b.cornerHz - a.cornerHz);
      return (highest ? [highest] : []).flatMap(({ cornerHz, order }): Verdict<'subsonic-off-tuning'>[] => {
        const share = cornerHz / tuning;
        const { from, to } = belongs(job);
        const inRange = share >= from - 1e-9 && share <= to + 1e-9;
        if (inRange && order >= 4) return [];
        return [
          {
            level: 'note',
            of: [channel.id, box.id],
            message: `the subsonic filter of ${channel.id} is at ${hertz(cornerHz)}, ${6 * order} dB per octave: ${percent(share)} of the tuning of ${box.id}`,
            value: cornerHz,
            limit: to * tuning,
            unit: 'Hz',
            remedy: `set it to ${subsonicAt(job, box.id, tuning)}, 24 dB per octave`,
            ...deviceSpot(job, channel.amplifier, 'filters'),
          },
        ];
      });
    });
  },
};

export const subsonicFilterRules: readonly Rule[] = [withoutSubsonic, subsonicOff];
