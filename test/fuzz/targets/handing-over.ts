import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { makeScript } from '../../../server/src/board/layer/make-script';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { settingKey } from '../../../server/src/board/listing/setting-key';
import { forbidden } from '../../../server/src/board/meaning/forbidden';
import { prove } from '../../../server/src/board/proving/prove';
import { entriesOf } from '../../../server/src/board/writing/entries';
import { CraftView } from '../../../server/src/craft/view';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';
import { type BoardName, boardNames, profileNamed, writtenFor } from '../inputs/board-texts';
import { catalogueScript } from '../inputs/catalogue-script';
import { slipped } from '../inputs/texts';
import { target } from '../target';

interface HandedOver {
  readonly board: BoardName;
  readonly script: string;
}

export const handingOver = target<HandedOver>(
  {
    name: 'handing-over',
    share: 10,
    holds: 'what is written for a board proves equal, and reads back to a script that writes it again',
  },
  fc.record({
    board: fc.constantFrom(...boardNames),
    script: fc.oneof(catalogueScript, slipped(catalogueScript)),
  }),
  ({ board, script }) => {
    const profile = profileNamed(board);
    const craft = craftOf(`board.profile = ${board}\n${script}`);
    const view = new CraftView(craft, craft.packs()[0] ?? null);
    // Words that only a board can tell, such as its ports, are held against the script's own board.
    if (view.board?.name !== board) return;
    const { text, lines, unwritten } = writtenFor(profile, view);
    for (const line of lines.map((one) => one.replace(/\r?\n$/, ''))) {
      assert.ok(
        !forbidden.test(line) && line.length <= (profile.text.longestLine ?? 0),
        JSON.stringify(line),
      );
      assert.ok(!/\b(NaN|Infinity|undefined|null)\b/.test(line) || script.includes('NaN'), line);
    }
    const left = new Set(unwritten.map(({ entry }) => settingKey(entry)));
    const all = entriesOf(profile, view);
    const entries = { ...all, entries: all.entries.filter((entry) => !left.has(settingKey(entry))) };
    const capture = readListing(text, profile.text.forms);
    const proof = prove({
      profile,
      entries,
      captured: null,
      capture,
      except: new Set(),
      ignoresExtra: false,
    });
    assert.deepEqual(
      proof.rows.filter(({ verdict }) => verdict !== 'equal' && verdict !== 'extra'),
      [],
    );
    assert.equal(proof.cutOff, null);
    const made = makeScript(profile, testCatalog, text);
    assert.deepEqual(made.left, []);
    const again = craftOf(made.text);
    const written = writtenFor(profile, new CraftView(again, again.packs()[0] ?? null));
    assert.deepEqual([...written.lines].sort(), [...lines].sort());
  },
);
