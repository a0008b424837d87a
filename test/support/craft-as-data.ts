import type { Finding } from '../../server/src/checks/report/finding';
import { adviceOf, fixTitle, messageOf, relatedText } from '../../server/src/checks/report/render';
import type { Craft } from '../../server/src/craft/craft';
import { held } from './held';

/** A finding with everything that a person gets to see of it, places as numbers. */
export function findingAsData(finding: Finding): unknown {
  const at = ({ script, line, start, end }: Finding['place']) => [
    script.uri,
    script.lineNumber(line),
    start,
    end,
  ];
  return {
    id: finding.check.id,
    level: finding.level,
    pack: finding.pack,
    accepted: finding.accepted,
    message: messageOf(finding),
    advice: adviceOf(finding),
    place: at(finding.place),
    related: finding.related.map((one) => [relatedText(one), ...at(one.place)]),
    fixes: finding.fixes.map((fix) => [
      fixTitle(fix),
      fix.edits.map(({ place, newText }) => [newText, ...at(place)]),
    ]),
  };
}

/** Everything that a craft holds: packs, constants and settings with each pack in view, with their origins. */
export function craftAsData(craft: Craft): unknown {
  const scripts = craft.layers().layers.map(({ script }) => script);
  const paths = [...new Set(scripts.flatMap((script) => [...script.settingPaths()]))].sort();
  const views = [null, ...craft.packs()];
  return {
    scripts: scripts.map(({ uri }) => uri),
    packs: craft.packs(),
    readAs: craft.readAs(),
    board: craft.board()?.name,
    constants: craft
      .constantNames()
      .toSorted()
      .map((name) => [name, views.map((pack) => craft.constant(name, pack))]),
    settings: paths.map((path) => [
      path,
      views.map((pack) => [held(craft, path, pack), ...origins(craft, path, pack)]),
    ]),
  };
}

function origins(craft: Craft, path: string, pack: string | null): readonly unknown[] {
  const setting = craft.setting(path, pack);
  if (setting === undefined) return [];
  return [setting.origin, ...setting.overridden].map(({ script, line }) => [
    script.uri,
    script.lineNumber(line),
  ]);
}
