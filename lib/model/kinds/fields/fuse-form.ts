import { shortened } from '../../short-forms/short-form.ts';
import { fuseFormWords } from '../../tables/fuse-forms.ts';
import { fuseFormSchema } from '../../vocabulary.ts';

/** The form of a fuse; also by the word that the trade has for it, `midi`, which is read as the one of files. */
export const fuseFormField = shortened(fuseFormSchema.clone(), { form: 'words', words: fuseFormWords });
