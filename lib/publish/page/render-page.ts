import type { Environment } from 'nunjucks';
import { sheetFormats } from '../../draw/sheet/sheet-format.ts';
import { frozen } from '../frozen.ts';
import type { AssetNames } from '../site/assets/asset-names.ts';
import type { DrawingsOf, PlanDrawing } from '../site/shop-site.ts';
import { drawingFile } from './drawing-file.ts';
import { fillDrawings, hasDrawingTokens } from './drawing-token.ts';
import type { MadePage, Page, PageFile } from './page.ts';
import { withPolicy } from './page-policy.ts';

/** The HTML of one page with its drawings in it, so that it asks for no other file: for the printer. */
export function renderPage(page: Page, templates: Environment, drawingsOf: DrawingsOf): string {
  const html = renderModel(page.template, page.model(), templates);
  return page.plan !== undefined && hasDrawingTokens(html)
    ? putDrawings(html, templates, drawingsOf(page.plan))
    : html;
}

/** How the pages of a site are made: by its layouts, which ask for assets by the names that they have there. */
export interface SiteLook {
  readonly templates: Environment;
  readonly names: AssetNames;
}

/** One page as a build writes it, with its drawings beside it, for who has these at hand; build and server may wait for them. */
export function pageWithFiles(page: Page, look: SiteLook, drawingsOf: DrawingsOf): MadePage {
  const model = page.model();
  const html = renderModel(page.template, model, look.templates);
  const drawings = page.plan !== undefined && hasDrawingTokens(html) ? drawingsOf(page.plan) : null;
  const made = finishedPage({ html, drawings, top: model.top, runsSearch: page.runsSearch === true }, look);
  return withFilesBeside(made, page);
}

/** A page with the files that lie beside it whatever its drawings are. */
export function withFilesBeside(made: MadePage, { beside }: Pick<Page, 'beside'>): MadePage {
  return beside ? { ...made, files: [...made.files, ...beside()] } : made;
}

/** A page as its template wrote it, and what is still to be put in. */
export interface WrittenPage {
  readonly html: string;
  /** The drawings of its plan; null where it shows none. */
  readonly drawings: readonly PlanDrawing[] | null;
  /** The way from the page up to the top of the site. */
  readonly top: string;
  readonly runsSearch: boolean;
}

/** The last steps of a page: its drawings as files beside it, then the policy that it keeps. */
export function finishedPage({ html, drawings, top, runsSearch }: WrittenPage, look: SiteLook): MadePage {
  const made = drawings === null ? { html, files: [] } : withDrawingFiles(html, look, drawings, top);
  return { ...made, html: withPolicy(made.html, { runsSearch }) };
}

/** A page without its drawings: tokens stand where they go. */
export function renderModel(template: string, model: object, templates: Environment): string {
  return withoutIndents(templates.render(template, { doc: frozen(model) }));
}

/** A page without empty lines and indents, which weigh and say nothing; one with text that stands as it is written keeps them. */
function withoutIndents(html: string): string {
  return /<(?:pre|textarea)\b/.test(html) ? html : html.replace(/\n\s+/g, '\n');
}

/** Puts the drawings of a page in, which is done last: they are large, and no page holds them before. */
function putDrawings(html: string, templates: Environment, drawings: readonly PlanDrawing[]): string {
  const figures = (own: readonly PlanDrawing[]): string =>
    templates.render('drawings.njk', { drawings: own.map(figureOf) });
  return fillDrawings(html, drawings, figures);
}

/**
 * A page whose drawings are files beside it: those of the sheets that it has, and no other. `top`: the way from the page
 * up to the top of the site.
 */
function withDrawingFiles(
  html: string,
  { templates, names }: SiteLook,
  drawings: readonly PlanDrawing[],
  top: string,
): MadePage {
  const files: PageFile[] = [];
  const figures = (own: readonly PlanDrawing[]): string =>
    templates.render('drawings.njk', {
      drawings: own.map((drawing) => {
        const file = drawingFile(drawing, top, names);
        files.push(file);
        return { ...figureOf(drawing), src: file.path };
      }),
    });
  return { html: fillDrawings(html, drawings, figures), files };
}

/** Width of an upright page between its margins, for the narrower of the two papers (A4). */
const printWidthMm = 186;

interface Figure extends PlanDrawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Classes: `whole` and its like take a page of paper to themselves, `inline` stands among the text. */
  readonly placing: string;
}

/** A drawing that is wider than the text of a page is a sheet with a frame of its own: it gets a whole page. */
function figureOf(drawing: PlanDrawing): Figure {
  const [, width = '0', height = '0'] =
    /<svg[^>]*?\swidth="([\d.]+)mm"[^>]*?\sheight="([\d.]+)mm"/.exec(drawing.svg) ?? [];
  const size = { widthMm: Number(width), heightMm: Number(height) };
  if (size.widthMm <= printWidthMm) return { ...drawing, ...size, placing: 'inline' };
  const [short, long] = [Math.min(size.widthMm, size.heightMm), Math.max(size.widthMm, size.heightMm)];
  const larger = largerSheets.find(({ widthMm, heightMm }) => near(short, widthMm) && near(long, heightMm));
  const lying = size.widthMm > size.heightMm ? '-lying' : '';
  return { ...drawing, ...size, placing: `whole${lying}${larger ? ` whole-${larger.name}${lying}` : ''}` };
}

/** Sheets larger than the paper of a set, upright, as the page names of the print rules call them. */
const largerSheets = [
  { name: 'tabloid', ...sheetFormats.Tabloid },
  { name: 'a3', ...sheetFormats.A3 },
];

function near(aMm: number, bMm: number): boolean {
  return Math.abs(aMm - bMm) < 0.5;
}
