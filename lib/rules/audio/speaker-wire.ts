import { leastBassAwg } from '../../audio/load/bass-lead.ts';
import type { PlanChannel, PlanWire } from '../../model/plan/index.ts';
import { awgAreaMm2 } from '../../model/tables/awg-sizes.ts';
import { houseRule } from '../house-rule-of.ts';
import {
  deviceIdOf,
  deviceOf,
  deviceSpot,
  endsOf,
  hasSize,
  jobWires,
  terminalSpecOf,
  wireSpot,
} from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { decibels, listed, ohms } from '../words.ts';

const wireLoss: Rule = {
  id: 'speaker-wire-loss',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'speaker-loss');
    return plan.audio.channels.flatMap(({ id, amplifier, wireLossDb }): Verdict<'speaker-wire-loss'>[] => {
      if (wireLossDb === null || wireLossDb <= limit + 1e-9) return [];
      return [
        {
          level: 'caution',
          of: [id, amplifier],
          message: `the speaker wire of ${id} loses ${decibels(wireLossDb)}; ${decibels(limit)} is the limit`,
          value: wireLossDb,
          limit,
          unit: 'dB',
          remedy: 'run a larger or shorter speaker wire, or wire the coils for a higher load',
          ...from,
          ...deviceSpot(job, amplifier),
        },
      ];
    });
  },
};

/** The speaker wires of a channel: those at its own terminals and those at the coils of its speakers. */
function wiresOf(about: Case, { positive, negative, speakers }: PlanChannel): readonly PlanWire[] {
  return jobWires(about).filter(
    (wire) =>
      wire.role === 'speaker' &&
      endsOf(wire).some((end) => end === positive || end === negative || speakers.includes(deviceIdOf(end))),
  );
}

const bassLead: Rule = {
  id: 'bass-lead-thin',
  judge(about) {
    return about.plan.audio.channels.flatMap((channel): Verdict<'bass-lead-thin'>[] => {
      const { loadOhm, speakers } = channel;
      const bass = speakers.some((id) => {
        const spec = deviceOf(about.job, id)?.spec;
        return spec?.kind === 'speaker' && spec.band === 'subwoofer';
      });
      const awg = bass && loadOhm !== null ? leastBassAwg(loadOhm) : null;
      if (awg === null || loadOhm === null) return [];
      const least = awgAreaMm2(awg);
      const thin = wiresOf(about, channel).filter(
        (wire) => hasSize(wire) && wire.size.areaMm2 < least * 0.999,
      );
      const [first] = thin.toSorted((a, b) => a.size.areaMm2 - b.size.areaMm2);
      if (!first) return [];
      return [thinLead(about, channel, thin, first, `${awg} AWG`, ohms(loadOhm), least)];
    });
  },
};

/** A pair is told once, by its name; leads of several links each by theirs. */
function thinLead(
  about: Case,
  channel: PlanChannel,
  thin: readonly PlanWire[],
  { id, size }: PlanWire,
  asked: string,
  load: string,
  leastMm2: number,
): Verdict<'bass-lead-thin'> {
  const all = wiresOf(about, channel);
  const isWhole = (link: string) => all.every((wire) => wire.link !== link || thin.includes(wire));
  const names = [...new Set(thin.map((wire) => (isWhole(wire.link) ? wire.link : wire.id)))];
  const sizes = [...new Set(thin.map((wire) => wire.size.label))];
  const it = names.length === 1 ? 'it' : 'them';
  const refusing = [...new Set(thin.flatMap(endsOf))].flatMap((end) => {
    const takes = terminalSpecOf(about.job, end)?.takes;
    return takes && takes.to.areaMm2 < leastMm2 / 1.001 ? [`${end} takes at most ${takes.to.label}`] : [];
  });
  const loses =
    channel.wireLossDb === null
      ? ''
      : `; the speaker wire of ${channel.id} loses ${decibels(channel.wireLossDb)}`;
  return {
    level: 'caution',
    of: [...names, ...thin.map((wire) => wire.id), channel.id],
    message: `${listed(names)} ${names.length === 1 ? 'is' : 'are'} ${listed(sizes)}, and a bass lead into ${load} is ${asked} or larger${loses}`,
    value: size.areaMm2,
    limit: leastMm2,
    unit: 'mm2',
    remedy:
      refusing.length === 0
        ? `run ${it} in ${asked}`
        : `${refusing.join(', and ')}: run ${it} in ${asked} with a reducer at the end that is too small, or as short as can be`,
    ...wireSpot(about, id),
  };
}

export const speakerWireRules: readonly Rule[] = [wireLoss, bassLead];
