import type { SheetMark } from '../../model/plan/sheet-mark.ts';
import { addresses, linkTo, wayUp } from '../site/addresses.ts';
import { navigationFrom } from './navigation.ts';
import type { Chrome, SiteContext } from './page.ts';
import { type PrintSheet, printRules } from './print-rules.ts';

/** What one page says of itself. */
export interface PageFace {
  readonly address: string;
  readonly title: string;
  /** Titles and addresses of the pages above, from the top; the home page is put before them. */
  readonly above?: readonly (readonly [string, string])[];
  /** What every sheet of it says that nobody may build from. */
  readonly mark?: SheetMark['word'] | null;
  /** Running line at the foot of a printed page. Default: the title. */
  readonly foot?: string;
  readonly sheets?: readonly PrintSheet[];
}

/** The frame of a page. A customer's copy has no navigation: it tells nothing of other jobs. */
export function chromeOf({ site, audience }: SiteContext, face: PageFace): Chrome {
  const { address, title, above = [], mark = null, foot = title, sheets } = face;
  const open = audience !== 'customer';
  const upwards = address === addresses.home ? [] : [['Home', addresses.home] as const, ...above];
  return {
    address,
    title,
    shopName: site.shop.name,
    top: wayUp(address),
    navigation: open ? navigationFrom(address, site) : [],
    search: open ? linkTo(address, addresses.search) : null,
    trail: open ? upwards.map(([name, to]) => ({ title: name, href: linkTo(address, to) })) : [],
    mark,
    printRules: printRules({
      paper: site.shop.paper,
      topLeft: site.shop.name,
      bottomLeft: foot,
      mark,
      ...(sheets && { sheets }),
    }),
  };
}
