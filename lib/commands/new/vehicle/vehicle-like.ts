import { hasFields } from '../../../model/content/proposal.ts';
import type { SourceFile } from '../../../model/content/source-file.ts';
import { contentFiles, openShop, readCatalogue } from '../../../read/read-content.ts';
import { remedyFor } from '../../../read/report.ts';
import { readYaml } from '../../../read/yaml/yaml.ts';
import type { NewFile } from '../new-file.ts';
import type { Named } from '../yaml-text.ts';
import { vehicleFields, vehicleFileText } from './vehicle-file.ts';

/** What a meter reads in one vehicle and no other tells: it is asked anew. */
const readAnew: ReadonlySet<string> = new Set(['charging-voltage', 'charging-range', 'vehicle-load']);

/** Sections whose entries have names: what is told anew stands in the place of its namesake. */
const sections = ['fitted', 'grounds', 'links', 'spaces', 'routes', 'places'] as const;

/** What is asked of a vehicle that is like another; all else by flags alone. */
const asked: ReadonlySet<string> = new Set(['title', 'reading']);

/**
 * A vehicle that is like another one of the shop: its file but for its title, what a meter reads, and what is told anew. As
 * a text why it can't be.
 */
export function vehicleLike(files: readonly SourceFile[], like: string, any: NewFile): NewFile | string {
  const sorted = contentFiles(files);
  const { vehicles } = sorted;
  const file = vehicles.find(({ path }) => path === `content/vehicles/${like}.yaml`);
  const names = vehicles.map(({ path }) => path.replace(/^.*\/|\.yaml$/g, ''));
  if (!file) return `there is no vehicle "${like}"; ${remedyFor(like, names)}`;
  const other = readYaml(file.path, file.text).value?.data;
  const shop = openShop({ vehicles: [file], guides: [] }, readCatalogue(sorted));
  if (!hasFields(other) || !shop.vehicles[like])
    return `${file.path} can't be read: mend what rackleaf check tells of it first`;
  const { parts } = shop;
  const text: NewFile['text'] = (id, answers) => {
    const own = vehicleFields(id, answers, parts);
    return vehicleFileText(merged(other, own), remarksOf(like));
  };
  return {
    ...any,
    draft: `vehicle-like-${like}`,
    asked,
    text,
    told: (id) => [
      `as ${like} but for what was told: hold every measure against this vehicle with a tape`,
      `next: rackleaf new job --vehicle ${id}`,
    ],
  };
}

/** The fields of another vehicle with what is told anew in their place; what a meter reads is not taken over. */
function merged(other: Named, own: Named): Named {
  const kept = Object.fromEntries(Object.entries(other).filter(([name]) => !readAnew.has(name)));
  const told = Object.fromEntries(
    Object.entries(own).filter(([, value]) => !hasFields(value) || Object.keys(value).length > 0),
  );
  const named = sections.map((section) => {
    const [before, anew] = [kept[section], told[section]];
    const entries = { ...(hasFields(before) ? before : {}), ...(hasFields(anew) ? anew : {}) };
    return [section, entries] as const;
  });
  return { ...kept, ...told, ...Object.fromEntries(named) };
}

function remarksOf(like: string): readonly string[] {
  return [
    `As ${like}: what stands here was measured there, and is to be held against this vehicle with a tape before anything is cut.`,
    'Charging voltage and vehicle load are read anew in each vehicle.',
  ];
}
