import { hasFields } from '../../../../model/content/proposal.ts';
import { known, type Named } from '../../yaml-text.ts';
import { coilTerminals } from '../speaker-fields.ts';
import { tabsField, tabWidths } from '../tab-widths.ts';

/** What the widths of the tabs of a speaker are called that is like another: `tabs + 6.3 mm - 2.8 mm`. */
export const tabsName = 'tabs';

/** True for a speaker with tabs: its own maker tells how wide they are. */
export function hasTabs(part: Named): boolean {
  return Object.values(terminalsOf(part)).some(isTabOfCoil);
}

/** What is wrong with the widths that a line tells; null where nothing is. */
export function toldTabsFault(written: string): string | null {
  const read = tabsField.safeParse(written);
  return read.success ? null : `${tabsName} ${written} ${read.error.issues[0]?.message ?? ''}`.trim();
}

/** The fields of a speaker with the widths of its tabs as they are told, and without those of another where they are not. */
export function withTabs(part: Named, told: string | null): Named {
  if (!hasTabs(part)) return part;
  const widths = told === null ? null : tabWidths(told);
  const written = Object.entries(terminalsOf(part)).map(([names, spec]): Named => {
    if (!hasFields(spec) || !isTabOfCoil(spec)) return { [names]: spec };
    const { role, tab: _, ...held } = spec;
    if (role === 'coil') return coilTerminals(names, held, told);
    const own = role === 'coil-positive' ? widths?.plus : widths?.minus;
    return { [names]: { ...held, ...known({ role, tab: own }) } };
  });
  return { ...part, terminals: Object.assign({}, ...written) };
}

const terminalsOf = ({ terminals }: Named): Named => (hasFields(terminals) ? terminals : {});

const coilRoles: readonly unknown[] = ['coil', 'coil-positive', 'coil-negative'];

function isTabOfCoil(spec: Named[string]): boolean {
  return hasFields(spec) && spec.joint === 'blade-tab' && coilRoles.includes(spec.role);
}
