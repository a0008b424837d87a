import assert from 'node:assert/strict';
import { fileText } from '../../../server/src/file-system/file-text';

describe('the text of a file', () => {
  const texts = ['', '[craft]\nname = "Größe 大きさ 🛩"\n', '\ufeff[craft]\r\n', 'a\ufffdb'];
  for (const text of texts) {
    it(`is read as it is: ${JSON.stringify(text)}`, () => assert.equal(fileText(Buffer.from(text)), text));
  }

  const latin = (text: string) => Buffer.from(text, 'latin1');
  const faulty: readonly (readonly [what: string, bytes: Uint8Array, why: RegExp])[] = [
    [
      'Latin-1',
      latin('a\nname = "café"\n'),
      /^line 2 is not UTF-8 \(is it Latin-1\?\): save the file as UTF-8$/,
    ],
    ['Latin-1 behind other line ends', latin('a\r\nb\rcafé'), /^line 3 /],
    ['a character cut off at the end', Buffer.from('a\nß').subarray(0, 3), /^line 2 /],
    ['UTF-16', Buffer.from('\ufeffa = 1', 'utf16le'), /^it is saved as UTF-16: save it as UTF-8$/],
    ['UTF-16 the other way round', Buffer.from('\ufeffa = 1', 'utf16le').swap16(), /^it is saved as UTF-16/],
    ['what is no text', Uint8Array.of(0x89, 0x50, 0, 0xff), /^it is not a text$/],
  ];
  for (const [what, bytes, why] of faulty) {
    it(`is told to be ${what}, and is not read as damage`, () =>
      assert.throws(
        () => fileText(bytes),
        ({ message }: Error) => why.test(message),
      ));
  }
});
