import type { TerminalRole } from '../../model/vocabulary.ts';
import { catalogueSpot, deviceIdOf, deviceOf, jobWires, terminalNameOf, terminalSpecOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

const coilRoles: readonly TerminalRole[] = ['coil-positive', 'coil-negative'];

/** The tabs of speakers that a wire of the job is pushed on and whose width nobody tells: by part, terminal by terminal. */
function untold(about: Case): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, readonly string[]>();
  for (const { terminal, form } of jobWires(about).flatMap(({ ends }) => ends)) {
    const spec = terminalSpecOf(about.job, terminal);
    const part = deviceOf(about.job, deviceIdOf(terminal))?.part;
    if (!part || form !== 'crimp' || !spec || spec.joint !== 'blade-tab' || spec.tab !== undefined) continue;
    if (!coilRoles.includes(spec.role)) continue;
    const name = terminalNameOf(terminal);
    const before = found.get(part) ?? [];
    found.set(part, before.includes(name) ? before : [...before, name]);
  }
  return found;
}

const tabNotTold: Rule = {
  id: 'tab-not-told',
  judge(about) {
    return [...untold(about)].map(([part, names]): Verdict<'tab-not-told'> => {
      const [only] = names;
      const each =
        names.length === 1
          ? `the width of the tab ${only} of ${part} is`
          : `the widths of the tabs ${listed(names)} of ${part} are`;
      return {
        level: 'note',
        of: [part],
        message: `${each} not told: a receptacle for the widest is taken, which slips off a narrower tab, and plus and minus often differ`,
        remedy: 'measure each tab, and write its width at its terminal, such as tab: 2.8 mm',
        ...catalogueSpot(part, 'terminals'),
      };
    });
  },
};

export const tabRules: readonly Rule[] = [tabNotTold];
