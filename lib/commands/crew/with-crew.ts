import type { Effects } from '../effects.ts';
import { keptFolder } from '../kept/open-keeper.ts';
import { type Crew, openCrew } from './crew.ts';

/** Does something with a crew of this shop, and ends it whatever comes. Says where results could not be kept. */
export async function withCrew<T>(effects: Effects, work: (crew: Crew) => Promise<T>): Promise<T> {
  const { root, threads, keptIn = keptFolder(root) } = effects;
  const crew = openCrew({ keptIn, ...(threads !== undefined && { threads }) });
  try {
    return await work(crew);
  } finally {
    await crew.close();
    const fault = crew.fault();
    if (fault !== null) effects.tell(unkeptText(fault));
  }
}

/** That results could not be kept, and what follows from it. */
export function unkeptText(fault: string): string {
  return `results could not be kept, so that the next run takes as long as this one: ${fault}`;
}
