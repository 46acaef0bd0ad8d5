/** The number of the page, from 1, on which each named place of a document begins. */
export type AnchorPages = ReadonlyMap<string, number>;

/** Reads where the named places of a PDF are. */
export type AnchorReader = (pdf: Uint8Array) => Promise<AnchorPages>;

interface PageReference {
  readonly num: number;
  readonly gen: number;
}

function isPageReference(value: unknown): value is PageReference {
  return typeof value === 'object' && value !== null && 'num' in value && 'gen' in value;
}

/**
 * The reader of named places (ISO 32000-1, 12.3.2.3). A browser names the places that links of the page itself lead
 * to. Null where `pdfjs-dist` is not installed.
 */
export async function openAnchorReader(): Promise<AnchorReader | null> {
  const library = await import('pdfjs-dist/legacy/build/pdf.mjs').then(
    (module) => module,
    () => null,
  );
  if (!library) return null;
  return async (pdf) => {
    // The library takes the bytes that it is given for its own: they get a copy.
    const opening = library.getDocument({ data: new Uint8Array(pdf), verbosity: 0, isEvalSupported: false });
    const document = await opening.promise;
    try {
      const places: readonly (readonly [string, unknown])[] = Object.entries(
        await document.getDestinations(),
      );
      const found: [string, number][] = [];
      for (const [name, place] of places) {
        const page: unknown = Array.isArray(place) ? place[0] : null;
        if (isPageReference(page)) found.push([name, (await document.getPageIndex(page)) + 1]);
      }
      return new Map(found);
    } finally {
      await opening.destroy();
    }
  };
}
