import type { BoardLayer } from '../../board/layer/layer';
import type { Catalog } from '../../catalog/catalog';
import type { Finding, Related } from '../../checks/report/finding';
import { adviceOf, messageOf, type Renderer, relatedText } from '../../checks/report/render';
import { boardAnswers } from './answers';
import type { BoardWords } from './words/board-words';

/** Where boards' texts are found that findings are about. */
export interface TextsOfBoards {
  readonly catalog: Catalog;
  layer(uri: string): BoardLayer | undefined;
}

/** The sentence that says what is wrong, in the board's words where it stands in a board's text. */
export function messageIn(texts: TextsOfBoards, finding: Finding): string {
  return wordsFor(texts, finding)?.message(finding) ?? messageOf(finding);
}

/** The sentence that says what to do. */
export function adviceIn(texts: TextsOfBoards, finding: Finding): string {
  return wordsFor(texts, finding)?.advice(finding) ?? adviceOf(finding);
}

/** The words of a sheet or a card. */
export function boardRenderer(texts: TextsOfBoards): Renderer {
  return {
    message: (finding) => messageIn(texts, finding),
    advice: (finding) => adviceIn(texts, finding),
  };
}

/** What is said of another place. */
export function relatedIn(texts: TextsOfBoards, related: Related): string {
  const { script } = related.place;
  const layer = script.isBoardText ? texts.layer(script.uri) : undefined;
  return layer === undefined
    ? relatedText(related)
    : boardAnswers().boardWords(layer, texts.catalog).related(related);
}

/**
 * The words for a finding about what stands in a board's text: told there, or at the include of the script, where paths
 * stand behind the board's names. Null for what stands in a script.
 */
function wordsFor(texts: TextsOfBoards, { place, related }: Finding): BoardWords | null {
  const [first] = related;
  const isIncluded = place.line.statement.kind === 'include' && first?.place.script.isBoardText === true;
  const script = isIncluded ? first?.place.script : place.script;
  const layer = script?.isBoardText === true ? texts.layer(script.uri) : undefined;
  if (layer === undefined) return null;
  return boardAnswers().boardWords(layer, texts.catalog, isIncluded ? 'script' : 'text');
}
