import type { PlanChannel, PlanFilter } from '../../../model/plan/index.ts';
import { groupsOf } from '../../groups-of.ts';
import { deviceIdOf, deviceOf, deviceSpot, terminalNameOf } from '../../look-up.ts';
import type { Case, Rule, Verdict } from '../../rule.ts';
import { hertz, listed } from '../../words.ts';
import { type Speaker, speakersOf } from '../speakers-of-channel.ts';
import { toFilter } from './filter-makers.ts';

const isHighPassed = ({ filters }: Pick<Speaker, 'filters'>) =>
  filters.some(({ pass }) => pass === 'high-pass');
const isLowPassed = ({ filters }: Pick<Speaker, 'filters'>) =>
  filters.some(({ pass }) => pass === 'low-pass');

/** A channel with small speakers that no high-pass guards. */
interface Unguarded {
  readonly channel: PlanChannel;
  readonly small: readonly Speaker[];
  readonly remedy: string;
}

function unguarded(about: Case): readonly Unguarded[] {
  const { job, plan } = about;
  return plan.audio.channels.flatMap((channel): Unguarded[] => {
    const small = speakersOf(about, channel).filter(
      (one) => one.spec.band !== 'subwoofer' && !isHighPassed(one),
    );
    if (small.length === 0) return [];
    const remedy = toFilter(job, channel, 'high-pass', {
      reachesHz: Math.max(0, ...small.map(({ spec }) => spec['lowest-frequency'] ?? 0)),
      belongs: 'at or above the lowest frequency of the speaker',
    });
    return [{ channel, small, remedy }];
  });
}

const withoutHighPass: Rule = {
  id: 'small-speaker-without-high-pass',
  judge(about) {
    // Channels of one amplifier that lack the same thing lack it once.
    const groups = groupsOf(unguarded(about), ({ channel, remedy }) => `${channel.amplifier} ${remedy}`);
    return groups.flatMap((group): Verdict<'small-speaker-without-high-pass'>[] => {
      const [first] = group;
      if (!first) return [];
      const small = group.flatMap((one) => one.small);
      const channels = group.map(({ channel }) => channel.id);
      return [
        {
          level: 'stop',
          of: [...channels, ...small.map(({ id }) => id)],
          message: `${listed(channels)} ${channels.length === 1 ? 'drives' : 'drive'} ${listed(small.map(({ id, spec }) => `${id} (${spec.band})`))} without a high-pass`,
          remedy: first.remedy,
          ...deviceSpot(about.job, first.channel.amplifier, 'filters'),
        },
      ];
    });
  },
};

const highPassLow: Rule = {
  id: 'high-pass-too-low',
  judge(about) {
    const { job, plan } = about;
    return plan.audio.channels.flatMap((channel) =>
      speakersOf(about, channel).flatMap(({ id, spec, filters }): Verdict<'high-pass-too-low'>[] => {
        const [highest] = filters
          .filter(({ pass }) => pass === 'high-pass')
          .toSorted((a, b) => b.cornerHz - a.cornerHz);
        const lowest = spec['lowest-frequency'];
        if (lowest === undefined || !highest || highest.cornerHz >= lowest - 1e-9) return [];
        if (spec.band === 'subwoofer') return [];
        const crossover = deviceOf(job, deviceIdOf(highest.where))?.spec?.kind === 'crossover';
        return [
          {
            // A tweeter below its range is as good as without a high-pass.
            level: spec.band === 'tweeter' ? 'stop' : 'caution',
            of: [channel.id, id],
            message: `the high-pass of ${crossover ? highest.where : channel.id} is at ${hertz(highest.cornerHz)}, below the ${hertz(lowest)} from which ${id} (${spec.band}) may play`,
            value: highest.cornerHz,
            limit: lowest,
            unit: 'Hz',
            remedy: crossover
              ? `take a crossover that begins at ${hertz(lowest)} or higher, or correct ways: in its part, or lowest-frequency: of ${deviceOf(job, id)?.part ?? id}, by their leaflets`
              : `set the high-pass to ${hertz(lowest)} or higher`,
            ...deviceSpot(job, channel.amplifier, 'filters'),
          },
        ];
      }),
    );
  },
};

/** The high-pass or subsonic filter of a channel that cuts highest, where that is above what bass is tested with. */
function intoBass({ filters }: PlanChannel, bassHz: number): PlanFilter | null {
  const [highest] = filters
    .filter(({ pass }) => pass !== 'low-pass')
    .toSorted((a, b) => b.cornerHz - a.cornerHz);
  return highest && highest.cornerHz > bassHz + 1e-9 ? highest : null;
}

const withoutLowPass: Rule = {
  id: 'subwoofer-without-low-pass',
  judge(about) {
    const { job, plan } = about;
    return plan.audio.channels.flatMap((channel): Verdict<'subwoofer-without-low-pass'>[] => {
      const bass = speakersOf(about, channel).filter(
        (one) => one.spec.band === 'subwoofer' && !isLowPassed(one),
      );
      if (bass.length === 0) return [];
      // A high-pass in its place is one mistake, and told as that.
      if (intoBass(channel, job.rules['tone-bass'].value)) return [];
      return [
        {
          level: 'caution',
          of: [channel.id, ...bass.map(({ id }) => id)],
          message: `${channel.id} drives ${listed(bass.map(({ id }) => id))} without a low-pass: it plays all that the others play as well`,
          remedy: toFilter(job, channel, 'low-pass', {
            reachesHz: Number.POSITIVE_INFINITY,
            belongs: 'such as 80 Hz',
          }),
          ...deviceSpot(job, channel.amplifier, 'filters'),
        },
      ];
    });
  },
};

const highPassed: Rule = {
  id: 'subwoofer-high-passed',
  judge(about) {
    const { job, plan } = about;
    const bassHz = job.rules['tone-bass'].value;
    return plan.audio.channels.flatMap((channel): Verdict<'subwoofer-high-passed'>[] => {
      const bass = speakersOf(about, channel).filter(({ spec }) => spec.band === 'subwoofer');
      const highest = intoBass(channel, bassHz);
      if (bass.length === 0 || !highest) return [];
      return [
        {
          level: 'caution',
          of: [channel.id, ...bass.map(({ id }) => id)],
          message: `${channel.id} drives ${listed(bass.map(({ id }) => id))} behind a ${highest.pass} at ${hertz(highest.cornerHz)}: it takes the bass that it is there for, from ${hertz(bassHz)} down`,
          value: highest.cornerHz,
          limit: bassHz,
          unit: 'Hz',
          remedy: 'write low-pass where that was meant, or a subsonic filter below what the box plays',
          ...deviceSpot(job, deviceIdOf(highest.where), 'filters', terminalNameOf(highest.where)),
          givesWayTo: ['band-empty'],
        },
      ];
    });
  },
};

export const protectionFilterRules: readonly Rule[] = [
  withoutLowPass,
  highPassed,
  withoutHighPass,
  highPassLow,
];
