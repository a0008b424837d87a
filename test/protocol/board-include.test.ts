import assert from 'node:assert/strict';
import {
  type CodeAction,
  CodeActionRequest,
  DefinitionRequest,
  HoverRequest,
} from 'vscode-languageserver-protocol/node';
import { withScratch } from '../support/scratch';
import { withServer } from '../support/server';
import { shown } from '../support/shown';

const board = [
  'in quiet:',
  'gyro rate is 6.4;',
  'in steadiness:',
  'loop rate is 2.5;',
  'in radio:',
  'glow is 3;',
];
const script = ['include "kestrel.boardtext"', '', '[craft]', 'name = "Kestrel"', '[own.radio]', 'glow = 4'];

describe('a script that includes its board’s text', () => {
  it('and the text tell of each other, in the editor', () =>
    withScratch({ 'kestrel.boardtext': board.join('\n') }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const [main, text] = [scratch.uriOf('kestrel.craft'), scratch.uriOf('kestrel.boardtext')];
        await server.open(main, script.join('\n'));
        const uneven = 'tune/control-rate-uneven';
        const has = ({ diagnostics }: { diagnostics: { code?: string | number }[] }) =>
          diagnostics.some(({ code }) => code === uneven);
        const { diagnostics } = await server.pushed(main, has);
        const found = diagnostics.find(({ code }) => code === uneven) ?? assert.fail('not found');
        assert.equal(found.range.start.line, 0);
        const [there] = found.relatedInformation ?? [];
        assert.deepEqual(
          [there?.location.uri, there?.location.range.start],
          [text, { line: 3, character: 13 }],
        );

        const actions = await server.connection.sendRequest(CodeActionRequest.type, {
          textDocument: { uri: main },
          range: found.range,
          context: { diagnostics: [found] },
        });
        const [inText, inScript] = (actions ?? []) as CodeAction[];
        const editsOf = (action: CodeAction | undefined, uri: string) =>
          action?.edit?.changes?.[uri] ??
          action?.edit?.documentChanges?.flatMap((change) =>
            'edits' in change && change.textDocument.uri === uri ? change.edits : [],
          ) ??
          [];
        const [edit] = editsOf(inText, text);
        assert.match(JSON.stringify(edit), /"line":3.*"newText":"\d\.\d"/);
        assert.match(inScript?.title ?? '', /, in this script$/);
        assert.equal(editsOf(inScript, main).length, 1);

        const inGlow = { textDocument: { uri: main }, position: { line: 5, character: 1 } };
        const hover = await server.connection.sendRequest(HoverRequest.type, inGlow);
        assert.match(JSON.stringify(hover?.contents), /in place of `3` in kestrel.{0,2}\.boardtext/);
        const definition = await server.connection.sendRequest(DefinitionRequest.type, inGlow);
        assert.match(JSON.stringify(definition), /kestrel\.(craft|boardtext)/);

        await server.open(text, board.join('\n'), 1, 'board-text');
        const own = await server.pushed(text, (sent) => sent.diagnostics.length > 0);
        assert.ok(shown(own.diagnostics).some((one) => one.startsWith('3:13-16 tune/control-rate-uneven')));
      }),
    ));
});
