import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { formatText } from '../../../server/src/features/formatting/formatting';
import { Document } from '../../../server/src/language/document';
import { craftScript } from '../../support/craft-scripts';
import { scriptText } from '../../support/script-text';
import { catalogueScript } from '../inputs/catalogue-script';
import { anyText, slipped } from '../inputs/texts';
import { target } from '../target';

/** What the lines say, without where they say it. */
function said(text: string): readonly string[] {
  return [...Document.of(text).lines()].flatMap((line) => {
    const { kind, problems } = line.statement;
    if (kind === 'blank' && line.text.trim() === '') return [];
    // A text that is not closed ends with its line, and blanks there go.
    const isOpen = problems.some(({ id }) => id === 'line/text-not-closed');
    const isTold = 'value' in line.statement && !isOpen;
    const value = isTold ? JSON.stringify(line.statement.value, withoutPlaces) : '';
    return [`${kind} ${line.settingPath} ${problems.map(({ id }) => id).join()} ${value}`];
  });
}

const places: ReadonlySet<string> = new Set(['start', 'end', 'unitSpan']);
function withoutPlaces(key: string, value: unknown): unknown {
  return places.has(key) ? undefined : value;
}

export const formatting = target(
  {
    name: 'formatting',
    share: 150,
    holds: 'formatting twice is formatting once, and every line says what it said',
  },
  fc.oneof(scriptText, slipped(craftScript), slipped(catalogueScript), anyText),
  (text) => {
    const once = formatText(text);
    assert.equal(formatText(once), once);
    assert.deepEqual(said(once), said(text));
    const solid = (one: string) => one.replace(/[ \t\r\n]/g, '');
    assert.equal(solid(once), solid(text));
  },
);
