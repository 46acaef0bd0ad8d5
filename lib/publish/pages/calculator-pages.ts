import { type Bench, openBench } from '../../calculators/bench.ts';
import { type Calculator, initialEntries } from '../../calculators/calculator.ts';
import type { Field } from '../../calculators/field.ts';
import { calculators } from '../../calculators/index.ts';
import { benchOfShop } from '../calculators/bench-of-shop.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { catalogueRecord } from '../site/search-fields.ts';
import { spelled } from '../words/words.ts';

/** An entry of a form. */
interface Entry {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
  readonly initial: string;
  /** True where it wants the whole width of a phone. */
  readonly isLong: boolean;
  /** The words that it may be; empty where it is written. */
  readonly options: readonly {
    readonly value: string;
    readonly title: string;
    readonly isInitial: boolean;
  }[];
}

/** The form of a calculator, with what it begins with. */
interface Form {
  readonly id: string;
  readonly title: string;
  readonly asks: string;
  readonly entries: readonly Entry[];
}

/** A page with one calculator, or the file with all of them. */
export interface CalculatorBody {
  readonly forms: readonly Form[];
  /** What the script knows of the shop, as JSON that may stand in an element. */
  readonly bench: string;
}

/** The index of the calculators. */
export interface CalculatorsBody {
  readonly ways: readonly (Link & { readonly summary: string })[];
  /** The file with all of them. */
  readonly file: string;
}

const title = 'Calculators';
const summary = 'Conductor and drop, fuse, coil loads, gain, delay, filter, fraction to millimetre.';

/** The bench calculators: an index, a page each, and all of them in one file. */
export function calculatorPages(context: SiteContext): Page[] {
  return [indexPage(context), ...calculators.map((one) => calculatorPage(context, one)), filePage(context)];
}

function indexPage(context: SiteContext): Page {
  const address = addresses.calculators;
  return {
    address,
    template: 'calculators.njk',
    search: () =>
      catalogueRecord(
        { title, summary },
        calculators.map((one) => `${one.title}: ${one.asks}`),
      ),
    model: () => {
      const body: CalculatorsBody = {
        ways: calculators.map((one) => {
          return { title: one.title, href: linkTo(address, addresses.calculator(one.id)), summary: one.asks };
        }),
        file: linkTo(address, addresses.calculatorsFile),
      };
      return { ...chromeOf(context, { address, title }), body };
    },
  };
}

function calculatorPage(context: SiteContext, one: Calculator): Page {
  const address = addresses.calculator(one.id);
  return {
    address,
    template: 'calculator.njk',
    model: () => {
      const chrome = chromeOf(context, {
        address,
        title: one.title,
        above: [[title, addresses.calculators]],
      });
      return { ...chrome, body: bodyOf(context, [one]) };
    },
  };
}

function filePage(context: SiteContext): Page {
  const address = addresses.calculatorsFile;
  return {
    address,
    template: 'calculators-file.njk',
    isOneFile: true,
    model: () => {
      return { ...chromeOf(context, { address, title }), body: bodyOf(context, calculators) };
    },
  };
}

function bodyOf({ site }: SiteContext, shown: readonly Calculator[]): CalculatorBody {
  const shop = benchOfShop(site.shop, site.parts);
  const bench = openBench(shop);
  return {
    forms: shown.map((one) => formOf(one, bench)),
    // No text of it may end the element that it stands in.
    bench: JSON.stringify(shop).replaceAll('<', '\\u003c'),
  };
}

function formOf(one: Calculator, bench: Bench): Form {
  const initial = initialEntries(one, bench);
  return {
    id: one.id,
    title: one.title,
    asks: one.asks,
    entries: Object.entries(one.fields).map(([name, field]) => entryOf(name, field, initial[name] ?? '')),
  };
}

/** Letters that half the width of a phone has room for: in two lines of a label, in a list of words. */
const longLabel = 34;
const longOption = 16;

function entryOf(name: string, { label, hint = '', options = [] }: Field<unknown>, initial: string): Entry {
  const shown = options.map(({ value, title: words = spelled(value) }) => {
    return { value, title: words, isInitial: value === initial };
  });
  return {
    name,
    label,
    hint,
    initial,
    isLong: label.length > longLabel || shown.some((one) => one.title.length > longOption),
    options: shown,
  };
}
