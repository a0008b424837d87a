import { strict as assert } from 'node:assert';
import * as boardProtocol from '../../../server/src/lsp/board-protocol';
import * as filesProtocol from '../../../server/src/lsp/files-protocol';
import * as flightProtocol from '../../../server/src/lsp/flight-protocol';
import * as learnProtocol from '../../../server/src/lsp/learn-protocol';
import { OwnNotification, OwnRequest } from '../../../server/src/lsp/own-message';
import * as protocol from '../../../server/src/lsp/protocol';
import * as recordingProtocol from '../../../server/src/lsp/recording-protocol';
import { paramsFault } from '../../../server/src/lsp/requests/table';
import * as valuesProtocol from '../../../server/src/lsp/values-protocol';

describe('the parameters of a message', () => {
  it('have a form for every message of ours that the server takes', () => {
    const files = [
      protocol,
      boardProtocol,
      filesProtocol,
      flightProtocol,
      learnProtocol,
      recordingProtocol,
      valuesProtocol,
    ];
    const own = files.flatMap((file) =>
      Object.values(file).flatMap((one: unknown) =>
        one instanceof OwnRequest || one instanceof OwnNotification ? [one.method] : [],
      ),
    );
    assert.ok(own.length > 20);
    for (const method of own) assert.equal(paramsFault(method, null), `params must be an object`, method);
  });

  it('are told by the place that is wrong', () => {
    const change = (range: unknown) =>
      paramsFault('textDocument/didChange', {
        textDocument: { uri: 'file:///a.craft' },
        contentChanges: [{ text: 'x' }, { text: 'y', range }],
      });
    const end = { line: 0, character: 3 };
    assert.equal(change({ start: end, end }), null);
    assert.equal(change(undefined), null);
    assert.equal(change(null), 'params.contentChanges[1].range must be an object');
    assert.equal(
      change({ start: { line: 0, character: 0.5 }, end }),
      'params.contentChanges[1].range.start.character must be a whole number from 0 up',
    );
    const tried = { textDocument: { uri: 'a' }, path: 'gyro.rate', to: '1 kHz' };
    assert.equal(paramsFault('propsoff/try', tried), null);
    assert.equal(paramsFault('propsoff/try', { ...tried, pack: null }), null);
    assert.equal(paramsFault('propsoff/try', { ...tried, pack: 4 }), 'params.pack must be a text');
  });

  it('of what nobody knows are left to whoever answers that there is no such message', () => {
    assert.equal(paramsFault('made/up', 3), null);
  });
});
