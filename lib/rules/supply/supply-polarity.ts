import { terminalId } from '../../model/content/resolved-job.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import { liveSide, reached } from '../live-side.ts';
import { deviceIdOf, deviceSpot, endsOf, jobWires, terminalSpecOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { isSeriesStrap } from './system-voltage.ts';

/** Every terminal that a source's positive reaches through feeds, bars, fuses and closed contacts. */
function liveTerminals(about: Case): ReadonlySet<string> {
  const side = liveSide(about);
  return reached(side.edges, side.sources, () => true);
}

const liveOnGround: Rule = {
  id: 'live-end-on-ground',
  judge(about) {
    const live = liveTerminals(about);
    return about.plan.wires.flatMap((wire): Verdict<'live-end-on-ground'>[] => {
      const [one, other] = endsOf(wire);
      const hot = [one, other].find((end) => live.has(end));
      if (wire.role !== 'ground' || hot === undefined || isSeriesStrap(about, [one, other])) return [];
      return [
        {
          level: 'stop',
          of: [wire.id, hot],
          message: `${wire.id} joins ${hot}, which is live, to ${hot === one ? other : one}, which is ground: a short through the conductors`,
          remedy:
            wire.origin === 'vehicle'
              ? 'look where it really goes, and correct the file of the vehicle'
              : 'take it off; if a device is the wrong way round, exchange its feed and its ground',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

const supplyNotLive: Rule = {
  id: 'supply-not-live',
  judge(about) {
    const live = liveTerminals(about);
    const joined = new Set(jobWires(about).flatMap((wire) => [...endsOf(wire)]));
    return about.job.devices.flatMap(({ id, facts, origin }): Verdict<'supply-not-live'>[] => {
      const dead = Object.keys(facts.terminals)
        .filter((name) => facts.terminals[name]?.role === 'supply-positive')
        .map((terminal) => terminalId({ device: id, terminal }))
        .filter((terminal) => joined.has(terminal) && !live.has(terminal));
      const [terminal] = dead;
      if (origin !== 'job' || terminal === undefined) return [];
      return [
        {
          level: 'stop',
          of: [id, terminal],
          message: `${terminal} is connected, but no battery reaches it: ${id} gets no supply, or is the wrong way round`,
          remedy: 'lead a feed to it from a battery, through its fuse',
          ...deviceSpot(about.job, id),
        },
      ];
    });
  },
};

/** What a supply voltage on a terminal of a role destroys, in words; none where it may stand there. */
const spoilt: Readonly<Partial<Record<TerminalRole, string>>> = {
  'signal-in': 'a signal input',
  'signal-out': 'a signal output',
  'speaker-in-positive': 'a high-level input',
  'speaker-in-negative': 'a high-level input',
  'speaker-out-positive': 'a speaker output',
  'speaker-out-negative': 'a speaker output',
  'coil-positive': 'a coil',
  'coil-negative': 'a coil',
  'control-line': 'a control line',
};

const liveOnSignal: Rule = {
  id: 'live-end-on-signal',
  judge(about) {
    const live = liveTerminals(about);
    const whatOf = (end: string) => spoilt[terminalSpecOf(about.job, end)?.role ?? 'sense'];
    return jobWires(about).flatMap((wire): Verdict<'live-end-on-signal'>[] => {
      const [one, other] = endsOf(wire);
      const end = [one, other].find((terminal) => whatOf(terminal) !== undefined);
      const hot = end === one ? other : one;
      if (end === undefined || whatOf(hot) !== undefined || !live.has(hot)) return [];
      return [
        {
          level: 'stop',
          of: [wire.id, end, hot],
          message: `${wire.id} leads the supply from ${hot} to ${end}, ${whatOf(end)}: it would burn`,
          remedy: `end it at the supply terminal of ${deviceIdOf(end)}, or take it off`,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

/** Feed and ground the right way round, never joined, and on nothing else. */
export const supplyPolarityRules: readonly Rule[] = [liveOnGround, supplyNotLive, liveOnSignal];
