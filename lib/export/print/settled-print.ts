import type { AnchorPages, AnchorReader } from './anchor-pages.ts';

/** Without numbers, with those of the first print, and once more where the numbers themselves moved a page. */
export const mostPasses = 3;

/**
 * Prints a document that tells its own page numbers: without any first, then with those that the print before it
 * has, until they hold. Null where they do not in `mostPasses`.
 */
export async function settledPrint(
  print: (pages: AnchorPages) => Promise<Uint8Array>,
  read: AnchorReader,
): Promise<Uint8Array | null> {
  let pages = await read(await print(new Map()));
  for (let pass = 2; pass <= mostPasses; pass += 1) {
    const pdf = await print(pages);
    const found = await read(pdf);
    if (isSame(found, pages)) return pdf;
    pages = found;
  }
  return null;
}

function isSame(some: AnchorPages, others: AnchorPages): boolean {
  return some.size === others.size && [...some].every(([name, page]) => others.get(name) === page);
}
