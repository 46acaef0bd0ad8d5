/**
 * Names that files and folders may have on every system that shops use. Windows refuses some letters, a dot or blank at
 * the end, and the names of its old devices with whatever ending; it and macOS take `A` and `a` for one (Microsoft,
 * "Naming Files, Paths, and Namespaces").
 */
const devices = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i;
const refused = /[<>:"/\\|?*]|\p{Cc}/u;

/** The same for programs that know no flags: what `fileNameFault` refuses, as a regular expression (ECMA-262). */
export const refusedFileNames = [
  String.raw`^(?:[cC][oO][nN]|[pP][rR][nN]|[aA][uU][xX]|[nN][uU][lL]|(?:[cC][oO][mM]|[lL][pP][tT])[0-9¹²³])(?:\.|$)`,
  String.raw`[<>:"\/\\|?*\u0000-\u001f\u007f-\u009f]`,
  '^[. ]|[. ]$',
].join('|');

/** Why a file can't have a name; null where it can. */
export function fileNameFault(name: string): string | null {
  if (devices.test(name))
    return 'is a name that Windows keeps for itself, and no file can have it: choose another';
  if (refused.test(name)) return 'can not be the name of a file: leave out / \\ : * ? " < > and |';
  if (/^[. ]|[. ]$/.test(name))
    return 'can not be the name of a file: no dot or blank at its beginning or end';
  return null;
}

/** The same for names that are one file on a disk which does not tell `A` from `a`. */
export function onAnyDisk(name: string): string {
  return name.normalize('NFC').toLowerCase();
}
