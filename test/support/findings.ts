import { Checker } from '../../server/src/checks/checker';
import type { Finding } from '../../server/src/checks/report/finding';
import { inScriptOrder } from '../../server/src/checks/report/order';
import { adviceOf, fixTitle, messageOf, relatedText } from '../../server/src/checks/report/render';
import { Craft } from '../../server/src/craft/craft';
import type { IncludeSource } from '../../server/src/craft/layers';
import { Script } from '../../server/src/craft/script';
import { testCatalog } from './catalog';

/** A finding as tests read it. Numbers are 0-based; `marked` is the text under the mark. */
export interface FindingSummary {
  readonly id: string;
  readonly level: string;
  readonly pack: string | null;
  readonly accepted: string | null;
  readonly message: string;
  readonly advice: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly marked: string;
  readonly fixes: readonly string[];
  readonly related: readonly { readonly uri: string; readonly line: number; readonly message: string }[];
}

const checker = new Checker(testCatalog, (id, error) => {
  throw new Error(`rule ${id} failed`, { cause: error });
});

/**
 * A craft from texts; other files of its workspace by their relative path. A text without `[craft]` is read as a part
 * unless `isIncluded` says that no other script includes it: most tests need a few lines only.
 */
export function craftOf(
  text: string,
  files: Readonly<Record<string, string>> = {},
  isIncluded: () => boolean = () => true,
): Craft {
  const scripts = new Map(
    Object.entries(files).map(([path, content]) => {
      const uri = `test:///work/${path}`;
      return [uri, new Script(uri, content, testCatalog)];
    }),
  );
  const root = new Script('test:///work/main.craft', text, testCatalog);
  scripts.set(root.uri, root);
  const source: IncludeSource = {
    open(uri) {
      const script = scripts.get(uri);
      return script === undefined ? { kind: 'missing' } : { kind: 'script', script };
    },
    isIncluded,
  };
  return new Craft(root, testCatalog, source);
}

export function findingsOf(craft: Craft): readonly Finding[] {
  return inScriptOrder(checker.findings(craft));
}

export function findingsIn(
  text: string,
  files: Readonly<Record<string, string>> = {},
): readonly FindingSummary[] {
  return findingsOf(craftOf(text, files)).map(summaryOf);
}

export function summaryOf(finding: Finding): FindingSummary {
  const { place, check, level, pack, accepted, fixes, related } = finding;
  return {
    id: check.id,
    level,
    pack,
    accepted,
    message: messageOf(finding),
    advice: adviceOf(finding),
    line: place.script.lineNumber(place.line),
    start: place.start,
    end: place.end,
    marked: place.line.text.slice(place.start, place.end),
    fixes: fixes.map(fixTitle),
    related: related.map((one) => ({
      uri: one.place.script.uri,
      line: one.place.script.lineNumber(one.place.line),
      message: relatedText(one),
    })),
  };
}
