import { strict as assert } from 'node:assert';
import {
  CancellationTokenSource,
  DocumentDiagnosticRequest,
  FileChangeType,
  type PreviousResultId,
  type WorkspaceDiagnosticReportPartialResult,
  WorkspaceDiagnosticRequest,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver-protocol/node';
import { type Scratch, withScratch } from '../support/scratch';
import { askingClient, type TestServer, withOwnServer } from '../support/server';

const habits = 'let quiet = 90 Hz\n';
const using = (name: string) =>
  `include "../habits.craft"\n[craft]\nname = "${name}"\n[gyro.filter.1]\nkind = butterworth\ncutoff = 2 * quiet\n`;
const files = {
  'habits.craft': habits,
  'race/plover.craft': using('Plover'),
  'race/dunlin.craft': using('Dunlin'),
  'alone.craft': '[gyro]\nrate = 3 ms\n',
};

/** A client that keeps what it was told of each script, as an editor does. */
class Problems {
  readonly ids = new Map<string, string>();
  readonly codes = new Map<string, readonly string[]>();

  constructor(
    private readonly server: TestServer,
    private readonly scratch: Scratch,
  ) {}

  /** Asks once more; gives the names of the scripts of which something was told. */
  async ask(token = new CancellationTokenSource().token, takesParts = true): Promise<readonly string[]> {
    const { connection } = this.server;
    const told: string[] = [];
    const partialResultToken = `parts ${Math.random()}`;
    const take = ({ items }: WorkspaceDiagnosticReportPartialResult) => {
      told.push(...items.map((item) => this.take(item)));
    };
    const listening = connection.onProgress(
      WorkspaceDiagnosticRequest.partialResult,
      partialResultToken,
      take,
    );
    const previousResultIds = [...this.ids].map(([uri, value]): PreviousResultId => ({ uri, value }));
    const params = { previousResultIds, ...(takesParts ? { partialResultToken } : {}) };
    const answer = await connection.sendRequest(WorkspaceDiagnosticRequest.type, params, token);
    assert.ok(!takesParts || answer.items.length === 0);
    take(answer);
    listening.dispose();
    return told.sort();
  }

  of(name: string): readonly string[] {
    return this.codes.get(name) ?? [];
  }

  private take(item: WorkspaceDocumentDiagnosticReport): string {
    const name = item.uri.slice(this.scratch.uri.length + 1);
    if (item.kind !== 'full') return name;
    if (item.resultId === undefined) this.ids.delete(item.uri);
    else this.ids.set(item.uri, item.resultId);
    this.codes.set(
      name,
      item.items.map(({ code, message }) => String(code ?? message)),
    );
    return name;
  }
}

/** Each test is a client that has been told nothing yet. */
function withProblems(
  run: (problems: Problems, server: TestServer, scratch: Scratch) => Promise<void>,
  more: Readonly<Record<string, string>> = {},
): Promise<void> {
  return withScratch({ ...files, ...more }, (scratch) =>
    withOwnServer({ folders: [scratch.uri], capabilities: askingClient }, (server) =>
      run(new Problems(server, scratch), server, scratch),
    ),
  );
}

const line = { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } };

