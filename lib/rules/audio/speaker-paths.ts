import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanSum } from '../../model/plan/index.ts';
import { turningBefore } from '../../plan/audio/path/path-polarity.ts';
import { devicesById } from '../../plan/wiring/conductor-role.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { decibels, hertz, listed } from '../words.ts';
import { linksProposed, swappedLines } from './swapped-links.ts';

type Handover = PlanSum['handovers'][number];

/** The ways that cancel, those of one lower way at one corner together: one reversal mends them all. */
function cancelling({ job, plan }: Case): readonly (readonly [Handover, ...Handover[]])[] {
  const cancelsDb = job.rules['ways-cancel'].value;
  const met = new Map<string, [Handover, ...Handover[]]>();
  for (const { handovers } of plan.audio.curves.sums)
    for (const one of handovers) {
      if (one.sumDb >= one.louderDb - cancelsDb - 1e-9) continue;
      const key = `${one.lower} ${one.frequencyHz}`;
      const others = met.get(key);
      if (others) others.push(one);
      else met.set(key, [one]);
    }
  return [...met.values()];
}

const crossover: Rule = {
  id: 'crossover-cancels',
  judge(about) {
    const { job, plan } = about;
    return cancelling(about).map((own): Verdict<'crossover-cancels'> => {
      const [worst] = own.toSorted((a, b) => b.louderDb - b.sumDb - (a.louderDb - a.sumDb));
      const { lower, frequencyHz, sumDb, louderDb } = worst ?? own[0];
      const uppers = own.map(({ upper }) => upper);
      const amplifier = plan.audio.channels.find(({ id }) => id === uppers[0])?.amplifier ?? '';
      const together = own.length === 1 ? 'together they are' : 'the worst two together are';
      return {
        level: 'caution',
        of: [...uppers, lower],
        message: `${listed([...uppers, lower])} cancel at ${hertz(frequencyHz)}: ${together} ${decibels(louderDb - sumDb)} below the louder one alone`,
        value: sumDb,
        limit: louderDb - job.rules['ways-cancel'].value,
        unit: 'dB',
        ...turnedOver(about, worst ?? own[0], uppers),
        ...deviceSpot(job, amplifier, 'filters'),
      };
    });
  },
};

/** How the lower of two ways is turned over: by a switch in its path alone where it has one, else at its speakers. */
function turnedOver(
  about: Case,
  worst: Handover,
  uppers: readonly string[],
): Pick<Verdict<'crossover-cancels'>, 'remedy' | 'advice'> {
  const atSpeaker = `${toReverse(about, worst)}; or use Linkwitz-Riley filters of fourth order at one corner`;
  const own = switchToTurn(about, worst.lower, uppers);
  if (!own) return { remedy: atSpeaker };
  const { device, control, other } = own;
  return {
    remedy: `set ${control} of ${device.id} to ${other}: at ${device.id} write after-commissioning: { ${control}: "${other}" }; or ${atSpeaker}`,
    advice: [[{ ...deviceSpot(about.job, device.id, 'after-commissioning', control), value: other }]],
  };
}

/** The first switch from the lower way back, of a device of the job, that turns over no way above it. */
function switchToTurn({ job, plan }: Case, lower: string, uppers: readonly string[]) {
  const devices = devicesById(job);
  const switchesOf = (id: string) => {
    const channel = plan.audio.channels.find((one) => one.id === id);
    return channel ? turningBefore(job, devices, channel).switches : [];
  };
  const others = uppers.flatMap(switchesOf);
  return switchesOf(lower).flatMap(({ device, control, other }) => {
    const isShared = others.some((one) => one.device.id === device.id && one.control === control);
    return other === null || isShared || device.origin !== 'job' ? [] : [{ device, control, other }];
  })[0];
}

/** What to write so that the lower of two ways is turned over: its declaration and, where they are written, its links. */
function toReverse({ job, plan }: Case, { upper, lower, frequencyHz }: Handover): string {
  const speakersOf = (channel: string) =>
    plan.audio.channels.find(({ id }) => id === channel)?.speakers ?? [];
  const own = plan.audio.speakers.filter(({ id }) => speakersOf(lower).includes(id));
  if (
    own.length === 0 ||
    own.some(
      ({ polarity, mounted, reversedWhy }) =>
        polarity !== 'normal' || mounted === 'reversed' || reversedWhy !== null,
    )
  )
    return 'turn the polarity of one over, and say so by reversed: with the reason';
  const names = own.map(({ id }) => id);
  const why = `in step with ${listed(speakersOf(upper))} at ${hertz(frequencyHz)}`;
  return `turn ${listed(names)} over: at ${listed(names)} write reversed: ${why}${asLinked(job, names)}`;
}

