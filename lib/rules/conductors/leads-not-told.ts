import { houseRule } from '../house-rule-of.ts';
import { catalogueSpot, deviceIdOf, deviceOf, jobWires, terminalNameOf, terminalSpecOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** The leads of makers that a wire of the job is joined to and whose size nobody tells: by part, terminal by terminal. */
function untold(about: Case): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, readonly string[]>();
  for (const { terminal, form } of jobWires(about).flatMap(({ ends }) => ends)) {
    const part = deviceOf(about.job, deviceIdOf(terminal))?.part;
    if (!part || form !== 'supplied-lead' || terminalSpecOf(about.job, terminal)?.lead) continue;
    const name = terminalNameOf(terminal);
    const before = found.get(part) ?? [];
    found.set(part, before.includes(name) ? before : [...before, name]);
  }
  return found;
}

const leadNotTold: Rule = {
  id: 'lead-not-told',
  judge(about) {
    return [...untold(about)].map(([part, names]): Verdict<'lead-not-told'> => {
      const leads =
        names.length === 1 ? `lead ${names[0]} of ${part} is` : `leads ${listed(names)} of ${part} are`;
      return {
        level: 'note',
        of: [part],
        message: `nobody tells how thick the ${leads}: the splice is chosen for what the wire list says it is taken for, and one that is too wide holds nothing`,
        remedy: 'gauge each lead, and write its size at its terminal, such as lead: 20 AWG',
        ...houseRule(about.job, 'lead-untold').from,
        ...catalogueSpot(part, 'terminals'),
      };
    });
  },
};

export const leadRules: readonly Rule[] = [leadNotTold];
