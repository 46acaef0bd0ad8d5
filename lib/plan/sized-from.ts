import { type JobDevice, untoldUse } from '../model/content/job.ts';
import type { Device, Job } from '../model/content/resolved-job.ts';
import type { WrittenMeasures } from '../model/content/written-measures.ts';
import type { HouseRuleName, HouseRules } from '../model/house-rules.ts';
import { keysOf } from '../model/place.ts';

/** House rules that what is heard follows from, and no size, place or way. */
export const soundRules = [
  'air-temperature',
  'delay-tolerance',
  'gain-overlap',
  'gain-under',
  'subsonic-from',
  'subsonic-to',
  'coil-dc-least',
  'coil-dc-most',
  'level-shift',
  'ways-cancel',
  'filters-add',
  'line-offset',
  'gap-level',
  'tone-bass',
  'tone-others',
  'tone-lowest',
  'tone-near-highest',
  'noise-quiet',
  'noise-running',
] as const satisfies readonly HouseRuleName[];

/** What a job says of a device that changes neither a size nor where it stands, by name. */
export const spokenNames = [
  'title',
  'filters',
  'equalising',
  'mix',
  'after',
  'mounted',
  'level',
  'reversed',
  'loads',
  'settings',
  'after-commissioning',
  'serial-number',
] as const satisfies readonly (keyof JobDevice)[];

/**
 * What of a job its places, sizes and ways follow from: no titles, nothing that is set or heard, nothing that was read in
 * the vehicle. What settles a job is handed no more than this, so that an edit of the rest settles nothing anew.
 */
export function sizedFrom(whole: Job): Job {
  const { inPlace: _, ...job } = whole;
  const { shop, measures } = job;
  const isSound = new Set<string>(soundRules);
  return {
    ...job,
    shop: {
      ...shop,
      rules: Object.fromEntries(Object.entries(shop.rules).filter(([name]) => !isSound.has(name))),
    },
    rules: withoutSound(job.rules),
    devices: job.devices.map(silent),
    releasedLabels: {},
    file: { ...job.file, 'as-built': {} },
    measures: {
      ...measures,
      job: measuresBut(measures.job, ([section, , name = '']) => section === 'devices' && isSpoken.has(name)),
      shop: measuresBut(measures.shop, ([section, name = '']) => section === 'rules' && isSound.has(name)),
    },
  };
}

const isSpoken = new Set<string>(spokenNames);

/** What reads one of these all the same comes to no number, and is seen wherever it is tried. */
function withoutSound(rules: HouseRules): HouseRules {
  const none = Object.fromEntries(soundRules.map((name) => [name, { value: Number.NaN, given: false }]));
  return { ...rules, ...none };
}

function silent(device: Device): Device {
  const { given } = device;
  return { ...device, title: '', given: given && silentUse(given) };
}

function silentUse(given: JobDevice): JobDevice {
  const { title: _title, level: _level, reversed: _reversed, 'serial-number': _number, ...own } = given;
  return { ...own, ...untoldUse };
}

/** The measures of a file without those whose names on the way to them are told. */
function measuresBut(
  measures: WrittenMeasures,
  isTold: (names: readonly string[]) => boolean,
): WrittenMeasures {
  return Object.fromEntries(
    Object.entries(measures).flatMap(([head, all]) => {
      const own = all.filter(({ path }) => !isTold(keysOf(path)));
      return own.length > 0 ? [[head, own] as const] : [];
    }),
  );
}
