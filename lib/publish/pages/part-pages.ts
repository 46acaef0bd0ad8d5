import type { PartPromise } from '../../model/content/promised.ts';
import type { Shop, Stock } from '../../model/content/shop.ts';
import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import { type KindName, kinds, type Part, partFacts } from '../../model/kinds/index.ts';
import { printed } from '../../model/printed/index.ts';
import { stockWord } from '../../shelf/shelf-lengths.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { type PartData, partData } from '../page/part-data.ts';
import { type JobHit, jobHits } from '../reference/job-hits.ts';
import { partsOf } from '../reference/parts-used.ts';
import { usesOfPart } from '../reference/where-used.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { promisedName } from '../site/lone/other-jobs.ts';
import { partRecord } from '../site/search-fields.ts';
import { counted, spelled } from '../words/words.ts';
import { none, type Writer, writerFor } from '../words/written.ts';

/** The index of parts, by kind. */
export interface PartsBody {
  readonly kinds: readonly {
    readonly id: string;
    readonly title: string;
    readonly parts: readonly PartEntry[];
  }[];
}

interface PartEntry extends Link {
  readonly id: string;
}

/** The page of one part. */
export interface PartBody {
  readonly id: string;
  readonly kind: string;
  readonly notes: string;
  readonly stock: string;
  readonly data: PartData;
  readonly terminals: Table | null;
  readonly controls: Table | null;
  /** The jobs that have it, and what for. */
  readonly jobs: readonly JobHit[];
  readonly vehicles: readonly Link[];
}

function stockText(
  shop: Pick<Shop, 'stock' | 'stock-counted'>,
  part: string,
  promise: PartPromise | undefined,
  write: Writer,
): string {
  const stock = shop.stock[part];
  return [shelfText(stock, write, stockWord(shop)), ...promiseTexts(stock, promise, write)].join(' ');
}

/** To whom it is promised, and how much more than there is. */
function promiseTexts(
  stock: Stock | undefined,
  promise: PartPromise | undefined,
  write: Writer,
): readonly string[] {
  if (!promise || promise.to.length === 0) return [];
  const amount = (quantity: number) =>
    promise.unit === 'm' ? write.wire('length-taken', quantity).text : counted(quantity, 'piece');
  const to = promise.to.map(({ quantity, ...to }) => `${amount(quantity)} to ${promisedName(to)}`);
  const over = stock && promise.over > 0 ? [`More than there is: ${amount(promise.over)}.`] : [];
  return [`Promised: ${to.join('; ')}.`, ...over];
}

function shelfText(stock: Stock | undefined, write: Writer, there: string): string {
  if (stock === undefined) return 'None in stock.';
  if ('pieces' in stock) {
    const offCuts = Object.entries(stock['off-cuts']).map(
      ([name, { width, height, pieces }]) =>
        `${name}, ${write.length('length-left', width).text} by ${write.length('length-left', height).text}${pieces === 1 ? '' : ` (${pieces})`}`,
    );
    const left = offCuts.length === 0 ? '' : ` Off-cuts: ${offCuts.join('; ')}.`;
    return `${counted(stock.pieces, 'piece')} ${there}.${left}`;
  }
  const lengths = stock.reels.map((lengthM) => write.wire('length-left', lengthM).text);
  const named = Object.entries(stock['off-cuts']).map(
    ([name, lengthM]) => `${name}, ${write.wire('length-left', lengthM).text}`,
  );
  const left = named.length === 0 ? '' : ` Off-cuts: ${named.join('; ')}.`;
  return `${counted(lengths.length, 'reel')} ${there}: ${lengths.join('; ')}.${left}`;
}

function terminalsTable(terminals: Readonly<Record<string, TerminalSpec>>): Table | null {
  const all = Object.entries(terminals);
  if (all.length === 0) return null;
  return tableOf('Terminals', all, [
    { title: 'Terminal', cell: ([name]) => strong(name) },
    { title: 'For', cell: ([, spec]) => spelled(spec.role) },
    { title: 'Panel', cell: ([, spec]) => (spec.panel === undefined ? none : spelled(spec.panel)) },
    { title: 'Joint', cell: ([, spec]) => spelled(spec.joint) },
    {
      title: 'Takes',
      cell: ([, spec]) => (spec.takes ? `${spec.takes.from.label} to ${spec.takes.to.label}` : none),
    },
    { title: 'Torque', kind: 'figure', leads: true, cell: ([, spec]) => printed('torque', spec.torque) },
  ]);
}

function controlsTable(controls: Readonly<Record<string, ControlSpec>>): Table | null {
  const all = Object.entries(controls);
  if (all.length === 0) return null;
  return tableOf('Controls', all, [
    { title: 'Control', cell: ([name]) => strong(name, spelled(spec(controls, name))) },
    { title: 'Panel', cell: ([, one]) => spelled(one.panel) },
    { title: 'Positions', cell: ([, one]) => one.positions?.join(', ') ?? one.form },
    { title: 'Before first power', cell: ([, one]) => ({ text: one.safe, beside: one.why }) },
  ]);
}

function spec(controls: Readonly<Record<string, ControlSpec>>, name: string): string {
  return controls[name]?.what ?? '';
}

function partBody({ site, audience }: SiteContext, id: string, part: Part): PartBody {
  const address = addresses.part(id);
  const write = writerFor(site.shop);
  const known = partFacts(part);
  const holders = Object.values(site.vehicles).filter((vehicle) =>
    Object.values(vehicle.fitted).some((fitted) => fitted.part === id),
  );
  return {
    id,
    kind: kinds[part.kind].plural,
    notes: part.notes ?? '',
    stock: stockText(site.shop, id, site.promised[id], write),
    data: partData(part, write),
    terminals: terminalsTable(known.terminals),
    controls: controlsTable(known.controls),
    jobs: jobHits(
      address,
      site.jobs.filter((job) => partsOf(job.plan).has(id)),
      audience,
      ({ plan }) => usesOfPart(plan, id, write),
    ),
    vehicles: holders.map((vehicle) => ({
      title: vehicle.title,
      href: linkTo(address, addresses.vehicle(vehicle.id)),
    })),
  };
}

function partsBody({ site }: SiteContext): PartsBody {
  const all = Object.entries(site.parts).sort(([a], [b]) => (a < b ? -1 : 1));
  const used = [...new Set<KindName>(all.map(([, part]) => part.kind))];
  return {
    kinds: used
      .map((kind) => ({
        id: kind,
        title: kinds[kind].plural,
        parts: all
          .filter(([, part]) => part.kind === kind)
          .map(([id, part]) => ({
            id,
            title: part.title,
            href: linkTo(addresses.parts, addresses.part(id)),
          })),
      }))
      .sort((a, b) => (a.title < b.title ? -1 : 1)),
  };
}

/** The index of parts, and a page for each. */
export function partPages(context: SiteContext): Page[] {
  const index: Page = {
    address: addresses.parts,
    template: 'parts.njk',
    model: () => ({
      ...chromeOf(context, { address: addresses.parts, title: 'Parts' }),
      body: partsBody(context),
    }),
  };
  const each = Object.entries(context.site.parts).map(
    ([id, part]): Page => ({
      address: addresses.part(id),
      template: 'part.njk',
      search: () => partRecord(id, part),
      model: () => ({
        ...chromeOf(context, {
          address: addresses.part(id),
          title: part.title,
          above: [['Parts', addresses.parts]],
        }),
        body: partBody(context, id, part),
      }),
    }),
  );
  return [index, ...each];
}
