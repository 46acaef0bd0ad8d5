import type { Environment } from 'nunjucks';
import { sheetFormats } from '../../draw/sheet/sheet-format.ts';
import { frozen } from '../frozen.ts';
import type { DrawingsOf, PlanDrawing } from '../site/shop-site.ts';
import { fillDrawings, hasDrawingTokens } from './drawing-token.ts';
import type { Page } from './page.ts';

/**
 * The HTML of one page, from its model to its drawings, for who has these at hand, as the printer; build and server take
 * the same two steps, and may wait for drawings between them.
 */
export function renderPage(page: Page, templates: Environment, drawingsOf: DrawingsOf): string {
  const html = renderModel(page.template, page.model(), templates);
  return page.plan !== undefined && hasDrawingTokens(html)
    ? putDrawings(html, templates, drawingsOf(page.plan))
    : html;
}

/** A page without its drawings: tokens stand where they go. */
export function renderModel(template: string, model: object, templates: Environment): string {
  return templates.render(template, { doc: frozen(model) });
}

/** Puts the drawings of a page in, which is done last: they are large, and no page holds them before. */
export function putDrawings(html: string, templates: Environment, drawings: readonly PlanDrawing[]): string {
  const figures = (own: readonly PlanDrawing[]): string =>
    templates.render('drawings.njk', { drawings: own.map(figureOf) });
  return fillDrawings(html, drawings, figures);
}

/** Width of an upright page between its margins, for the narrower of the two papers (A4). */
const printWidthMm = 186;

interface Figure extends PlanDrawing {
  /** Classes: `whole` and its like take a page of paper to themselves, `inline` stands among the text. */
  readonly placing: string;
}

/** A drawing that is wider than the text of a page is a sheet with a frame of its own: it gets a whole page. */
function figureOf(drawing: PlanDrawing): Figure {
  const [, width = '0', height = '0'] =
    /<svg[^>]*?\swidth="([\d.]+)mm"[^>]*?\sheight="([\d.]+)mm"/.exec(drawing.svg) ?? [];
  if (Number(width) <= printWidthMm) return { ...drawing, placing: 'inline' };
  const [short, long] = [Math.min(Number(width), Number(height)), Math.max(Number(width), Number(height))];
  const larger = largerSheets.find(({ widthMm, heightMm }) => near(short, widthMm) && near(long, heightMm));
  const lying = Number(width) > Number(height) ? '-lying' : '';
  return { ...drawing, placing: `whole${lying}${larger ? ` whole-${larger.name}${lying}` : ''}` };
}

/** Sheets larger than the paper of a set, upright, as the page names of the print rules call them. */
const largerSheets = [
  { name: 'tabloid', ...sheetFormats.Tabloid },
  { name: 'a3', ...sheetFormats.A3 },
];

function near(aMm: number, bMm: number): boolean {
  return Math.abs(aMm - bMm) < 0.5;
}
