import { filterMenu, filterOffers } from '../../../audio/filter/filter-offers.ts';
import type { Device } from '../../../model/content/resolved-job.ts';
import type { PlanFilter } from '../../../model/plan/index.ts';
import { filterNames } from '../../../model/vocabulary.ts';
import { type FilterPlace, filterPlaces, makersOnPath } from '../../../plan/audio/filter-places.ts';
import { type AskedFilter, askedFilters, menuOffer } from '../../../plan/audio/filters-asked.ts';
import { askedOf, type BuiltInFilter, finalFilters } from '../../../plan/audio/final-filters.ts';
import { devicesById } from '../../../plan/wiring/conductor-role.ts';
import { groupsOf } from '../../groups-of.ts';
import { deviceSpot } from '../../look-up.ts';
import type { Case, Rule, Verdict } from '../../rule.ts';
import { hertz, listed } from '../../words.ts';
import { putInPath, writtenIntoPart } from './filter-makers.ts';

/** A filter that its device does not make as asked, and why. */
interface NotMade {
  readonly asked: AskedFilter;
  readonly why: string;
  readonly channels: readonly string[];
  readonly remedy: string;
}

function notMadeBy(about: Case, device: Device): readonly NotMade[] {
  return askedFilters(device).flatMap((asked): NotMade[] => {
    const why = asked.isMade ? otherwiseMade(device, asked) : whyNotMade(device, asked);
    if (why === null) return [];
    const own = device.spec?.kind === 'amplifier' ? asked.names.map((name) => `${device.id}.${name}`) : [];
    const after = channelsAfter(about, device, asked).map(({ id }) => id);
    const remedy = asked.isMade
      ? 'write the filter that the device makes, or its control under after-commissioning:'
      : whatToDo(about, device, asked);
    return [{ asked, why, channels: [...new Set([...own, ...after])], remedy }];
  });
}

/** One filter written for several outputs is one mistake. */
function alike(all: readonly NotMade[]): readonly (readonly NotMade[])[] {
  return groupsOf(all, ({ asked: { filter, isMade }, why, remedy }) =>
    JSON.stringify([{ ...filter, where: '' }, isMade, why, remedy]),
  );
}

const notMade: Rule = {
  id: 'filter-not-made',
  judge(about) {
    return about.job.devices
      .filter(({ origin }) => origin === 'job')
      .flatMap((device) =>
        alike(notMadeBy(about, device)).flatMap((group): Verdict<'filter-not-made'>[] => {
          const [first] = group;
          if (!first) return [];
          const { pass, type, order, cornerHz } = first.asked.filter;
          const places = group.map(({ asked }) => asked.filter.where);
          return [
            {
              level: first.asked.isMade ? 'caution' : 'stop',
              of: [device.id, ...new Set(group.flatMap(({ channels }) => channels))],
              message: `${listed(places)} ${places.length === 1 ? 'is' : 'are'} to have a ${pass} (${filterNames[type]}, order ${order}) at ${hertz(cornerHz)}, but ${first.why}`,
              remedy: first.remedy,
              ...deviceSpot(about.job, device.id, 'filters', first.asked.at),
            },
          ];
        }),
      );
  },
};

/** Why a device does not have a filter in the path at all. */
function whyNotMade(device: Device, { at, names, filter }: AskedFilter): string {
  const { id, part, facts } = device;
  if (names.length === 0) return `${at} is no output of ${id}`;
  const hasControl = Object.values(facts.controls).some((control) => control.filter);
  if (!hasControl && !filterMenu(device.spec))
    return `its part ${part} has no control and no menu for a filter`;
  const name = names.find((one) => !offeredAndSet(device, one, filter)) ?? names[0] ?? '';
  const own = finalFilters(device).filter(({ channels }) => channels.includes(name));
  const stands = own.flatMap(({ states, pass, cornerHz }): string[] => {
    const controls = [...states.keys()];
    const verb = controls.length === 1 ? 'stands' : 'stand';
    if (pass === null) return [`${listed(controls)} ${verb} where all is let through`];
    return [`${listed(controls)} ${verb} at ${pass}${cornerHz === null ? '' : `, ${hertz(cornerHz)}`}`];
  });
  const place = device.spec?.kind === 'amplifier' ? `on channel ${name}` : `at ${name}`;
  return `${id} makes no ${filter.pass} ${place}${stands.length > 0 ? `: ${stands.join('; ')}` : ''}`;
}

function offeredAndSet(device: Device, name: string, { pass }: AskedFilter['filter']): boolean {
  return (
    menuOffer(device, name, pass) !== null ||
    finalFilters(device).some((own) => own.pass === pass && own.channels.includes(name))
  );
}

