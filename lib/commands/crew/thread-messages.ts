import type { Done, TaskName, Tasks } from './tasks.ts';

/** What a thread is opened with. */
export interface ThreadData {
  /** The folder of kept results; null where none are kept. */
  readonly keptIn: string | null;
}

/** A task, as it is sent to a thread. */
export interface ThreadRequest<T extends TaskName> {
  readonly name: T;
  readonly input: Tasks[T]['input'];
}

/** What a thread sends back. */
export interface ThreadAnswer<T extends TaskName> {
  readonly done: Done<Tasks[T]['output']>;
  /** Why its results could not be kept. */
  readonly fault: string | null;
}
