/**
 * The same work, done once for each key: what was asked before is answered as it was then. `keyOf` names all of what is
 * asked that the answer follows from; the memory lives as long as the function that is given back.
 */
export function onceEach<Asked extends readonly unknown[], Answer>(
  work: (...asked: Asked) => Answer,
  keyOf: (...asked: Asked) => unknown,
): (...asked: Asked) => Answer {
  const known = new Map<unknown, { readonly answer: Answer }>();
  return (...asked) => {
    const key = keyOf(...asked);
    const found = known.get(key);
    if (found) return found.answer;
    const answer = work(...asked);
    known.set(key, { answer });
    return answer;
  };
}

/** Work that is done when it is first asked for; its answer is remembered as long as the function that is given back. */
export function once<Answer>(work: () => Answer): () => Answer {
  return onceEach(work, () => null);
}
