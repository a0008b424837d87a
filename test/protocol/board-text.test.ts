import assert from 'node:assert/strict';
import {
  type CodeAction,
  CodeActionRequest,
  CompletionRequest,
  DocumentFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  type TextEdit,
} from 'vscode-languageserver-protocol/node';
import { countingIn, oneServerFor, ownClient, type TestServer, withServer } from '../support/server';
import { shown } from '../support/shown';

const uri = 'file:///bench/captured.boardtext';
const lines = [
  'heron listens.',
  ';; “from the bench” 🛠',
  'in radio:',
  'receiver port is uart2;',
  'in reports:',
  'telemetry port is uart2;',
  'in quiet:',
  'gyro rate is 6.4;',
  'turning filter 1 conrer is 225.0;',
  'turning filter 2 corner is fast;',
  'turning filter 1 sort is steep;',
  'in steadiness:',
  'loop rate is 2.5;',
  'what was this',
  'in levers:',
  'arming live from is 1750;',
  'heron has heard 8 settings.',
];

function at(needle: string, offset = 0) {
  const line = lines.findIndex((text) => text.includes(needle));
  return { line, character: (lines[line]?.indexOf(needle) ?? 0) + offset };
}

async function openText(server: TestServer): Promise<void> {
  await server.open(uri, lines.join('\n'), 1, 'board-text');
  await server.pushedFor(uri, 1);
}

const about = { textDocument: { uri } };

async function actions(server: TestServer, needle: string): Promise<readonly CodeAction[]> {
  const position = at(needle);
  const range = { start: position, end: position };
  const found = await server.connection.sendRequest(CodeActionRequest.type, {
    ...about,
    range,
    context: { diagnostics: [] },
  });
  return (found ?? []) as CodeAction[];
}

function edited(text: readonly string[], edits: readonly TextEdit[] | undefined): readonly string[] {
  const changed = [...text];
  for (const { range, newText } of edits ?? []) {
    const line = changed[range.start.line] ?? '';
    changed[range.start.line] =
      line.slice(0, range.start.character) + newText + line.slice(range.end.character);
  }
  return changed;
}

