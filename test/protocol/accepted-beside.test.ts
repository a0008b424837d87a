import assert from 'node:assert/strict';
import {
  type CodeAction,
  CodeActionRequest,
  type Diagnostic,
  FileChangeType,
} from 'vscode-languageserver-protocol/node';
import { keepRequest } from '../../server/src/lsp/board-protocol';
import { writtenRequest } from '../../server/src/lsp/files-protocol';
import { propsoff as run } from '../support/command-line';
import { plover } from '../support/plover';
import { type Scratch, withScratch } from '../support/scratch';
import { ableClient, ownClient, type TestServer, withServer } from '../support/server';

const script = 'include "plover.boardtext"\n[craft]\nname = "Plover"\nmass = 21 g\n';
const risk = 'safe/arms-at-any-tilt';
const reason = 'starts from a hook, all stand back';
const file = 'plover.boardtext.board.json';
const told = (row: string) => `{\n  "version": 1,\n  "accepted": [\n    ${row}\n  ]\n}\n`;
const row = (why: string) => `{ "setting": ["tilt limit"], "check": "${risk}", "reason": "${why}" }`;

const meanings = ['arm low=switch.arm.on part low', 'arm high=switch.arm.on part high'];
const confirmed = [...meanings, 'arm stick=switch.arm.channel', 'tilt limit=arming.tilt-limit unit deg'];

/** The pasted text with its profile, learned by the command line, and a script that includes it. */
function withPlover(use: (scratch: Scratch) => Promise<void>) {
  return () =>
    withScratch({ 'plover.boardtext': plover, 'my.craft': script }, async (scratch) => {
      const said = confirmed.flatMap((one) => ['--confirm', one]);
      const learned = propsoff(scratch, 'learn', 'plover.boardtext', '--name', 'plover', ...said);
      assert.equal(learned.status, 0, learned.stderr);
      scratch.write('boards/plover.json', learned.stdout);
      await use(scratch);
    });
}

function propsoff({ path }: Scratch, ...args: string[]) {
  return run(args, { cwd: path });
}

const isRisk = ({ code }: Diagnostic) => code === risk;

function textOf(diagnostic: Diagnostic | undefined): string {
  return String(diagnostic?.message ?? '');
}

async function actionsAt(server: TestServer, uri: string, line: number): Promise<readonly CodeAction[]> {
  const range = { start: { line, character: 18 }, end: { line, character: 18 } };
  const asked = { textDocument: { uri }, range, context: { diagnostics: [] } };
  return ((await server.connection.sendRequest(CodeActionRequest.type, asked)) ?? []) as CodeAction[];
}

function accepting(actions: readonly CodeAction[]): CodeAction {
  const title = `Accept this risk: ${risk}, beside the text`;
  return actions.find((one) => one.title === title) ?? assert.fail(actions.map((one) => one.title).join());
}

