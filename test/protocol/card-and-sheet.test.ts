import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { RequestType } from 'vscode-languageserver-protocol/node';
import type {
  BenchCardAnswer,
  ReadingFault,
  ReadingsKept,
  ReadingsToKeep,
  ReadingTyped,
} from '../../server/src/lsp/flight-protocol';
import type { AboutScript } from '../../server/src/lsp/own-message';
import type { CardTaken } from '../../server/src/sheet/bench-card/taken';
import { propsoff as run } from '../support/command-line';
import { withScratch } from '../support/scratch';
import { withServer } from '../support/server';

const cardRequest = new RequestType<AboutScript & { taken?: CardTaken }, BenchCardAnswer | null, void>(
  'propsoff/benchCard',
);
const keepRequest = new RequestType<
  AboutScript & ReadingsToKeep,
  ReadingsKept | { faults: readonly ReadingFault[] } | null,
  void
>('propsoff/keepReadings');
const typedRequest = new RequestType<AboutScript & ReadingTyped, string | null, void>(
  'propsoff/checkReading',
);

const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const files = {
  'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8'),
  'racer.craft': racer,
  'blank.craft': '# soon\n',
  'weak.craft': racer.replace(/cells-limit( *)= 6/, 'cells-limit$1= 5'),
};

describe('the bench card over the protocol', () => {
  it('is made of the open script, and readings become an edit of it', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const uri = scratch.uriOf('racer.craft');
        await server.open(uri, racer, 3);
        await server.pushedFor(uri, 3);
        const about = { textDocument: { uri } };
        const answer = await server.connection.sendRequest(cardRequest, about);
        assert.ok(answer !== null);
        assert.equal(answer.card.name, 'Sandmartin');
        assert.match(answer.page, /^<!doctype html>/);
        assert.match(answer.markdown, /^# Bench card: Sandmartin\n/);
        assert.deepEqual(answer.card.packs, ['sprint', 'cruise']);
        const readings = [{ id: 'warm-motors 1 sprint', value: '41' }];
        const keep = (more: readonly { id: string; value: string }[], ticked: CardTaken['ticked'] = []) =>
          server.connection.sendRequest(keepRequest, {
            ...about,
            ticked,
            readings: more,
            today: '2026-11-25',
          });
        const kept = await keep(readings);
        assert.ok(kept !== null && 'version' in kept);
        assert.equal(kept.version, 3);
        const written = kept.edits.map(({ newText }) => newText);
        assert.equal(written.length, 1);
        assert.match(
          written[0] ?? '',
          /\[flight\.day-2026-11-25\]\ndate +=.*\npack +=.*\nmotor-temperature = 41 degC/,
        );
        const refused = await keep([{ id: 'warm-motors 1 cruise', value: '41 V' }]);
        assert.ok(refused !== null && 'faults' in refused && refused.faults.length === 1);
        const both = await keep([...readings, { id: 'warm-motors 1 cruise', value: '38' }]);
        assert.ok(both !== null && 'version' in both);
        assert.match(
          both.edits[0]?.newText ?? '',
          /\[flight\.day-2026-11-25\]\n(?:.+\n)*?pack +=.*sprint\n.*41 degC\n\n\[flight\.day-2026-11-25-2\]\n(?:.+\n)*?pack +=.*cruise\n.*38 degC/,
        );
        const [first] = answer.card.parts[0]?.steps ?? [];
        assert.ok(first);
        const told = [...first.expected.map(({ text }) => text), first.see, first.do];
        const ticked = [{ id: first.id, told }];
        const printed = await server.connection.sendRequest(cardRequest, {
          ...about,
          taken: { ticked, readings },
        });
        assert.match(printed?.markdown ?? '', /\*\*Not ticked: .*\n(.*\n)+- \[x\] \*\*Propellers off\*\*/);
        assert.match(printed?.page ?? '', /<span class="line">41<\/span> degC/);
        const said = await keep([{ id: 'first-flight 3 sprint', value: 'smooth' }], ticked);
        assert.ok(said !== null && 'version' in said);
        assert.match(said.edits[0]?.newText ?? '', /\nnote += "Not ticked: .* steps are\. smooth"/);
        const look = (typed: string, kind: Partial<ReadingTyped> = {}) =>
          server.connection.sendRequest(typedRequest, {
            ...about,
            unit: 'V',
            setting: null,
            script: null,
            ...kind,
            typed,
          });
        assert.equal(await look('16.7'), null);
        assert.match((await look('16.7 A')) ?? '', /^This is a current\. A voltage is wanted/);
        assert.match((await look('9', { script: 'receiver.order' })) ?? '', /./);
      }),
    ));

  it('writes what the script left open and was found out, with the rest in one edit', () =>
    withServer({}, async (server) => {
      const uri = 'file:///bench/bare.craft';
      await server.open(uri, '[craft]\nname = "Bare"\n\n[receiver]\nlink = crsf\n');
      const readings = [
        { id: 'bound receiver.port', value: 'uart3' },
        { id: 'no-short 1', value: '12 kohm' },
      ];
      const about = { textDocument: { uri } };
      const asked = { ...about, ticked: [], today: '2026-11-25' };
      const kept = await server.connection.sendRequest(keepRequest, { ...asked, readings });
      assert.ok(kept !== null && 'version' in kept);
      assert.deepEqual(
        kept.edits.map(({ newText }) => newText.trim()),
        [
          '[flight.bench-2026-11-25]\ndate = 2026-11-25\nnote = "No short circuit: at the battery pads after five seconds 12 kohm"',
          'port = uart3',
        ],
      );
      assert.equal(kept.edits[1]?.range.start.line, 4);
      assert.equal(await server.connection.sendRequest(keepRequest, { ...asked, readings: [] }), null);
    }));

  it('of a part says that it is one, and there is none of an empty script', () =>
    withServer({}, async (server) => {
      const uri = 'file:///bench/part.craft';
      await server.open(uri, '[gyro]\nrate = 8 kHz\n');
      const answer = await server.connection.sendRequest(cardRequest, { textDocument: { uri } });
      const unchecked = 'Read as a part: what a whole craft needs was not checked.';
      assert.equal(answer?.card.unchecked, unchecked);
      assert.match(answer.markdown, new RegExp(`^\\*\\*${unchecked}`, 'm'));
      assert.match(answer.page, new RegExp(`<b>${unchecked}</b>`));
      await server.open('file:///bench/blank.craft', '# soon\n');
      const about = { textDocument: { uri: 'file:///bench/blank.craft' } };
      assert.equal(await server.connection.sendRequest(cardRequest, about), null);
    }));
});

