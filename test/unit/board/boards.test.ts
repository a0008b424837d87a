import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { entriesOf } from '../../../server/src/board/entries';
import { lineFormOf } from '../../../server/src/board/line-form';
import { namesOf } from '../../../server/src/board/meaning/meanings';
import { Speller } from '../../../server/src/board/meaning/spelling';
import { keyOf } from '../../../server/src/board/one-group';
import { type Profile, profileOf } from '../../../server/src/board/profile/profile';
import { prove } from '../../../server/src/board/prove';
import { readBoardLines } from '../../../server/src/board/read-lines';
import { scriptFromBoardText } from '../../../server/src/board/to-script';
import { writeBoardText } from '../../../server/src/board/write';
import { CraftView } from '../../../server/src/craft/view';
import { meaningsOn, valueOn } from '../../support/board-crafts';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';
import { near } from '../../support/near';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const plain = { cautions: [], since: null };

function profile(name: string): Profile {
  const board = testCatalog.board(name);
  const found = board === undefined ? null : profileOf(board);
  assert.ok(found, `${name} has no text half`);
  return found;
}

const onBoard = (text: string, name: string) => text.replace(/profile( *)= \w+/, `profile$1= ${name}`);
const viewOf = (text: string, pack: string | null) => new CraftView(craftOf(text, club), pack);
const written = (name: string, text: string, pack: string | null) =>
  writeBoardText(profile(name), viewOf(text, pack), plain);
const proofOf = (name: string, capture: string) =>
  prove(
    profile(name),
    testCatalog,
    entriesOf(profile(name), viewOf(onBoard(racer, name), 'sprint')).entries,
    capture,
  );

