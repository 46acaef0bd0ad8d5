import fc from 'fast-check';

/** One case in which a property fails is enough here: the smallest is not looked for. */
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });
