// The seed of all properties that name none: the same on every run, so that the same code passes or fails everywhere alike.
import fc from 'fast-check';

const SEED = 20261129;

// `npm run wander` looks where nobody has looked yet.
const asked = process.env.PROPERTY_SEED;
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: asked === undefined ? SEED : Number(asked) });
