import { isMounted, type KindName, type Part } from '../../model/kinds/index.ts';
import { type Place, placeText } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import type { Report } from '../report.ts';

type Parts = Readonly<Record<string, Part>>;

/** What may stand where a part is named: parts of one kind, what is mounted on a board or in the vehicle, or any part. */
export type AskedPart = KindName | 'mounted' | 'any';

/**
 * Looks a part up; where the catalogue has renamed it, says what it is called now. One that is not known is answered
 * with the nearest of the kind that is asked for, and with the command that writes it.
 */
export function lookPart(
  report: Report,
  path: readonly (string | number)[],
  name: string,
  parts: Parts,
  asked: AskedPart,
): Part | null {
  if (Object.hasOwn(parts, name)) return parts[name] ?? null;
  const now = nameNow(name, parts);
  if (now !== null) report.at(path, `the part "${name}" is called "${now}" now`, `write ${now}`);
  else report.unknown(path, 'part', name, namesOf(parts, asked), newPart(name, asked));
  return null;
}

function namesOf(parts: Parts, asked: AskedPart): string[] {
  return Object.entries(parts).flatMap(([id, part]) => {
    const isMeant = asked === 'any' || (asked === 'mounted' ? isMounted(part) : part.kind === asked);
    return isMeant ? [id] : [];
  });
}

/** The command that writes a part that the catalogue lacks. */
function newPart(name: string, asked: AskedPart): string {
  return `write it with rackleaf new part ${name} --kind ${asked === 'mounted' || asked === 'any' ? 'KIND' : asked}`;
}

/** What a part is called now that had another name before; null where none had. */
function nameNow(name: string, parts: Parts): string | null {
  return Object.entries(parts).find(([, { formerly }]) => formerly?.includes(name))?.[0] ?? null;
}

/** Former names that do not lead to one part: another part has or had them. */
export function formerNameProblems(parts: Parts, partPlace: (path: string) => Place): readonly Problem[] {
  const first = new Map<string, string>();
  return Object.entries(parts).flatMap(([id, { formerly = [] }]) =>
    formerly.flatMap((name, index): Problem[] => {
      const owner = Object.hasOwn(parts, name) ? name : first.get(name);
      if (owner === undefined) {
        first.set(name, id);
        return [];
      }
      const at = placeText(partPlace(`/parts/${owner}`));
      return [
        {
          where: partPlace(`/parts/${id}/formerly/${index}`),
          message:
            owner === name
              ? `"${name}" is a part of its own (${at}), and no former name of ${id}`
              : `"${name}" is a former name of ${owner} already (${at})`,
          remedy: 'a name leads to one part: take it away here',
        },
      ];
    }),
  );
}
