import { fileURLToPath } from 'node:url';
import nunjucks from 'nunjucks';
import { cardStyle } from '../page/card-labels.ts';
import { allStrong, cellClasses, columnKinds, hasMoved, strongColumns } from '../page/column-kinds.ts';
import { hyphenedNumbers } from '../words/hyphened-numbers.ts';
import { type AssetNames, assetName, plainNames } from './assets/asset-names.ts';

/** The folder of the project itself, wherever a build is started from. */
export const projectFolder = fileURLToPath(new URL('../../../', import.meta.url));

/** The folder of the layouts. */
export const layoutsFolder = fileURLToPath(new URL('../../../layouts/', import.meta.url));

/**
 * The layouts, with every text escaped. `strict` makes a template that asks for what its model does not have
 * fail: for tests, so that none can fail on a shop's own data. `names`: what assets are called in the site.
 */
export function openTemplates({
  strict = false,
  names = plainNames,
}: {
  readonly strict?: boolean;
  readonly names?: AssetNames;
} = {}): nunjucks.Environment {
  const templates = new nunjucks.Environment(new nunjucks.FileSystemLoader(layoutsFolder), {
    autoescape: true,
    throwOnUndefined: strict,
    trimBlocks: true,
    lstripBlocks: true,
  });
  templates.addFilter('allStrong', allStrong);
  templates.addFilter('assetName', (path: string) => assetName(names, path));
  templates.addFilter('cardStyle', (columns) => new nunjucks.runtime.SafeString(cardStyle(columns)));
  templates.addFilter('cellClasses', cellClasses);
  templates.addFilter('columnKinds', columnKinds);
  templates.addFilter('hasMoved', hasMoved);
  templates.addFilter('strongColumns', strongColumns);
  templates.addFilter('hyphenedNumbers', hyphenedNumbers);
  return templates;
}
