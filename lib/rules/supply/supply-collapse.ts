import type { OperatingPoint } from '../../model/plan/index.ts';
import type { NetworkFaultName } from '../../power/network/network-fault.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import { loadsOf, playedPoints, voltageOver } from '../operating-point.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed, volts } from '../words.ts';

/** What makes a network impossible to compute is told once, by what is wired wrong and not by operating point. */
const faultRules = [
  'network-duplicate-id',
  'network-unknown-node',
  'network-not-a-number',
  'network-negative-value',
  'network-joined-to-itself',
  'network-zero-resistance-loop',
  'network-short-circuit',
  'network-stiff-sources-in-parallel',
  'network-converter-impossible',
  'network-floating',
] as const satisfies readonly NetworkFaultName[];

function collapseText({ title, state, reason }: OperatingPoint, unknown: readonly string[]): string {
  if (state !== 'no-solution') return `${title}: no voltage is known at ${listed(unknown)}`;
  return `${title}: ${reason ?? 'the loads can not be fed, the voltage collapses'}`;
}

const collapse: Rule = {
  id: 'supply-collapse',
  judge({ job, plan }) {
    return plan.power.points.flatMap((point): Verdict<'supply-collapse'>[] => {
      const unknown = loadsOf(point).filter(
        (load) => !Number.isFinite(voltageOver(point, load) ?? Number.NaN),
      );
      if (point.state !== 'no-solution' && (point.state !== 'solved' || unknown.length === 0)) return [];
      const loads = (unknown.length > 0 ? unknown : loadsOf(point)).map(({ of }) => of);
      const [first] = loads.filter((id) => deviceOf(job, id)?.origin === 'job');
      return [
        {
          level: 'stop',
          of: [point.name, ...loads],
          message: collapseText(point, loads),
          remedy: 'run larger conductors or a second feed, add a battery near the load, or feed less',
          givesWayTo: faultRules,
          ...(first === undefined ? { path: '/devices' } : deviceSpot(job, first)),
        },
      ];
    });
  },
};

const cutOut: Rule = {
  id: 'below-cut-out',
  judge(about) {
    const { job } = about;
    const { from } = houseRule(job, 'cut-out');
    return playedPoints(about).flatMap((point): Verdict<'below-cut-out'>[] => {
      const low = loadsOf(point).flatMap((load) => {
        const voltageV = voltageOver(point, load);
        const { cutoutV } = load;
        if (voltageV === null || cutoutV === undefined || voltageV >= cutoutV) return [];
        return [{ of: load.of, voltageV, cutoutV }];
      });
      const verdict = {
        level: 'stop',
        ...from,
        remedy: 'run larger conductors, shorten the ground path, or feed less at once',
      } as const;
      if (low.length === 0 && point.state === 'cut-out')
        return [
          {
            ...verdict,
            of: [point.name],
            message: `${point.title}: a device drops out at its low-voltage cut-out${point.reason ? ` (${point.reason})` : ''}`,
            path: '/devices',
          },
        ];
      return low.map(({ of, voltageV, cutoutV }) => ({
        ...verdict,
        of: [of, point.name],
        message: `${point.title}: ${of} gets ${volts(voltageV)}, under the ${volts(cutoutV)} at which it cuts out`,
        value: voltageV,
        limit: cutoutV,
        unit: 'V',
        ...deviceSpot(job, of),
      }));
    });
  },
};

export const supplyCollapseRules: readonly Rule[] = [collapse, cutOut];
