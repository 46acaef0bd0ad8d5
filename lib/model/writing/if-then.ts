/** What holds of a value that fits a condition, in the words of JSON Schema. */
export function ifThen<C, T>(condition: C, then: T): { readonly if: C; readonly then: T } {
  return { if: condition, then };
}
