import { fileName } from '../../../craft/include-path';
import { isOwnPath } from '../../../language/path-text';
import type { CodeRule } from '../../rule';

/** One note a craft: how much of its board's text nobody has said the meaning of. */
const unsaid: CodeRule = {
  ids: ['remember/meaning-unsaid'],
  scope: 'craft',
  whole: true,
  check({ craft }, report) {
    const text = craft.boardText();
    const count = craft.unsaidCount();
    const at = text === undefined || count === 0 ? undefined : firstOwn(text.document.lines());
    if (text === undefined || at === undefined) return;
    const settings = count === 1 ? 'One setting stands' : `${count} settings stand`;
    report({ id: 'remember/meaning-unsaid', at, values: { count: settings, file: fileName(text.uri) } });
  },
};

function firstOwn(lines: Iterable<{ readonly settingPath: string | null }>): string | undefined {
  for (const { settingPath } of lines) if (settingPath !== null && isOwnPath(settingPath)) return settingPath;
  return undefined;
}

export const boardTextRules: readonly CodeRule[] = [unsaid];
