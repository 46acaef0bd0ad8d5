import { z } from 'zod';
import { faultBy, faultless } from '../../../model/fields.ts';
import { tabWidth } from '../../../model/kinds/fields/bounds.ts';

/** The widths of the tabs of a coil: of both, `6.3 mm`, or of each by its sign, `+ 6.3 mm - 2.8 mm`. */
interface TabWidths {
  readonly plus: string;
  readonly minus: string;
}

/** The widths that a cell tells; null where it is written otherwise. */
export function tabWidths(written: string): TabWidths | null {
  const typed = written.trim();
  const [, plus, minus] = /^\+\s*(.+?)[\s/;]+-\s*(.+)$/.exec(typed) ?? [];
  if (plus !== undefined && minus !== undefined) return { plus, minus };
  return /^[-+]/.test(typed) ? null : { plus: typed, minus: typed };
}

/** How wide the tabs of a coil are. */
export const tabsField = z.string().check(
  faultless((written) => {
    const told = tabWidths(written);
    if (!told) return 'is written + 6.3 mm - 2.8 mm, or 6.3 mm for both';
    return faultBy(tabWidth, told.plus) ?? faultBy(tabWidth, told.minus);
  }),
);
