import { hasFields, type WrittenValue } from '../../model/content/proposal.ts';
import { flowText, scalarText } from '../../read/yaml/write-value.ts';

/** Fields of a new file by their names. */
export type Named = { readonly [name: string]: WrittenValue };

/** Names with their values, one a line; of the values those that hold more than plain ones are opened out to a depth. */
export function blockText(values: Named, depth = 1, indent = ''): string {
  return Object.entries(values)
    .map(([name, one]) => {
      if (depth > 1 && hasFields(one) && Object.values(one).some(hasFields))
        return `${indent}${scalarText(name)}:\n${blockText(one, depth - 1, `${indent}  `)}`;
      return `${indent}${scalarText(name)}: ${flowText(one)}\n`;
    })
    .join('');
}

/** Fields without those that are not known. */
export function known(values: Readonly<Record<string, WrittenValue | undefined>>): Named {
  return Object.fromEntries(
    Object.entries(values).flatMap(([name, value]) => (value === undefined ? [] : [[name, value] as const])),
  );
}

/** A field where it holds something. */
export function filled(name: string, value: Named): Named {
  return Object.keys(value).length === 0 ? {} : { [name]: value };
}
