import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { decibels, hertz, listed } from '../words.ts';

const crossover: Rule = {
  id: 'crossover-cancels',
  judge({ job, plan }) {
    const cancelsDb = job.rules['ways-cancel'].value;
    return plan.audio.curves.sums.flatMap(({ handovers }) =>
      handovers.flatMap(({ upper, lower, frequencyHz, sumDb, louderDb }): Verdict<'crossover-cancels'>[] => {
        if (sumDb >= louderDb - cancelsDb - 1e-9) return [];
        const amplifier = plan.audio.channels.find(({ id }) => id === upper)?.amplifier ?? '';
        return [
          {
            level: 'caution',
            of: [upper, lower],
            message: `${upper} and ${lower} cancel at ${hertz(frequencyHz)}: together they are ${decibels(louderDb - sumDb)} below the louder one alone`,
            value: sumDb,
            limit: louderDb - cancelsDb,
            unit: 'dB',
            remedy:
              'turn the polarity of one over, and say so by reversed: with the reason; or use Linkwitz-Riley filters of fourth order at one corner',
            ...deviceSpot(job, amplifier, 'filters'),
          },
        ];
      }),
    );
  },
};

const declared: Rule = {
  id: 'polarity-not-as-declared',
  judge({ job, plan }) {
    return plan.audio.speakers.flatMap(
      ({ id, polarity, mounted, reversedWhy }): Verdict<'polarity-not-as-declared'>[] => {
        const meant = (mounted === 'reversed') !== (reversedWhy !== null) ? 'reversed' : 'normal';
        if (meant === 'normal' || polarity === 'unwired' || polarity === meant) return [];
        const why = reversedWhy ?? 'it is mounted back to front';
        return [
          {
            level: 'caution',
            of: [id],
            message: `${id} is meant to be wired with reversed polarity (${why}), and is wired normally`,
            remedy: 'swap its two conductors at the speaker, or take the declaration out',
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
