import { suggestWord } from '../catalog/suggest';
import type { ScriptLine } from '../language/script-line';
import { Query } from '../query/query';
import type { Craft } from './craft';
import { craftInputs, inputKeys } from './keys';

/** The lines of the constants of a craft's own script that nothing uses; none while something is missing. */
export const unusedConstants = new Query(
  'constants that nothing uses',
  (craft: Craft): readonly ScriptLine[] => {
    craftInputs.read(craft, ...inputKeys.constants);
    craftInputs.read(craft, ...inputKeys.uses);
    const { layers, isComplete } = craft.layers();
    if (!isComplete) return [];
    const constants = new Set(craft.constantNames());
    const used = new Set(layers.flatMap(({ script }) => [...script.usedNames.keys()]));
    const undefinedNames = [...used].filter((name) => !constants.has(name));
    return craft.root.constantNames().flatMap((name) => {
      const lines = craft.root.lines(inputKeys.constant(name));
      const isMisspelt = () => suggestWord(undefinedNames, name).length > 0;
      // What is set twice or misspelt is told already.
      return used.has(name) || lines.length > 1 || isMisspelt() || craft.isUsedOutside(name) ? [] : lines;
    });
  },
  (one, other) => one.length === other.length && one.every((line, index) => line === other[index]),
);
