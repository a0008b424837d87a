import assert from 'node:assert/strict';
import fc from 'fast-check';
import { makeScript } from '../../../server/src/board/layer/make-script';
import { TextLines } from '../../../server/src/board/layer/text-lines';
import { namesOf } from '../../../server/src/board/meaning/meanings';
import { Speller } from '../../../server/src/board/meaning/spelling';
import { prove } from '../../../server/src/board/proving/prove';
import { entriesOf } from '../../../server/src/board/writing/entries';
import { handOverOf, writeText } from '../../../server/src/board/writing/write-text';
import { meaningsOn, valueOn } from '../../support/board-crafts';
import { testCatalog } from '../../support/catalog';
import { listingOf, onBoard, profile, racer, viewOf, written, writtenBy } from '../../support/demo-boards';
import { near } from '../../support/near';

const proofOf = (name: string, capture: string) =>
  prove({
    profile: profile(name),
    entries: entriesOf(profile(name), viewOf(onBoard(racer, name), 'sprint')),
    captured: null,
    capture: listingOf(name, capture),
    except: new Set(['board.compass']),
    ignoresExtra: false,
  });
const lineOf = (capture: string, at: { readonly start: number } | null) =>
  new TextLines(capture).placeAt(at?.start ?? -1).line;

for (const name of ['wren', 'heron']) {
  describe(`the text of ${name}`, () => {
    const text = written(name, onBoard(racer, name), 'sprint').text;

    it('is read back line by line as it was written', () => {
      const { left, settings, openings, closings, comments } = listingOf(name, text);
      assert.deepEqual(left, []);
      assert.ok(settings.length > 90);
      assert.deepEqual([openings.length, closings.length, comments.length], [1, 1, 1]);
    });

    it('proves equal to the racer that it was written from', () => {
      const proof = proofOf(name, text);
      assert.deepEqual(
        proof.rows.filter(({ verdict }) => verdict !== 'equal'),
        [],
      );
      assert.deepEqual(proof.notCompared, []);
      assert.ok(proof.isWhole);
      assert.ok(proof.counts.equal >= 90);
    });

    it('makes a script that is written as the same text again', () => {
      const made = makeScript(profile(name), testCatalog, text);
      assert.deepEqual([made.own, made.left], [0, []]);
      const again = writtenBy(name, viewOf(made.text, 'captured'));
      const [setLines, lines] = [again.lines, text.trimEnd().split(/(?<=\n)/)].map((all) => new Set(all));
      for (const line of lines ?? [])
        assert.ok(setLines?.has(line.endsWith('\n') ? line : `${line}\n`), line);
      assert.equal(setLines?.size, lines?.size);
    });

    it('shows what changed, what is missing, what stands there twice and what was cut off (K03)', () => {
      const lines = text.trimEnd().split('\n');
      const { settings } = listingOf(name, text);
      const [, second, third] = settings.map(({ at }) => lineOf(text, at.name));
      assert.ok(second !== undefined && third !== undefined);
      const numbered = settings.find(({ value }) => /^\d+(\.\d+)?$/.test(value));
      assert.ok(numbered);
      const at = lineOf(text, numbered.at.name);
      const changed = `${text.slice(0, numbered.at.value.start)}9${text.slice(numbered.at.value.start)}`;
      assert.deepEqual(
        proofOf(name, changed)
          .rows.filter(({ verdict }) => verdict === 'different')
          .map((row) => lineOf(changed, row.at)),
        [at],
      );
      const cut = lines.toSpliced(second, 1).join('\n');
      assert.equal(proofOf(name, cut).counts.missing, 1);
      const twice = lines.toSpliced(third + 1, 0, lines[third] ?? '').join('\n');
      assert.deepEqual(
        proofOf(name, twice)
          .rows.filter(({ verdict }) => verdict === 'twice')
          .map((row) => lineOf(twice, row.at)),
        [third + 1],
      );
      assert.match(proofOf(name, lines.slice(0, -1).join('\n')).cutOff ?? '', /closing line is missing/);
      assert.match(proofOf(name, cut).cutOff ?? '', /counts \d+ settings/);
      for (const capture of [changed, cut, twice]) assert.ok(!proofOf(name, capture).isWhole);
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
}

describe('what goes to a board', () => {
  const nasty = ['a\\nb', 'x\u202ey', 'tab\there'];

  it('never holds a second line, a control character or a mark that turns text around', () => {
    for (const name of ['wren', 'heron']) {
      for (const text of nasty) {
        const script = onBoard(racer, name).replace('"Sandmartin"', `"${text}"`);
        for (const line of written(name, script, 'sprint').lines.map((one) => one.trimEnd()))
          assert.ok(!/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u.test(line), JSON.stringify(line));
      }
    }
  });

  it('is no range of which both ends would be written alike', () => {
    const refusedWith = (on: string) =>
      entriesOf(profile('wren'), viewOf(`board.profile = wren\nsignal-loss.switch-on = ${on}\n`, null))
        .left.flatMap(({ reason }) => reason ?? [])
        .filter((reason) => /alike|both ends/.test(reason));
    assert.deepEqual(refusedWith('800 us..800.000000001 us'), [
      'the board would write both ends as 800; set them further apart',
    ]);
    assert.deepEqual(refusedWith('800 us..900 us'), []);
  });

  it('is only what changed, after a hand-over', () => {
    const heron = profile('heron');
    const entries = (text: string) => entriesOf(heron, viewOf(text, 'sprint'));
    const since = handOverOf('heron', 'sprint', entries(racer), null);
    const changedIn = (text: string) =>
      writeText({ profile: heron, entries: entries(text), captured: null, since, cautions: [] });
    assert.equal(changedIn(racer.replace('tilt-limit = 40 deg', 'tilt-limit = 35 deg')).count, 1);
    assert.equal(changedIn(racer).count, 0);
    const without = changedIn(racer.replace(/^purpose.*$/m, ''));
    assert.equal(without.count, 0);
    assert.equal(without.removed.length, 1);
  });
});
