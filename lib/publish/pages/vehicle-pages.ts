import type { Vehicle } from '../../model/content/vehicle.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import { printed } from '../../model/printed/index.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { type JobHit, jobHits } from '../reference/job-hits.ts';
import { ranksBoards } from '../reference/past-boards.ts';
import { type Fact, fact, strong, type Table, tableOf } from '../sheets/table.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { vehicleRecord } from '../site/search-fields.ts';
import { vehiclesInOrder } from '../site/vehicle-order.ts';
import { counted, spelled } from '../words/words.ts';
import { none, writerFor } from '../words/written.ts';
import { blankSurveyTitle } from './blank-survey-page.ts';
import { neighbourLinks } from './compare-pages.ts';
import { spaceLinks } from './like-pages.ts';

/** The index of vehicles. */
export interface VehiclesBody {
  /** The blank survey sheet; null on a site that has none. */
  readonly survey: Link | null;
  readonly vehicles: readonly (Link & { readonly jobs: string; readonly spaces: string })[];
}

/** The page of one vehicle. */
export interface VehicleBody {
  readonly id: string;
  readonly cautions: readonly string[];
  readonly facts: readonly Fact[];
  readonly tables: readonly Table[];
  readonly fitted: readonly (Link & { readonly id: string; readonly zone: string })[];
  /** The jobs in it, and where their boards are. */
  readonly jobs: readonly JobHit[];
  /** Its spaces, each with the way to the past boards that would fit; none where the site ranks none. */
  readonly like: readonly Link[];
  /** Each job held against the one before it. */
  readonly compared: readonly Link[];
}

function spacesTable(vehicle: Vehicle, { site }: SiteContext): Table {
  const write = writerFor(site.shop);
  return tableOf('Mounting spaces', Object.entries(vehicle.spaces), [
    { title: 'Space', cell: ([id, one]) => strong(one.title, id) },
    { title: 'Zone', cell: ([, one]) => spelled(one.zone) },
    { title: 'Side', cell: ([, one]) => spelled(one.side) },
    { title: 'Free depth', kind: 'figure', cell: ([, one]) => write.length('room-free', one.depth) },
    {
      title: 'Fixing points',
      kind: 'figure',
      cell: ([, one]) => String(Object.keys(one['sound-points']).length),
    },
    { title: 'Obstacles', kind: 'figure', cell: ([, one]) => String(Object.keys(one.obstacles).length) },
    { title: 'Wet', cell: ([, one]) => (one.wet ? 'yes' : 'no') },
  ]);
}

function routesTable(vehicle: Vehicle, { site }: SiteContext): Table {
  const write = writerFor(site.shop);
  return tableOf('Ways for wires', Object.entries(vehicle.routes), [
    { title: 'Way', cell: ([id, one]) => strong(one.title, id) },
    { title: 'Side', cell: ([, one]) => spelled(one.side) },
    { title: 'Through', cell: ([, one]) => one.passes.map((pass) => spelled(pass.zone)).join(', ') },
    {
      title: 'Length',
      kind: 'figure',
      cell: ([, one]) => write.wire('measured', routeLengthM(one)),
    },
  ]);
}

function groundsTable(vehicle: Vehicle): Table {
  return tableOf('Ground points', Object.entries(vehicle.grounds), [
    { title: 'Point', cell: ([id]) => strong(id) },
    { title: 'Zone', cell: ([, one]) => spelled(one.zone) },
    { title: 'Side', cell: ([, one]) => (one.side === undefined ? none : spelled(one.side)) },
    { title: 'Stud', cell: ([, one]) => one.stud },
    { title: 'Holds as well', cell: ([, one]) => (one.holds === 'nothing-else' ? none : spelled(one.holds)) },
  ]);
}

function vehicleBody(context: SiteContext, vehicle: Vehicle): VehicleBody {
  const address = addresses.vehicle(vehicle.id);
  const { site } = context;
  return {
    id: vehicle.id,
    cautions: vehicle.cautions,
    facts: [
      fact('Supply', spelled(vehicle.supply)),
      fact('Load of the vehicle itself', printed('current-carried', vehicle['vehicle-load'])),
      fact('Sensor on the negative post', vehicle['negative-sensor'] ? 'yes' : 'no'),
    ],
    tables: [spacesTable(vehicle, context), routesTable(vehicle, context), groundsTable(vehicle)].filter(
      (table) => table.rows.length > 0,
    ),
    fitted: Object.entries(vehicle.fitted).map(([id, one]) => ({
      id,
      title: site.parts[one.part]?.title ?? one.part,
      href: site.parts[one.part] === undefined ? '' : linkTo(address, addresses.part(one.part)),
      zone: spelled(one.zone),
    })),
    jobs: jobHits(
      address,
      site.jobs.filter((job) => job.plan.vehicle.id === vehicle.id),
      context.audience,
    ),
    like: ranksBoards(context) ? spaceLinks(address, vehicle) : [],
    compared: neighbourLinks(site.jobs, vehicle.id),
  };
}

function vehiclesBody({ site }: SiteContext, all: readonly Vehicle[]): VehiclesBody {
  return {
    survey: site.isOneJob
      ? null
      : { title: blankSurveyTitle, href: linkTo(addresses.vehicles, addresses.survey) },
    vehicles: all.map((vehicle) => ({
      title: vehicle.title,
      href: linkTo(addresses.vehicles, addresses.vehicle(vehicle.id)),
      jobs: counted(site.jobs.filter((job) => job.plan.vehicle.id === vehicle.id).length, 'job'),
      spaces: Object.values(vehicle.spaces)
        .map((space) => space.title)
        .join(', '),
    })),
  };
}

/** The index of vehicles, and a page for each with the jobs that use it. */
export function vehiclePages(context: SiteContext): Page[] {
  const all = vehiclesInOrder(context.site);
  const index: Page = {
    address: addresses.vehicles,
    template: 'vehicles.njk',
    model: () => ({
      ...chromeOf(context, { address: addresses.vehicles, title: 'Vehicles' }),
      body: vehiclesBody(context, all),
    }),
  };
  const each = all.map(
    (vehicle): Page => ({
      address: addresses.vehicle(vehicle.id),
      template: 'vehicle.njk',
      search: () => vehicleRecord(vehicle),
      model: () => ({
        ...chromeOf(context, {
          address: addresses.vehicle(vehicle.id),
          title: vehicle.title,
          above: [['Vehicles', addresses.vehicles]],
        }),
        body: vehicleBody(context, vehicle),
      }),
    }),
  );
  return [index, ...each];
}
