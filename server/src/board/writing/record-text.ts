import type { HandOver } from '../../catalog/model/hand-over';

/** A record as its file holds it, one line a setting: 100,000 of them still fit into a file that is read again. */
export function recordText({ settings, ...head }: HandOver): string {
  const rows = settings.map((setting) => `\n    ${JSON.stringify(setting)}`).join(',');
  const before = JSON.stringify(head, null, 2).replace(/\n\}$/, '');
  return `${before},\n  "settings": [${rows}\n  ]\n}\n`;
}
