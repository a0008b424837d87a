import {
  autocompletion,
  closeBrackets,
  closeBracketsKeymap,
  completionKeymap,
} from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { lintGutter, lintKeymap } from '@codemirror/lint';
import {
  findReferencesKeymap,
  formatKeymap,
  hoverTooltips,
  jumpToDefinitionKeymap,
  type LSPClient,
  renameKeymap,
  serverCompletion,
} from '@codemirror/lsp-client';
import { highlightSelectionMatches, searchKeymap } from '@codemirror/search';
import { EditorState, type Extension } from '@codemirror/state';
import {
  drawSelection,
  EditorView,
  highlightActiveLine,
  highlightActiveLineGutter,
  highlightSpecialChars,
  keymap,
  lineNumbers,
  tooltips,
} from '@codemirror/view';
import { coloured } from './highlight';
import { type OpenText, pageStyles } from './texts';

/** What the editor of a text is made of. `lsp`: what is asked about it, where the server knows its language. */
export function extensionsFor(lsp: LSPClient, isServed: boolean, { uri, languageId }: OpenText): Extension {
  return [
    lineNumbers(),
    highlightActiveLineGutter(),
    highlightSpecialChars(),
    history(),
    drawSelection(),
    EditorState.allowMultipleSelections.of(true),
    closeBrackets(),
    autocompletion(),
    highlightActiveLine(),
    highlightSelectionMatches(),
    lintGutter(),
    coloured(languageId),
    isServed ? [lsp.plugin(uri, languageId), serverCompletion(), hoverTooltips({ hoverTime: 350 })] : [],
    keymap.of([
      ...closeBracketsKeymap,
      ...defaultKeymap,
      ...searchKeymap,
      ...historyKeymap,
      ...completionKeymap,
      ...lintKeymap,
      ...(isServed
        ? [...formatKeymap, ...renameKeymap, ...jumpToDefinitionKeymap, ...findReferencesKeymap]
        : []),
      // Tab leads on, as everywhere on a page: no line of a script is set in.
    ]),
    pageStyles(),
    // On a phone a tap opens them: what leads away from the script stays in reach.
    tooltips({ tooltipSpace: ({ dom }) => dom.getBoundingClientRect() }),
    EditorView.lineWrapping,
    EditorView.contentAttributes.of({
      'aria-label': 'Script',
      autocapitalize: 'off',
      autocorrect: 'off',
      spellcheck: 'false',
      // It can be reached by keys without this as well: this says so to what reads the page.
      tabindex: '0',
    }),
  ];
}
