import { HighlightStyle, StreamLanguage, syntaxHighlighting } from '@codemirror/language';
import type { Extension } from '@codemirror/state';
import { tags } from '@lezer/highlight';

/** What a craft script's characters are, for colour alone: what they mean is the server's to say. */
const script = StreamLanguage.define<{ isAfterSign: boolean }>({
  name: 'craft-script',
  startState: () => ({ isAfterSign: false }),
  token(stream, state) {
    if (stream.sol()) state.isAfterSign = false;
    if (stream.eatSpace()) return null;
    if (stream.match(/#.*/)) return 'comment';
    if (!state.isAfterSign && stream.match(/\[[^\]]*\]?/)) return 'heading';
    if (stream.match(/"(?:[^"\\]|\\.)*"?/)) return 'string';
    if (!state.isAfterSign && stream.match(/(?:include|let)(?=\s)/)) return 'keyword';
    if (stream.eat('=')) {
      state.isAfterSign = true;
      return 'operator';
    }
    if (stream.match(/[+-]?\d[\d_.]*(?:[eE][+-]?\d+)?\s*[%°µμΩA-Za-z]*(?:\/[A-Za-z]+)?/)) return 'number';
    if (stream.match(/[\p{L}_][\p{L}\p{N}_.-]*/u)) return state.isAfterSign ? 'atom' : 'propertyName';
    stream.next();
    return null;
  },
  languageData: { commentTokens: { line: '#' }, closeBrackets: { brackets: ['[', '(', '"'] } },
});

/** The page's own colours, light and dark, by variables: see `frame.css`. */
const style = HighlightStyle.define([
  { tag: tags.comment, class: 'tok-comment' },
  { tag: tags.heading, class: 'tok-heading' },
  { tag: tags.keyword, class: 'tok-keyword' },
  { tag: tags.string, class: 'tok-string' },
  { tag: tags.number, class: 'tok-number' },
  { tag: tags.atom, class: 'tok-word' },
  { tag: tags.propertyName, class: 'tok-name' },
]);

export function coloured(languageId: string): Extension {
  return languageId === 'craft-script' ? [script, syntaxHighlighting(style)] : [];
}
