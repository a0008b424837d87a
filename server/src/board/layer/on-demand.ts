/** What reads boards' texts: a part of the bundle of its own, for most sessions open none. */
export { LayerReader } from './layer-reader';
export { awaitsProfile, profileOfText } from './profile-of-text';
export { readLayer } from './read-layer';
export { scriptEdits } from './script-edits';