for (const name of ['wren', 'heron']) {
  describe(`the text of ${name}`, () => {
    const text = written(name, onBoard(racer, name), 'sprint').text;

    it('is read back line by line as it was written', () => {
      const kinds = new Set(readBoardLines(profile(name), text).map(({ line }) => line.kind));
      assert.ok(!kinds.has('unknown'), [...kinds].join(' '));
    });

    it('proves equal to the racer that it was written from', () => {
      const proof = proofOf(name, text);
      assert.ok(proof.isEqual, JSON.stringify(proof.rows.filter(({ verdict }) => verdict !== 'equal')));
      assert.ok(proof.counts.equal >= 15);
    });

    it('makes a script that is written as the same text again', () => {
      const made = scriptFromBoardText(profile(name), testCatalog, text);
      assert.deepEqual([made.kept, made.unknown, made.repeated], [[], [], []]);
      const again = writeBoardText(profile(name), viewOf(made.text, 'captured'), plain);
      const [setLines, lines] = [again.lines, text.trimEnd().split(/\r?\n/)].map((all) => new Set(all));
      for (const line of lines ?? []) assert.ok(setLines?.has(line), line);
      assert.equal(setLines?.size, lines?.size);
    });

    it('shows what changed, what is missing, what stands there twice and what was cut off (K03)', () => {
      const lines = text.trimEnd().split('\n');
      const settings = readBoardLines(profile(name), text).filter(({ line }) => line.kind === 'setting');
      const [first, second, third] = settings.map(({ number }) => number);
      assert.ok(first !== undefined && second !== undefined && third !== undefined);
      const numbered = settings.find(
        ({ line }) => line.kind === 'setting' && /^\d+(\.\d+)?$/.test(line.value.text),
      );
      const at = numbered?.number ?? -1;
      const changed = lines.with(at, (lines[at] ?? '').replace(/(\d+)(\D*)$/, '9$1$2'));
      assert.deepEqual(
        proofOf(name, changed.join('\n'))
          .rows.filter(({ verdict }) => verdict === 'different')
          .map(({ line }) => line),
        [at],
      );
      assert.equal(proofOf(name, lines.toSpliced(second, 1).join('\n')).counts.missing, 1);
      const doubled = proofOf(name, lines.toSpliced(third + 1, 0, lines[third] ?? '').join('\n'));
      assert.deepEqual(
        doubled.rows.filter(({ verdict }) => verdict === 'repeated').map(({ line }) => line),
        [third + 1],
      );
      assert.match(proofOf(name, lines.slice(0, -1).join('\n')).truncated ?? '', /closing line is missing/);
      assert.match(
        proofOf(name, lines.toSpliced(second, 1).join('\n')).truncated ?? '',
        /counts \d+ settings/,
      );
    });

    it('holds any value within a step of what was said', () => {
      for (const one of meaningsOn(profile(name), testCatalog)) {
        const values = valueOn(one, testCatalog);
        if (values === null) continue;
        const speller = new Speller(one.meaning, one.found, profile(name).manner);
        fc.assert(
          fc.property(values, (value) => {
            const spelled = speller.write(value);
            if (value.kind === 'range' && spelled.kind === 'refused') {
              const [low, high] = [value.low, value.high].map((end) =>
                speller.write({ ...value, low: end, high: end }),
              );
              assert.deepEqual(low, high, 'refused only where the board can’t tell the ends apart');
              assert.equal(low?.kind, 'texts');
              return;
            }
            assert.equal(spelled.kind, 'texts', `${one.meaning.means}: ${JSON.stringify([value, spelled])}`);
            if (spelled.kind !== 'texts') return;
            const read = speller.read(spelled.texts);
            assert.equal(read.kind, 'value', `${one.meaning.means}: ${spelled.texts.join(' ')}`);
            if (read.kind !== 'value') return;
            const again = speller.write(read.value);
            assert.deepEqual(again, spelled, `${one.meaning.means}: ${JSON.stringify(value)}`);
            if (
              one.meaning.parts[0]?.setting.counts?.step === undefined &&
              (value.kind === 'quantity' || value.kind === 'count')
            )
              near(
                1 + (read.value as typeof value).value - value.value,
                1,
                1e-9 * (1 + Math.abs(value.value)),
              );
          }),
          { numRuns: 30 },
        );
      }
    });

    it('has names that lead back to their rows', () => {
      for (const { meaning, member } of meaningsOn(profile(name), testCatalog)) {
        for (const [part, one] of (namesOf(profile(name), meaning, member) ?? []).entries()) {
          const found = profile(name).find(one.groups, one.name);
          assert.equal(found?.row, meaning.parts[part], one.name);
          assert.equal(found?.member, member);
        }
      }
    });
  });

  describe(`a capture from ${name} with lines that nobody knows`, () => {
    it('comes back with every settings line, whatever it holds', () => {
      const word = fc.stringMatching(/^[a-z][a-z-]{0,8}$/);
      const value = fc.stringMatching(/^[A-Za-z0-9.,+:'"-]{1,12}$/);
      fc.assert(
        fc.property(fc.array(fc.tuple(word, word, value), { minLength: 1, maxLength: 20 }), (settings) => {
          const form = lineFormOf(profile(name));
          assert.ok(form);
          const lines = settings.map(([group, own, text]) => {
            const fill = (source: string) =>
              source
                .replace('{group}', group)
                .replace('{name}', own)
                .replace('{value}', () => text);
            return [...(form.heading === null ? [] : [fill(form.heading.source)]), fill(form.line.source)];
          });
          const capture = lines.flat().join('\n');
          const made = scriptFromBoardText(profile(name), testCatalog, capture);
          const again = writeBoardText(profile(name), viewOf(made.text, null), plain).lines.join('\n');
          const keys = (all: string) =>
            new Map(
              readBoardLines(profile(name), all).flatMap(({ line: read }) =>
                read.kind === 'setting'
                  ? [[keyOf(read.group, read.name.text), read.value.text] as const]
                  : [],
              ),
            );
          assert.deepEqual([...keys(again)].sort(), [...keys(capture)].sort());
        }),
        { numRuns: 200 },
      );
    });
  });
}

describe('what goes to a board', () => {
  const nasty = ['a\\nb', 'x\u202ey', 'tab\there'];

  it('never holds a second line, a control character or a mark that turns text around', () => {
    for (const name of ['wren', 'heron']) {
      for (const text of nasty) {
        const script = onBoard(racer, name).replace('"Sandmartin"', `"${text}"`);
        for (const line of written(name, script, 'sprint').lines)
          assert.ok(!/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u.test(line), JSON.stringify(line));
      }
    }
  });

  it('never does so whatever a pilot writes into a text, a name or a comment (K04)', () => {
    const hidden = fc.constantFrom(
      '\u202e',
      '\u2066',
      '\u0000',
      '\u001b[31m',
      '\u0085',
      '\u2028',
      '\u200b',
      '"',
      '\\',
      ';',
      '~',
    );
    const nastyText = fc.array(fc.oneof(hidden, fc.string({ unit: 'grapheme', maxLength: 4 })), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(nastyText, fc.constantFrom('wren', 'heron'), (parts, name) => {
        const text = parts.join('').replace(/[\r\n"\\]/g, ' ');
        const script = `${onBoard(racer, name).replace('"Sandmartin"', `"${text}"`)}\n# ${text}\n`;
        const { lines } = written(name, script, 'sprint');
        for (const line of lines) {
          assert.ok(!/[\p{Cc}\u202A-\u202E\u2066-\u2069\u2028\u2029]/u.test(line), JSON.stringify(line));
          assert.ok(line.length <= (profile(name).text.longestLine ?? Number.POSITIVE_INFINITY), line);
          assert.ok(!/\d[eE][+-]?\d/.test(line), line);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('is no range of which both ends would be written alike', () => {
    const refusedWith = (on: string) =>
      entriesOf(profile('wren'), viewOf(`board.profile = wren\nsignal-loss.switch-on = ${on}\n`, null))
        .refused.map(({ reason }) => reason)
        .filter((reason) => /alike|both ends/.test(reason));
    assert.deepEqual(refusedWith('800 us..800.000000001 us'), [
      'the board would write both ends as 800; set them further apart',
    ]);
    assert.deepEqual(refusedWith('800 us..900 us'), []);
  });

  it('is only what changed, after a hand-over', () => {
    const heron = profile('heron');
    const before = entriesOf(heron, viewOf(racer, 'sprint')).entries;
    const since = {
      version: 1 as const,
      board: 'heron',
      pack: 'sprint',
      reason: null,
      lines: before.map(({ group, name, value }) => ({ group, name, value })),
    };
    const changed = racer.replace('tilt-limit = 40 deg', 'tilt-limit = 35 deg');
    const { count } = writeBoardText(heron, viewOf(changed, 'sprint'), { cautions: [], since });
    assert.equal(count, 1);
    assert.equal(writeBoardText(heron, viewOf(racer, 'sprint'), { cautions: [], since }).count, 0);
  });
});
