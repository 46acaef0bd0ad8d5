import { fileId } from '../../model/fields.ts';
import { drawingsFolder } from '../site/addresses.ts';
import { type AssetNames, assetName, nameDigest } from '../site/assets/asset-names.ts';
import type { PlanDrawing } from '../site/shop-site.ts';
import type { PageFile } from './page.ts';

/**
 * A drawing as a file of its own. It brings its type and its inks from the style of drawings, so that it reads and prints
 * wherever it is opened; within a page it hands itself over to the page, which puts it in its place. `top`: the way from
 * the page up to the top of the site; `names`: what its assets are called there. The digest of its text is in its name: a drawing that a browser or a host kept is
 * never shown with a later page.
 *
 * Throws where a drawing does not end as SVG does, or has an id that is no name of a file: bugs, both.
 */
export function drawingFile(
  { id, svg }: Pick<PlanDrawing, 'id' | 'svg'>,
  top: string,
  names: AssetNames,
): PageFile {
  const end = svg.lastIndexOf('</svg>');
  if (end < 0 || !fileId.safeParse(id).success) throw new Error(`The drawing ${id} can be no file.`);
  const asset = (path: string): string => `../${top}${assetName(names, path)}`;
  const text = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<?xml-stylesheet type="text/css" href="${asset('assets/drawing.css')}"?>`,
    `${svg.slice(0, end)}<script xmlns="http://www.w3.org/1999/xhtml" src="${asset('assets/drawing.js')}"></script></svg>`,
    '',
  ].join('\n');
  return { path: `${drawingsFolder}/${id}.${nameDigest(text)}.svg`, text };
}
