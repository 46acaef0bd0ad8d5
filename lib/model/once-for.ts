/**
 * The same work, done once for each thing that it is done for; its answer is held as long as that thing is. The thing must
 * not change, and the answer must follow from it alone.
 */
export function onceFor<Asked extends object, Answer>(
  work: (asked: Asked) => Answer,
): (asked: Asked) => Answer {
  const known = new WeakMap<Asked, { readonly answer: Answer }>();
  return (asked) => {
    const found = known.get(asked);
    if (found) return found.answer;
    const answer = work(asked);
    known.set(asked, { answer });
    return answer;
  };
}

/** What was worked out under a key before, or is now. */
export function remembered<K, V>(known: Map<K, V>, key: K, work: () => V): V {
  const before = known.get(key);
  if (before !== undefined) return before;
  const own = work();
  known.set(key, own);
  return own;
}