/** The channels of the plan that a filter at a place of a device would be in the path of. */
function channelsAfter({ job, plan }: Case, device: Device, { at, names }: AskedFilter) {
  const devices = devicesById(job);
  const isHere = (place: FilterPlace) =>
    place.device.id === device.id && (names.includes(place.name) || place.at === at);
  return plan.audio.channels.filter(
    (channel) => channel.speakers.length > 0 && filterPlaces(job, devices, channel).some(isHere),
  );
}

/** What mends a filter that its device does not make: another place on its path that can, or a part that can. */
function whatToDo(about: Case, device: Device, asked: AskedFilter): string {
  const { job } = about;
  const { pass, cornerHz } = asked.filter;
  const devices = devicesById(job);
  const offered = asked.names.some((name) => filterOffers(device, name).some((one) => one.pass === pass));
  if (offered) return `take it out, or set the control of ${device.id} to make it (after-commissioning:)`;
  const others = channelsAfter(about, device, asked)
    .flatMap((channel) => makersOnPath(job, devices, channel, pass))
    .filter(
      ({ device: { id }, offer }) => id !== device.id && cornerHz >= offer.fromHz && cornerHz <= offer.toHz,
    )
    .map((place) => `${place.device.id}.${place.at}`);
  const part = writtenIntoPart([device], pass);
  return others.length > 0
    ? `take it out of ${device.id} and write it under filters: at ${listed([...new Set(others)], 'or')}, which can make it; ${part}`
    : `take it out and put into its path ${putInPath(pass)}; ${part}`;
}

/** How a device makes a filter otherwise than it is asked for; null where it makes it so. */
function otherwiseMade(device: Device, asked: AskedFilter): string | null {
  for (const name of asked.names) {
    const why = menuOffer(device, name, asked.filter.pass)
      ? byMenu(device, name, asked.filter)
      : byControls(device, name, asked.filter);
    if (why !== null) return why;
  }
  return null;
}

function byMenu(device: Device, name: string, { pass, type, order, cornerHz }: PlanFilter): string | null {
  const offer = menuOffer(device, name, pass);
  if (!offer) return null;
  const { orders, types, fromHz, toHz } = offer;
  if (!orders.includes(order)) return `${device.id} makes orders ${listed(orders.map(String))}`;
  if (!types.includes(type)) return `${device.id} makes ${listed(types.map((one) => filterNames[one]))}`;
  return cornerHz < fromHz - 1e-9 || cornerHz > toHz + 1e-9
    ? `its corner goes from ${hertz(fromHz)} to ${hertz(toHz)}`
    : null;
}

function byControls(device: Device, channel: string, asked: PlanFilter): string | null {
  const made = finalFilters(device).find(
    ({ pass, channels }) => pass === asked.pass && channels.includes(channel),
  );
  if (!made) return null;
  const { shape, cornerHz } = made;
  if (shape && (shape.type !== asked.type || shape.order !== asked.order))
    return `${device.id} makes ${filterNames[shape.type]} of order ${shape.order}`;
  if (cornerHz !== null && Math.abs(cornerHz - asked.cornerHz) > 1e-6 * asked.cornerHz)
    return atOtherCorner(device, channel, made, cornerHz);
  return outOfRange(device, [...made.states.keys()], asked);
}

/** Why a filter does not stand at the corner that is asked: one that other channels share stands where these ask. */
function atOtherCorner(device: Device, channel: string, made: BuiltInFilter, cornerHz: number): string {
  const names = [...made.states.keys()];
  const one = names.length === 1;
  const others = made.channels.filter((other) => other !== channel);
  const deciding = others.filter((other) =>
    askedOf(device, [other]).some(
      ({ pass, cornerHz: askedHz }) => pass === made.pass && Math.abs(askedHz - cornerHz) <= 1e-6 * cornerHz,
    ),
  );
  const stand = `${listed(names)} ${one ? 'stands' : 'stand'} at ${hertz(cornerHz)}`;
  return deciding.length === 0
    ? stand
    : `${stand} for channel ${listed(deciding)}, and ${one ? 'it sets' : 'they set'} channels ${listed([...made.channels])} together`;
}

function outOfRange({ facts }: Device, controls: readonly string[], { cornerHz }: PlanFilter): string | null {
  for (const name of controls) {
    const range = facts.controls[name]?.filter?.range;
    if (range && (cornerHz < range.from - 1e-9 || cornerHz > range.to + 1e-9))
      return `${name} goes from ${hertz(range.from)} to ${hertz(range.to)}`;
  }
  return null;
}

export const filtersNotMadeRules: readonly Rule[] = [notMade];
