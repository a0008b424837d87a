import type { BoardLayer } from '../board/layer/layer';
import { statedBreaks } from '../board/layer/stated-breaks';
import type { Finding, Place } from '../checks/report/finding';
import type { Craft } from '../craft/craft';
import { fileName } from '../craft/include-path';

const faulty = 'line/include-faulty';

/**
 * Says at its include that a board's text holds lines that must be mended by what its own listing or its profile
 * says; none where a line of it is reported there anyway, or the text is checked itself.
 */
export function faultyText(
  craft: Craft,
  layer: BoardLayer,
  findings: readonly Finding[],
): readonly Finding[] {
  const included = craft.layers().layers.find(({ script }) => script.isBoardText);
  const at = included?.through[0];
  const check = craft.catalog.check(faulty);
  if (included === undefined || at?.line.statement.kind !== 'include' || check === undefined) return [];
  if (findings.some((one) => one.check === check && one.place.line === at.line)) return [];
  const indices = mustBeMended(layer);
  const [first] = indices;
  const line = first === undefined ? undefined : included.script.document.lineAt(first);
  if (line === undefined) return [];
  const { start, end } = at.line.statement.path;
  const there: Place = { script: included.script, line, start: 0, end: line.text.length };
  return [
    {
      check,
      level: check.level,
      values: { file: fileName(included.script.uri), count: String(indices.length) },
      place: { script: at.script, line: at.line, start, end },
      related: [{ place: there, message: 'The first of them is here.' }],
      pack: null,
      fixes: [],
      accepted: null,
    },
  ];
}

/** The places of settings that the board would refuse, in their order. */
function mustBeMended(layer: BoardLayer): readonly number[] {
  const unclear = layer.lines.flatMap(({ trouble }, index) =>
    trouble === null || trouble.id === 'board/unknown-setting' ? [] : [index],
  );
  const broken = statedBreaks(layer).broken.map(({ index }) => index);
  return [...new Set([...unclear, ...broken])].sort((one, other) => one - other);
}
