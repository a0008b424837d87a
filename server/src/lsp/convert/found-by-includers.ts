import type { Finding, Place } from '../../checks/report/finding';
import { fileName } from '../../craft/include-path';
import { type Range, rangeOf } from '../../features/range';
import type { Session } from '../session';

/** What an open craft finds in a board's text that it includes. */
export interface FoundByIncluder {
  readonly finding: Finding;
  /** Where in the script that the text comes to. */
  readonly place: Range;
  /** The file name of the craft's script. */
  readonly craft: string;
}

/** What crafts find in a board's text that they include, where it stands. `own`: what it says alone is said once. */
export function foundByIncluders(
  session: Session,
  uri: string,
  own: readonly Finding[],
): readonly FoundByIncluder[] {
  const script = session.workspace.get(uri)?.script;
  if (script === undefined) return [];
  const isOwn = ({ check }: Finding, { line, start }: Place) =>
    own.some((one) => one.check === check && one.place.line === line && one.place.start === start);
  return session.workspace.includersOf(uri).flatMap(({ uri: root, craft }) =>
    session.workspace.findings(root).flatMap((finding): FoundByIncluder[] => {
      const [first] = finding.related;
      const isHere = first?.place.script === script && finding.place.line.statement.kind === 'include';
      // What must be mended in this text is told at its own lines.
      if (finding.check.id === 'line/include-faulty') return [];
      if (!isHere || isOwn(finding, first.place)) return [];
      return [{ finding, place: rangeOf(first.place), craft: fileName(craft.root.uri) }];
    }),
  );
}
