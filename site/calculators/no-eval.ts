import { z } from 'zod';

/* Imported before all else: the readers are never compiled from a text, which a content security policy would refuse. */
z.config({ jitless: true });
