import type { PageMaker } from '../../publish/serve/page-maker.ts';
import { PageDesk } from './page-desk.ts';

export function openPageMaker(root: string): PageMaker {
  const desk = new PageDesk(root);
  return {
    page: (wish) => desk.page(wish),
    search: (wish) => desk.search(wish),
    close: async () => undefined,
  };
}
