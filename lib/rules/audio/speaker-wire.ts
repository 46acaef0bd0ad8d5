import type { PlanChannel, PlanWire } from '../../model/plan/index.ts';
import { awgAreaMm2 } from '../../model/tables/copper-wire.ts';
import { deviceIdOf, deviceOf, deviceSpot, endsOf, hasSize, jobWires, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { houseRule } from '../source.ts';
import { decibels, ohms } from '../words.ts';

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

/** Least size of a bass lead by its load: 12 AWG from 4 ohm down to 2, 10 AWG below; none is asked for above 4 ohm. */
function leastAwg(loadOhm: number): string | null {
  if (loadOhm > 4 + 1e-9) return null;
  return loadOhm >= 2 - 1e-9 ? '12' : '10';
}

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
    return about.plan.audio.channels.flatMap((channel) => {
      const { loadOhm, speakers } = channel;
      const bass = speakers.some((id) => {
        const spec = deviceOf(about.job, id)?.spec;
        return spec?.kind === 'speaker' && spec.band === 'subwoofer';
      });
      const awg = bass && loadOhm !== null ? leastAwg(loadOhm) : null;
      if (awg === null || loadOhm === null) return [];
      const least = awgAreaMm2(awg);
      return wiresOf(about, channel).flatMap((wire): Verdict<'bass-lead-thin'>[] => {
        if (!hasSize(wire) || wire.size.areaMm2 >= least * 0.999) return [];
        return [
          {
            level: 'caution',
            of: [wire.id, channel.id],
            message: `${wire.id} is ${wire.size.label}, and a bass lead into ${ohms(loadOhm)} is ${awg} AWG or larger`,
            value: wire.size.areaMm2,
            limit: least,
            unit: 'mm2',
            remedy: `run it in ${awg} AWG`,
            ...wireSpot(about, wire.id),
          },
        ];
      });
    });
  },
};

export const speakerWireRules: readonly Rule[] = [wireLoss, bassLead];
