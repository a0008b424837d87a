import { nameText } from '../../catalog/model/common';

/** Names that some systems keep for devices: no file can be called so there. */
const deviceName = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;
const longestName = 60;

/** What is wrong with a name for a board, which its file is called by on any system; null: nothing. */
export function boardNameFault(name: string): string | null {
  if (!nameText.safeParse(name).success)
    return `"${name}" is no name for a board: small letters and digits, a letter first, with hyphens between words`;
  if (name.length > longestName) return `a board's name has ${longestName} characters at most`;
  return deviceName.test(name) ? `some systems take no file of the name "${name}": add a word to it` : null;
}
