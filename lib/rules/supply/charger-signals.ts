import type { Device } from '../../model/content/resolved-job.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';

/** What a charger lacks where one of its signals is left open, and what to do. */
interface Lack {
  readonly lacks: string;
  readonly remedy: string;
}

/** What is lacking at a terminal of a charger that nothing is linked to; null where it may stay open. */
export function chargerLack({ id, spec, facts }: Device, terminal: string): Lack | null {
  if (spec?.kind !== 'charger') return null;
  const role = facts.terminals[terminal]?.role;
  if (role === 'turn-on-in' && spec['starts-by'] !== 'charging-voltage')
    return {
      lacks: `nothing tells ${id} that the engine runs: it charges never, or empties the battery that feeds it`,
      remedy: `link ${id}.${terminal} to a switched and fused feed of the vehicle that is live while the engine runs; where it starts by the charging voltage, write starts-by: charging-voltage into its part`,
    };
  if (role === 'sense')
    return {
      lacks: `${id} holds its voltage at its own output, and the battery gets less by the drop of its lead`,
      remedy: `link ${id}.${terminal} to the positive post of the battery that it charges, over a fuse beside that, as the maker of ${id} says`,
    };
  return null;
}

const leftOpen: Rule = {
  id: 'charger-signal-open',
  judge({ job, plan }) {
    return plan.terminals.flatMap(({ item, terminal, state }): Verdict<'charger-signal-open'>[] => {
      const device = deviceOf(job, item);
      const lack = state === 'open' && device ? chargerLack(device, terminal) : null;
      if (!lack) return [];
      return [
        {
          level: 'caution',
          of: [`${item}.${terminal}`, item],
          message: `${item}.${terminal} is left open: ${lack.lacks}`,
          remedy: lack.remedy,
          ...deviceSpot(job, item),
        },
      ];
    });
  },
};

export const chargerSignalRules: readonly Rule[] = [leftOpen];
