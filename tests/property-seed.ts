import fc from 'fast-check';

/**
 * Property tests draw the same cases on every run, so that a change is judged by what it changed.
 * `PROPERTY_SEED=random` draws new ones: for a search by hand, as long as one likes.
 */
const wish = process.env.PROPERTY_SEED;
if (wish !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(wish ?? 20_261_125) });
