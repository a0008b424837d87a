import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { entriesOf } from '../../../server/src/board/entries';
import { forbidden } from '../../../server/src/board/meaning/spelling';
import { prove } from '../../../server/src/board/prove';
import { scriptFromBoardText } from '../../../server/src/board/to-script';
import { writeBoardText } from '../../../server/src/board/write';
import { CraftView } from '../../../server/src/craft/view';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';
import { type BoardName, boardNames, profileNamed } from '../inputs/board-texts';
import { catalogueScript } from '../inputs/catalogue-script';
import { slipped } from '../inputs/texts';
import { target } from '../target';

interface HandedOver {
  readonly board: BoardName;
  readonly script: string;
}

const plain = { cautions: [], since: null };

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
    const { text, lines, tooLong } = writeBoardText(profile, view, plain);
    for (const line of lines) {
      assert.ok(
        !forbidden.test(line) && line.length <= (profile.text.longestLine ?? 0),
        JSON.stringify(line),
      );
      assert.ok(!/\b(NaN|Infinity|undefined|null)\b/.test(line) || script.includes('NaN'), line);
    }
    const left = new Set(tooLong);
    const entries = entriesOf(profile, view).entries.filter(
      (entry) => ![...left].some(({ group, name }) => group === entry.group && name === entry.name),
    );
    const proof = prove(profile, testCatalog, entries, text);
    const wrong = proof.rows.filter(({ verdict, line }) => verdict !== 'equal' && line !== null);
    assert.deepEqual(
      wrong.filter(({ verdict }) => verdict !== 'extra'),
      [],
    );
    assert.equal(proof.counts.missing, 0);
    assert.equal(proof.truncated, null);
    const made = scriptFromBoardText(profile, testCatalog, text);
    assert.deepEqual(made.unknown, []);
    const again = craftOf(made.text);
    const written = writeBoardText(profile, new CraftView(again, again.packs()[0] ?? null), plain);
    assert.deepEqual([...written.lines].sort(), [...lines].sort());
  },
);
