import { leastBassAwg } from '../../audio/load/bass-lead.ts';
import type { PlanChannel, PlanWire } from '../../model/plan/index.ts';
import { awgAreaMm2 } from '../../model/tables/awg-sizes.ts';
import { longestLengthM } from '../../shelf/shelf-lengths.ts';
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
  const names = namesOf(thin, isWhole);
  const sizes = [...new Set(thin.map((wire) => wire.size.label))];
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
    remedy: thickerLeads(about, thin, isWhole, asked, leastMm2),
    ...wireSpot(about, id),
  };
}

function namesOf(wires: readonly PlanWire[], isWhole: (link: string) => boolean): readonly string[] {
  return [...new Set(wires.map(({ link, id }) => (isWhole(link) ? link : id)))];
}

/** Leads by what stands at their own ends: one whose terminal takes no more is told apart from those that run thicker as they are. */
function thickerLeads(
  { job }: Case,
  thin: readonly PlanWire[],
  isWhole: (link: string) => boolean,
  asked: string,
  leastMm2: number,
): string {
  const isTooSmall = (end: string) => {
    const takes = terminalSpecOf(job, end)?.takes;
    return takes !== undefined && takes.to.areaMm2 < leastMm2 / 1.001;
  };
  const refusedLinks = new Set(thin.filter((wire) => endsOf(wire).some(isTooSmall)).map(({ link }) => link));
  const free = namesOf(
    thin.filter(({ link }) => !refusedLinks.has(link)),
    isWhole,
  );
  const bound = thin.filter(({ link }) => refusedLinks.has(link));
  const ends = [...new Set(bound.flatMap(endsOf))].filter(isTooSmall);
  const takes = ends.map((end) => `${end} takes at most ${terminalSpecOf(job, end)?.takes?.to.label ?? ''}`);
  const own = namesOf(bound, isWhole);
  return [
    ...(free.length === 0 ? [] : [`run ${listed(free)} in ${asked}`]),
    ...(own.length === 0
      ? []
      : [
          `${listed(takes)}: run ${listed(own)} in ${asked} with a reducer at the end that is too small, or as short as can be`,
        ]),
    ...(isShelved(job, leastMm2) ? [] : [`no wire or cable of ${asked} is on the shelf: it is ordered`]),
  ].join('; ');
}

/** True where a conductor that thick for speakers lies on the shelf. */
function isShelved({ shop, parts }: Case['job'], leastMm2: number): boolean {
  return Object.entries(shop.stock).some(([id, stock]) => {
    const spec = parts[id];
    if ((spec?.kind !== 'wire' && spec?.kind !== 'cable') || !spec.for.includes('speaker')) return false;
    const sizes = spec.kind === 'wire' ? [spec] : Object.values(spec.conductors);
    return sizes.some(({ size }) => size.areaMm2 >= leastMm2 * 0.999) && longestLengthM(stock) > 0;
  });
}

export const speakerWireRules: readonly Rule[] = [wireLoss, bassLead];
