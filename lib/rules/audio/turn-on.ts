import { turnOnSum } from '../../audio/turn-on.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { turnOnDrawOf } from '../../model/kinds/fields/turn-on-draw.ts';
import { isRelay } from '../../model/kinds/index.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { type LiveEdge, liveSide, reached } from '../live-side.ts';
import {
  deviceIdOf,
  deviceOf,
  deviceSpot,
  endsOf,
  hasRole,
  jobWires,
  partSpot,
  terminalSpecOf,
  wireSpot,
} from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed } from '../words.ts';
import { isContact, isDriven, terminalsWith } from './driven.ts';
import { stateOf, switchesOf, turnOnSwitchRule } from './turn-on-switch.ts';

/** Wires and strips, but no relay contact and no fuse: what one output drives straight. */
const straight =
  (job: Job) =>
  ({ kind, ends: [end] }: LiveEdge): boolean =>
    kind === 'wire' || (kind === 'bar' && !isContact(job, kind, end));
const isWired = (about: Case, terminal: string): boolean =>
  about.plan.wires.some((wire) => endsOf(wire).includes(terminal));

/** True for a device that turns itself on by what it senses at an input of speaker level, where one is wired. */
function sensesSpeakers(about: Case, id: string): boolean {
  const terminals = Object.entries(deviceOf(about.job, id)?.facts.terminals ?? {});
  return terminals.some(
    ([name, spec]) =>
      spec.role === 'speaker-in-positive' &&
      spec['speaker-level']?.senses === true &&
      isWired(about, `${id}.${name}`),
  );
}

const missing: Rule = {
  id: 'turn-on-missing',
  judge(about) {
    const { job } = about;
    const side = liveSide(about);
    return terminalsWith(job, 'turn-on-in', 'job').flatMap((terminal): Verdict<'turn-on-missing'>[] => {
      const id = deviceIdOf(terminal);
      const verdict = {
        of: [terminal, id],
        remedy: `link ${terminal} to a turn-on output, or to the contact of a relay that one drives`,
        ...deviceSpot(job, id),
      };
      if (isWired(about, terminal)) {
        return isDriven(job, side.edges, [terminal])
          ? []
          : [
              {
                ...verdict,
                level: 'stop',
                message: `${terminal} is wired, but no turn-on output or supply stands at the other end: ${id} never turns on`,
              },
            ];
      }
      // A switch that stands wrong is told as such.
      if (switchesOf(about, id).some((one) => stateOf(one) !== null)) return [];
      const controls = deviceOf(job, id)?.facts.controls ?? {};
      const automatic = switchesOf(about, id).length > 0 || sensesSpeakers(about, id);
      const untold = Object.entries(controls).find(
        ([, { what, automatic: told }]) => what === 'turn-on-mode' && told === undefined,
      );
      return [
        automatic
          ? {
              ...verdict,
              level: 'caution',
              message: `${id} turns itself on by signal or direct-current offset, and ${terminal} has no wired fallback`,
            }
          : {
              ...verdict,
              level: 'stop',
              message: `no turn-on lead reaches ${terminal}: ${id} never turns on`,
              ...(untold && {
                remedy: `${verdict.remedy}; where a position of ${untold[0]} lets ${id} turn itself on, name it under automatic: in its part`,
              }),
            },
      ];
    });
  },
};

/** What a turn-on input draws, by its part or its terminal, else by the house rules; null where none of them tells. */
function drawOf(job: Job, terminal: string): number | null {
  const draw = turnOnDrawOf(deviceOf(job, deviceIdOf(terminal))?.spec ?? null, job.rules);
  const ofTerminal = draw?.isAssumed === false ? undefined : terminalSpecOf(job, terminal)?.current;
  return ofTerminal ?? draw?.currentA ?? null;
}

