import { fileNameFault, onAnyDisk } from '../../lib/model/file-name.ts';

/**
 * What keeps files with these paths (forward slashes) from lying together on some disk: names that a system refuses,
 * and paths that differ by case alone, of folders too.
 */
export function diskFaults(paths: readonly string[]): string[] {
  const folders = paths.flatMap((path) =>
    path.split('/').map((_, depth, parts) => parts.slice(0, depth + 1).join('/')),
  );
  const known = new Map<string, string>();
  const faults = new Set<string>();
  for (const path of folders) {
    const name = path.slice(path.lastIndexOf('/') + 1);
    // A dot before the name hides a file on some systems, and hurts on none.
    const fault = fileNameFault(name.replace(/^\./, ''));
    if (fault !== null) faults.add(`${path} ${fault}`);
    const other = known.get(onAnyDisk(path));
    if (other !== undefined && other !== path) faults.add(`${path} and ${other} are one on some disks`);
    known.set(onAnyDisk(path), path);
  }
  return [...faults];
}
