import {
  type FilterOffer,
  filteredNames,
  filterOffers,
  writtenNames,
} from '../../audio/filter/filter-offers.ts';
import type { Device } from '../../model/content/resolved-job.ts';
import type { PlanFilter } from '../../model/plan/index.ts';
import type { FilterPass } from '../../model/vocabulary.ts';
import { finalFilters } from './final-filters.ts';

/** A filter that the job asks of a device. */
export interface AskedFilter {
  /** The terminal or pair that it is written at. */
  readonly at: string;
  /** Its place among those written there. */
  readonly index: number;
  /** The channels or outputs of the device that it is for; none where it is written at no output. */
  readonly names: readonly string[];
  /** As it stands in the path; `where` names the device too. */
  readonly filter: PlanFilter;
  /** True where the device has it in the path after commissioning: by its menu, or by its controls as they stand then. */
  readonly isMade: boolean;
}

/** The filters that the job asks of a device. One that the part does not make is in no path. */
export function askedFilters(device: Device): readonly AskedFilter[] {
  return Object.entries(device.given?.filters ?? {}).flatMap(([at, filters]) => {
    const names = filteredNames(device).filter((name) => writtenNames(device, name).includes(at));
    return filters.map(({ corner, ...filter }, index) => ({
      at,
      index,
      names,
      filter: { where: `${device.id}.${at}`, ...filter, cornerHz: corner },
      isMade: names.length > 0 && names.every((name) => stands(device, name, filter.pass)),
    }));
  });
}

function stands(device: Device, name: string, pass: FilterPass): boolean {
  return (
    menuOffer(device, name, pass) !== null ||
    finalFilters(device).some((own) => own.pass === pass && own.channels.includes(name))
  );
}

/** What the menu of a device offers of a kind at one of its outputs; null where it makes none there. */
export function menuOffer(device: Device, name: string, pass: FilterPass): FilterOffer | null {
  return filterOffers(device, name).find((one) => one.inMenu && one.pass === pass) ?? null;
}
