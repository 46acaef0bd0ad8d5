import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { ampacityRow, insulationRatingsC, thinWireSize } from '../../model/tables/ampacity.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { houseRule } from '../house-rule-of.ts';
import { batteriesAmong, isConsumer, type LiveSide, liveSide, noFuse, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, endsOf, hasRole, jobWires, terminalSpecOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { fusePlaces } from './fuse-places.ts';

/**
 * Why a live conductor needs no fuse of its own, or has one: it is fed by an output that limits itself, it is the
 * lead from a source to its fuse (how long that may be is another rule's), or the plan names its fuse.
 */
function isProtected(about: Case, side: LiveSide, wire: PlanWire): boolean {
  const { job, plan } = about;
  const live = reached(side.edges, side.sources, noFuse);
  if (live.has(wire.from) || live.has(wire.to)) return isLeadToFuse(job, side, wire);
  const conductor = plan.power.conductors.find(({ id }) => id === wire.id);
  const named = conductor?.fuses.length ?? 0;
  if (named > 0 || plan.power.fuses.some(({ protects }) => protects.includes(wire.id))) return true;
  if (!isSourceLimited(job, wire)) return false;
  // What no source reaches burns nothing; that it is dead is another rule's.
  if (!reached(side.edges, side.sources, () => true).has(wire.from)) return true;
  // The plan sizes no turn-on conductors: those behind a fuse are as they should be.
  return wire.role !== 'power' && conductor === undefined;
}

/** True unless an output feeds the conductor that gives more than one that limits itself, and more than it carries. */
function isSourceLimited(job: Job, { from, to, size }: PlanWire): boolean {
  const { value: limitedA } = houseRule(job, 'source-limited');
  const row = ampacityRow(size.areaMm2);
  const thin = thinWireSize(size.areaMm2);
  const carriesA =
    row?.amperageA(insulationRatingsC[0]) ?? (thin ? powerRules(job.rules).thinWireA[thin] : 0);
  return [from, to].every((terminal) => {
    const limitA = hasRole(job, terminal, 'turn-on-out') ? terminalSpecOf(job, terminal)?.current : 0;
    return limitA === undefined || limitA <= Math.max(limitedA, carriesA);
  });
}

function isLeadToFuse(job: Job, side: LiveSide, wire: PlanWire): boolean {
  const others = side.edges.filter((edge) => edge.wire !== wire);
  const [a, b] = endsOf(wire).map((end) => reached(others, [end], noFuse));
  if (!a || !b) return false;
  const fedFrom = (terminals: ReadonlySet<string>) => side.sources.some((source) => terminals.has(source));
  // Both ends stay live without it: a link between two sources, or one of two leads side by side.
  if (fedFrom(a) && fedFrom(b))
    return [...a].every((terminal) => b.has(terminal)) && batteriesAmong(job, side, a).length <= 1
      ? !hasOwnConsumer(job, a)
      : false;
  const onward = fedFrom(a) ? b : a;
  const meetsFuse = side.edges.some(
    ({ kind, ends }) => kind === 'fuse' && ends.some((end) => onward.has(end)),
  );
  return meetsFuse && !hasOwnConsumer(job, onward);
}

function hasOwnConsumer(job: Job, terminals: ReadonlySet<string>): boolean {
  return [...terminals].some(
    (terminal) => isConsumer(job, terminal) && deviceOf(job, deviceIdOf(terminal))?.origin === 'job',
  );
}

function fuseless(about: Case, wire: PlanWire, side: LiveSide): Verdict<'conductor-without-fuse'> {
  return {
    level: 'stop',
    of: [wire.id, ...endsOf(wire)],
    message: `${wire.id} (${wire.size.label}) from ${wire.from} to ${wire.to} has no fuse that protects it`,
    remedy: fusePlaces(about, wire, side),
    ...wireSpot(about, wire.id),
  };
}

/** The live conductors of a job that no fuse protects. */
export function unprotectedWires(about: Case): readonly PlanWire[] {
  const side = liveSide(about);
  return jobWires(about)
    .filter(({ role }) => role === 'power' || role === 'turn-on' || role === 'control')
    .filter((wire) => !isProtected(about, side, wire));
}

const conductorWithoutFuse: Rule = {
  id: 'conductor-without-fuse',
  judge(about) {
    const side = liveSide(about);
    return unprotectedWires(about).map((wire) => fuseless(about, wire, side));
  },
};

/** Terminals of the vehicle that a job wire taps and that are no source's post, no fused way's end, no output. */
function isTap(job: Job, side: LiveSide, terminal: string): boolean {
  if (deviceOf(job, deviceIdOf(terminal))?.origin !== 'vehicle') return false;
  if (!hasRole(job, terminal, 'supply-positive', 'feed-in', 'feed-out', 'relay-contact')) return false;
  return !side.edges.some(({ kind, ends }) => kind === 'fuse' && ends[1] === terminal);
}

const tapWithoutFuse: Rule = {
  id: 'tap-without-fuse',
  judge(about) {
    const side = liveSide(about);
    const own = side.edges.filter(({ wire }) => wire === null || wire.origin === 'job');
    return jobWires(about).flatMap((wire): Verdict<'tap-without-fuse'>[] => {
      const tap = endsOf(wire).find((end) => isTap(about.job, side, end));
      if (tap === undefined || wire.role === 'ground') return [];
      const beyond = reached(own, [tap], noFuse);
      if (!hasOwnConsumer(about.job, beyond)) return [];
      return [
        {
          level: 'stop',
          of: [wire.id, tap],
          message: `${wire.id} taps ${tap} of the vehicle and has no fuse of its own; the fuse before it is sized for what the vehicle feeds there`,
          remedy: 'put a fuse at the tap, rated for the added load and its conductor',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

export const conductorWithoutFuseRules: readonly Rule[] = [conductorWithoutFuse, tapWithoutFuse];
