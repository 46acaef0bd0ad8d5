import { aboutContent, entry, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';

type Room = Partial<Pick<NonNullable<Written['vehicle']['places']>[string], 'width' | 'height' | 'depth'>>;

/** The box of the boot, of a size, in a room of a size, and more of the same there. */
const inBoot =
  (size: readonly [string, string, string], room: Room, more: number = 0) =>
  () =>
    aboutContent((content) => {
      const [width, depth, height] = size;
      partIn(content, 'vented', 'enclosure').size = { width, depth, height };
      Object.assign(entry(content.vehicle.places, 'boot'), room);
      for (let at = 0; at < more; at += 1)
        content.job.devices[`box-${at + 2}`] = { part: 'vented', in: 'boot' };
    });

/** The tweeter of the door, so deep, in a door of 60 mm. */
const inDoor = (height: string) => () =>
  aboutContent((content) => {
    partIn(content, 'tweeter', 'speaker').size = { width: '100 mm', depth: '100 mm', height };
    entry(content.vehicle.places, 'door').depth = '60 mm';
  });

const room: Room = { width: '800 mm', height: '400 mm', depth: '350 mm' };

export const placesCases = {
  // Geometry: boxes against the size of their place.
  'place-too-small': {
    fires: [
      {
        name: 'a box whose thinnest side is over the depth',
        about: inBoot(['500 mm', '360 mm', '380 mm'], { depth: '350 mm' }),
        level: 'stop',
        subject: 'box',
        path: '/devices/box/in',
        says: /it goes in no way round/,
      },
      {
        name: 'a box that is longer than the boot is wide',
        about: inBoot(['850 mm', '300 mm', '300 mm'], room),
        level: 'stop',
        subject: 'box',
      },
      {
        name: 'two that go in one by one',
        about: inBoot(['450 mm', '300 mm', '380 mm'], room, 1),
        level: 'stop',
        subject: 'box',
        says: /each goes in alone, together they do not/,
      },
      {
        name: 'three of a third of its width and some',
        about: inBoot(['270 mm', '340 mm', '390 mm'], room, 2),
        level: 'stop',
        subject: 'box',
      },
      {
        name: 'two in a place whose depth alone is told',
        about: inBoot(['300 mm', '300 mm', '300 mm'], { depth: '350 mm' }, 1),
        level: 'caution',
        subject: 'box',
        says: /does not tell whether it holds them together/,
      },
    ],
    quiet: [
      { name: 'one that goes in on its side', about: inBoot(['340 mm', '390 mm', '790 mm'], room) },
      { name: 'two beside each other', about: inBoot(['390 mm', '340 mm', '400 mm'], room, 1) },
      { name: 'three beside each other', about: inBoot(['260 mm', '340 mm', '390 mm'], room, 2) },
      { name: 'one box where nothing is told', about: inBoot(['900 mm', '900 mm', '900 mm'], {}) },
    ],
  },
  // The depth of the place; parts vary by 3 mm, common practice.
  'speaker-too-deep': {
    fires: [
      {
        name: '61 mm in 60 mm',
        about: inDoor('61 mm'),
        level: 'stop',
        subject: 'tweeter',
        path: '/devices/tweeter/in',
      },
      {
        name: '58 mm in 60 mm',
        about: inDoor('58 mm'),
        level: 'caution',
        subject: 'tweeter',
        says: /to spare, by which parts vary/,
      },
    ],
    quiet: [
      { name: '57 mm in 60 mm', about: inDoor('57 mm') },
      {
        name: 'a subwoofer in its box',
        about: inBoot(['300 mm', '300 mm', '300 mm'], { depth: '320 mm' }),
      },
    ],
  },
} satisfies RuleCases;
