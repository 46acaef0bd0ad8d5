/** Replace the text from `start` to `end` (offsets, end exclusive) by `text`; equal offsets insert. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Why edits could not be made; the source stays as it is. */
export interface SpliceFault {
  readonly fault: string;
}

/**
 * Makes edits in a source text and leaves all else as it stands, comments included. The order of the list
 * does not matter. Edits that overlap, two insertions at one offset, and offsets outside the source are a
 * fault: then none is made.
 */
export function splice(source: string, edits: readonly Edit[]): string | SpliceFault {
  const sorted = [...edits].sort((a, b) => a.start - b.start || a.end - b.end);
  let done = '';
  let from = 0;
  let previous: Edit | null = null;
  for (const edit of sorted) {
    const { start, end } = edit;
    if (!Number.isInteger(start) || !Number.isInteger(end) || start < 0 || end < start || end > source.length)
      return {
        fault: `an edit from ${start} to ${end} is not within the text, which ends at ${source.length}`,
      };
    if (previous && (start < previous.end || (start === previous.start && end === previous.end)))
      return {
        fault: `an edit from ${start} to ${end} overlaps one from ${previous.start} to ${previous.end}`,
      };
    done += source.slice(from, start) + edit.text;
    from = end;
    previous = edit;
  }
  return done + source.slice(from);
}
