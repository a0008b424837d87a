import { strict as assert } from 'node:assert';
import type { ListedSetting } from '../../../server/src/board/listing/listing';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { settingKey } from '../../../server/src/board/listing/setting-key';
import { lookOf } from '../../../server/src/board/listing/value-look';
import { holdReadings, trimmed } from '../../support/listing-cases';
import { unequal, Way } from '../../support/listing-shapes/way';
import { oddListings } from '../../support/odd-listings';
import { renderedAsShown } from '../../support/rendered-listing';

const escapeCode = '\u001b';

/** What a session leaves around and within a listing. */
const sessions: Readonly<Record<string, (text: string) => string>> = {
  'behind a prompt': (text) => `dipper> show all\n${text}\ndipper> `,
  'in colours': (text) => text.replace(/^(\s*)(\S+)/gm, `$1${escapeCode}[32m$2${escapeCode}[0m`),
  'in pages': (text) => everyFifth(text, (line) => `-- more --\r          \r${line}`),
  'behind a bar that filled': (text) => `reading [####      ] 40%\rreading [##########] 100%\n${text}`,
};

function everyFifth(text: string, change: (line: string) => string): string {
  return text
    .split('\n')
    .map((line, index) => (index % 5 === 4 ? change(line) : line))
    .join('\n');
}

/** Another value that looks alike; for what stands alone, its other mark. */
function another({ value, style, stated }: ListedSetting): string {
  if (style.kind === 'presence') return value === 'on' ? style.negation : (style.affirmation ?? '');
  const other = stated?.words?.find((word) => word !== value);
  if (other !== undefined) return other;
  const look = lookOf(value);
  if (look.kind === 'flag') return look.isOn ? look.pair[1] : look.pair[0];
  return /\d/.test(value)
    ? value.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) % 9) + 1))
    : `${value}s`;
}

describe('a listing of a shape that nobody had in mind', () => {
  holdReadings(oddListings);
  for (const { what, text: block } of oddListings) {
    const text = trimmed(block);

    it(`is read alike after any session: ${what}`, () => {
      for (const [session, soiled] of Object.entries(sessions))
        assert.equal(renderedAsShown(soiled(text)), renderedAsShown(text), session);
    });

    it(`goes all the way, and each change alone is found: ${what}`, async () => {
      const way = new Way(text);
      const { view, mustFix } = await way.including();
      const made = await way.made();
      const entries = way.entries(view);
      assert.deepEqual([...way.faults, ...mustFix, ...made.mustFix], []);
      for (const capture of [
        text,
        way.written(entries).text,
        ...Object.values(sessions).map((soil) => soil(text)),
      ])
        assert.deepEqual(unequal(way.proof(entries, capture)), []);
      assert.deepEqual(unequal(way.proof(way.entries(made.view), text)), []);
      for (const setting of readListing(text, way.profile.text.forms).settings) {
        const { start, end } = setting.at.value;
        const capture = text.slice(0, start) + another(setting) + text.slice(end);
        const wrong = way.proof(entries, capture).rows.filter(({ verdict }) => verdict !== 'equal');
        const found = wrong.map((row) => `${row.verdict} ${settingKey(row)}`);
        assert.deepEqual(found, [`different ${settingKey(setting)}`]);
      }
    });
  }
});