describe('findings of scripts that nobody has opened', () => {
  it('are told when the client asks, in parts or at once, and no more than once', () =>
    withProblems(async (problems, server) => {
      assert.deepEqual(await problems.ask(), Object.keys(files).sort());
      assert.deepEqual(problems.of('alone.craft'), ['line/wrong-dimension']);
      assert.deepEqual(problems.of('habits.craft'), []);
      assert.ok(problems.of('race/plover.craft').includes('safe/no-arm-switch'));
      problems.ids.clear();
      assert.deepEqual(await problems.ask(undefined, false), Object.keys(files).sort());
      assert.deepEqual(server.published, []);
    }));

  it('are those of the crafts that an edit of what they share breaks, as it is typed and when it is mended', () =>
    withProblems(async (problems, server, scratch) => {
      await server.open(scratch.uriOf('habits.craft'), habits);
      await problems.ask();
      const before = problems.of('race/plover.craft');
      const news = problems.ask();
      await server.change(scratch.uriOf('habits.craft'), 2, { range: line, text: 'let quiet = 90 V\n' });
      const told = new Set(await news);
      // What was edited may be told before what it breaks has been looked at: the next answer has the rest.
      while (told.size < 3) for (const name of await problems.ask()) told.add(name);
      assert.deepEqual([...told].sort(), ['habits.craft', 'race/dunlin.craft', 'race/plover.craft']);
      assert.ok(
        problems.of('race/plover.craft').includes('line/wrong-dimension'),
        problems.of('race/plover.craft').join(),
      );
      const mended = problems.ask();
      await server.change(scratch.uriOf('habits.craft'), 3, { range: line, text: habits });
      await mended;
      assert.deepEqual(problems.of('race/plover.craft'), before);
    }));

  it('follow the disk: a script that changes, comes, and goes', () =>
    withProblems(async (problems, server, scratch) => {
      await problems.ask();
      const changed = problems.ask();
      scratch.write('alone.craft', '[gyro]\nrate = 3 kHz\n');
      await server.filesChanged({ uri: scratch.uriOf('alone.craft'), type: FileChangeType.Changed });
      assert.deepEqual(await changed, ['alone.craft']);
      assert.ok(!problems.of('alone.craft').includes('line/wrong-dimension'));
      const came = problems.ask();
      scratch.write('race/knot.craft', '[gyro]\nrte = 3 kHz\n');
      await server.filesChanged({ uri: scratch.uriOf('race/knot.craft'), type: FileChangeType.Created });
      assert.deepEqual(await came, ['race/knot.craft']);
      assert.ok(problems.of('race/knot.craft').includes('line/unknown-name'));
      const went = problems.ask();
      scratch.remove('race/knot.craft');
      await server.filesChanged({ uri: scratch.uriOf('race/knot.craft'), type: FileChangeType.Deleted });
      assert.deepEqual(await went, ['race/knot.craft']);
      assert.deepEqual(problems.of('race/knot.craft'), []);
      assert.ok(!problems.ids.has(scratch.uriOf('race/knot.craft')));
    }));

  it('are taken back of what is closed and is none of the scripts: an editor forgets it then, but shows what it was told', () =>
    withProblems(async (problems, server, scratch) => {
      scratch.write('race/knot.craft', '[gyro]\nrte = 3 kHz\n');
      const texts = [
        { name: 'race/knot.craft', language: 'craft-script', text: '[gyro]\nrte = 3 kHz\n' },
        { name: 'marl.boardtext', language: 'board-text', text: '[plover]\ntilt = 200\n' },
      ];
      for (const { name, language, text } of texts) {
        await server.open(scratch.uriOf(name), text, 1, language);
        await problems.ask();
        assert.notDeepEqual(problems.of(name), [], name);
      }
      scratch.remove('race/knot.craft');
      await server.filesChanged({ uri: scratch.uriOf('race/knot.craft'), type: FileChangeType.Deleted });
      for (const { name } of texts) {
        const news = problems.ask();
        problems.ids.delete(scratch.uriOf(name));
        await server.close(scratch.uriOf(name));
        assert.ok((await news).includes(name), name);
        assert.deepEqual(problems.of(name), []);
        // As long as it asks for a closed text once more, it heeds nothing else about it.
        assert.ok((await problems.ask()).includes(name), `${name}, again`);
      }
    }));

  it('take over where a script is closed, edits that were not saved forgotten', () =>
    withProblems(async (problems, server, scratch) => {
      const uri = scratch.uriOf('alone.craft');
      await problems.ask();
      await server.open(uri, '[gyro]\nrte = 3 kHz\n');
      await problems.ask();
      assert.ok(problems.of('alone.craft').includes('line/unknown-name'));
      const news = problems.ask();
      await server.close(uri);
      assert.deepEqual(await news, ['alone.craft']);
      assert.deepEqual(problems.of('alone.craft'), ['line/wrong-dimension']);
      const textDocument = { uri };
      const alone = await server.connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument });
      assert.deepEqual(alone.kind === 'full' && alone.items.map(({ code }) => code), [
        'line/wrong-dimension',
      ]);
    }));

  it('say that a script could not be read, leave out what propsoff.json leaves out, and heed its levels', () =>
    withProblems(
      async (problems, server, scratch) => {
        await problems.ask();
        assert.deepEqual(problems.of('odd.craft'), [
          'This could not be read, so nothing in it is checked: it is not a text.',
        ]);
        assert.equal(problems.codes.has('old/snipe.craft'), false);
        const news = problems.ask();
        scratch.write('propsoff.json', '{}');
        await server.filesChanged({ uri: scratch.uriOf('propsoff.json'), type: FileChangeType.Changed });
        assert.deepEqual(await news, ['old/snipe.craft']);
      },
      { 'odd.craft': 'a\0', 'old/snipe.craft': 'rte = 3\n', 'propsoff.json': '{ "leaveOut": ["old"] }' },
    ));

  it('know the boards of the workspace, and what scripts are parts of others', () =>
    withProblems(
      async (problems) => {
        await problems.ask();
        assert.deepEqual(problems.of('packs.craft'), []);
        assert.ok(!problems.of('gull.craft').some((code) => code.startsWith('board/unknown')));
      },
      {
        'packs.craft': '[pack.sprint]\nchemistry = lipo\ncells = 6\ncapacity = 550 mAh\n',
        'gull.craft': 'include "packs.craft"\n[craft]\nname = "Gull"\n[board]\nprofile = wren\n',
      },
    ));

  it('keep a client waiting that knows all, until it loses interest or asks again', () =>
    withProblems(async (problems) => {
      await problems.ask();
      const source = new CancellationTokenSource();
      const held = problems.ask(source.token);
      source.cancel();
      await assert.rejects(held, { code: -32800 });
      const first = problems.ask();
      const other = new CancellationTokenSource();
      const second = problems.ask(other.token);
      assert.deepEqual(await first, []);
      other.cancel();
      await assert.rejects(second, { code: -32800 });
    }));
});
