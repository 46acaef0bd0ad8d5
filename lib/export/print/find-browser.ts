import { access, constants } from 'node:fs/promises';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';

/** Names under which browsers that can print lie on the search path of Linux and other systems of its kind. */
const commandNames = [
  'google-chrome',
  'google-chrome-stable',
  'chromium',
  'chromium-browser',
  'chrome',
  'microsoft-edge',
  'microsoft-edge-stable',
] as const;

const macApplications = [
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Chromium.app/Contents/MacOS/Chromium',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
] as const;

const windowsPrograms = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
] as const;

/** The parts of a machine that tell where its browsers are. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/** This machine. */
export function thisMachine(): Machine {
  return { platform: process.platform, env: process.env, home: homedir() };
}

/** Where a browser may be, the likeliest first; `RACKLEAF_BROWSER` before all, where it is set. */
export function browserPlaces({ platform, env, home }: Machine): string[] {
  const named = env.RACKLEAF_BROWSER;
  return [...(named ? [named] : []), ...usualPlaces(platform, env, home)];
}

function usualPlaces(platform: NodeJS.Platform, env: Machine['env'], home: string): string[] {
  if (platform === 'darwin')
    return ['/Applications', join(home, 'Applications')].flatMap((folder) =>
      macApplications.map((application) => `${folder}/${application}`),
    );
  if (platform === 'win32')
    return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
      const folder = env[name];
      return folder ? windowsPrograms.map((program) => `${folder}\\${program}`) : [];
    });
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return commandNames.flatMap((name) =>
    [...new Set([...folders, '/usr/bin', '/snap/bin', '/opt/google/chrome'])].map(
      (folder) => `${folder}/${name}`,
    ),
  );
}

/** The first browser that is there and may be run; null where there is none. */
export async function findBrowser(machine: Machine = thisMachine()): Promise<string | null> {
  for (const place of browserPlaces(machine)) {
    const found = await access(place, constants.X_OK).then(
      () => true,
      () => false,
    );
    if (found) return place;
  }
  return null;
}