describe('a risk of a board’s text that knows no comments', () => {
  it(
    'is accepted beside the text by a press, and told to be so at once',
    withPlover((scratch) =>
      withServer({ folders: [scratch.uri], capabilities: ownClient }, async (server) => {
        const uri = scratch.uriOf('plover.boardtext');
        await server.open(uri, plover, 1, 'board-text');
        await server.pushed(uri, ({ diagnostics }) => diagnostics.some(isRisk));
        const { command } = accepting(await actionsAt(server, uri, 3));
        assert.equal(command?.command, 'propsoff.acceptBeside');
        const [of, { withdraw, accept }] = command.arguments ?? [];
        assert.deepEqual([of, withdraw, accept.reason], [uri, null, '']);
        // What the client does with it.
        const change = { board: null, withdraw, accept: { ...accept, reason } };
        const answer = await server.connection.sendRequest(keepRequest, { uri, change });
        assert.ok(answer.kind === 'file');
        assert.deepEqual([answer.uri, answer.text], [scratch.uriOf(file), told(row(reason))]);
        scratch.write(file, answer.text);
        await server.connection.sendRequest(writtenRequest, { uri: answer.uri });
        const { diagnostics } = await server.pushed(uri, (last) =>
          last.diagnostics.some((one) => textOf(one).startsWith('Accepted')),
        );
        assert.match(textOf(diagnostics.find(isRisk)), /^Accepted \(starts from a hook, all stand back\): /);
        assert.ok(!(await actionsAt(server, uri, 3)).some(({ title }) => title.startsWith('Accept')));
      }),
    ),
  );

  it(
    'is accepted by an edit that makes the file, for any other client that can',
    withPlover((scratch) => {
      const workspaceEdit = { documentChanges: true, resourceOperations: ['create' as const] };
      const capabilities = { ...ableClient, workspace: { ...ableClient.workspace, workspaceEdit } };
      return withServer({ folders: [scratch.uri], capabilities }, async (server) => {
        const uri = scratch.uriOf('plover.boardtext');
        await server.open(uri, plover, 1, 'board-text');
        await server.pushed(uri, ({ diagnostics }) => diagnostics.some(isRisk));
        const { edit } = accepting(await actionsAt(server, uri, 3));
        assert.deepEqual(edit?.documentChanges, [
          { kind: 'create', uri: scratch.uriOf(file), options: { overwrite: true } },
          {
            textDocument: { uri: scratch.uriOf(file), version: null },
            edits: [
              {
                range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
                newText: told(row('why this is fine here')),
              },
            ],
          },
        ]);
        // Nobody said why yet.
        scratch.write(file, told(row('why this is fine here')));
        await server.filesChanged({ uri: scratch.uriOf(file), type: FileChangeType.Created });
        const { diagnostics } = await server.pushed(uri, (last) =>
          last.diagnostics.some(({ code }) => code === 'board/acceptance-unmatched'),
        );
        assert.equal(diagnostics.find(isRisk)?.severity, 2);
      });
    }),
  );

  it(
    'is accepted at the include in the script too',
    withPlover((scratch) =>
      withServer({ folders: [scratch.uri], capabilities: ownClient }, async (server) => {
        const uri = scratch.uriOf('my.craft');
        await server.open(uri, script);
        await server.pushed(uri, ({ diagnostics }) => diagnostics.some(isRisk));
        const { command } = accepting(await actionsAt(server, uri, 0));
        const [text, { accept }] = command?.arguments ?? [];
        assert.deepEqual(
          [text, accept.setting.name, accept.check],
          [scratch.uriOf('plover.boardtext'), 'tilt limit', risk],
        );
      }),
    ),
  );

  it(
    'is not accepted into a file that can’t be read, and the fault is told',
    withPlover((scratch) => {
      scratch.write(file, '{ "version": 1,\n  "acepted": [] }');
      return withServer({ folders: [scratch.uri], capabilities: ownClient }, async (server) => {
        const uri = scratch.uriOf('plover.boardtext');
        await server.open(uri, plover, 1, 'board-text');
        const { diagnostics } = await server.pushed(uri, (last) =>
          last.diagnostics.some(({ code }) => code === 'board/beside-unreadable'),
        );
        const fault = diagnostics.find(({ code }) => code === 'board/beside-unreadable');
        assert.match(textOf(fault), /can't be read: line 2: "acepted" is not known here\./);
        assert.ok(!(await actionsAt(server, uri, 3)).some(({ title }) => title.startsWith('Accept')));
        const change = { board: 'wren', withdraw: null, accept: null };
        const answer = await server.connection.sendRequest(keepRequest, { uri, change });
        assert.match(answer.kind === 'refused' ? answer.message : '', /Mend it first\.$/);
      });
    }),
  );

  it(
    'stays accepted on the command line, from the pasted text to the proof, and over the next capture',
    withPlover(async (scratch) => {
      const risky = propsoff(scratch, 'check', 'plover.boardtext');
      assert.match(risky.stdout, /^plover\.boardtext:4:17 risk safe\/arms-at-any-tilt /m);
      scratch.write(file, told(row(reason)));
      for (const path of ['plover.boardtext', 'my.craft']) {
        const { stdout } = propsoff(scratch, 'check', path);
        assert.match(stdout, /note safe\/arms-at-any-tilt/);
        assert.match(stdout, /starts from a hook, all stand back/);
        assert.doesNotMatch(stdout, /accept-unused|risk safe\/arms-at-any-tilt/);
      }
      const handed = propsoff(scratch, 'board-text', 'my.craft', '--despite', 'a test');
      assert.equal(handed.stdout, plover);
      assert.match(handed.stderr, /^Accepted: .* \(safe\/arms-at-any-tilt\): starts from a hook/m);
      scratch.write('captured.txt', handed.stdout);
      assert.equal(propsoff(scratch, 'prove', 'my.craft', 'captured.txt').status, 0);
      scratch.write('plover.boardtext', plover.replace('1700', '1720'));
      assert.match(propsoff(scratch, 'check', 'plover.boardtext').stdout, /note safe\/arms-at-any-tilt/);
    }),
  );

  it(
    'is told to be accepted for nothing, once its setting is gone or raises it no more, and taken back by a press',
    withPlover(async (scratch) => {
      scratch.write(file, told(row(reason)));
      scratch.write('plover.boardtext', plover.replace('180 ', '2 '));
      assert.match(
        propsoff(scratch, 'check', 'plover.boardtext').stdout,
        /if it is meant, accept it with a reason, in the \.board\.json beside the text\.$/m,
      );
      scratch.write('plover.boardtext', plover.replace('180 ', '40 '));
      const unused = propsoff(scratch, 'check', 'my.craft').stdout;
      assert.match(
        unused,
        /my\.craft:1:9 note line\/accept-unused Nothing raises safe\/arms-at-any-tilt here/,
      );
      assert.match(
        propsoff(scratch, 'read', 'plover.boardtext').stdout,
        /^tilt-limit = 40 deg # accept safe\/arms-at-any-tilt: starts from a hook, all stand back$/m,
      );
      const without = plover.replace(/^tilt.*\n/m, '');
      await withServer({ folders: [scratch.uri], capabilities: ownClient }, async (server) => {
        const uri = scratch.uriOf('plover.boardtext');
        await server.open(uri, without, 1, 'board-text');
        const { diagnostics } = await server.pushed(uri, (last) =>
          last.diagnostics.some(({ code }) => code === 'board/acceptance-unmatched'),
        );
        assert.match(
          textOf(diagnostics.find(({ code }) => code === 'board/acceptance-unmatched')),
          /^Beside this text safe\/arms-at-any-tilt is accepted for tilt limit, which is not in it\./,
        );
        const remove = (await actionsAt(server, uri, 0)).find(
          ({ title }) => title === 'Remove the acceptance',
        );
        const [, change] = remove?.command?.arguments ?? [];
        const answer = await server.connection.sendRequest(keepRequest, {
          uri,
          change: { board: null, ...change },
        });
        assert.equal(answer.kind === 'file' ? answer.text : '', '{\n  "version": 1\n}\n');
      });
    }),
  );
});