describe('propsoff bench-card', () => {
  const propsoff = (args: readonly string[], cwd: string) => run(['bench-card', ...args], { cwd });

  it('writes Markdown, a page, or data', () =>
    withScratch(files, async ({ path }) => {
      assert.match(propsoff(['racer.craft'], path).stdout, /^# Bench card: Sandmartin\n/);
      assert.match(propsoff(['racer.craft', '--html'], path).stdout, /^<!doctype html>/);
      const { version, parts, packs } = JSON.parse(
        propsoff(['racer.craft', '--json', '--pack', 'cruise'], path).stdout,
      );
      assert.deepEqual([version, packs], [1, ['cruise']]);
      assert.deepEqual(JSON.parse(propsoff(['racer.craft', '--json'], path).stdout).packs, [
        'sprint',
        'cruise',
      ]);
      assert.ok(parts.length > 5);
    }));

  it('ends with 1 while something must be mended, which stands on top', () =>
    withScratch(files, async ({ path }) => {
      assert.equal(propsoff(['racer.craft'], path).status, 0);
      const { status, stdout } = propsoff(['weak.craft'], path);
      assert.equal(status, 1);
      assert.ok(stdout.indexOf('## Not yet: mend this first') < stdout.indexOf('## Wire it'));
    }));

  for (const args of [[], ['blank.craft'], ['racer.craft', '--html', '--json'], ['nowhere.craft']]) {
    it(`refuses "${args.join(' ')}" in one line`, () =>
      withScratch(files, async ({ path }) => {
        const { status, stderr } = propsoff(args, path);
        assert.equal(status, 2);
        assert.match(stderr, /^propsoff: [^\n]+\n$/);
      }));
  }
});

describe('propsoff sheet', () => {
  const propsoff = (args: readonly string[], cwd: string) => run(['sheet', ...args], { cwd });

  it('tells people part by part what the panel shows, with figures pack by pack', () =>
    withScratch(files, async ({ path }) => {
      const { status, stdout } = propsoff(['racer.craft'], path);
      assert.equal(status, 0);
      assert.match(stdout, /^Sandmartin\nrace · Heron · European Union · pack sprint in view\n/);
      assert.match(stdout, /\nCan it fly\? nothing found to mend, 1 accepted\n/);
      assert.match(stdout, /\n {2}uart2: receiver\n/);
      assert.match(stdout, /\n {2}Delay of the gyro’s filters +1\.2\d? ms \(1\.\d+–\d\.\d+\) +1\.4\d ms/);
      assert.match(stdout, /\nWhat did I learn\? 1 flight noted\n {2}2026-05-14, sprint, tail wobbles/);
      assert.doesNotMatch(stdout, /undefined|NaN|\p{Cc}(?<!\n)/u);
    }));

  it('gives the same as data, and refuses a pack that there is not', () =>
    withScratch(files, async ({ path }) => {
      const { parts, figures } = JSON.parse(propsoff(['racer.craft', '--json'], path).stdout);
      assert.equal(parts.length, 8);
      assert.ok(figures[0].figures.length >= 40);
      const { status, stderr } = propsoff(['racer.craft', '--pack', 'winter'], path);
      assert.equal(status, 2);
      assert.match(stderr, /^propsoff: [^\n]*no pack "winter": sprint, cruise\n$/);
    }));
});