const overload: Rule = {
  id: 'turn-on-overload',
  judge(about) {
    const { job } = about;
    const side = liveSide(about);
    return terminalsWith(job, 'turn-on-out').flatMap((output): Verdict<'turn-on-overload'>[] => {
      const net = [...reached(side.edges, [output], straight(job))].filter((end) =>
        hasRole(job, end, 'turn-on-in', 'relay-coil'),
      );
      // A coil's two terminals are one load.
      const loads = [...new Map(net.map((terminal) => [deviceIdOf(terminal), terminal])).entries()];
      if (loads.length === 0) return [];
      const sum = turnOnSum(
        { source: output, limitA: terminalSpecOf(job, output)?.current ?? null },
        loads.map(([item, terminal]) => ({ item, currentA: drawOf(job, terminal) })),
      );
      const spot = deviceSpot(job, deviceIdOf(output));
      if (isFault(sum)) {
        const [unknown = output] = sum.of;
        return [
          {
            level: 'note',
            of: [...new Set([output, ...sum.of])],
            message: sum.message,
            remedy: sum.remedy,
            ...partSpot(job, deviceOf(job, unknown) ? unknown : deviceIdOf(unknown)),
          },
        ];
      }
      if (sum.within) return [];
      return [
        {
          level: 'stop',
          of: [output, ...loads.map(([item]) => item)],
          message: `${output} gives ${amps(sum.limitA.value)}, and ${listed(loads.map(([item]) => item))} together draw ${ampsDrawn(sum.sumA.value)}`,
          value: sum.sumA.value,
          limit: sum.limitA.value,
          unit: 'A',
          remedy: 'drive them by a fused relay with a suppression diode across its coil',
          ...spot,
        },
      ];
    });
  },
};

const relayDiode: Rule = {
  id: 'relay-without-suppression',
  judge({ job }) {
    return job.devices.flatMap(({ id, spec, origin }): Verdict<'relay-without-suppression'>[] => {
      if (!isRelay(spec) || origin !== 'job' || spec.suppression !== 'none') return [];
      return [
        {
          level: 'caution',
          of: [id],
          message: `the relay ${id} has nothing across its coil: the spike when it drops out can kill the turn-on output that drives it`,
          remedy:
            'take a relay with a built-in diode, or fit one across the coil, its band to the positive side',
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

const sequence: Rule = {
  id: 'turn-on-sequence',
  judge(about) {
    const { job } = about;
    const side = liveSide(about);
    const outputs = new Set(
      terminalsWith(job, 'turn-on-out').filter(
        (terminal) => deviceOf(job, deviceIdOf(terminal))?.spec?.kind === 'processor',
      ),
    );
    const plays = (wire: PlanWire, amplifier: string) => {
      const ends = endsOf(wire).map(deviceIdOf);
      return (
        wire.role === 'signal' &&
        ends.includes(amplifier) &&
        ends.some((end) => [...outputs].some((output) => deviceIdOf(output) === end))
      );
    };
    return terminalsWith(job, 'turn-on-in', 'job').flatMap((terminal): Verdict<'turn-on-sequence'>[] => {
      const id = deviceIdOf(terminal);
      if (deviceOf(job, id)?.spec?.kind !== 'amplifier' || !isWired(about, terminal)) return [];
      if (!jobWires(about).some((wire) => plays(wire, id))) return [];
      const net = reached(side.edges, [terminal], straight(job));
      const ways = relaysDrivenBy(job, side.edges, net);
      if ([...net, ...ways].some((end) => outputs.has(end))) return [];
      const wire = about.plan.wires.find((one) => endsOf(one).includes(terminal));
      return [
        {
          level: 'caution',
          of: [terminal, id],
          message: `${id} plays from a processor but does not take its turn-on from it: the processor's own start and stop would thump through ${id}`,
          remedy: `drive ${terminal} from the turn-on output of the processor`,
          ...wireSpot(about, wire?.id ?? ''),
        },
      ];
    });
  },
};

/** What the coils are wired to of the relays whose contacts are in a net. */
function relaysDrivenBy(job: Job, edges: readonly LiveEdge[], net: ReadonlySet<string>): readonly string[] {
  return [...net]
    .filter((end) => hasRole(job, end, 'relay-contact'))
    .flatMap((contact) => {
      const id = deviceIdOf(contact);
      const coils = terminalsWith(job, 'relay-coil').filter((coil) => deviceIdOf(coil) === id);
      return [...reached(edges, coils, straight(job))];
    });
}

export const turnOnRules: readonly Rule[] = [missing, turnOnSwitchRule, overload, relayDiode, sequence];
