import { isLeastEnough, leastOfNominal } from '../../audio/load/in-line-filter.ts';
import { type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanChannel } from '../../model/plan/index.ts';
import { deviceIdOf, deviceOf, deviceSpot, endsOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { hertz, listed, ohms, ohmsAtLeast, watts } from '../words.ts';

/** What the computation of loads calls a wiring that gives none. */
const wiringFaults = [
  'channel-without-speaker',
  'channel-shorted',
  'channels-joined',
  'coil-shorted',
  'coil-left-open',
  'wiring-not-series-parallel',
  'pair-not-bridged',
  'coil-to-body',
] as const;

/** True where a wire ends at one of the terminals. */
function anyWired({ plan }: Case, terminals: readonly string[]): boolean {
  return plan.wires.some((wire) => endsOf(wire).some((end) => terminals.includes(end)));
}

const belowMinimum: Rule = {
  id: 'load-below-minimum',
  judge({ job, plan }) {
    return plan.audio.channels.flatMap((channel): Verdict<'load-below-minimum'>[] => {
      const { id, amplifier, loadOhm, minimumOhm, wiring, bridgedWith } = channel;
      if (loadOhm === null) return [];
      if (loadOhm >= minimumOhm - 1e-9) return dipping(job, channel);
      return [
        {
          level: 'stop',
          of: [id, amplifier],
          message: `${id} sees ${ohms(loadOhm)} (${wiring}), under the ${ohmsAtLeast(minimumOhm)} that ${amplifier} may drive${bridgedWith === undefined ? '' : ' bridged'}`,
          value: loadOhm,
          limit: minimumOhm,
          unit: 'ohm',
          remedy: 'wire the coils for a higher load, or use an amplifier that may drive it',
          ...deviceSpot(job, amplifier),
        },
      ];
    });
  },
};

/** A channel whose load is enough in the bass, and too low where a filter in a lead lets a speaker in beside the others. */
function dipping(job: Job, channel: PlanChannel): Verdict<'load-below-minimum'>[] {
  const { id, amplifier, minimumOhm, wiring, least } = channel;
  if (!least || isLeastEnough(least.ohm, minimumOhm)) return [];
  return [
    {
      level: 'stop',
      of: [id, amplifier],
      message: `${id} sees as little as ${ohms(least.ohm)} at ${hertz(least.atHz)} (${wiring}, each where its filter lets it play); a load that is rated at the ${ohmsAtLeast(minimumOhm)} that ${amplifier} may drive falls no lower than ${100 * leastOfNominal} % of it`,
      value: least.ohm,
      limit: leastOfNominal * minimumOhm,
      unit: 'ohm',
      remedy:
        'give the speaker behind the filter a channel of its own, or use an amplifier that may drive less; where the leaflet of the other speaker tells its inductance, write it at its coil, such as coils: C1: { inductance: 0.35 mH }',
      source: "IEC 60268-5, rated impedance; the amplifier's data",
      ...deviceSpot(job, amplifier),
    },
  ];
}

const loadUnknown: Rule = {
  id: 'load-unknown',
  judge(about) {
    return about.plan.audio.channels.flatMap(
      ({ id, amplifier, positive, negative, loadOhm, speakers }): Verdict<'load-unknown'>[] => {
        const known = loadOhm !== null && loadOhm > 0;
        if (known || (speakers.length === 0 && !anyWired(about, [positive, negative]))) return [];
        return [
          {
            level: 'stop',
            of: [id, amplifier, ...speakers],
            message: `${id} is wired, but its load can not be told from the wiring of its coils`,
            remedy:
              'wire both terminals of the channel to coils in series or in parallel, each coil at both ends',
            ...deviceSpot(about.job, amplifier),
            givesWayTo: wiringFaults,
          },
        ];
      },
    );
  },
};

/** The coil terminals of a speaker. */
function coilTerminals(job: Job, speaker: string): readonly string[] {
  const terminals = deviceOf(job, speaker)?.facts.terminals ?? {};
  return Object.keys(terminals)
    .filter((name) => terminals[name]?.role === 'coil-positive' || terminals[name]?.role === 'coil-negative')
    .map((terminal) => terminalId({ device: speaker, terminal }));
}

const speakerWithoutChannel: Rule = {
  id: 'speaker-without-channel',
  judge(about) {
    const { job, plan } = about;
    return plan.audio.speakers.flatMap(({ id, channel }): Verdict<'speaker-without-channel'>[] => {
      if (channel !== null || deviceOf(job, id)?.origin === 'vehicle') return [];
      const coils = coilTerminals(job, id);
      const leftOpen = plan.terminals.filter(
        ({ item, state, reason }) => item === id && state === 'open' && reason !== undefined,
      );
      const drivenElsewhere = plan.wires.some((wire) => {
        const ends = endsOf(wire);
        const other = ends.find((end) => deviceIdOf(end) !== id);
        return (
          ends.some((end) => coils.includes(end)) &&
          other !== undefined &&
          deviceOf(job, deviceIdOf(other))?.spec?.kind === 'source-unit'
        );
      });
      if (
        drivenElsewhere ||
        (coils.length > 0 &&
          coils.every((coil) => leftOpen.some(({ terminal }) => coil === `${id}.${terminal}`)))
      )
        return [];
      return [
        {
          level: 'stop',
          of: [id],
          message: `no amplifier channel drives the speaker ${id}`,
          remedy: `link its coils to a channel, or leave ${listed(coils)} open with a reason`,
          ...deviceSpot(job, id),
          givesWayTo: ['coil-left-open', 'pair-not-bridged', 'coil-to-body'],
        },
      ];
    });
  },
};

const reversed: Rule = {
  id: 'polarity-reversed',
  judge({ job, plan }) {
    return plan.audio.speakers.flatMap(
      ({ id, polarity, mounted, reversedWhy }): Verdict<'polarity-reversed'>[] => {
        const meant = (mounted === 'reversed') !== (reversedWhy !== null);
        if (polarity !== 'reversed' || meant) return [];
        return [
          {
            level: 'caution',
            of: [id],
            message: `${id} is wired with reversed polarity`,
            remedy:
              'swap its two conductors; where its mounting asks for it, write mounted: reversed; where it is meant, reversed: with the reason',
            ...deviceSpot(job, id),
          },
        ];
      },
    );
  },
};

const opposed: Rule = {
  id: 'coils-opposed',
  judge(about) {
    const { job, plan } = about;
    return plan.audio.speakers.flatMap(({ id, polarity, reversedCoils = [] }): Verdict<'coils-opposed'>[] => {
      const spec = deviceOf(job, id)?.spec;
      if (polarity !== 'opposed' || spec?.kind !== 'speaker') return [];
      const others = Object.keys(spec.coils)
        .map((coil) => `${id}.${coil}`)
        .filter((coil) => !reversedCoils.includes(coil));
      const [turned] = reversedCoils;
      const ends = Object.entries(spec.coils)
        .filter(([coil]) => `${id}.${coil}` === turned)
        .map(([, { positive }]) => terminalId({ device: id, terminal: positive }));
      const wire = plan.wires.find((one) => endsOf(one).some((end) => ends.includes(end)));
      return [
        {
          level: 'stop',
          of: [id, ...reversedCoils],
          message: `the coils of ${id} are opposed: ${listed(reversedCoils)} pushes against ${listed(others)}; its cone stands still, and what it gets becomes heat`,
          remedy: `exchange the two conductors of ${listed(reversedCoils)}, so that each positive leads towards the positive output`,
          ...(wire ? wireSpot(about, wire.id) : deviceSpot(job, id)),
        },
      ];
    });
  },
};

const overPower: Rule = {
  id: 'power-over-speaker',
  judge({ job, plan }) {
    // What a crossover is given, it and the speakers of its set take together.
    const sets = plan.audio.channels.flatMap(({ coils }) =>
      coils.flatMap(({ speaker: id, powerW }) =>
        deviceOf(job, id)?.spec?.kind === 'crossover' ? [{ id, powerW }] : [],
      ),
    );
    return [...plan.audio.speakers, ...sets].flatMap(({ id, powerW }): Verdict<'power-over-speaker'>[] => {
      const spec = deviceOf(job, id)?.spec;
      const isRated = spec?.kind === 'speaker' || spec?.kind === 'crossover';
      if (powerW === null || !isRated || powerW <= spec.power + 1e-9) return [];
      return [
        {
          level: 'note',
          of: [id],
          message: `${id} may take ${watts(spec.power)} for long, and its channel can give it ${watts(powerW)}`,
          value: powerW,
          limit: spec.power,
          unit: 'W',
          remedy: 'set the gain by the voltage on the gain sheet, which keeps to what the speaker may take',
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

export const speakerLoadRules: readonly Rule[] = [
  belowMinimum,
  loadUnknown,
  speakerWithoutChannel,
  reversed,
  opposed,
  overPower,
];
