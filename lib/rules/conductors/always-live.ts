import { terminalId } from '../../model/content/resolved-job.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { isContact, terminalsWith } from '../audio/driven.ts';
import { liveSide, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, endsOf, hasRole, jobWires, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** What a terminal hangs on through wires, strips and fuses. A contact may be open, so that it is not passed. */
function heldOn(about: Case, terminal: string): readonly string[] {
  const { edges } = liveSide(about);
  return [...reached(edges, [terminal], ({ kind, ends: [end] }) => !isContact(about.job, kind, end))];
}

/** The posts of batteries that hold a terminal live with the key off; none where an output could switch it. */
function constantSources(about: Case, terminal: string): readonly string[] {
  const net = heldOn(about, terminal);
  // An alternator gives nothing once the engine stands.
  return net.filter(
    (end) =>
      hasRole(about.job, end, 'source-positive') &&
      deviceOf(about.job, deviceIdOf(end))?.spec?.kind === 'battery',
  );
}

/** True where the other end of a relay's coil lies on ground, so that nothing switches it there. */
function isGrounded(about: Case, coil: string): boolean {
  const device = deviceOf(about.job, deviceIdOf(coil));
  const others = terminalsWith(about.job, 'relay-coil').filter(
    (other) => other !== coil && deviceIdOf(other) === device?.id,
  );
  return others.some((other) =>
    about.plan.wires.some((wire) => wire.role === 'ground' && endsOf(wire).includes(other)),
  );
}

/** What a terminal hangs on: where its wires come from as the job writes it, then the posts behind that. */
function heldBy(terminal: string, wires: readonly PlanWire[], posts: readonly string[]): string {
  const from = wires.flatMap(endsOf).filter((end) => end !== terminal && !posts.includes(end));
  return from.length === 0 ? listed(posts) : `${listed(from)}, and so on ${listed(posts)},`;
}

/**
 * A turn-on input, or the coil of a relay, that a battery feeds with nothing between that could open: what it turns on
 * never goes off. What a fuse block of the vehicle feeds is left out: its maker may switch it.
 */
const turnOnAlwaysLive: Rule = {
  id: 'turn-on-always-live',
  judge(about) {
    const { job } = about;
    const inputs = job.devices
      .filter(({ origin, spec }) => origin === 'job' && spec?.kind !== 'isolating-relay')
      .flatMap(({ id, facts }) =>
        Object.keys(facts.terminals)
          .map((terminal) => terminalId({ device: id, terminal }))
          .filter((terminal) => hasRole(job, terminal, 'turn-on-in', 'relay-coil')),
      );
    return inputs.flatMap((terminal): Verdict<'turn-on-always-live'>[] => {
      const wires = jobWires(about).filter((wire) => endsOf(wire).includes(terminal));
      const posts = constantSources(about, terminal);
      const coil = hasRole(job, terminal, 'relay-coil');
      if (wires.length === 0 || posts.length === 0 || (coil && !isGrounded(about, terminal))) return [];
      const id = deviceIdOf(terminal);
      return [
        {
          level: 'stop',
          of: [terminal, id, ...wires.map((wire) => wire.id)],
          message: `${terminal} hangs on ${heldBy(terminal, wires, posts)} with nothing between that opens: ${coil ? `the relay ${id} stays pulled in` : `${id} never turns off`} and empties the battery`,
          remedy: `take ${terminal} from a turn-on output, from a feed that goes off with the key, or over the contact of a relay that one drives`,
          ...wireSpot(about, wires.find((wire) => endsOf(wire).includes(terminal))?.id ?? ''),
        },
      ];
    });
  },
};

export const alwaysLiveRules: readonly Rule[] = [turnOnAlwaysLive];
