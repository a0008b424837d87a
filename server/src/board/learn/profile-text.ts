import type { BoardProfile } from '../../catalog/model/board-profile';

/** A profile as its file holds it: one row a setting, so that it can be read, and compared line by line. */
export function profileText({ settings, ...head }: BoardProfile): string {
  const rows = settings.map((setting) => `    ${spaced(setting)}`).join(',\n');
  const before = JSON.stringify(head, null, 2).replace(/\n\}$/, '');
  return `${before},\n  "settings": [\n${rows}\n  ]\n}\n`;
}

/** One line of JSON with blanks where a person looks for them. */
function spaced(setting: BoardProfile['settings'][number]): string {
  const fields = Object.entries(setting).map(
    ([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`,
  );
  return `{ ${fields.join(', ')} }`;
}
