import type { PageMaker } from '../../publish/serve/page-maker.ts';
import { openCrew } from '../crew/crew.ts';
import { keptFolder } from '../kept/open-keeper.ts';
import { PageDesk } from './page-desk.ts';

/** Makes the pages of the shop in a folder. */
export function openPageMaker(root: string): PageMaker {
  const crew = openCrew({ keptIn: keptFolder(root), threads: 0 });
  const desk = new PageDesk(root, crew);
  return {
    page: (wish) => desk.page(wish),
    search: (wish) => desk.search(wish),
    close: crew.close,
  };
}
