import fc from 'fast-check';
import { craftScript } from '../../support/craft-scripts';
import { capture } from './board-texts';
import { catalogueScript } from './catalogue-script';
import { anyText, slipped } from './texts';

/** Something that a client sends. */
export interface Sent {
  readonly method: string;
  readonly isRequest: boolean;
  readonly params: unknown;
  /** Whether the parameters are of the form that the protocol says. */
  readonly isRight: boolean;
  /** Whether the client loses interest at once. */
  readonly isCancelled: boolean;
}

const folder = 'file:///nowhere-at-all/fuzz';
export const uris: readonly string[] = [
  `${folder}/a.craft`,
  `${folder}/b.craft`,
  `${folder}/board.txt`,
  `${folder}/propsoff/own.json`,
  'untitled:Untitled-1',
  'git:/a.craft?%7B%7D',
  'file:///c%3A/cfg/a.craft',
  'vscode-notebook-cell:/x#a',
  '',
  '%',
  'no uri at all',
  'file:///%ZZ/a.craft',
];

const uri = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...uris.slice(0, 3)) },
  { weight: 1, arbitrary: fc.constantFrom(...uris) },
);
const number = fc.oneof(fc.nat(30), fc.constantFrom(0, 99_999, 2_147_483_647));
const position = fc.record({ line: number, character: number });
const range = fc.record({ start: position, end: position });
const textDocument = fc.record({ uri });
const text = fc.oneof(craftScript, slipped(catalogueScript), capture, anyText);
const path = fc.constantFrom('gyro.filter.1.cutoff', 'pack.sprint.cells', 'craft.mass', 'x', '', '__proto__');
const pack = fc.constantFrom(null, 'sprint', 'cruise', 'nowhere', '__proto__');
const board = fc.constantFrom(null, 'wren', 'heron', 'nowhere', '__proto__');
const today = fc.constantFrom('2026-05-14', '', 'tomorrow');
const record = fc.oneof(fc.constant(null), fc.constantFrom('{}', 'null', '[', '{"version":1}'), anyText);
const here = fc.record({ textDocument, position });
const alone = fc.record({ textDocument });
const side = fc.record({ uri, text: fc.option(craftScript), name: fc.constantFrom('one', 'two'), pack });

const lesson = fc.record({
  kind: fc.constantFrom('setting', 'comment', 'heading', 'command', 'same-command', 'omits-defaults'),
  line: fc.option(fc.nat(12)),
  part: fc.oneof(fc.constant(''), anyText),
});

/** A board of which something is said. */
const inHand = fc.record({
  text: capture,
  fileName: fc.constantFrom('kestrel.boardtext', '', '__proto__'),
  uri: fc.option(fc.constant('test:///work/kestrel.boardtext')),
  board,
  profile: fc.option(fc.oneof(fc.constantFrom('{}', '{"name":"kestrel","settings":[]}'), anyText)),
});

const requests: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  'textDocument/hover': here,
  'textDocument/completion': here,
  'textDocument/definition': here,
  'textDocument/documentHighlight': here,
  'textDocument/prepareRename': here,
  'textDocument/references': here.map((one) => ({ ...one, context: { includeDeclaration: true } })),
  'textDocument/rename': fc
    .tuple(here, fc.oneof(fc.constantFrom('quiet', 'a b', '', '__proto__'), anyText))
    .map(([one, newName]) => ({ ...one, newName })),
  'textDocument/documentSymbol': alone,
  'textDocument/documentLink': alone,
  'textDocument/foldingRange': alone,
  'textDocument/codeLens': alone,
  'textDocument/semanticTokens/full': alone,
  'textDocument/inlayHint': fc.record({ textDocument, range }),
  'textDocument/selectionRange': fc.record({ textDocument, positions: fc.array(position, { maxLength: 3 }) }),
  'textDocument/formatting': fc.record({
    textDocument,
    options: fc.constant({ tabSize: 2, insertSpaces: true }),
  }),
  'textDocument/rangeFormatting': fc.record({
    textDocument,
    range,
    options: fc.constant({ tabSize: 2, insertSpaces: true }),
  }),
  'textDocument/codeAction': fc.record({
    textDocument,
    range,
    context: fc.constantFrom(
      { diagnostics: [] },
      { diagnostics: [], only: ['source'] },
      { diagnostics: [], only: ['quickfix'] },
    ),
  }),
  'workspace/symbol': fc.record({ query: fc.oneof(fc.constantFrom('', 'gyro'), anyText) }),
  'completionItem/resolve': fc.record({
    label: anyText,
    data: fc.constantFrom(null, 3, {}, { kind: 'none' }),
  }),
  'propsoff/summary': alone,
  'propsoff/sheet': alone,
  'propsoff/benchCard': alone,
  'propsoff/setHere': here,
  'propsoff/explain': here,
  'propsoff/tryable': fc.record({ textDocument, path, pack }),
  'propsoff/try': fc.record({
    textDocument,
    path,
    pack,
    to: fc.oneof(fc.constantFrom('120 Hz', '4', ''), anyText),
  }),
  'propsoff/flightForm': fc.record({ textDocument, record, today }),
  'propsoff/compare': fc.record({ before: side, after: side }),
  'propsoff/boardText': fc.record({
    textDocument,
    board,
    since: record,
    reason: fc.option(anyText),
    isPreview: fc.boolean(),
  }),
  'propsoff/prove': fc.record({ textDocument, capture, board, omitsDefaults: fc.boolean() }),
  'propsoff/read': fc.record({ capture, board }),
  'propsoff/meanings': fc.record({ of: inHand }),
  'propsoff/sayMeanings': fc.record({
    of: inHand,
    said: fc.array(
      fc.record({ key: path, row: fc.oneof(fc.constantFrom('{}', '{"means":"motor.idle"}'), anyText) }),
      {
        maxLength: 3,
      },
    ),
  }),
  'propsoff/choices': fc.record({
    of: inHand,
    sayings: fc.array(
      fc.record({ key: path, saying: fc.oneof(fc.constantFrom('{"means":"motor.idle"}', '[]'), anyText) }),
      { maxLength: 3 },
    ),
  }),
  'propsoff/parameterForm': fc.record({ means: path }),
  'propsoff/sayable': fc.constant({}),
  'propsoff/hardware': fc.record({
    of: inHand,
    hardware: fc.oneof(fc.constantFrom('{}', '{"motorOutputs":4}', '{"ports":[{"name":"a b"}]}'), anyText),
  }),
  'propsoff/lesson': fc.record({
    of: inHand,
    lesson,
  }),
  'propsoff/teach': fc.record({
    textDocument,
    lesson,
  }),
  'propsoff/written': fc.record({ uri: fc.constant('test:///work/boards/kestrel.json') }),
  'propsoff/boards': fc.constant({}),
};

