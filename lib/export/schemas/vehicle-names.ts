import { groundRefs } from '../../model/content/resolved-job.ts';
import { partFacts } from '../../model/kinds/index.ts';
import { withPairs } from '../../read/resolve/resolve-devices.ts';
import { devicesIn, keysIn, portsOf } from './job-names.ts';
import { anyName, atWays, type JsonSchema, offeredKeys, type SchemaAt } from './json-schema.ts';
import type { ShopNames } from './shop-names.ts';

/** The names that a vehicle gives itself, offered where it uses them; any other may be written as well. */
export function namesOfVehicleFile(data: unknown, { parts }: ShopNames): JsonSchema {
  const fitted = devicesIn(data, 'fitted', parts);
  const grounds = groundRefs(keysIn(data, 'grounds'));
  const refs = [...fitted.flatMap(portsOf), ...grounds];
  const seats = [...keysIn(data, 'places'), ...fitted.map(({ id }) => id)];
  return {
    allOf: [
      atWays([
        [['links', '*', 'from'], anyName(refs)],
        [['links', '*', 'to'], anyName(refs)],
        [['routes', '*', 'reaches', 'space'], anyName(keysIn(data, 'spaces'))],
        [['routes', '*', 'ends', '[]'], anyName(seats)],
        [['routes', '*', 'serves', '[]'], anyName([...seats, ...grounds])],
      ]),
      atWays(
        fitted.flatMap(({ id, part }): SchemaAt[] => {
          if (!part) return [];
          const { terminals } = partFacts(part);
          const outputs = offeredKeys(Object.keys(withPairs(terminals)));
          return [
            [['fitted', id, 'left-open'], offeredKeys(Object.keys(terminals))],
            ...(part.kind === 'source-unit' ? [[['fitted', id, 'outputs'], outputs] satisfies SchemaAt] : []),
          ];
        }),
      ),
    ],
  };
}
