import { kindSchemas, type NamingKind, ownSchema } from '../../export/schemas/schema-files.ts';
import { namesOfShop } from '../../export/schemas/shop-names.ts';
import { nothingReleased } from '../../model/content/built.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Keep, Step } from '../../model/keep.ts';
import { rulesTold } from '../../model/printed/rule-figures.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { baseName, type ContentFiles, type OpenShop } from '../../read/read-content.ts';
import { readYaml } from '../../read/yaml/yaml.ts';
import { jobFilesIn } from './job-files.ts';
import type { ShopReader } from './shop-steps.ts';

/** No schema follows from what is released or promised. */
const nothingBefore = { released: nothingReleased, promised: [] };

/** What the schemas of all kinds of files follow from. */
type KindFiles = Pick<ContentFiles, 'shop' | 'parts' | 'vehicles'>;

/** What the schema of one job or vehicle follows from. */
interface OwnFiles extends Pick<ContentFiles, 'parts' | 'vehicles'> {
  readonly kind: NamingKind;
  readonly file: SourceFile;
}

/**
 * The schemas of the files of a shop; of its jobs only those that are asked for. Of a job or a vehicle that is no YAML as
 * it stands there is none: the last one holds on.
 */
export function shopSchemas(
  { guides: _, jobs, ...files }: ContentFiles,
  read: ShopReader,
  keep: Keep,
  only: (job: string) => boolean = () => true,
): readonly SourceFile[] {
  const { kinds, own } = schemaSteps(read);
  const naming = [
    ...files.vehicles.map((file): OwnFiles => ({ kind: 'vehicle', file, parts: files.parts, vehicles: [] })),
    ...jobs
      .filter(({ path }) => only(baseName(path)))
      .map((file): OwnFiles => {
        const { parts, vehicles } = jobFilesIn(files, file, nothingBefore, keep);
        return { kind: 'job', file, parts, vehicles };
      }),
  ];
  return [...keep(kinds, files), ...naming.flatMap((one) => keep(own, one) ?? [])];
}

function schemaSteps(read: ShopReader): {
  readonly kinds: Step<KindFiles, readonly SourceFile[]>;
  readonly own: Step<OwnFiles, SourceFile | null>;
} {
  return {
    kinds: {
      id: 'kind-schemas',
      compute: (files, keep) => {
        const open = read.shop({ ...files, guides: [] }, keep);
        return kindSchemas(namesOfShop(open), tellOf(open));
      },
    },
    own: {
      id: 'own-schema',
      compute: ({ kind, file, parts, vehicles }, keep) => {
        const data = readYaml(file.path, file.text).value?.data;
        if (data === undefined) return null;
        const open = read.shop({ shop: [], parts, vehicles, guides: [] }, keep);
        return ownSchema(kind, baseName(file.path), data, namesOfShop(open));
      },
    },
  };
}

/** Puts the figures that the shop works by into a text that names house rules. */
function tellOf({ shop }: OpenShop): (says: string) => string {
  const style = lengthStyle({ units: shop?.units ?? 'inch', fraction: shop?.fraction ?? 16 });
  return rulesTold(shop?.rules ?? {}, style);
}