const change = fc.oneof(
  fc.record({ text }),
  fc.record({ range, text: fc.oneof(fc.constantFrom('', 'x', '\n'), text) }),
);
const notifications: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  'textDocument/didOpen': fc.record({
    textDocument: fc.record({
      uri,
      languageId: fc.constantFrom('craft-script', 'craft-script', 'board-text', 'json', ''),
      version: number,
      text,
    }),
  }),
  'textDocument/didChange': fc.record({
    textDocument: fc.record({ uri, version: number }),
    contentChanges: fc.array(change, { maxLength: 3 }),
  }),
  'textDocument/didClose': alone,
  'workspace/didChangeWatchedFiles': fc.record({
    changes: fc.array(fc.record({ uri, type: fc.constantFrom(1, 2, 3) }), { maxLength: 4 }),
  }),
  'workspace/didRenameFiles': fc.record({
    files: fc.array(fc.record({ oldUri: uri, newUri: uri }), { maxLength: 2 }),
  }),
  'workspace/didDeleteFiles': fc.record({
    files: fc.array(
      alone.map((one) => one.textDocument),
      { maxLength: 2 },
    ),
  }),
  'propsoff/packInView': fc.record({ uri, pack }),
  'propsoff/boardOf': fc.record({ uri, board: fc.constantFrom('wren', 'heron', 'nowhere') }),
};

function sent(all: Readonly<Record<string, fc.Arbitrary<unknown>>>, isRequest: boolean): fc.Arbitrary<Sent> {
  return fc
    .constantFrom(...Object.entries(all))
    .chain(([method, params]) =>
      fc
        .tuple(
          fc.oneof(
            { weight: 14, arbitrary: params.map(right) },
            { weight: 1, arbitrary: fc.json().map(wrong) },
          ),
          fc.integer({ min: 0, max: 9 }),
        )
        .map(([told, lot]) => ({ method, isRequest, ...told, isCancelled: isRequest && lot === 0 })),
    );
}

const right = (params: unknown) => ({ params, isRight: true });
const wrong = (json: string) => ({ params: { ...asObject(JSON.parse(json)) }, isRight: false });
function asObject(value: unknown): object {
  return typeof value === 'object' && value !== null ? value : { textDocument: value, uri: value };
}

const opening = fc
  .record({ text, languageId: fc.constantFrom('craft-script', 'craft-script', 'board-text') })
  .map(
    ({ text: told, languageId }): Sent => ({
      method: 'textDocument/didOpen',
      isRequest: false,
      params: { textDocument: { uri: uris[0], languageId, version: 1, text: told } },
      isRight: true,
      isCancelled: false,
    }),
  );

/** A short session: a script is open, then anything may come. */
export const session: fc.Arbitrary<readonly Sent[]> = fc
  .tuple(
    opening,
    fc.array(
      fc.oneof(
        { weight: 3, arbitrary: sent(requests, true) },
        { weight: 1, arbitrary: sent(notifications, false) },
      ),
      { minLength: 1, maxLength: 6 },
    ),
  )
  .map(([first, others]) => [first, ...others]);
