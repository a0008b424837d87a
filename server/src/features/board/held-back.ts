import type { BoardLayer } from '../../board/layer/layer';
import { placeInScript } from '../../board/layer/places';
import type { Catalog } from '../../catalog/catalog';
import type { Finding } from '../../checks/report/finding';
import type { Script } from '../../craft/script';
import { boardProblems } from './problems';

/** What is wrong with a board's text by what its own listing says: it holds the text back as other findings do. */
export function ownFindings(layer: BoardLayer, script: Script, catalog: Catalog): readonly Finding[] {
  return boardProblems(layer, catalog).flatMap(({ check, values, range }) => {
    const line = script.document.lineAt(placeInScript(layer, range.start).line);
    if (line === undefined) return [];
    const place = { script, line, start: 0, end: line.text.length };
    return [{ check, level: check.level, values, place, related: [], pack: null, fixes: [], accepted: null }];
  });
}
