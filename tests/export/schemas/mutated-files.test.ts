import { dump } from 'js-yaml';
import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { partsFileSchema } from '../../../lib/model/content/catalogue.ts';
import { jobSchema } from '../../../lib/model/content/job.ts';
import { shopSchema } from '../../../lib/model/content/shop.ts';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { vehicleSchema } from '../../../lib/model/content/vehicle.ts';
import { shapeOpened } from '../../../lib/read/short-forms/shape-opened.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';
import { caseCount } from '../../long-run.ts';
import { root } from '../../plan/demo.ts';
import { ShopInFolder } from '../../shops/shop-in-folder.ts';
import { shortJobs, shop as shortShop, shortText } from '../../short-jobs/short-shop.ts';
import { diceOf, slipIn, spotsIn } from './mutations.ts';
import { dataOf, SchemaShop } from './schema-shop.ts';

function schemaOfFile({ path }: SourceFile): z.ZodType {
  if (path.startsWith('content/parts/')) return partsFileSchema;
  if (path.startsWith('content/vehicles/')) return vehicleSchema;
  return path.startsWith('content/jobs/') ? jobSchema : shopSchema;
}

/**
 * What the shape of a file asks for and no JSON Schema can say: how large an amount is, on its own or against another one;
 * whether the names and values of a row are as many, and stand once; what a control says of itself without a word. All
 * else that a reader refuses by the shape of a file its schema has to refuse as well.
 */
const beyond = [
  /is (?:not )?(?:above|below) /,
  /is (?:more|less) than .* beyond anything in a vehicle/,
  /is no system voltage/,
  /is not a proper fraction/,
  /is a fraction that no tape has/,
  /has 12 inches or more beside its feet/,
  /is too large a number/,
  /runs downwards/,
  /has less at full power than at an eighth/,
  /does not fall: write larger multiples/,
  /starts where it ends/,
  /is outside 5 Hz to 40 kHz/,
  /is not a conductor size made here: write 24 AWG to 4\/0 AWG, or an area/,
  /stands? (?:here twice|for)/,
  /a list stands in a list, and there is no row for it/,
  /has a pitch, but/,
  /is no row/,
  /has \S+ twice/,
  /has a comma with no name beside it/,
  /^safe is missing/,
];

/** The demo shop with short jobs beside its own. */
function demo(): SchemaShop {
  const jobs = new ShopInFolder(root).files.filter(({ path }) => path.startsWith('content/jobs/'));
  const short = shortJobs.map((id): SourceFile => {
    return {
      path: `content/jobs/short-${id}.yaml`,
      text: shortText(id).replace(/^id: /m, 'id: short-'),
    };
  });
  return new SchemaShop([...shortShop, ...jobs, ...short]);
}

const seed = 20_261_129;

type Verdict = 'taken' | 'refused by shape' | 'refused beyond a schema' | 'refused by names';

describe('the schemas of a shop', () => {
  const shop = demo();
  const files = [...shop.files.shop, ...shop.files.parts, ...shop.files.vehicles, ...shop.files.jobs].map(
    (file) => ({ ...file, data: dataOf(file), spots: spotsIn(dataOf(file)) }),
  );

  test('are schemas by the meta-schema of draft 2020-12', () => {
    expect(shop.schemas.length).toBeGreaterThan(10);
    expect(shop.schemas.flatMap(({ text }) => shop.faultsOf(text))).toEqual([]);
  });

  test('take all of its files', () => {
    expect(files.length).toBeGreaterThan(30);
    for (const { path, data } of files) expect(shop.refusals(path, data), path).toEqual([]);
  });

  /** What the reader says of a file in the place of the shop's own. */
  function verdictOf(file: SourceFile): { readonly verdict: Verdict; readonly says: string } {
    const { value: document } = readYaml(file.path, file.text);
    if (!document) throw new Error(`${file.path} is no YAML.`);
    const { problems: ofShape } = shapeOpened(document, schemaOfFile(file));
    const problems = ofShape.length > 0 ? ofShape : shop.problems(file);
    const says = problems.map(({ message }) => message).join('; ');
    if (problems.length === 0) return { verdict: 'taken', says };
    if (ofShape.length === 0) return { verdict: 'refused by names', says };
    const isBeyond = ofShape.every(({ message }) => beyond.some((one) => one.test(message)));
    return { verdict: isBeyond ? 'refused beyond a schema' : 'refused by shape', says };
  }

  const drawn = caseCount({ all: 1000, some: 300 });
  test(`agree with the reader on ${drawn} files, each with a slip in one place`, () => {
    const roll = diceOf(seed);
    const counts = new Map<string, number>();
    const wrong: string[] = [];
    for (let one = 0; one < drawn; one++) {
      const file = files[Math.floor(roll() * files.length)];
      const spot = file?.spots[Math.floor(roll() * file.spots.length)];
      if (!file || !spot) throw new Error('No file or no value was drawn.');
      const { name, data } = slipIn(file.data, spot, file.spots, roll);
      const text = dump(data, { lineWidth: -1 });
      const { verdict, says } = verdictOf({ path: file.path, text });
      const refused = shop.refusals(file.path, dataOf({ path: file.path, text }));
      const isRefused = refused.length > 0;
      const key = `${verdict}, ${isRefused ? 'refused' : 'taken'} by the schema`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
      if ((verdict === 'taken' && isRefused) || (verdict === 'refused by shape' && !isRefused))
        wrong.push(
          `${file.path} ${spot.keys.join('/')} ${name}: ${verdict} (${says}); ${refused.join('; ')}`,
        );
    }
    expect(wrong).toEqual([]);
    const of = (verdict: Verdict): number =>
      ['taken', 'refused'].reduce(
        (sum, how) => sum + (counts.get(`${verdict}, ${how} by the schema`) ?? 0),
        0,
      );
    const all = [...counts.values()].reduce((sum, one) => sum + one, 0);
    expect(all).toBe(drawn);
    expect(of('taken') / drawn).toBeGreaterThan(0.1);
    expect(of('refused by shape') / drawn).toBeGreaterThan(0.5);
    expect(of('refused by names') / drawn).toBeGreaterThan(0.01);
    // Few slips are of that kind: in the short run some are drawn, and that is all that is asked.
    expect(of('refused beyond a schema')).toBeGreaterThan(0);
  });
});