/** How the links of speakers follow a declaration that was written. */
function asLinked(job: Job, speakers: readonly string[]): string {
  const written = speakers.filter((id) => !linksProposed(job, id));
  if (written.length === 0) return ', and the links that are proposed for it follow';
  const lines = written.flatMap((id) => swappedLines(job, id) ?? []);
  return lines.length < written.length ? ', and swap its two conductors' : `, and ${lines.join('; ')}`;
}

const declared: Rule = {
  id: 'polarity-not-as-declared',
  judge({ job, plan }) {
    return plan.audio.speakers.flatMap(
      ({ id, polarity, mounted, reversedWhy }): Verdict<'polarity-not-as-declared'>[] => {
        const meant = (mounted === 'reversed') !== (reversedWhy !== null) ? 'reversed' : 'normal';
        if (meant === 'normal' || polarity === 'unwired' || polarity === meant) return [];
        const why = reversedWhy ?? 'it is mounted back to front';
        const lines = swappedLines(job, id);
        return [
          {
            level: 'caution',
            of: [id],
            message: `${id} is meant to be wired with reversed polarity (${why}), and is wired normally`,
            remedy: `swap its two conductors at the speaker${lines === null ? '' : `: ${lines}`}; or take the declaration out`,
            ...deviceSpot(job, id),
          },
        ];
      },
    );
  },
};

const uneven: Rule = {
  id: 'speaker-paths-differ',
  judge({ job, plan }) {
    const shiftDb = job.rules['level-shift'].value;
    return plan.audio.channels.flatMap(
      ({ id, amplifier, belowDb, speakers }): Verdict<'speaker-paths-differ'>[] => {
        if (belowDb === null || belowDb <= shiftDb + 1e-9) return [];
        return [
          {
            level: 'note',
            of: [id, ...speakers],
            message: `${listed(speakers)} on ${id} plays ${decibels(belowDb)} below its fellow, by the loss in its wire alone`,
            value: belowDb,
            limit: shiftDb,
            unit: 'dB',
            remedy: 'run both in the same size with like lengths, or make it up in the level of the path',
            ...deviceSpot(job, amplifier),
          },
        ];
      },
    );
  },
};

const clipping: Rule = {
  id: 'full-scale-clips',
  judge({ job, plan }) {
    return plan.audio.channels.flatMap(({ id, amplifier, gain }): Verdict<'full-scale-clips'>[] => {
      if (!gain || gain.fullScaleMarginDb >= -1e-9) return [];
      return [
        {
          level: 'note',
          of: [id, amplifier],
          message: `with the tone ${decibels(gain.overlapDb)} below full scale, a full-scale passage drives ${id} ${decibels(-gain.fullScaleMarginDb)} past clipping`,
          value: gain.fullScaleMarginDb,
          limit: 0,
          unit: 'dB',
          remedy: 'keep it for recordings with headroom, or set the gain with a tone at a smaller overlap',
          ...deviceSpot(job, amplifier),
        },
      ];
    });
  },
};

const position: Rule = {
  id: 'control-position-unknown',
  judge({ job, plan }) {
    return plan.controls.flatMap(({ item, control, preset, final }) => {
      const positions = deviceOf(job, item)?.facts.controls[control]?.positions ?? [];
      const states = [
        ['settings', preset],
        ...(final.chosen === 'given' ? [['after-commissioning', final.state] as const] : []),
      ] as const;
      return states.flatMap(([group, state]): Verdict<'control-position-unknown'>[] => {
        if (positions.length === 0 || state === null || positions.includes(state)) return [];
        return [
          {
            level: 'stop',
            of: [`${item}.${control}`, item],
            message: `${control} on ${item} is to stand at "${state}", and has the positions ${listed(positions)}`,
            value: state,
            limit: positions.join(', '),
            remedy: `write one of ${listed(positions, 'or')}`,
            ...deviceSpot(job, item, group, control),
          },
        ];
      });
    });
  },
};

export const speakerPathRules: readonly Rule[] = [crossover, declared, uneven, clipping, position];
