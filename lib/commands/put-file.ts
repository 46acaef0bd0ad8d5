import { rm, writeFile } from 'node:fs/promises';
import { patientRename } from '../publish/site/patient-rename.ts';

/**
 * Puts a file in its place in one step, so that nobody sees half of it; nothing is left beside it where that fails.
 *
 * @param mode Who may read and write it; as the system has it for new files where left out.
 */
export async function putFile(path: string, content: string | Uint8Array, mode?: number): Promise<void> {
  // Under a name of its own: another command may write the same file.
  const own = `${path}.${process.pid}.new`;
  try {
    await writeFile(own, content, { mode });
    await patientRename(own, path);
  } catch (error) {
    await rm(own, { force: true }).catch(() => undefined);
    throw error;
  }
}