describe('a board’s own text in the editor', () => {
  const running = oneServerFor(uri, { capabilities: countingIn('utf-16') });
  const withText = (run: (server: TestServer) => Promise<void>) => async () => {
    await openText(running());
    await run(running());
  };

  it(
    'is told what is wrong, at its places in the board’s text',
    withText(async (server) => {
      const { diagnostics } = await server.pushedFor(uri, 1);
      const told = shown(diagnostics);
      for (const wanted of [
        '8:0-23 board/unknown-setting',
        '9:27-31 board/value-unclear',
        '13:0-13 board/unreadable',
        '15:0-16 board/part-missing',
        '12:13-16 tune/control-rate-uneven',
      ])
        assert.ok(told.includes(wanted), `${wanted} is not among\n${told.join('\n')}`);
      assert.ok(
        told.some((one) => /^[35]:\d+-\d+ wire\/port-shared$/.test(one)),
        told.join('\n'),
      );
      assert.ok(!told.some((one) => one.includes('line/')), told.join('\n'));
    }),
  );

  it(
    'is explained by its own names and numbers, at its own places',
    withText(async (server) => {
      const position = at('6.4');
      const hover = await server.connection.sendRequest(HoverRequest.type, { ...about, position });
      const told = JSON.stringify(hover?.contents);
      assert.match(told, /`gyro rate`/);
      assert.doesNotMatch(told, /gyro\.rate/);
      assert.deepEqual(hover?.range, { start: at('6.4'), end: at('6.4', 3) });
    }),
  );

  it(
    'has the name that was meant offered',
    withText(async (server) => {
      const fix = (await actions(server, 'conrer')).find(
        ({ title }) => title === 'Write turning filter 1 corner',
      );
      const edits = fix?.edit?.changes?.[uri];
      assert.equal(edited(lines, edits)[8], 'turning filter 1 corner is 225.0;');
    }),
  );

  it(
    'is mended in the board’s spelling',
    withText(async (server) => {
      const [first] = (await actions(server, '2.5')).filter(({ title }) => title.includes('kHz'));
      assert.ok(first, 'no fix for the control rate');
      const changed = edited(lines, first.edit?.changes?.[uri])[12] ?? '';
      assert.match(changed, /^loop rate is \d\.\d;$/);
      await server.change(uri, 2, { text: lines.with(12, changed).join('\n') });
      const { diagnostics } = await server.pushedFor(uri, 2);
      assert.ok(!shown(diagnostics).some((one) => one.includes('control-rate-uneven')));
    }),
  );

  it(
    'has a risk accepted in a comment of its own',
    withText(async (server) => {
      const risky = lines.toSpliced(-1, 0, 'in readiness:', 'arming tilt limit is 180;');
      await server.change(uri, 2, { text: risky.join('\n') });
      await server.pushedFor(uri, 2);
      const position = { line: lines.length, character: 24 };
      const found = await server.connection.sendRequest(CodeActionRequest.type, {
        ...about,
        range: { start: position, end: position },
        context: { diagnostics: [] },
      });
      const accept = ((found ?? []) as CodeAction[]).find(({ title }) =>
        title.startsWith('Accept this risk'),
      );
      const [edit] = accept?.edit?.changes?.[uri] ?? [];
      assert.equal(edit?.newText, ';; accept safe/arms-at-any-tilt: why this is fine here\n');
      const reason = edit.newText.trim().replace('why this is fine here', 'starts from a hook');
      await server.change(uri, 3, { text: risky.toSpliced(edit.range.start.line, 0, reason).join('\n') });
      const { diagnostics } = await server.pushedFor(uri, 3);
      const told = diagnostics.find(({ code }) => code === 'safe/arms-at-any-tilt');
      assert.match(String(told?.message), /^Accepted \(starts from a hook\)/);
    }),
  );

  it(
    'is completed: settings that are not there yet, and words',
    withText(async (server) => {
      const names = await server.connection.sendRequest(CompletionRequest.type, {
        ...about,
        position: { line: 12, character: 0 },
      });
      const list = Array.isArray(names) ? names : (names?.items ?? []);
      const item = list.find(({ label }) => label === 'integral limit');
      assert.match(item?.textEdit?.newText ?? '', /^integral limit is 25\.0;$/);
      assert.ok(!list.some(({ label }) => label === 'loop rate'));
      const words = await server.connection.sendRequest(CompletionRequest.type, {
        ...about,
        position: at('steep'),
      });
      const labels = (Array.isArray(words) ? words : (words?.items ?? [])).map(({ label }) => label);
      assert.deepEqual(labels, ['gentle', 'steep', 'gap', 'motors', 'searching', 'none']);
    }),
  );

  it(
    'has an outline and folds by its groups, and nothing of a script is done to it',
    withText(async (server) => {
      const symbols = await server.connection.sendRequest(DocumentSymbolRequest.type, about);
      assert.deepEqual(
        symbols?.map(({ name }) => name),
        ['radio', 'reports', 'quiet', 'steadiness', 'levers'],
      );
      const folds = await server.connection.sendRequest(FoldingRangeRequest.type, about);
      assert.deepEqual(folds?.find(({ startLine }) => startLine === 6)?.endLine, 10);
      const options = { tabSize: 2, insertSpaces: true };
      assert.equal(
        await server.connection.sendRequest(DocumentFormattingRequest.type, { ...about, options }),
        null,
      );
    }),
  );

  it(
    'is followed through edits line by line',
    withText(async (server) => {
      const range = { start: at('conrer'), end: at('conrer', 6) };
      await server.change(uri, 2, { range, text: 'corner' });
      const second = await server.pushedFor(uri, 2);
      assert.ok(!shown(second.diagnostics).some((one) => one.startsWith('8:0-23 board')));
      await server.change(uri, 3, {
        range: { start: { line: 2, character: 0 }, end: { line: 2, character: 0 } },
        text: '\n\n',
      });
      const third = await server.pushedFor(uri, 3);
      assert.ok(shown(third.diagnostics).includes('11:27-31 board/value-unclear'));
      await server.change(uri, 4, { text: 'what was that' });
      const fourth = await server.pushedFor(uri, 4);
      assert.deepEqual(shown(fourth.diagnostics), ['0:0-0 board/no-settings']);
    }),
  );

  it('is counted as the client counts', () =>
    withServer({ capabilities: countingIn('utf-8') }, async (server) => {
      await openText(server);
      const { diagnostics } = await server.pushedFor(uri, 1);
      assert.ok(shown(diagnostics).includes('9:27-31 board/value-unclear'));
    }));

  it('that no profile knows is said to be so', () =>
    withServer({}, async (server) => {
      await server.open(uri, 'what is that\nand this', 1, 'board-text');
      const { diagnostics } = await server.pushedFor(uri, 1);
      assert.deepEqual(shown(diagnostics), ['0:0-0 board/no-profile']);
    }));

  it('offers where to say what a setting means, to a client that has such a place, and on its line alone', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      await server.open(uri, '[calm]\nfirst cut = 225\nidle share = 65\n', 1, 'board-text');
      await server.pushedFor(uri, 1);
      const offered = async (line: number) => {
        const place = { line, character: 2 };
        const context = { diagnostics: [] };
        const asked = { ...about, range: { start: place, end: place }, context };
        const found = (await server.connection.sendRequest(CodeActionRequest.type, asked)) ?? [];
        return found.map(({ command }) => (typeof command === 'object' ? command.arguments : command));
      };
      assert.deepEqual(await offered(2), [[uri, 'calm/idle share']]);
      assert.deepEqual(await offered(0), []);
    }));
});
