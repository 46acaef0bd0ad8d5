/** What the system refuses for reasons of its own: how it is told, and what helps. */
const outside: Readonly<Record<string, { readonly what: string; readonly toDo: string }>> = {
  ENOSPC: { what: 'the disk is full', toDo: 'make room, then try again' },
  EDQUOT: { what: 'your share of the disk is full', toDo: 'make room, then try again' },
  EROFS: { what: 'the disk can only be read', toDo: "take the shop's folder to one that can be written" },
  EACCES: {
    what: 'the system refuses access',
    toDo: 'see who may write there, and whether it is open elsewhere',
  },
  EPERM: {
    what: 'the system refuses access',
    toDo: 'see who may write there, and whether it is open elsewhere',
  },
  EBUSY: { what: 'another program holds it open', toDo: 'close that program, then try again' },
  ENOTDIR: { what: 'a file stands where a folder is needed', toDo: 'move that file elsewhere' },
  EMFILE: { what: 'too many files are open', toDo: 'end other programs, then try again' },
  EADDRINUSE: { what: 'another program uses this port', toDo: 'end it, or name another port by --port' },
};

/** Why a command could not end: something outside stood in its way, or a bug of ours, which asks for a report. */
export function failureText(error: unknown): string {
  const chain: Error[] = [];
  for (let cause = error; cause instanceof Error; cause = cause.cause) chain.push(cause);
  const refused = chain.find((one) => codeOf(one) in outside);
  const { what, toDo } = outside[refused ? codeOf(refused) : ''] ?? {};
  if (refused && what !== undefined) {
    const before = chain.slice(0, chain.indexOf(refused)).map(({ message }) => message);
    return [...before, `${what}: ${placeOf(refused)}`, `  to do: ${toDo}`].join('\n');
  }
  return [
    'This should not have happened, and is no fault of the job:',
    ...chain.map(({ message }) => `  ${message}`),
    'Please report it with the job file, private values taken out.',
  ].join('\n');
}

/** Why something could not be written, in one line: in our words where the system's are known. */
export function outsideText(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const { what } = outside[codeOf(error)] ?? {};
  return what === undefined ? error.message : `${what}: ${placeOf(error)}`;
}

function codeOf(error: Error): string {
  return 'code' in error ? String(error.code) : '';
}

/** The path that it was about, or else what the system said. */
function placeOf(error: Error): string {
  return 'path' in error && typeof error.path === 'string' ? error.path : error.message;
}
