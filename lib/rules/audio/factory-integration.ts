import type { PlanWire } from '../../model/plan/index.ts';
import {
  deviceIdOf,
  deviceOf,
  deviceSpot,
  endsOf,
  hasRole,
  jobWires,
  terminalSpecOf,
  wireSpot,
} from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed, volts } from '../words.ts';
import { unmeasuredRemedy, unmeasuredText } from './unmeasured-facts.ts';

/** Terminals that a chain of wires joins to one, itself included. */
function joinedTo(wires: readonly PlanWire[], start: string): ReadonlySet<string> {
  const net = new Set([start]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { from, to } of wires) {
      if (net.has(from) === net.has(to)) continue;
      net.add(from).add(to);
      grew = true;
    }
  }
  return net;
}

const commonNegative: Rule = {
  id: 'speaker-negative-to-common',
  judge({ job, plan }: Case) {
    const outputs = plan.wires
      .flatMap(endsOf)
      .filter((end, at, all) => hasRole(job, end, 'speaker-out-negative') && all.indexOf(end) === at);
    return outputs.flatMap((output): Verdict<'speaker-negative-to-common'>[] => {
      const net = joinedTo(plan.wires, output);
      const others = [...net].filter(
        (end) =>
          end !== output &&
          hasRole(
            job,
            end,
            'speaker-out-negative',
            'body',
            'source-negative',
            'supply-negative',
            'ground-bar',
          ),
      );
      if (others.length === 0) return [];
      return [
        {
          level: 'stop',
          of: [output, ...others.toSorted()],
          message: `${output} is joined to ${listed(others.toSorted())}: a bridged output drives its negative too, and would be shorted`,
          remedy: 'take each negative to its own speaker or its own high-level input, and to nothing else',
          ...deviceSpot(job, deviceIdOf(output)),
          givesWayTo: ['coil-to-body'],
        },
      ];
    });
  },
};

const factorySource: Rule = {
  id: 'factory-source-unmeasured',
  judge(about) {
    const { job, plan } = about;
    return job.devices.flatMap(({ id, origin, spec }): Verdict<'factory-source-unmeasured'>[] => {
      const feeds = jobWires(about).some((wire) =>
        endsOf(wire).some(
          (end) =>
            deviceIdOf(end) === id &&
            hasRole(job, end, 'signal-out', 'speaker-out-positive', 'speaker-out-negative') &&
            wire.role === 'signal',
        ),
      );
      const measured = plan.measurements.some(
        ({ id: name, asBuilt }) => name.startsWith(`${id}.`) && asBuilt !== undefined,
      );
      const used = plan.audio.outputs.filter((output) => output.item === id && output.feeds.length > 0);
      const known = used.length > 0 && used.every(({ missing }) => missing.length === 0);
      if (origin !== 'vehicle' || spec?.kind !== 'source-unit' || !feeds || measured || known) return [];
      return [
        {
          level: 'note',
          of: [id],
          message: `${id} came with the vehicle and feeds the system: what its channels give is not measured${unmeasuredText(used)}`,
          remedy: unmeasuredRemedy(job, id, used),
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

const signalLow: Rule = {
  id: 'signal-below-sensitivity',
  judge(about) {
    return jobWires(about).flatMap((wire): Verdict<'signal-below-sensitivity'>[] => {
      const output = endsOf(wire).find((end) =>
        hasRole(about.job, end, 'signal-out', 'speaker-out-positive'),
      );
      const input = endsOf(wire).find((end) => hasRole(about.job, end, 'signal-in', 'speaker-in-positive'));
      if (output === undefined || input === undefined) return [];
      const [given, needed] = [output, input].map((end) => terminalSpecOf(about.job, end)?.signal);
      if (given === undefined || needed === undefined || given >= needed - 1e-9) return [];
      const source = deviceOf(about.job, deviceIdOf(output))?.id ?? output;
      return [
        {
          level: 'note',
          of: [wire.id, output, input],
          message: `${output} gives ${volts(given)} clean at most, and ${input} needs ${volts(needed)} for full output`,
          value: given,
          limit: needed,
          unit: 'V',
          remedy: `raise the sensitivity of the input, or put a line driver behind ${source}; turning the gain past it only adds noise`,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

export const factoryIntegrationRules: readonly Rule[] = [commonNegative, factorySource, signalLow];
