import { terminalId } from '../model/resolved-job.ts';
import { liveSide, reached } from './live-side.ts';
import { deviceSpot, endsOf, jobWires, wireSpot } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';

const source = "Kirchhoff's laws; the parts' data";

/** Every terminal that a source's positive reaches through feeds, bars, fuses and closed contacts. */
function liveTerminals(about: Case): ReadonlySet<string> {
  const side = liveSide(about);
  return reached(side.edges, side.sources, () => true);
}

const liveOnGround: Rule = {
  id: 'live-end-on-ground',
  asks: 'No conductor joins what is live to ground: that is a short, or a device the wrong way round.',
  levels: ['stop'],
  source,
  judge(about) {
    const live = liveTerminals(about);
    return jobWires(about).flatMap((wire): Verdict[] => {
      const [one, other] = endsOf(wire);
      const hot = [one, other].find((end) => live.has(end));
      if (wire.role !== 'ground' || hot === undefined) return [];
      return [
        {
          level: 'stop',
          of: [wire.id, hot],
          message: `${wire.id} joins ${hot}, which is live, to ${hot === one ? other : one}, which is ground: a short through the conductors`,
          source,
          remedy: 'take it off; if a device is the wrong way round, exchange its feed and its ground',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

const supplyNotLive: Rule = {
  id: 'supply-not-live',
  asks: 'The positive supply terminal of every device of the job is reached from a battery.',
  levels: ['stop'],
  source,
  judge(about) {
    const live = liveTerminals(about);
    const joined = new Set(jobWires(about).flatMap((wire) => [...endsOf(wire)]));
    return about.job.devices.flatMap(({ id, facts, origin }): Verdict[] => {
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
          source,
          remedy: 'lead a feed to it from a battery, through its fuse',
          ...deviceSpot(about.job, id),
        },
      ];
    });
  },
};

/** Feed and ground the right way round, and never joined. */
export const supplyPolarityRules: readonly Rule[] = [liveOnGround, supplyNotLive];
