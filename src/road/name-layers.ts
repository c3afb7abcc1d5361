// How rules name layers, for rims that write rules.
export { compileLayer, NO_LAYER, spellLayer } from '../classify/layer-pattern.js';
