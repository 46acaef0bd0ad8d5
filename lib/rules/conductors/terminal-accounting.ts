import { type Device, terminalId } from '../../model/content/resolved-job.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import { deviceIdOf, deviceOf, deviceSpot, endsOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { chargerLack } from '../supply/charger-signals.ts';
import { counted, listed } from '../words.ts';

const unaccounted: Rule = {
  id: 'terminal-unaccounted',
  judge({ job, plan }) {
    const listedOnes = new Set(plan.terminals.map(({ item, terminal }) => `${item}.${terminal}`));
    const unlisted = job.devices
      .filter(({ origin }) => origin === 'job')
      .flatMap(({ id, facts }) => Object.keys(facts.terminals).map((terminal) => ({ item: id, terminal })))
      .filter(({ item, terminal }) => !listedOnes.has(`${item}.${terminal}`));
    const loose = plan.terminals.filter(
      ({ state, reason, wires }) =>
        state === 'unaccounted' ||
        (state === 'open' && !/\S/.test(reason ?? '')) ||
        (state === 'connected' && wires.length === 0 && reason === undefined),
    );
    return [...loose, ...unlisted].map(({ item, terminal }): Verdict<'terminal-unaccounted'> => {
      const id = `${item}.${terminal}`;
      const device = deviceOf(job, item);
      const lack = device ? chargerLack(device, terminal) : null;
      return {
        level: 'stop',
        of: [id, item],
        message: `${id} is neither connected nor left open with a reason${lack ? `: ${lack.lacks}` : ''}`,
        remedy:
          lack?.remedy ??
          (device ? idleRelay({ job, plan }, device) : null) ??
          `link it, or write it under left-open: with the reason, such as "${id}": not used on this job`,
        ...deviceSpot(job, item),
      };
    });
  },
};

/**
 * What is done with a relay to which nothing is joined: the rules put one in where the source does not give enough, so that
 * one beside them is there for something that the job has to say. Null for another device.
 */
function idleRelay({ job, plan }: Pick<Case, 'job' | 'plan'>, { id, spec, facts }: Device): string | null {
  const isJoined = plan.terminals.some(({ item, wires }) => item === id && wires.length > 0);
  if (spec?.kind !== 'relay' || isJoined) return null;
  const named = (role: TerminalRole) => listed(terminalsOf(facts.terminals, role));
  const [, out = ''] = terminalsOf(facts.terminals, 'relay-contact');
  const source = plan.terminals.find(
    ({ item, terminal, wires }) =>
      wires.length > 0 && deviceOf(job, item)?.facts.terminals[terminal]?.role === 'turn-on-out',
  );
  const fan = job.devices.find((one) => one.spec?.kind === 'fan');
  const [plus] = fan ? terminalsOf(fan.facts.terminals, 'supply-positive', 'turn-on-in') : [];
  const turnsOn = source ? `, such as ${source.item}.${source.terminal},` : '';
  const fed = fan && plus ? `, such as ${id}-out: { from: ${id}.${out}, to: ${fan.id}.${plus} }` : '';
  return `take ${id} out of devices:, since what turns the devices on does without it; or write all its links under links:, its coil (${named('relay-coil')}) from what turns it on${turnsOn} to ground, its contact (${named('relay-contact')}) from a fused way to what it feeds${fed}`;
}

const withoutDevices: Rule = {
  id: 'job-without-devices',
  judge({ job }) {
    if (job.devices.some(({ origin }) => origin === 'job')) return [];
    return [
      {
        level: 'stop',
        of: [job.id],
        message: 'the job has no devices, so there is nothing to account for',
        remedy: 'write under devices: what is built in, each with its part and its place',
        path: '/devices',
      },
    ];
  },
};

const withoutSupply: Rule = {
  id: 'device-without-supply',
  judge({ job, plan }) {
    const wired = new Set(plan.wires.flatMap(endsOf));
    return job.devices.flatMap(({ id, facts, origin }): Verdict<'device-without-supply'>[] => {
      const inputs = Object.keys(facts.terminals)
        .filter((terminal) => facts.terminals[terminal]?.role === 'supply-positive')
        .map((terminal) => terminalId({ device: id, terminal }));
      if (origin !== 'job' || inputs.length === 0 || inputs.some((input) => wired.has(input))) return [];
      return [
        {
          level: 'stop',
          of: [id, ...inputs],
          message: `${id} has no supply: nothing is connected to ${listed(inputs)}`,
          remedy: `link ${inputs[0] ?? id} to a fused way`,
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

const spareConductor: Rule = {
  id: 'cable-conductor-spare',
  judge({ job, plan }) {
    return plan.cables.flatMap(({ id, conductors }): Verdict<'cable-conductor-spare'>[] => {
      const spare = conductors.filter(({ wire }) => wire === null).map(({ name }) => name);
      if (spare.length === 0) return [];
      const waiting = plan.terminals
        .filter(
          ({ item, terminal, wires }) =>
            wires.length === 0 && deviceOf(job, item)?.facts.terminals[terminal]?.role === 'turn-on-in',
        )
        .map(({ item, terminal }) => `${item}.${terminal}`)
        .filter((terminal) => deviceOf(job, deviceIdOf(terminal))?.origin === 'job');
      const runs = plan.wires.flatMap(({ cable, run }) => (cable === id && run !== null ? [run] : []));
      const beside = plan.wires
        .filter(({ role, origin, cable }) => role === 'turn-on' && origin === 'job' && cable === undefined)
        .flatMap(({ id: wire, run }) => (run !== null && runs.includes(run) ? [wire] : []));
      const use = [
        ...(waiting.length > 0 ? [`use one as the wired turn-on of ${listed(waiting)}; `] : []),
        ...(beside.length > 0 ? [`use one for ${listed(beside)}; `] : []),
      ].join('');
      return [
        {
          level: 'note',
          of: [id, ...spare],
          message: `${counted(spare.length, 'conductor')} of ${id} carries nothing: ${listed(spare)}${beside.length > 0 ? `, while ${listed(beside)} is laid beside it in the same run` : ''}`,
          remedy: `${use}cut spare ends back, cap them and label them as spare at both ends`,
          path: `/cables/${id}`,
        },
      ];
    });
  },
};

export const terminalAccountingRules: readonly Rule[] = [
  withoutDevices,
  unaccounted,
  withoutSupply,
  spareConductor,
];
