import { rowNames } from '../../../model/short-forms/row-names.ts';
import type { Row } from '../ask/rows.ts';
import { known, type Named } from '../yaml-text.ts';
import { componentSet } from './component-set.ts';
import { joinedBy } from './part-columns.ts';
import { rowName } from './row-name.ts';
import { tabWidths } from './tab-widths.ts';

/** What a speaker plays, and its coils with their terminals. */
export function speakerFields({ cells: { names, joint, takes, strip, tabs, ...cells } }: Row): Named {
  const { nominal, 'direct-current': direct, inductance, band, ...facts } = cells;
  const held = {
    ...(joint !== undefined && { joint }),
    ...(takes !== undefined && joinedBy(joint, String(takes))),
    ...known({ strip }),
  };
  return {
    ...known({ band: band === componentSet ? 'midbass' : band }),
    ...facts,
    terminals: coilTerminals(rowName(names), held, tabs === undefined ? null : String(tabs)),
    coils: { [rowName(names)]: known({ nominal, 'direct-current': direct, inductance }) },
  };
}

/** The terminals of coils: a pair by its name, or the two of it where their tabs differ. */
export function coilTerminals(coils: string, held: Named, tabs: string | null): Named {
  const told = tabs === null ? null : tabWidths(tabs);
  if (!told) return { [coils]: { role: 'coil', ...held } };
  const { plus, minus } = told;
  if (plus === minus) return { [coils]: { role: 'coil', ...held, tab: plus } };
  const signed = (sign: string) =>
    namesOf(coils)
      .map((name) => `${name}${sign}`)
      .join(', ');
  return {
    [signed('+')]: { role: 'coil-positive', ...held, tab: plus },
    [signed('-')]: { role: 'coil-negative', ...held, tab: minus },
  };
}

function namesOf(coils: string): readonly string[] {
  const read = rowNames(coils);
  return 'unreadable' in read ? [coils] : read;
}

/** What is wrong with widths of tabs that are told of another joint; null where nothing is. */
export function tabsFault({ tabs, joint }: Row['cells']): string | null {
  if (tabs === undefined || joint === 'blade-tab') return null;
  return `tells the width of its tabs, and is joined by ${String(joint)}: write the joint blade-tab, or leave the width out`;
}
